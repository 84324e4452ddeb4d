/** Shapes and path data of SVG as runs of edges (SVG 1.1, second edition, chapters 8 and 9, appendix F.6). */
import { normalizePath, parsePathString } from 'svg-path-commander/util';
import { distance, element, type FittedPath, type Point, type Vertex } from '../../geometry/index.js';
import { type EllipticArc, followBezier, followEllipse } from './curves.js';
import { type DrawnRun, ExtraFault, limits, quoted } from './drawing.js';
import { type Matrix, movePoint, moveVector, readSvgLength, inPx } from './svg-transform.js';

/** A shape is put together of pieces, in its own axes. */
type Piece =
  | { readonly kind: 'line'; readonly to: Point }
  | { readonly kind: 'bezier'; readonly controls: readonly Point[]; readonly to: Point }
  | { readonly kind: 'arc'; readonly arc: EllipticArc; readonly to: Point };

interface Outline {
  readonly start: Point;
  readonly pieces: readonly Piece[];
  readonly closed: boolean;
}

export type Attributes = ReadonlyMap<string, string>;

const fullTurn = 2 * Math.PI;

/** A length of a shape in user units; a bare number is one. @throws ExtraFault */
function lengthOf(attributes: Attributes, name: string, otherwise: number | null): number {
  const text = attributes.get(name);
  if (text === undefined || text === 'auto') {
    if (otherwise === null) throw new ExtraFault('extra-broken', `it lacks ${name}`);
    return otherwise;
  }
  const length = readSvgLength(text);
  const value = length && (length.unit === '' ? length.value : inPx(length));
  if (value === null) throw new ExtraFault('extra-number', `its ${name} is ${quoted(text)}, which is not a length`);
  return value;
}

function positive(attributes: Attributes, name: string, otherwise: number | null): number {
  const value = lengthOf(attributes, name, otherwise);
  if (!(value > 0)) throw new ExtraFault('extra-no-size', `its ${name} is not above 0`);
  return value;
}

function ellipseOutline(centre: Point, rx: number, ry: number): Outline {
  const start = { x: centre.x + rx, y: centre.y };
  const arc = { centre, u: { x: rx, y: 0 }, v: { x: 0, y: ry }, from: 0, to: fullTurn };
  return { start, pieces: [{ kind: 'arc', arc, to: start }], closed: true };
}

function rectOutline(attributes: Attributes): Outline {
  const [x, y] = [lengthOf(attributes, 'x', 0), lengthOf(attributes, 'y', 0)];
  const [width, height] = [positive(attributes, 'width', null), positive(attributes, 'height', null)];
  // one radius stands for both, and neither is larger than half a side
  const [askedX, askedY] = [lengthOf(attributes, 'rx', -1), lengthOf(attributes, 'ry', -1)];
  const rx = Math.min(askedX >= 0 ? askedX : Math.max(0, askedY), width / 2);
  const ry = Math.min(askedY >= 0 ? askedY : Math.max(0, askedX), height / 2);
  const [right, bottom] = [x + width, y + height];
  const sharp = !(rx > 0 && ry > 0);
  const corner = (cx: number, cy: number, from: number, to: Point): Piece[] => {
    if (sharp) return [];
    const arc = { centre: { x: cx, y: cy }, u: { x: rx, y: 0 }, v: { x: 0, y: ry }, from, to: from + Math.PI / 2 };
    return [{ kind: 'arc', arc, to }];
  };
  const line = (toX: number, toY: number): Piece => ({ kind: 'line', to: { x: toX, y: toY } });
  const [ax, ay] = sharp ? [0, 0] : [rx, ry];
  const quarter = Math.PI / 2;
  const start = { x: x + ax, y };
  const pieces: Piece[] = [
    line(right - ax, y),
    ...corner(right - ax, y + ay, -quarter, { x: right, y: y + ay }),
    line(right, bottom - ay),
    ...corner(right - ax, bottom - ay, 0, { x: right - ax, y: bottom }),
    line(x + ax, bottom),
    ...corner(x + ax, bottom - ay, quarter, { x, y: bottom - ay }),
    line(x, y + ay),
    ...corner(x + ax, y + ay, 2 * quarter, start),
  ];
  return { start, pieces, closed: true };
}

function pointsOutline(attributes: Attributes, closed: boolean): Outline[] {
  const text = attributes.get('points') ?? '';
  const words = text.split(/[\s,]+|(?<=\d)(?=[-+])/).filter((word) => word !== '');
  const numbers = words.map((word) => {
    const length = readSvgLength(word);
    if (length?.unit !== '')
      throw new ExtraFault('extra-number', `its points contain ${quoted(word)}, which is not a number`);
    return length.value;
  });
  if (numbers.length % 2 !== 0) throw new ExtraFault('extra-number', 'its points are an odd count of numbers');
  const points = Array.from({ length: numbers.length / 2 }, (_, i) => ({
    x: element(numbers, 2 * i),
    y: element(numbers, 2 * i + 1),
  }));
  const [start, ...rest] = points;
  return start ? [{ start, pieces: rest.map((to) => ({ kind: 'line', to })), closed }] : [];
}

/** The arc between two points in the form with a centre (appendix F.6.5); null for one that is a straight line. */
function centredArc(from: Point, numbers: readonly number[], to: Point): EllipticArc | null {
  const [rawX = 0, rawY = 0, degrees = 0, large = 0, positiveSweep = 0] = numbers;
  let [rx, ry] = [Math.abs(rawX), Math.abs(rawY)];
  if (rx === 0 || ry === 0 || (from.x === to.x && from.y === to.y)) return null;
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
  // in the axes of the ellipse, as a unit circle
  const [px, py] = [(cos * half.x + sin * half.y) / rx, (-sin * half.x + cos * half.y) / ry];
  // radii too small to span the ends grow until they do
  const grown = Math.max(1, Math.hypot(px, py));
  [rx, ry] = [rx * grown, ry * grown];
  const [qx, qy] = [px / grown, py / grown];
  const share = Math.sqrt(Math.max(0, 1 / (qx * qx + qy * qy) - 1)) * (large === positiveSweep ? -1 : 1);
  const [cx, cy] = [share * qy, -share * qx];
  const start = Math.atan2(qy - cy, qx - cx);
  let sweep = Math.atan2(-qy - cy, -qx - cx) - start;
  if (positiveSweep === 1 && sweep < 0) sweep += fullTurn;
  if (positiveSweep !== 1 && sweep > 0) sweep -= fullTurn;
  const u = { x: rx * cos, y: rx * sin };
  const v = { x: -ry * sin, y: ry * cos };
  const centre = {
    x: (from.x + to.x) / 2 + cx * u.x + cy * v.x,
    y: (from.y + to.y) / 2 + cx * u.y + cy * v.y,
  };
  return { centre, u, v, from: start, to: start + sweep };
}

type Segment = readonly (string | number)[];

function segmentsOf(data: string): readonly Segment[] {
  if (data.trim() === '') return [];
  try {
    return normalizePath(parsePathString(data));
  } catch (error) {
    const reason = error instanceof Error ? error.message.replace(/^\w+: /, '') : String(error);
    throw new ExtraFault('extra-path-data', `its path data cannot be read: ${reason.slice(0, 120)}`);
  }
}

function pathOutlines(data: string): Outline[] {
  const outlines: { start: Point; pieces: Piece[]; closed: boolean }[] = [];
  let at: Point = { x: 0, y: 0 };
  for (const [command, ...values] of segmentsOf(data)) {
    const numbers = values.map(Number);
    if (numbers.some((value) => !Number.isFinite(value)))
      throw new ExtraFault('extra-number', 'its path data has a number that is too large');
    const to = { x: numbers.at(-2) ?? 0, y: numbers.at(-1) ?? 0 };
    const last = outlines.at(-1);
    if (command === 'M' || !last) outlines.push({ start: to, pieces: [], closed: false });
    else if (command === 'Z') last.closed = true;
    else if (command === 'L') last.pieces.push({ kind: 'line', to });
    else if (command === 'A') {
      const arc = centredArc(at, numbers, to);
      last.pieces.push(arc ? { kind: 'arc', arc, to } : { kind: 'line', to });
    } else {
      const controls = Array.from({ length: numbers.length / 2 - 1 }, (_, i) => ({
        x: element(numbers, 2 * i),
        y: element(numbers, 2 * i + 1),
      }));
      last.pieces.push({ kind: 'bezier', controls, to });
    }
    at = command === 'Z' && last ? last.start : to;
  }
  return outlines.filter(({ pieces }) => pieces.length > 0);
}

function outlinesOf(element: string, attributes: Attributes): Outline[] {
  switch (element) {
    case 'rect':
      return [rectOutline(attributes)];
    case 'circle': {
      const radius = positive(attributes, 'r', null);
      return [ellipseOutline({ x: lengthOf(attributes, 'cx', 0), y: lengthOf(attributes, 'cy', 0) }, radius, radius)];
    }
    case 'ellipse': {
      const centre = { x: lengthOf(attributes, 'cx', 0), y: lengthOf(attributes, 'cy', 0) };
      return [ellipseOutline(centre, positive(attributes, 'rx', null), positive(attributes, 'ry', null))];
    }
    case 'line': {
      const end = (n: 1 | 2) => ({ x: lengthOf(attributes, `x${n}`, 0), y: lengthOf(attributes, `y${n}`, 0) });
      return [{ start: end(1), pieces: [{ kind: 'line', to: end(2) }], closed: false }];
    }
    case 'polygon':
      return pointsOutline(attributes, true);
    case 'polyline':
      return pointsOutline(attributes, false);
    default:
      return pathOutlines(attributes.get('d') ?? '');
  }
}

function follow(piece: Piece, from: Point, matrix: Matrix, tolerance: number): FittedPath {
  const place = (point: Point): Point => movePoint(matrix, point);
  if (piece.kind === 'bezier') return followBezier([from, ...piece.controls, piece.to].map(place), tolerance);
  if (piece.kind === 'line') {
    const path = [from, piece.to].map((point) => ({ ...place(point), bulge: 0 }));
    return { path, deviation: 0 };
  }
  const { centre, u, v, from: start, to: end } = piece.arc;
  return followEllipse(
    { centre: place(centre), u: moveVector(matrix, u), v: moveVector(matrix, v), from: start, to: end },
    tolerance,
  );
}

/** Elements that are lines. */
export const shapeNames: ReadonlySet<string> = new Set([
  'path',
  'rect',
  'circle',
  'ellipse',
  'line',
  'polyline',
  'polygon',
]);

/** An outline as a run: its pieces followed one after another. */
function runOf({ start, pieces, closed }: Outline, matrix: Matrix, tolerance: number): DrawnRun {
  let from = start;
  let deviation = 0;
  const path: Vertex[] = [];
  for (const piece of pieces) {
    const fitted = follow(piece, from, matrix, tolerance);
    path.push(...fitted.path.slice(0, -1));
    deviation = Math.max(deviation, fitted.deviation);
    from = piece.to;
    if (path.length > limits.ringEdges)
      throw new ExtraFault(
        'extra-edges',
        `a line of it has more than ${limits.ringEdges} edges, the maximum that can be nested`,
        'simplify it',
      );
  }
  const end = movePoint(matrix, from);
  const first = path[0] ?? end;
  // Z draws the edge back to the start unless the pen stands there
  if (!closed || distance(first, end) > 1e-9) path.push({ ...end, bulge: 0 });
  return { path, deviation, closed };
}

/**
 * The runs of a shape, one after another, so that the reader can stop when they are too many.
 * @param matrix from the shape's axes to mm, y up
 * @throws ExtraFault for a shape that cannot be taken
 */
export function* shapeRuns(
  element: string,
  attributes: Attributes,
  matrix: Matrix,
  tolerance: number,
): Generator<DrawnRun> {
  for (const outline of outlinesOf(element, attributes)) yield runOf(outline, matrix, tolerance);
}
