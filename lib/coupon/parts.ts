/**
 * The parts of a coupon. Sizes are such that callipers of 150 mm take every reading; edges that are measured carry no
 * tabs. All of it lies on the sheet as it is drawn here, as the axes of the machine are read off it.
 */
import { type Contour, contourFromPoints, type Point, rectangle, reversed } from '../geometry/index.js';
import { blank, type EdgeRun, lineMark, type Part, textMark, throughHole } from '../part/index.js';
import type { Coupon, CouponCut, Reading } from './types.js';

/** Side of the square, and of its window: 100 mm on both axes, with diagonals within the reach of 150 mm callipers. */
const side = 100;
const windowSide = 60;
/** Stretch in the middle of a side of the square that is left for tabs. */
const free = { from: 32, to: 68 };
/** Where bars are measured, off the corners. */
const off = 14;
const letter = 4;
/** Plays of the slots by process: each way of what usually fits (common practice, no source). */
const plays = {
  router: [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35],
  laser: [-0.1, -0.05, 0, 0.05, 0.1, 0.15, 0.2],
} as const;
/** Base of the steps on either side of the tongues, for tabs. */
const shoulder = 18;
/** Slots this much (mm) wider than the cut can be made. */
const minOver = 0.02;
const slotLength = 25;
/** The tab is this much shorter than its slot, so that its thickness alone decides. */
const tabShorter = 1;
const boredSizes = [10, 16, 20];
/** A bored hole is this much wider than the cut at least. */
const minBore = 2;
/** The rod of callipers goes into a hole of this diameter; thinner sheets have no depth worth measuring. */
const minRod = 5;
const minDeep = 4;
const depthShares = [0.25, 0.5, 0.75];

type Base = Pick<Part, 'material' | 'thickness' | 'quantity' | 'kind'>;

const seat = (ring: number, from: number, to = from): EdgeRun => ({ ring, from, to, role: 'seat' });

/** Text so that its middle stands at a place. */
const middled = (text: string, { x, y }: Point, height = letter) =>
  textMark(text, { x: x - 0.36 * height * text.length, y: y - height / 2 }, height);

/** An arrow along an axis, as three scribed lines. */
function arrow(from: Point, direction: number) {
  const at = (along: number, aside: number): Point => {
    const [cos, sin] = [Math.cos(direction), Math.sin(direction)];
    return { x: from.x + along * cos - aside * sin, y: from.y + along * sin + aside * cos };
  };
  const line = (a: Point, b: Point) => lineMark(contourFromPoints([a, b]));
  const tip = at(14, 0);
  return [line(from, tip), line(at(11, 2), tip), line(at(11, -2), tip)];
}

const decimals = (play: number): string => play.toFixed(2);

interface Made {
  readonly part: Part;
  readonly readings: readonly Reading[];
}

function square(base: Base, id: string): Made {
  const corners = contourFromPoints([
    { x: 0, y: 0 },
    { x: free.from, y: 0 },
    { x: free.to, y: 0 },
    { x: side, y: 0 },
    { x: side, y: free.from },
    { x: side, y: free.to },
    { x: side, y: side },
    { x: free.to, y: side },
    { x: free.from, y: side },
    { x: 0, y: side },
    { x: 0, y: free.to },
    { x: 0, y: free.from },
  ]);
  const inner = (side - windowSide) / 2;
  const reading = (name: string, rest: Omit<Reading, 'id' | 'part'>): Reading => ({ id: name, part: id, ...rest });
  const bar = (axis: 'x' | 'y', at: number, name: string, where: string): Reading =>
    reading(name, {
      measure: { kind: 'outside', axis },
      nominal: side,
      from: axis === 'x' ? { x: 0, y: at } : { x: at, y: 0 },
      to: axis === 'x' ? { x: side, y: at } : { x: at, y: side },
      words: `outside jaws, along ${axis.toUpperCase()}, ${where}`,
    });
  const gap = (axis: 'x' | 'y'): Reading =>
    reading(`window-${axis}`, {
      measure: { kind: 'inside', axis },
      nominal: windowSide,
      from: axis === 'x' ? { x: inner, y: 40 } : { x: 60, y: inner },
      to: axis === 'x' ? { x: inner + windowSide, y: 40 } : { x: 60, y: inner + windowSide },
      words: `inside jaws, across the window along ${axis.toUpperCase()}, off its corners`,
    });
  const diagonal = (rising: boolean): Reading =>
    reading(rising ? 'diagonal-A-C' : 'diagonal-B-D', {
      measure: { kind: 'diagonal', rising },
      nominal: side * Math.SQRT2,
      from: rising ? { x: 0, y: 0 } : { x: side, y: 0 },
      to: rising ? { x: side, y: side } : { x: 0, y: side },
      words: `outside jaws, over the corners ${rising ? 'A and C' : 'B and D'}, without pressing them round`,
    });
  const part = blank({
    ...base,
    id,
    name: 'Square',
    outline: corners,
    openings: [reversed(rectangle(inner, inner, inner + windowSide, inner + windowSide))],
    edges: [0, 2, 3, 5, 6, 8, 9, 11].map((edge) => seat(0, edge)),
    marks: [
      middled('A', { x: 8, y: 7 }),
      middled('B', { x: side - 8, y: 7 }),
      middled('C', { x: side - 8, y: side - 7 }),
      middled('D', { x: 8, y: side - 7 }),
      middled('X', { x: side / 2 - 6, y: 9 }),
      ...arrow({ x: side / 2, y: 9 }, 0),
      middled('Y', { x: 9, y: side / 2 - 6 }),
      ...arrow({ x: 9, y: side / 2 }, Math.PI / 2),
    ],
  });
  return {
    part,
    readings: [
      bar('x', off, 'bar-x-low', 'near the edge from A to B'),
      bar('x', side - off, 'bar-x-high', 'near the edge from D to C'),
      bar('y', off, 'bar-y-left', 'near the edge from A to D'),
      bar('y', side - off, 'bar-y-right', 'near the edge from B to C'),
      diagonal(true),
      diagonal(false),
      gap('x'),
      gap('y'),
    ],
  };
}

/** A comb with tongues for the outside jaws and gaps for the inside ones. */
function steps(base: Base, id: string, { width }: CouponCut): Made {
  const gapOf = Math.max(12, Math.ceil(1.4 * width));
  const widths = [10, gapOf, 15, gapOf + 4, 20];
  const [low, high] = [14, 40];
  const points: Point[] = [{ x: -shoulder, y: 0 }];
  const readings: Reading[] = [];
  const ends = widths.map((_, i) => widths.slice(0, i + 1).reduce((sum, one) => sum + one, 0));
  const total = ends.at(-1) ?? 0;
  points.push({ x: total + shoulder, y: 0 }, { x: total + shoulder, y: low }, { x: total, y: low });
  const marks = [];
  for (let i = widths.length - 1; i >= 0; i -= 1) {
    const [from, to] = [ends[i - 1] ?? 0, ends[i] ?? 0];
    const tongue = i % 2 === 0;
    if (tongue) points.push({ x: to, y: high }, { x: from, y: high });
    else points.push({ x: to, y: low }, { x: from, y: low });
    const number = Math.floor(i / 2) + 1;
    readings.unshift({
      id: `${tongue ? 'tongue' : 'gap'}-${number}`,
      part: id,
      measure: { kind: tongue ? 'outside' : 'inside', axis: 'x' },
      nominal: to - from,
      from: { x: from, y: 34 },
      to: { x: to, y: 34 },
      words: tongue
        ? `outside jaws, over tongue ${number}, near its end`
        : `inside jaws, in the gap between tongues ${number} and ${number + 1}, near its mouth`,
    });
    if (tongue) marks.push(middled(String(number), { x: (from + to) / 2, y: 24 }));
  }
  points.push({ x: 0, y: low }, { x: -shoulder, y: low });
  const outline = contourFromPoints(points);
  return {
    part: blank({
      ...base,
      id,
      name: 'Steps',
      outline,
      // lower edge and shoulders are left for tabs
      edges: [seat(0, 3, outline.length - 3)],
      marks: [...marks, middled('X', { x: total / 2 - 6, y: 7 }), ...arrow({ x: total / 2, y: 7 }, 0)],
    }),
    readings,
  };
}

/** Slots of growing play, and the tab that is tried in them. */
function slots(base: Base, id: string, tabId: string, { cutBy, thickness, width }: CouponCut) {
  const fits = plays[cutBy].filter((play) => thickness + play > width + minOver);
  if (fits.length === 0) return { parts: [], fits };
  const pitch = Math.max(thickness + 8, 16);
  const [border, low] = [8, 16];
  const rings = fits.map((play, i): Contour => {
    const middle = border + pitch / 2 + i * pitch;
    const half = (thickness + play) / 2;
    return reversed(rectangle(middle - half, low, middle + half, low + slotLength));
  });
  const length = 2 * border + fits.length * pitch;
  const plate = blank({
    ...base,
    id,
    name: 'Slots',
    outline: rectangle(0, 0, length, low + slotLength + border),
    openings: rings,
    seatCorners: rings.flatMap((ring, i) => ring.map((_, vertex) => ({ ring: i + 1, vertex }))),
    edges: rings.map((ring, i) => seat(i + 1, 0, ring.length - 1)),
    marks: fits.map((play, i) => middled(decimals(play), { x: border + pitch / 2 + i * pitch, y: 8 }, 3)),
  });
  const tongue = slotLength - tabShorter;
  const deep = Math.max(thickness, 12);
  const outline = contourFromPoints([
    { x: 0, y: 0 },
    { x: 50, y: 0 },
    { x: 50, y: 30 },
    { x: 25 + tongue / 2, y: 30 },
    { x: 25 + tongue / 2, y: 30 + deep },
    { x: 25 - tongue / 2, y: 30 + deep },
    { x: 25 - tongue / 2, y: 30 },
    { x: 0, y: 30 },
  ]);
  const tab = blank({
    ...base,
    id: tabId,
    name: 'Tab',
    outline,
    seatCorners: [3, 6].map((vertex) => ({ ring: 0, vertex })),
    edges: [seat(0, 2, 6)],
    marks: [middled('TAB', { x: 25, y: 13 })],
  });
  return { parts: [plate, tab], fits };
}

/** Bored holes, a hole of each drill bit, and blind holes down to several depths. */
function holes(base: Base, id: string, { cutBy, width, drills, thickness, toolDiameter }: CouponCut): Made {
  const bored = boredSizes.filter((size) => size >= width + minBore);
  const deep =
    cutBy === 'router' && toolDiameter !== undefined && toolDiameter >= minRod && thickness >= minDeep
      ? depthShares.map((share) => Math.round(2 * share * thickness) / 2)
      : [];
  const places: {
    readonly size: number;
    readonly name: string;
    readonly reading: Omit<Reading, 'part' | 'from' | 'to'>;
    depth?: number;
  }[] = [
    ...bored.map((size) => ({
      size,
      name: String(size),
      reading: {
        id: `bored-${size}`,
        measure: { kind: 'bored' as const },
        nominal: size,
        words: `inside jaws, in the hole of ${size}, in two directions: take the mean`,
      },
    })),
    ...drills.map((size) => ({
      size,
      name: String(Number(size.toFixed(3))),
      reading: {
        id: `drilled-${Number(size.toFixed(3))}`,
        measure: { kind: 'drilled' as const },
        nominal: size,
        words: `the hole of the ${Number(size.toFixed(3))} mm bit: inside jaws, or the thickest bit or pin that can be pushed in by hand`,
      },
    })),
    ...deep.map((depth, i) => ({
      size: toolDiameter ?? 0,
      depth,
      name: `D${i + 1}`,
      reading: {
        id: `depth-${i + 1}`,
        measure: { kind: 'depth' as const },
        nominal: depth,
        words: `depth rod, in the blind hole D${i + 1}, with the end of the callipers flat on the face`,
      },
    })),
  ];
  const columns = Math.min(5, places.length);
  const pitch = 32;
  const at = (i: number): Point => ({ x: 18 + pitch * (i % columns), y: 22 + pitch * Math.floor(i / columns) });
  const rows = Math.ceil(places.length / columns);
  return {
    part: blank({
      ...base,
      id,
      name: 'Holes',
      outline: rectangle(0, 0, 4 + pitch * columns, 8 + pitch * rows),
      holes: places.map(({ size, depth }, i) => ({
        ...throughHole(at(i), size),
        ...(depth === undefined ? {} : { depth }),
      })),
      marks: places.map(({ name }, i) => middled(name, { x: at(i).x, y: at(i).y - 15 }, 3)),
    }),
    readings: places.map(({ size, reading }, i) => ({
      ...reading,
      part: id,
      from: { x: at(i).x - size / 2, y: at(i).y },
      to: { x: at(i).x + size / 2, y: at(i).y },
    })),
  };
}

/** The coupon of a material: its parts at true size, and what is measured on them. */
export function couponOf(cut: CouponCut): Coupon {
  const { material, thickness } = cut;
  const base: Base = { material, thickness, quantity: 1, kind: 'coupon' };
  const id = (name: string): string => `${material}-${name}`;
  const made = [square(base, id('square')), steps(base, id('steps'), cut)];
  const drilled = holes(base, id('holes'), cut);
  const { parts, fits } = slots(base, id('slots'), id('tab'), cut);
  return {
    cut,
    parts: [...made.map(({ part }) => part), ...(drilled.readings.length > 0 ? [drilled.part] : []), ...parts],
    readings: [...made.flatMap(({ readings }) => readings), ...drilled.readings],
    fits,
  };
}
