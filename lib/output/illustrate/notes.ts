/** Balloons, labels and arrows of a picture: written where nothing is drawn, apart from each other. */
import { type Bounds, element, type Point } from '../../geometry/index.js';
import { crossing, grown, overlap, passes, type Segment } from '../shop/free-place.js';
import { CAPITALS, textWidth } from '../shop/font.js';
import { markup, type Markup } from '../markup.js';
import type { Canvas } from './camera.js';
import { NOTHING, type Raster } from './raster.js';
import type { Note, Piece, Target } from './scene.js';
import type { SeenScene } from './seen.js';

/** Size of the letters, units of the picture: 1000 are some 100 mm of paper or 350 points of a phone. */
const LETTERS = 34;
const BALLOON = 27;
const GAP = 7;

/** How much is drawn within any rectangle, by sums over all that lies above and to the left (Crow 1984). */
class Ink {
  private readonly sums: Int32Array;
  constructor(private readonly raster: Raster) {
    const { width, height, faces } = raster;
    this.sums = new Int32Array((width + 1) * (height + 1));
    for (let y = 0; y < height; y += 1) {
      let row = 0;
      for (let x = 0; x < width; x += 1) {
        row += faces[y * width + x] === NOTHING ? 0 : 1;
        this.sums[(y + 1) * (width + 1) + x + 1] = (this.sums[y * (width + 1) + x + 1] ?? 0) + row;
      }
    }
  }
  within({ minX, minY, maxX, maxY }: Bounds): number {
    const { width, height } = this.raster;
    const [l, r] = [minX, maxX].map((x) => Math.max(0, Math.min(width, Math.round(x)))) as [number, number];
    const [t, b] = [minY, maxY].map((y) => Math.max(0, Math.min(height, Math.round(y)))) as [number, number];
    const at = (x: number, y: number): number => this.sums[y * (width + 1) + x] ?? 0;
    return at(r, b) - at(l, b) - at(r, t) + at(l, t);
  }
}

interface Sheet {
  readonly canvas: Canvas;
  readonly ink: Ink;
  readonly boxes: Bounds[];
  readonly leaders: Segment[];
  /** Lines that a leader may cross, but no text. */
  readonly axes: Segment[];
}

interface Found {
  readonly box: Bounds;
  readonly leader: Segment;
}

/** From the side of a box to a place; a round one is met on the way to its middle. */
function leaderOf({ minX, minY, maxX, maxY }: Bounds, at: Point, round: boolean): Segment {
  if (round) {
    const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
    const far = Math.hypot(at.x - x, at.y - y) || 1;
    return { a: at, b: { x: x + ((at.x - x) / far) * BALLOON, y: y + ((at.y - y) / far) * BALLOON } };
  }
  const near = { x: Math.max(minX, Math.min(maxX, at.x)), y: Math.max(minY, Math.min(maxY, at.y)) };
  return { a: at, b: near };
}

/** How much of a box may lie on what is drawn, and how far off it may be: what is close is found sooner. */
const TRIES = [
  [0, 270],
  [0.3, 180],
  [Infinity, 180],
  [0, 700],
  [Infinity, 700],
  // better with its leader across another than not at all
  [Infinity, 1100, 'across'],
] as const;

/** The nearest free box for a place: off the drawing where that can be, on it where not. */
function find(
  { canvas, ink, boxes, leaders, axes }: Sheet,
  at: Point,
  { width, height, round }: { readonly width: number; readonly height: number; readonly round: boolean },
): Found | null {
  for (const [share, furthest, across] of TRIES)
    for (let distance = 26; distance < furthest; distance += 11)
      for (let k = 0; k < 32; k += 1) {
        // upward first, then to both sides in turn
        const angle = -Math.PI / 2 + (Math.PI / 16) * (k % 2 === 0 ? k / 2 : -(k + 1) / 2);
        const middle = {
          x: at.x + Math.cos(angle) * (distance + width / 2),
          y: at.y + Math.sin(angle) * (distance + height / 2),
        };
        const box = {
          minX: middle.x - width / 2,
          maxX: middle.x + width / 2,
          minY: middle.y - height / 2,
          maxY: middle.y + height / 2,
        };
        if (box.minX < 2 || box.minY < 2 || box.maxX > canvas.width - 2 || box.maxY > canvas.height - 2) continue;
        if (boxes.some((other) => overlap(grown(box, GAP), other))) continue;
        if (ink.within(grown(box, 3)) > share * width * height) continue;
        if ([...leaders, ...axes].some((other) => passes(other, grown(box, 3)))) continue;
        const leader = leaderOf(box, at, round);
        if (boxes.some((other) => passes(leader, other))) continue;
        if (across === undefined && leaders.some((other) => crossing(leader, other))) continue;
        return { box, leader };
      }
  return null;
}

const n = (value: number): string => String(Math.round(value));

/** Words in the middle of a place, as wide as they were thought to be. */
export function wordsAt(text: string, x: number, y: number, className: string, size = LETTERS): Markup {
  const long = textWidth(text, size * CAPITALS);
  const length = text.length > 1 ? markup` textLength="${n(long)}" lengthAdjust="spacingAndGlyphs"` : null;
  return markup`<text class="${className}" x="${n(x)}" y="${n(y + (size * CAPITALS) / 2)}" font-size="${size}"${length}>${text}</text>`;
}

/** An arrow along a line, its head at the end: what is drawn, and what texts keep off. */
function arrow(a: Point, b: Point): { readonly data: string; readonly lines: readonly Segment[] } {
  const size = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [ux, uy] = [(b.x - a.x) / size, (b.y - a.y) / size];
  const head = Math.min(26, size * 0.6);
  const side = (sign: 1 | -1): Point => ({
    x: b.x - ux * head - sign * uy * head * 0.5,
    y: b.y - uy * head + sign * ux * head * 0.5,
  });
  const [c, d] = [side(1), side(-1)];
  return {
    data: `M${n(a.x)} ${n(a.y)}L${n(b.x - ux * head * 0.7)} ${n(b.y - uy * head * 0.7)}M${n(b.x)} ${n(b.y)}L${n(c.x)} ${n(c.y)}L${n(d.x)} ${n(d.y)}z`,
    lines: [
      { a, b },
      { a: b, b: c },
      { a: c, b: d },
      { a: d, b },
    ],
  };
}

type Written = Extract<Note, { readonly text: string }>;

function written(note: Written, sheet: Sheet, place: Point): Markup | null {
  const { text } = note;
  if (note.kind === 'mark') {
    const width = textWidth(text, LETTERS * CAPITALS) + 8;
    const box = { minX: place.x - width / 2, maxX: place.x + width / 2, minY: place.y - 16, maxY: place.y + 16 };
    if (sheet.boxes.some((other) => overlap(grown(box, 2), other))) return null;
    if ([...sheet.leaders, ...sheet.axes].some((line) => passes(line, box))) return null;
    sheet.boxes.push(box);
    return wordsAt(text, place.x, place.y, 'on');
  }
  const round = note.kind === 'balloon';
  const size = round
    ? { width: 2 * BALLOON, height: 2 * BALLOON, round }
    : { width: textWidth(text, LETTERS * CAPITALS) + 10, height: LETTERS + 12, round };
  const found = find(sheet, place, size);
  if (found === null) return null;
  const { box, leader } = found;
  sheet.boxes.push(box);
  sheet.leaders.push(leader);
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  // a leader that ends within an outline ends in a dot (ISO 128-2)
  const line = markup`<path class="leader" d="M${n(leader.a.x)} ${n(leader.a.y)}L${n(leader.b.x)} ${n(leader.b.y)}"/><circle class="dot" cx="${n(leader.a.x)}" cy="${n(leader.a.y)}" r="5"/>`;
  if (!round) return markup`${line}${wordsAt(text, x, y, 'on')}`;
  return markup`${line}<circle class="balloon" cx="${n(x)}" cy="${n(y)}" r="${BALLOON}"/>${wordsAt(text, x, y, 'number')}`;
}

/** Where each piece is seen, at every second point each way: x and y in turn. Looked through once for all notes. */
function seenPoints({ raster, owners }: SeenScene): Map<Piece, number[]> {
  const points = new Map<Piece, number[]>();
  const byFace = owners.map((piece) => {
    const known = points.get(piece) ?? [];
    points.set(piece, known);
    return known;
  });
  for (let y = 0; y < raster.height; y += 2)
    for (let x = 0; x < raster.width; x += 2) byFace[raster.faces[y * raster.width + x] ?? NOTHING]?.push(x, y);
  return points;
}

/** The middle of what is seen of the piece that is seen best; null where nothing of any is seen. */
function bestSeen(pieces: readonly Piece[], points: ReadonlyMap<Piece, readonly number[]>): Point | null {
  const best = pieces
    .map((piece) => points.get(piece) ?? [])
    .reduce((longest, one) => (one.length > longest.length ? one : longest), []);
  const places: Point[] = [];
  for (let i = 0; i + 1 < best.length; i += 2) places.push({ x: element(best, i), y: element(best, i + 1) });
  const middle = {
    x: places.reduce((sum, { x }) => sum + x, 0) / places.length,
    y: places.reduce((sum, { y }) => sum + y, 0) / places.length,
  };
  let nearest: Point | null = null;
  let off = Infinity;
  for (const place of places) {
    const far = Math.hypot(place.x - middle.x, place.y - middle.y);
    if (far < off) [nearest, off] = [place, far];
  }
  return nearest;
}

type Points = ReturnType<typeof seenPoints>;

const placeOf = (at: Target, { project }: Canvas, points: Points): Point | null =>
  'pieces' in at ? bestSeen(at.pieces, points) : project(at);

/** All notes of a picture. */
export function notesOf(notes: readonly Note[], canvas: Canvas, seen: SeenScene): Markup {
  if (notes.length === 0) return markup``;
  const { project } = canvas;
  const sheet: Sheet = { canvas, ink: new Ink(seen.raster), boxes: [], leaders: [], axes: [] };
  const arrows: string[] = [];
  const axes: string[] = [];
  for (const note of notes) {
    if (note.kind !== 'way' && note.kind !== 'axis') continue;
    const [a, b] = [project(note.from), project(note.to)];
    if (note.kind === 'axis') {
      axes.push(`M${n(a.x)} ${n(a.y)}L${n(b.x)} ${n(b.y)}`);
      sheet.axes.push({ a, b });
    } else {
      const { data, lines } = arrow(a, b);
      arrows.push(data);
      sheet.leaders.push(...lines);
    }
  }
  const order = ['mark', 'balloon', 'label'];
  const points = seenPoints(seen);
  const texts = notes
    .flatMap((note) => ('at' in note ? [note] : []))
    .sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind))
    .map((note) => {
      const place = placeOf(note.at, canvas, points);
      return place && written(note, sheet, place);
    });
  return markup`${axes.length > 0 ? markup`<path class="along" d="${axes.join('')}"/>` : null}${arrows.length > 0 ? markup`<path class="way" d="${arrows.join('')}"/>` : null}${texts}`;
}
