/** A part held against what is made by its drawing. */
import { type Contour, edgesOf, nearestOnContour, pointOnEdge } from '../../lib/geometry/index.js';
import type { ShopDesign, ShopDrawing } from '../../lib/output/shop/index.js';
import { type Part, ringsOf } from '../../lib/part/index.js';
import { rebuilt } from './rebuilt.js';

/** What a printed length may be off: half its last place. */
const roundings = { mm: 0.05, fine: 0.005, in: 0.0005 * 25.4, fraction: 25.4 / 128 } as const;

/** Half the last place of the lengths that a design's drawings print, mm. */
export function roundingOf({ units, process }: ShopDesign): number {
  if (units !== 'in' && units !== 'ft') return process.kind === 'laser' ? roundings.fine : roundings.mm;
  return process.kind === 'hand' ? roundings.fraction : roundings.in;
}

/** What its drawings print lengths in. */
export const unitOf = ({ units }: ShopDesign): 'mm' | 'in' => (units === 'in' || units === 'ft' ? 'in' : 'mm');

/** Points all along a ring. */
function along(ring: Contour): { x: number; y: number }[] {
  return edgesOf(ring).flatMap((edge) =>
    Array.from({ length: edge.kind === 'arc' ? 8 : 2 }, (_, i) => pointOnEdge(edge, i / 8)),
  );
}

/** Greatest distance of two rings from each other, mm, either way. */
function apart(a: Contour, b: Contour): number {
  const off = (from: Contour, to: Contour) =>
    Math.max(...along(from).map((point) => nearestOnContour(to, point).distance));
  return Math.max(off(a, b), off(b, a));
}

interface Faults {
  readonly worst: number;
  readonly wrong: readonly string[];
}

/** Where a part and what is made by its drawing differ by more than the rounding explains. */
export function faultsOf(part: Part, drawing: ShopDrawing, design: ShopDesign): Faults {
  const half = roundingOf(design);
  // two roundings square to each other, and what a batten between two marks does to that
  const slack = 2 * half + 0.02;
  const made = rebuilt(drawing, unitOf(design));
  const wrong: string[] = [];
  let worst = 0;
  const hold = (what: string, off: number): void => {
    worst = Math.max(worst, off);
    if (!(off <= slack)) wrong.push(`${part.id}: ${what} is off by ${off.toFixed(3)} mm`);
  };
  ringsOf(part).forEach((ring, i) => {
    const points = made.rings.get(i);
    if (points === undefined || points.length < 2) wrong.push(`${part.id}: ring ${i} is not drawn`);
    else hold(`ring ${i}`, apart(ring, points));
  });
  part.holes.forEach((hole, i) => {
    const found = made.holes.get(i);
    if (found === undefined) wrong.push(`${part.id}: hole ${i} is not drawn`);
    else {
      hold(`hole ${i}`, Math.hypot(found.at.x - hole.x, found.at.y - hole.y));
      // a drill is called by its fraction where that is within 0.02 mm of it
      hold(`the drill of hole ${i}`, Math.abs(found.diameter - hole.diameter) > 0.021 ? Infinity : 0);
      if ((found.depth === 'through') !== (hole.depth === 'through')) wrong.push(`${part.id}: depth of hole ${i}`);
      if (Math.abs((found.countersink ?? 0) - (hole.countersink ?? 0)) > half + 1e-9)
        wrong.push(`${part.id}: head of hole ${i}`);
    }
  });
  const lines = part.marks.flatMap((mark) => (mark.kind === 'line' ? [mark] : []));
  for (const [i, points] of made.lines) {
    const { vertices, closed } = lines[i]!;
    const own = closed ? [vertices[0]!, vertices[2]!] : vertices;
    if (own.length !== points.length) wrong.push(`${part.id}: line ${i} has ${points.length} points`);
    own.forEach((vertex, k) => {
      const found = points[k] ?? { x: NaN, y: NaN, bulge: 0 };
      hold(`line ${i}`, Math.hypot(found.x - vertex.x, found.y - vertex.y));
      if (Math.abs(found.bulge - vertex.bulge) > 1e-3) wrong.push(`${part.id}: line ${i} bends otherwise`);
    });
  }
  part.edgeHoles.forEach((hole, i) => {
    const found = made.edgeHoles.get(i);
    if (found === undefined) {
      wrong.push(`${part.id}: edge hole ${i} is not drawn`);
      return;
    }
    hold(`edge hole ${i}`, Math.hypot(found.at.x - hole.x, found.at.y - hole.y));
    hold(`the depth of edge hole ${i}`, Math.abs(found.length - hole.length));
    hold(`the height of edge hole ${i}`, Math.abs(found.height - hole.height));
    if (Math.abs(found.diameter - hole.diameter) > 0.021) wrong.push(`${part.id}: the drill of edge hole ${i}`);
    // to a thousandth of a degree, either way round
    const turned = (found.directionDeg - (hole.direction * 180) / Math.PI) / 360;
    if (Math.abs(turned - Math.round(turned)) * 360 > 6e-4) wrong.push(`${part.id}: direction of edge hole ${i}`);
  });
  lines.forEach(({ vertices, closed }, i) => {
    const [pin, ring] = [made.pins.get(i), made.scribed.get(i)];
    // two strokes that meet at the end of a line are the head of an arrow, drawn as every arrow is
    const head = (tip: { x: number; y: number }) =>
      lines.some(
        (one) => one.vertices.length === 2 && Math.hypot(one.vertices[1]!.x - tip.x, one.vertices[1]!.y - tip.y) < 1e-3,
      );
    if (!closed && vertices.length === 3 && head(vertices[1]!)) return;
    if (ring !== undefined) hold(`scribed outline ${i}`, apart(vertices, ring));
    else if (pin !== undefined) {
      const [a, b] = [vertices[0]!, vertices[1]!];
      hold(`mark ${i}`, Math.hypot(pin.x - (a.x + b.x) / 2, pin.y - (a.y + b.y) / 2));
    } else if (!made.lines.has(i)) wrong.push(`${part.id}: line ${i} is not drawn`);
  });
  return { worst, wrong };
}
