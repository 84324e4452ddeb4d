/**
 * A bench: a machine with errors of its own cuts the drawings of a coupon, and callipers measure what comes out. It takes
 * the lines from the DXF files alone, and shares no formula with what works out the answer.
 */
import { readDxfLines } from '../../lib/check/dxf-reader.js';
import { pointAlong } from '../../lib/check/edge.js';
import type { Job } from '../../lib/pipeline/types.js';
import type { Reading } from '../../lib/coupon/index.js';

/** What the machine does wrong. */
export interface Machine {
  readonly scaleX: number;
  readonly scaleY: number;
  readonly lean: number;
  /** What the cut really takes away, and what holes and depths come out wider and deeper. */
  readonly width: number;
  readonly bore: number;
  readonly drilled: number;
  readonly depth: number;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

type Segment = readonly [Place, Place];

const distance = ({ x, y }: Place, [a, b]: Segment): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - a.x - t * dx, y - a.y - t * dy);
};

/** Where two endless lines meet. */
function crossing([a, b]: Segment, [c, d]: Segment): Place {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  const t = ((c.x - a.x) * vy - (c.y - a.y) * vx) / (ux * vy - uy * vx);
  return { x: a.x + t * ux, y: a.y + t * uy };
}

/** A line moved towards a place. */
function movedTo([a, b]: Segment, by: number, inside: Place): Segment {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [nx, ny] = [-(b.y - a.y) / length, (b.x - a.x) / length];
  const side = Math.sign((inside.x - a.x) * nx + (inside.y - a.y) * ny);
  const shift = ({ x, y }: Place): Place => ({ x: x + side * by * nx, y: y + side * by * ny });
  return [shift(a), shift(b)];
}

/** The lines of the files as short straight pieces, read once. */
const drawings = new WeakMap<
  Job,
  readonly { readonly placed: Job['sheets'][number]['nested']['placed']; readonly lines: readonly Segment[] }[]
>();

function drawn(job: Job) {
  const read =
    drawings.get(job) ??
    job.sheets.map(({ file, nested }) => {
      const { sheet } = readDxfLines(job.files.get(`${file}.dxf`) as string);
      const lines = sheet.entities.flatMap((entity): Segment[] => {
        if (entity.kind !== 'path' || entity.layer === 'scribe' || entity.layer === 'sheet-edge') return [];
        return entity.line.edges.flatMap((edge): Segment[] => {
          const steps = edge.sweep === 0 ? 1 : 48;
          return Array.from({ length: steps }, (_, i) => [
            pointAlong(edge, i / steps),
            pointAlong(edge, (i + 1) / steps),
          ]);
        });
      });
      return { placed: nested.placed, lines };
    });
  drawings.set(job, read);
  return read;
}

/** The callipers on what a machine makes of a coupon: the exact reading for each of its readings. */
export function bench(job: Job, machine: Machine): (reading: Reading) => number {
  const made = ({ x, y }: Place): Place => ({ x: machine.scaleX * x + machine.lean * y, y: machine.scaleY * y });
  const sheets = drawn(job).map(({ placed, lines }) => ({
    placed,
    segments: lines.map(([a, b]): Segment => [made(a), made(b)]),
  }));
  const callipers = ({ part, measure, nominal, from, to }: Reading): number => {
    const { placed, segments: all } = sheets.find((one) => one.placed.some((at) => at.part === part))!;
    const at = placed.find((one) => one.part === part)!;
    // where the callipers are held: on the part as it came out, by eye
    const on = ({ x, y }: Place): Place => made({ x: at.x + x, y: at.y + y });
    const [a, b] = [on(from), on(to)];
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    const radius = machine.width / 2;
    const segments = all.filter((one) => distance(middle, one) < nominal / 2 + 8);
    if (measure.kind === 'drilled') return nominal + machine.drilled;
    if (measure.kind === 'depth') return nominal + machine.depth;
    const long = (segment: Segment): boolean =>
      Math.hypot(segment[1].x - segment[0].x, segment[1].y - segment[0].y) > 20;
    if (measure.kind === 'diagonal') {
      const sides = segments.filter((one) => long(one) && distance(middle, one) < 70 && distance(middle, one) > 45);
      const upright = (one: Segment) => Math.abs(one[1].y - one[0].y) > Math.abs(one[1].x - one[0].x);
      const edge = (corner: Place, up: boolean): Segment => {
        const [near] = sides
          .filter((one) => upright(one) === up)
          .sort((one, other) => distance(corner, one) - distance(corner, other));
        return movedTo(near!, radius, middle);
      };
      const [p, q] = [a, b].map((corner) => crossing(edge(corner, true), edge(corner, false)));
      return Math.hypot(p!.x - q!.x, p!.y - q!.y);
    }
    const [ux, uy] = [(b.x - a.x) / nominal, (b.y - a.y) / nominal];
    // from the middle of the dimension outwards: over wood to where it was cut, or through the gap to where wood begins
    const reach = (sense: number): number => {
      const place = (t: number): Place => ({ x: middle.x + sense * t * ux, y: middle.y + sense * t * uy });
      const cut = (t: number): boolean => segments.some((one) => distance(place(t), one) < radius);
      // from within the wood until the cut is met: outwards over a part, inwards into a gap
      const step = measure.kind === 'outside' ? 0.02 : -0.02;
      let wood = nominal / 2 - 60 * step;
      while (!cut(wood + step)) wood += step;
      let air = wood + step;
      while (Math.abs(air - wood) > 1e-7) {
        const t = (wood + air) / 2;
        if (cut(t)) air = t;
        else wood = t;
      }
      return wood;
    };
    const across = (reach(1) + reach(-1)) * Math.hypot(ux, uy);
    return across;
  };
  return (reading) => {
    const { measure, from, to } = reading;
    if (measure.kind !== 'bored') return callipers(reading);
    // in two directions: take the mean
    const centre = { x: (from.x + to.x) / 2, y: from.y };
    const radius = reading.nominal / 2;
    const upright = { from: { x: centre.x, y: centre.y - radius }, to: { x: centre.x, y: centre.y + radius } };
    return (callipers(reading) + callipers({ ...reading, ...upright })) / 2 + machine.bore;
  };
}

/** The width of the slot of a play, as it came out. */
export function slotWidth(job: Job, machine: Machine, material: string, index: number): number {
  const slots = job.parts.find(({ id }) => id === `${material}-slots`)!;
  const ring = slots.openings[index]!;
  const xs = ring.map(({ x }) => x);
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  const middle = ring.reduce((sum, { y }) => sum + y, 0) / ring.length;
  return bench(
    job,
    machine,
  )({
    id: 'slot',
    part: slots.id,
    measure: { kind: 'inside', axis: 'x' },
    nominal: high - low,
    from: { x: low, y: middle },
    to: { x: high, y: middle },
    words: '',
  });
}

/** The file of readings filled in with a machine's values, read off callipers of a step. */
export function filledIn(
  template: string,
  values: ReadonlyMap<string, number>,
  head: { readonly step: number; readonly thickness: readonly number[]; readonly fit?: number | string },
): string {
  const rounded = (value: number): string => (Math.round(value / head.step) * head.step).toFixed(3);
  return template
    .split('\n')
    .map((line) => {
      const [, space = '', key = ''] = /^( *)([\w.-]+):/.exec(line) ?? [];
      const value = values.get(key);
      if (value !== undefined && space === '  ') return `  ${key}: ${rounded(value)}`;
      if (key === 'units') return 'units: mm';
      if (key === 'date') return 'date: 2026-05-31';
      if (key === 'step') return `step: ${head.step}`;
      if (key === 'thickness' && space === '') return `thickness: [${head.thickness.map(rounded).join(', ')}]`;
      if (key === 'fit') return `fit: ${head.fit ?? 'none'}`;
      if (key === 'tabs') return 'tabs: held';
      if (key === 'print') return 'print: none';
      return line;
    })
    .join('\n');
}
