/** The pieces of a scene as they are seen: regions of one tone, and lines where nothing hides them. */
import { element, type Point, type Vec3, vecDot } from '../../geometry/index.js';
import type { Camera, Canvas, Seen } from './camera.js';
import { type Mesh, meshOf, normal } from './mesh.js';
import { chained, pathOf, simplified } from './path.js';
import { emptyRaster, layFace, NOTHING, type Raster, seenAt } from './raster.js';
import { regionPaths } from './regions.js';
import type { Body, Piece, SurfaceLine } from './scene.js';
import { placed } from './solids.js';

/** Steps from the darkest to the lightest tone of a colour. */
const shades = 7;
const light: Vec3 = [0.35, -0.45, 0.82];
/** Lines keep within this of the true one, units of the picture. */
const FINE = 0.6;
/** Shorter bits of a line are left out. */
const BIT = 2.5;

interface Drawn {
  readonly piece: Piece;
  readonly mesh: Mesh;
  readonly points: readonly Seen[];
  /** Number in the grid of each face; the first of the piece. */
  readonly first: number;
  /** For each face whether it looks at the eye, and its tone. */
  readonly front: readonly boolean[];
  readonly tones: readonly number[];
}

const meshes = new WeakMap<Body['shape'], Mesh>();

function meshFor(shape: Body['shape']): Mesh {
  const known = meshes.get(shape);
  if (known) return known;
  const made = meshOf(shape);
  meshes.set(shape, made);
  return made;
}

/** Where a piece has one of its points. */
export const inSpace = ({ frame, moved }: Piece, point: Vec3): Vec3 => placed(point, { frame, away: moved }, 1);

/** All corners of a piece in space. */
export const cornersOf = (piece: Piece): Vec3[] =>
  meshFor(piece.body.shape).points.map((point) => inSpace(piece, point));

function drawn(piece: Piece, first: number, eye: Camera, { project }: Canvas): Drawn {
  const mesh = meshFor(piece.body.shape);
  const corners = mesh.points.map((point) => inSpace(piece, point));
  const normals = mesh.faces.map(({ rings }) => normal(element(rings, 0).map((i) => element(corners, i))));
  // the light comes from the side from which the picture is seen
  const lamp: Vec3 = [light[0], light[1], eye.toward[2] < 0 ? -light[2] : light[2]];
  return {
    piece,
    mesh,
    points: corners.map(project),
    first,
    front: normals.map((n) => vecDot(n, eye.toward) > 1e-4),
    tones: normals.map((n) => Math.round((shades - 1) * (0.5 + vecDot(n, lamp) / 2))),
  };
}

/** What is seen of all pieces of one kind. */
export interface SeenGroup {
  readonly role: string;
  readonly parts: string;
  readonly look: 'there' | 'new';
  /** Tone and path data. */
  readonly regions: readonly (readonly [tone: number, data: string])[];
  readonly lines: string;
  readonly surface: readonly (readonly [kind: SurfaceLine['kind'], data: string])[];
}

export interface SeenScene {
  readonly groups: readonly SeenGroup[];
  readonly raster: Raster;
  /** Of each face in the grid. */
  readonly owners: readonly Piece[];
}

type Pieces = (readonly [Point, Point])[];

/** The bits of a straight line beside which one of some faces is seen. */
function visible(a: Seen, b: Seen, raster: Raster, own: (face: number) => boolean, into: Pieces): void {
  const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y)));
  const at = (t: number): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
  let start: number | null = null;
  for (let i = 0; i <= steps; i += 1) {
    const { x, y } = at(i / steps);
    const seen = seenAt(raster, x, y, own);
    if (seen && start === null) start = i;
    if ((!seen || i === steps) && start !== null) {
      const end = seen ? i : i - 1;
      if (end > start || steps === 1) into.push([at(start / steps), at(end / steps)]);
      start = null;
    }
  }
}

function edgeBits({ mesh, points, first, front }: Drawn, raster: Raster, into: Pieces): void {
  for (const { from, to, faces, smooth } of mesh.edges) {
    const [f, g] = faces;
    const [one, two] = [element(front, f), g !== null && element(front, g)];
    if (!one && !two) continue;
    if (one && two && smooth) continue;
    const own = (face: number): boolean => (one && face === first + f) || (two && g !== null && face === first + g);
    visible(element(points, from), element(points, to), raster, own, into);
  }
}

function lineData(bits: Pieces): string {
  return chained(bits)
    .map((run) => simplified(run, FINE))
    .filter((run) => run.some(({ x, y }) => Math.hypot(x - element(run, 0).x, y - element(run, 0).y) > BIT))
    .map((run) => pathOf(run, false))
    .join('');
}

/** A scribed line of a solid is one of its lines. */
function surfaceLines({ body, lines = [] }: Piece): SurfaceLine[] {
  const { shape, scribes = [] } = body;
  if (shape.kind !== 'plate') return [...lines];
  const top = shape.thickness;
  return [
    ...scribes.map(([[x1, y1], [x2, y2]]): SurfaceLine => ({
      kind: 'scribe',
      points: [
        [x1, y1, top],
        [x2, y2, top],
      ],
    })),
    ...lines,
  ];
}

function surfaceBits(one: Drawn, raster: Raster, canvas: Canvas, into: Map<SurfaceLine['kind'], Pieces>): void {
  const last = one.first + one.mesh.faces.length;
  const anyFace = (face: number): boolean => face >= one.first && face < last;
  // the front of a plate is its first face
  const front = (face: number): boolean => face === one.first;
  for (const { kind, points } of surfaceLines(one.piece)) {
    const own = kind === 'scribe' || kind === 'drill' ? front : anyFace;
    const bits = into.get(kind) ?? [];
    into.set(kind, bits);
    const seen = points.map((point) => canvas.project(inSpace(one.piece, point)));
    for (let i = 0; i + 1 < seen.length; i += 1) visible(element(seen, i), element(seen, i + 1), raster, own, bits);
  }
}

const groupName = ({ body, look }: Piece): string => `${body.role}|${look}|${body.parts.join(' ')}`;

/** What is seen of a scene's pieces. */
export function seenOf(pieces: readonly Piece[], eye: Camera, canvas: Canvas): SeenScene {
  const raster = emptyRaster(canvas.width, canvas.height);
  const all: Drawn[] = [];
  const names: string[] = [];
  const labels: number[] = [];
  const owners: Piece[] = [];
  let first = 0;
  for (const piece of pieces) {
    const one = drawn(piece, first, eye, canvas);
    all.push(one);
    let group = names.indexOf(groupName(piece));
    if (group < 0) group = names.push(groupName(piece)) - 1;
    one.mesh.faces.forEach(({ rings }, face) => {
      owners.push(piece);
      labels.push(group * shades + element(one.tones, face));
      if (!element(one.front, face)) return;
      layFace(
        raster,
        rings.map((ring) => ring.map((i) => element(one.points, i))),
        first + face,
      );
    });
    first += one.mesh.faces.length;
  }
  const toned = raster.faces.map((face) => (face === NOTHING ? NOTHING : (labels[face] ?? NOTHING)));
  const regions = regionPaths(toned, raster.width, raster.height);
  const groups = names.map((name, group): SeenGroup => {
    const mine = all.filter(({ piece }) => groupName(piece) === name);
    const surface = new Map<SurfaceLine['kind'], Pieces>();
    const data = mine.map((one) => {
      const bits: Pieces = [];
      edgeBits(one, raster, bits);
      surfaceBits(one, raster, canvas, surface);
      return lineData(bits);
    });
    const { body, look } = element(mine, 0).piece;
    return {
      role: body.role,
      parts: body.parts.join(' '),
      look,
      regions: Array.from(
        { length: shades },
        (_, tone) => [tone, regions.get(group * shades + tone) ?? ''] as const,
      ).filter(([, path]) => path !== ''),
      lines: data.join(''),
      surface: [...surface].map(([kind, bits]) => [kind, lineData(bits)] as const).filter(([, path]) => path !== ''),
    };
  });
  return { groups, raster, owners };
}
