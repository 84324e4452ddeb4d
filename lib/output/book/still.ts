/**
 * The dish drawn as a still picture: parallel projection, hidden parts by the painter's method. Seen from above the
 * slope of the rim, panels hide all that is below them, so board, frame, panels and mirror are painted in this order
 * and each from far to near.
 */
import { element } from '../../geometry/index.js';
import { markup, type Markup, px } from '../markup.js';
import {
  type BentSection,
  type SolidFace,
  facesOf,
  type SolidInstance,
  type Model,
  placed,
  type Role,
  type Solid,
  type Vec3,
} from './solids.js';

/** Whether a copy of a solid is drawn, and whether it is what the picture is about. */
export type Look = 'hidden' | 'there' | 'new';

export interface View {
  /** Direction from which the dish is seen, and height above the level, radians. */
  readonly azimuth: number;
  readonly elevation: number;
  /** 0 together to 1 fully exploded. */
  readonly spread: number;
  readonly look: (solid: Solid, index: number) => Look;
  /** What the picture shows, for those who do not see it. */
  readonly label: string;
}

const pictureWidth = 640;
/** Steps from the darkest to the lightest tone of a colour. */
const shades = 7;
const light: Vec3 = [0.35, -0.45, 0.82];

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

interface Camera {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toward: Vec3;
}

function camera({ azimuth: a, elevation: e }: View): Camera {
  const [ca, sa, ce, se] = [Math.cos(a), Math.sin(a), Math.cos(e), Math.sin(e)];
  return { right: [-sa, ca, 0], up: [-ca * se, -sa * se, ce], toward: [ca * ce, sa * ce, se] };
}

/** Newell's normal of a ring, length 1. */
function normal(ring: readonly Vec3[]): Vec3 {
  let [x, y, z] = [0, 0, 0];
  for (let i = 0; i < ring.length; i += 1) {
    const a = element(ring, i);
    const b = element(ring, (i + 1) % ring.length);
    x += (a[1] - b[1]) * (a[2] + b[2]);
    y += (a[2] - b[2]) * (a[0] + b[0]);
    z += (a[0] - b[0]) * (a[1] + b[1]);
  }
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}

const layer: Readonly<Record<Role, number>> = {
  board: 0,
  hub: 1,
  cleat: 1,
  rib: 1,
  panel: 2,
  mirror: 3,
  vessel: 4,
  stand: 5,
  ray: 6,
};

interface Drawn {
  readonly role: Role;
  readonly parts: readonly string[];
  readonly look: Look;
  /** How near the copy stands, in the level. */
  readonly near: number;
  readonly lift: number;
  /** The outline of a bent sheet, whose faces are drawn without lines between them. */
  readonly edge: readonly Vec3[] | null;
  readonly scribes: readonly (readonly [Vec3, Vec3])[];
  readonly faces: readonly { readonly face: SolidFace; readonly shade: number; readonly depth: number }[];
}

function middle(points: readonly Vec3[]): Vec3 {
  const sum = points.reduce<Vec3>((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]], [0, 0, 0]);
  return [sum[0] / points.length, sum[1] / points.length, sum[2] / points.length];
}

function scribesOf({ shape, scribes = [] }: Solid): (readonly [Vec3, Vec3])[] {
  if (shape.kind !== 'plate') return [];
  const top = shape.thickness;
  return scribes.map(
    ([[x1, y1], [x2, y2]]) =>
      [
        [x1, y1, top],
        [x2, y2, top],
      ] as const,
  );
}

function topRing(sections: readonly BentSection[]): Vec3[] {
  const side = (sign: 1 | -1) => sections.map(({ top, halfWidth }): Vec3 => [top[0], sign * halfWidth, top[1]]);
  return [...side(-1), ...side(1).reverse()];
}

function drawn(
  solid: Solid,
  faces: readonly SolidFace[],
  at: SolidInstance,
  look: Look,
  eye: Camera,
  spread: number,
): Drawn {
  const move = (ring: readonly Vec3[]) => ring.map((point) => placed(point, at, spread));
  const visible = faces.flatMap((face) => {
    const ring = move(face.ring);
    const n = normal(ring);
    if (dot(n, eye.toward) <= 1e-6) return [];
    const shade = Math.round((shades - 1) * (0.5 + dot(n, light) / 2));
    return [{ face: { ring, holes: face.holes.map(move) }, shade, depth: dot(middle(ring), eye.toward) }];
  });
  const centre = middle(faces.flatMap((face) => move(face.ring)));
  return {
    role: solid.role,
    parts: solid.parts,
    look,
    near: dot([centre[0], centre[1], 0], eye.toward),
    lift: at.frame.origin[2],
    edge: solid.shape.kind === 'bent' ? move(topRing(solid.shape.sections)) : null,
    scribes: scribesOf(solid).map(([from, to]) => [placed(from, at, spread), placed(to, at, spread)] as const),
    faces: visible.sort((a, b) => a.depth - b.depth),
  };
}

interface Frame {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

function frameOf(copies: readonly Drawn[], eye: Camera): Frame {
  const frame = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { faces } of copies)
    for (const { face } of faces)
      for (const point of face.ring) {
        const [x, y] = [dot(point, eye.right), -dot(point, eye.up)];
        frame.minX = Math.min(frame.minX, x);
        frame.maxX = Math.max(frame.maxX, x);
        frame.minY = Math.min(frame.minY, y);
        frame.maxY = Math.max(frame.maxY, y);
      }
  return frame;
}

/** Order of two copies by how near they stand; those on one line of sight as good as alike. */
const nearer = (a: Drawn, b: Drawn): number => (Math.abs(a.near - b.near) < 1e-6 ? 0 : a.near - b.near);

/** Every copy that is not hidden, from back to front. */
function inOrder(model: Model, view: View, eye: Camera): Drawn[] {
  const copies = model.solids.flatMap((solid) => {
    const faces = facesOf(solid.shape);
    return solid.instances.flatMap((at, index) => {
      const look = view.look(solid, index);
      return look === 'hidden' ? [] : [drawn(solid, faces, at, look, eye, view.spread)];
    });
  });
  // of the stand, what is nearer than the dish covers it, and the dish covers the rest
  const layerOf = ({ role, near }: Drawn): number => (role === 'stand' && near < 0.3 * model.reach ? -1 : layer[role]);
  return copies.sort((a, b) => layerOf(a) - layerOf(b) || nearer(a, b) || a.lift - b.lift);
}

/** The picture. Colours come from the page's style: a class for the role, a class for the shade. */
export function still(model: Model, view: View): Markup {
  const eye = camera(view);
  const copies = inOrder(model, view, eye);
  const frame = frameOf(copies, eye);
  const scale = (pictureWidth - 20) / (frame.maxX - frame.minX);
  const height = (frame.maxY - frame.minY) * scale + 20;
  const point = (p: Vec3): string =>
    `${px((dot(p, eye.right) - frame.minX) * scale + 10)} ${px((-dot(p, eye.up) - frame.minY) * scale + 10)}`;
  const path = ({ ring, holes }: SolidFace): string =>
    [ring, ...holes].map((r) => `M${r.map(point).join('L')}Z`).join('');
  const groups = copies.map(({ role, parts, look, faces, edge, scribes }) => {
    const filled = faces.map(({ face, shade }) => markup`<path class="s${shade}" d="${path(face)}"/>`);
    const line = edge && markup`<path class="e" d="${path({ ring: edge, holes: [] })}"/>`;
    const marks =
      scribes.length > 0
        ? markup`<path class="scribe" d="${scribes.map(([from, to]) => `M${point(from)}L${point(to)}`).join('')}"/>`
        : null;
    return markup`<g class="k-${role}${look === 'new' ? ' new' : ''}" data-part="${parts.join(' ')}">${filled}${line}${marks}</g>`;
  });
  // where nothing is new, nothing steps back
  const style = copies.some(({ look }) => look === 'new') ? 'dish stepped' : 'dish';
  return markup`<svg class="${style}" viewBox="0 0 ${pictureWidth} ${px(height)}" role="img" aria-label="${view.label}">${groups}</svg>`;
}

/** Everything shown, nothing set apart. */
export const all = (): Look => 'there';

/** Height of the eye from which no near panel shows its back: a little over the rim's slope. */
export function safeElevation(rimSlope: number): number {
  return Math.max((36 * Math.PI) / 180, Math.min(rimSlope + (7 * Math.PI) / 180, (80 * Math.PI) / 180));
}
