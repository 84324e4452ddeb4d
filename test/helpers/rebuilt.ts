/**
 * A part made from its drawing alone: what is seen of it (how many corners, which edges are straight) and what is
 * printed. It shares no code with the drawing and never looks at where a line lies on the paper.
 */
import type { Fact, ShopDrawing, Sketch } from '../../lib/output/shop/index.js';

interface Point {
  readonly x: number;
  readonly y: number;
}

interface Vertex extends Point {
  readonly bulge: number;
}

interface RebuiltHole {
  readonly at: Point;
  readonly diameter: number;
  readonly depth: number | 'through';
  readonly countersink: number | undefined;
}

interface RebuiltEdgeHole {
  readonly at: Point;
  /** Anticlockwise from the part's x axis. */
  readonly directionDeg: number;
  readonly diameter: number;
  readonly length: number;
  readonly height: number;
}

interface Rebuilt {
  /** By the index of the part's ring. */
  readonly rings: ReadonlyMap<number, readonly Vertex[]>;
  /** By the index of the part's hole. */
  readonly holes: ReadonlyMap<number, RebuiltHole>;
  /** Points of lines, or opposite corners of rectangles, by the index of the line mark among the part's. */
  readonly lines: ReadonlyMap<number, readonly Vertex[]>;
  /** By the index of the part's edge hole. */
  readonly edgeHoles: ReadonlyMap<number, RebuiltEdgeHole>;
  /** Middles, by the index of the line mark among the part's. */
  readonly pins: ReadonlyMap<number, Point>;
  /** Closed lines that are no rectangles, by the index of the line mark. */
  readonly scribed: ReadonlyMap<number, readonly Vertex[]>;
}

const keyOf = (fact: Fact): string =>
  JSON.stringify(
    Object.entries(fact)
      .filter(([name]) => name !== 'opposite')
      .sort(),
  );

/** Millimetres of a printed length, degrees of an angle; what stands round the number is dropped. */
export function readPrinted(text: string, unit: 'mm' | 'in'): number {
  const found = /^[^\d.-]*(-?)(?:(\d+)-)?(\d+(?:\.\d+)?)(?:\/(\d+))?(°?)/.exec(text.replace(/^\d+ × R/, ''));
  if (!found) throw new Error(`"${text}" is not a number`);
  const [, minus, whole, number, under, degrees] = found;
  const value = Number(whole ?? 0) + Number(number) / Number(under ?? 1);
  return (minus === '-' ? -1 : 1) * value * (degrees === '°' || unit === 'mm' ? 1 : 25.4);
}

/** The printed values of a drawing, by what they state. */
class Printed {
  private readonly values = new Map<string, { text: string; opposite: boolean }>();
  private readonly curves = new Set<string>();

  constructor(
    drawing: ShopDrawing,
    private readonly unit: 'mm' | 'in',
  ) {
    for (const { text, states } of drawing.pages.flatMap(({ entities }) => entities.flatMap(({ words }) => words)))
      for (const fact of states) {
        const key = keyOf(fact);
        if (this.values.has(key)) throw new Error(`dimensioned twice: ${key}`);
        if (fact.of === 'curve') this.curves.add(`${fact.curve} ${fact.station}`);
        this.values.set(key, { text, opposite: fact.of === 'corner' && fact.opposite === true });
      }
  }

  /** The places along a curve of which anything is printed. */
  stations(curve: string): number[] {
    const found = [...this.curves].filter((key) => key.startsWith(`${curve} `)).map((key) => Number(key.split(' ')[1]));
    return [...new Set(found)].sort((a, b) => a - b);
  }

  has(fact: Fact): boolean {
    return this.values.has(keyOf(fact));
  }

  read(fact: Fact): number {
    const found = this.values.get(keyOf(fact));
    if (found === undefined) throw new Error(`not dimensioned: ${keyOf(fact)}`);
    const value = readPrinted(found.text, fact.of === 'pattern' && fact.what === 'count' ? 'mm' : this.unit);
    return found.opposite ? -value : value;
  }
}

const turned = ({ x, y }: Point, degrees: number): Point => {
  const angle = (degrees * Math.PI) / 180;
  return { x: x * Math.cos(angle) - y * Math.sin(angle), y: x * Math.sin(angle) + y * Math.cos(angle) };
};

/** A smooth curve through points in order along x: piecewise cubic, its ends bent as their neighbours are. */
function through(points: readonly Point[]): (x: number) => number {
  const n = points.length;
  // second derivatives of the cubic spline with parabolic ends, by relaxation of its equations
  const m = new Array<number>(n).fill(0);
  for (let round = 0; round < 200; round++) {
    for (let i = 1; i < n - 1; i++) {
      const [a, b, c] = [points[i - 1]!, points[i]!, points[i + 1]!];
      const [h, k] = [b.x - a.x, c.x - b.x];
      const right = 6 * ((c.y - b.y) / k - (b.y - a.y) / h);
      m[i] = (right - h * m[i - 1]! - k * m[i + 1]!) / (2 * (h + k));
    }
    m[0] = m[1]!;
    m[n - 1] = m[n - 2]!;
  }
  return (x) => {
    let i = 0;
    while (i < n - 2 && points[i + 1]!.x < x) i++;
    const [a, b] = [points[i]!, points[i + 1]!];
    const h = b.x - a.x;
    const [t, u] = [(b.x - x) / h, (x - a.x) / h];
    return t * a.y + u * b.y + (((t ** 3 - t) * m[i]! + (u ** 3 - u) * m[i + 1]!) * h * h) / 6;
  };
}

/** From a to b on a circle about a middle, each as far out as it is. */
function arcAbout(middle: Point, a: Point, b: Point, anticlockwise: boolean): Vertex[] {
  const start = Math.atan2(a.y - middle.y, a.x - middle.x);
  let sweep = Math.atan2(b.y - middle.y, b.x - middle.x) - start;
  if (anticlockwise && sweep <= 0) sweep += 2 * Math.PI;
  if (!anticlockwise && sweep >= 0) sweep -= 2 * Math.PI;
  return [
    { ...a, bulge: Math.tan(sweep / 4) },
    { ...b, bulge: 0 },
  ];
}

/** The shorter arc from a to b of a radius. */
function arcBetween(a: Point, b: Point, radius: number, anticlockwise: boolean): Vertex[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const chord = Math.hypot(dx, dy);
  const rise = Math.sqrt(Math.max(0, radius ** 2 - (chord / 2) ** 2)) * (anticlockwise ? 1 : -1);
  const middle = { x: (a.x + b.x) / 2 - (dy / chord) * rise, y: (a.y + b.y) / 2 + (dx / chord) * rise };
  return arcAbout(middle, a, b, anticlockwise);
}

/** A rounded corner, from the edge before it to the edge after it. */
function rounded(before: Point, corner: Point, after: Point, radius: number): Vertex[] {
  const unit = (to: Point): Point => {
    const length = Math.hypot(to.x - corner.x, to.y - corner.y);
    return { x: (to.x - corner.x) / length, y: (to.y - corner.y) / length };
  };
  const [u, v] = [unit(before), unit(after)];
  const half = Math.acos(Math.max(-1, Math.min(1, u.x * v.x + u.y * v.y))) / 2;
  const reach = radius / Math.tan(half);
  const start = { x: corner.x + u.x * reach, y: corner.y + u.y * reach };
  const end = { x: corner.x + v.x * reach, y: corner.y + v.y * reach };
  return arcBetween(start, end, radius, -u.x * v.y + u.y * v.x > 0);
}

type CornersSketch = Extract<Sketch['rings'][number], { kind: 'corners' | 'repeated' }>;

function cornerRing(sketch: CornersSketch, ring: number, printed: Printed): Vertex[] {
  const times = sketch.kind === 'repeated' ? sketch.times : 1;
  const own = sketch.corners.map((_, corner): Point => ({
    x: printed.read({ of: 'corner', ring, corner, axis: 'x' }),
    y: printed.read({ of: 'corner', ring, corner, axis: 'y' }),
  }));
  const all = Array.from({ length: times }, (_, k) => own.map((point) => turned(point, (360 * k) / times))).flat();
  const n = all.length;
  return all.flatMap((corner, i): Vertex[] => {
    const k = i % own.length;
    const next = all[(i + 1) % n]!;
    const before = all[(i + n - 1) % n]!;
    const edge = sketch.edges[k]!;
    const start = sketch.corners[k]!.rounded
      ? rounded(before, corner, next, printed.read({ of: 'rounding', ring, corner: k }))
      : [{ ...corner, bulge: 0 }];
    if (edge.kind === 'straight') return start;
    const arc = (what: 'radius' | 'x' | 'y'): number => printed.read({ of: 'arc', ring, edge: k, what });
    if (edge.kind === 'arc') {
      const radius = arc('radius');
      if (edge.about === 'neither') return [...start, ...arcBetween(corner, next, radius, edge.anticlockwise)];
      const middle = edge.about === 'origin' ? { x: 0, y: 0 } : { x: arc('x'), y: arc('y') };
      // the compass draws the radius, whatever the corners are
      const onIt = (point: Point): Point => {
        const length = Math.hypot(point.x - middle.x, point.y - middle.y);
        const [x, y] = [point.x - middle.x, point.y - middle.y];
        return { x: middle.x + (x * radius) / length, y: middle.y + (y * radius) / length };
      };
      return [...start, ...arcAbout(middle, onIt(corner), onIt(next), edge.anticlockwise)];
    }
    const curve = curvePoints(edge.name, edge.along, printed).map(({ x, y }) => ({
      x,
      y: edge.opposite ? -y : y,
      bulge: 0,
    }));
    return [...start, ...(edge.backwards ? curve.reverse() : curve)];
  });
}

const CHORDS = 80;

function curvePoints(curve: string, along: 'x' | 'y', printed: Printed): Point[] {
  const stations = printed.stations(curve).map((station): Point => ({
    x: printed.read({ of: 'curve', curve, station, what: 'along' }),
    y: printed.read({ of: 'curve', curve, station, what: 'height' }),
  }));
  if (stations.length < 3) throw new Error(`curve ${curve} has no heights`);
  const height = through(stations);
  const [start, end] = [stations[0]!.x, stations.at(-1)!.x];
  return Array.from({ length: CHORDS + 1 }, (_, i) => start + ((end - start) * i) / CHORDS).map((at) =>
    along === 'x' ? { x: at, y: height(at) } : { x: height(at), y: at },
  );
}

function ringOf(sketch: Sketch['rings'][number], ring: number, printed: Printed): Vertex[] {
  if (sketch.kind === 'copy') return [];
  if (sketch.kind === 'circle') {
    const has = printed.has({ of: 'circle', ring, what: 'x' });
    const at = (what: 'x' | 'y'): number => (has ? printed.read({ of: 'circle', ring, what }) : 0);
    const radius = printed.read({ of: 'circle', ring, what: 'diameter' }) / 2;
    const [x, y] = [at('x'), at('y')];
    return [-radius, radius].map((off) => ({ x: x + off, y, bulge: 1 }));
  }
  if (sketch.kind === 'regular') {
    const radius = printed.read({ of: 'flats', ring, what: 'radius' });
    const direction = printed.read({ of: 'flats', ring, what: 'direction' });
    const corner = { x: radius / Math.cos(Math.PI / sketch.sides), y: 0 };
    return Array.from({ length: sketch.sides }, (_, i) => ({
      ...turned(corner, direction + (360 * (i + 0.5)) / sketch.sides),
      bulge: 0,
    }));
  }
  return cornerRing(sketch, ring, printed);
}

/** The printed points of a line, with arcs about the origin where a radius stands. */
function linePoints(feature: string, printed: Printed): Vertex[] {
  const fact = (point: number, axis: 'x' | 'y' | 'radius'): Fact => ({ of: 'line', feature, point, axis });
  const points: Point[] = [];
  for (let i = 0; printed.has(fact(i, 'x')); i++)
    points.push({ x: printed.read(fact(i, 'x')), y: printed.read(fact(i, 'y')) });
  if (points.length < 2) throw new Error(`line ${feature} has one end`);
  return points.flatMap((point, i): Vertex[] => {
    const next = points[i + 1];
    if (next === undefined || !printed.has(fact(i, 'radius'))) return [{ ...point, bulge: 0 }];
    const radius = printed.read(fact(i, 'radius'));
    const off = Math.abs(Math.hypot(point.x, point.y) - radius);
    if (off > 1) throw new Error(`line ${feature}: its radius and its start differ by ${off.toFixed(2)} mm`);
    return arcAbout({ x: 0, y: 0 }, point, next, true).slice(0, 1);
  });
}

/**
 * The part in its own axes.
 * @throws Error for a measure that is not printed, or printed twice
 */
export function rebuilt(drawing: ShopDrawing, unit: 'mm' | 'in'): Rebuilt {
  const { sketch } = drawing;
  if (sketch === null) throw new Error(`${drawing.id} is no part`);
  const printed = new Printed(drawing, unit);
  const inPart = ({ x, y }: Point): Point => turned({ x: x + sketch.datum.x, y: y + sketch.datum.y }, -sketch.turnDeg);
  const rings = new Map<number, Vertex[]>([
    [0, ringOf(sketch.rings[0]!, 0, printed).map((vertex) => ({ ...vertex, ...inPart(vertex) }))],
  ]);
  const holes = new Map<number, RebuiltHole>();
  const lines = new Map<number, Vertex[]>();
  for (const { id, kind, places, of } of sketch.features) {
    const pattern = (what: 'count' | 'first' | 'pitch'): number => printed.read({ of: 'pattern', feature: id, what });
    const count = places === 'single' ? 1 : pattern('count');
    if (count !== of.length) throw new Error(`${id}: ${count} are printed, ${of.length} are there`);
    const pitch = places === 'single' ? 0 : places === 'round' ? 360 / count : pattern('pitch');
    if (places === 'round' && Math.abs(pattern('pitch') - pitch) > 5.1e-4) throw new Error(`${id}: a wrong pitch`);
    const first = places === 'single' ? 0 : pattern('first');
    of.forEach((index, copy) => {
      const place = (point: Point): Point => inPart(turned(point, first + copy * pitch));
      const hole = (what: 'x' | 'y' | 'diameter' | 'depth' | 'countersink'): Fact => ({
        of: 'hole',
        feature: id,
        what,
      });
      if (kind === 'ring')
        rings.set(
          index,
          ringOf(sketch.rings[of[0]!]!, of[0]!, printed).map((vertex) => ({ ...vertex, ...place(vertex) })),
        );
      else if (kind === 'line')
        lines.set(
          index,
          linePoints(id, printed).map((vertex) => ({ ...vertex, ...place(vertex) })),
        );
      else
        holes.set(index, {
          at: place({ x: printed.read(hole('x')), y: printed.read(hole('y')) }),
          diameter: printed.read(hole('diameter')),
          depth: printed.has(hole('depth')) ? printed.read(hole('depth')) : 'through',
          countersink: printed.has(hole('countersink')) ? printed.read(hole('countersink')) : undefined,
        });
    });
  }
  const edgeHoles = new Map(
    sketch.edgeHoles.map((hole) => {
      const read = (what: 'x' | 'y' | 'direction' | 'diameter' | 'length' | 'height'): number =>
        printed.read({ of: 'edge-hole', hole, what });
      return [
        hole,
        {
          at: inPart({ x: read('x'), y: read('y') }),
          directionDeg: read('direction') - sketch.turnDeg,
          diameter: read('diameter'),
          length: read('length'),
          height: read('height'),
        },
      ] as const;
    }),
  );
  const pins = new Map(
    sketch.pins.map((line) => {
      const read = (axis: 'x' | 'y'): number => printed.read({ of: 'pin', line, axis });
      return [line, inPart({ x: read('x'), y: read('y') })] as const;
    }),
  );
  const scribed = new Map(
    sketch.scribed.map(({ line, ring, shape }) => [
      line,
      ringOf(shape, ring, printed).map((vertex) => ({ ...vertex, ...inPart(vertex) })),
    ]),
  );
  return { rings, holes, lines, edgeHoles, pins, scribed };
}
