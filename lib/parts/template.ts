/** The rib template for copying by hand with a trimming router, true to the path of the router. */
import {
  bounds,
  contourFromPoints,
  edgesOfPath,
  element,
  nearestOnContour,
  offsetRegion,
  type Point,
  pointOnEdge,
  sideOfContour,
  strokeTextWidth,
  tangentOnEdge,
} from '../geometry/index.js';
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { blank, type LineMark, lineMark, type Part, textMark } from '../part/index.js';
import { inUnits, thicknessOf } from './blank.js';
import { crossings } from './crossing.js';
import { fitToBed } from './joint.js';
import { makeJigs } from './jig.js';
import { ribOutline } from './rib.js';

/** Length of the feed arrow and of its head (mm). */
const arrow = { length: 80, head: 10 };

/**
 * How far a template stands back from the finished edge: nothing under a bearing as large as its bit; half the
 * difference of bushing and bit with a guide bushing. A template that the router runs round is smaller by it, an opening
 * that it runs in is larger (common practice, no source).
 */
export function guideOffset(template: Design['template']): number {
  return template.guide === 'bushing' ? (template.bushingDiameter - template.bitDiameter) / 2 : 0;
}

/** An arrow from one place to another, as two scribed strokes. */
function arrowStrokes(from: Point, to: Point): LineMark[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const barb = (side: number): Point => ({
    x: to.x - arrow.head * (ux + 0.4 * side * uy),
    y: to.y - arrow.head * (uy - 0.4 * side * ux),
  });
  return [lineMark(contourFromPoints([from, to])), lineMark(contourFromPoints([barb(1), to, barb(-1)]))];
}

/** The template in one piece. */
function templateInOnePiece(design: Design, dish: Dish, rib: Part): Part {
  const { template } = design;
  const { outline: ribRing, edges, top } = ribOutline(design, dish);
  const offset = guideOffset(template);
  // the tail goes on along the curve's tangent, so that the router is guided before it meets the work
  const first = tangentOnEdge(element(edgesOfPath(top), 0), 0);
  const tailEnd = { x: -template.tail, y: element(top, 0).y - (template.tail * first.y) / first.x, bulge: 0 };
  // tabs and nose shape the inner end, and leave no straight end for a tail
  const tail = rib.seatCorners.length > 0 ? 0 : template.tail;
  const outline = tail > 0 ? [{ x: -template.tail, y: 0, bulge: 0 }, ...ribRing.slice(1), tailEnd] : ribRing;
  const [copied, ...openings] =
    offset === 0 ? [outline, ...rib.openings] : sorted(offsetRegion(outline, rib.openings, -offset));
  const ring = copied ?? outline;

  // the arrow runs along the curve against the bit's turning, which is anticlockwise round the template
  const middle = element(edgesOfPath(top), Math.floor((top.length - 1) / 2));
  const on = pointOnEdge(middle, 0.5);
  const along = tangentOnEdge(middle, 0.5);
  const at = (forth: number, down: number): Point => ({
    x: on.x + forth * along.x + down * along.y,
    y: on.y + forth * along.y - down * along.x,
  });
  const letters = Math.min(8, dish.innerEndHeight / 6);
  const under = offset + 1.5 * letters;
  const reach = Math.min(arrow.length, (dish.apertureRadius - dish.innerRadius) / 6) / 2;
  const arrows = arrowStrokes(at(reach, under), at(-reach, under));
  const feedAt = at(-strokeTextWidth('FEED', letters) / 2, under + 2 * letters);
  const across = crossings(ring, 0);
  const endLine = tail > 0 && across !== null ? [lineMark(contourFromPoints(across.map((end) => end.at)))] : [];
  // a hole needs wood round it, of which a guide bushing leaves less
  const registration = rib.holes.filter(
    ({ x, y, diameter }) =>
      sideOfContour(ring, { x, y }, 0) === 'inside' && nearestOnContour(ring, { x, y }).distance > diameter,
  );
  const title = `RIB TEMPLATE ${dish.layout.ribs.length}x`;
  const how =
    template.guide === 'bushing'
      ? `For a guide bushing of ${inUnits(design, template.bushingDiameter)} with a bit of ${inUnits(design, template.bitDiameter)}: the template is ${inUnits(design, offset)} smaller all around than the rib, and its openings larger by the same amount.`
      : 'For a flush-trimming bit with a bearing of its own size: the template is the rib itself.';
  return blank({
    id: 'template',
    kind: 'template',
    name: 'Rib template',
    material: template.material,
    thickness: thicknessOf(design, template.material),
    quantity: 1,
    outline: ring,
    openings,
    holes: registration,
    marks: [
      ...endLine,
      ...arrows,
      textMark(title, { x: letters, y: dish.innerEndHeight / 2 - letters / 2 }, letters),
      textMark('FEED', feedAt, letters, Math.atan2(along.y, along.x)),
    ],
    edges: offset === 0 ? edges.filter(({ role }) => role === 'optical') : [],
    fitDeviation: rib.fitDeviation,
    notes: [
      how,
      'Saw each rib blank about 2 mm outside the line first, with its inner end finished square.',
      rib.holes.length === 0
        ? 'Hold it with clamps and double-sided tape.'
        : registration.length > 0
          ? 'Pin or screw the template to the blank through the registration holes, which become the pilot holes for the screws from the cleat.'
          : 'The pilot holes for the cleats are too near the edge of this template: hold it with clamps and double-sided tape, and drill the pilots through the cleat.',
      ...(tail > 0 ? ['The scribed line is the inner end of the rib; clamp on the tail beyond it.'] : []),
      ...(rib.seatCorners.length > 0
        ? ['The bit leaves the inside corners at tabs and nose rounded: square them with a chisel.']
        : []),
      'Feed as the arrow shows, scribed face up: anticlockwise around the outside, clockwise around an opening. Feeding the other way is a climb cut, which snatches the router out of your hands. On a router table the work is face down and goes the other way round: always against the rotation of the bit.',
    ],
  });
}

/** The outer ring first. */
function sorted(rings: ReturnType<typeof offsetRegion>): ReturnType<typeof offsetRegion> {
  const size = (ring: (typeof rings)[number]): number => {
    const box = bounds(ring);
    return (box.maxX - box.minX) * (box.maxY - box.minY);
  };
  return [...rings].sort((a, b) => size(b) - size(a));
}

function ribOf(parts: readonly Part[]): Part {
  const rib = parts.find((part) => part.kind === 'rib');
  if (!rib) throw new RangeError('a template needs the rib among the parts');
  return rib;
}

/** What the template cannot be made or used with. */
export function templateProblems(design: Design, dish: Dish, parts: readonly Part[]): Diagnostic[] {
  const { template } = design;
  const show = (mm: number) => inUnits(design, mm);
  if (template.guide === 'bushing' && template.bushingDiameter <= template.bitDiameter)
    return [
      diagnostic(
        'guide-bushing',
        ['template', 'bushingDiameter'],
        `template.bushingDiameter of ${show(template.bushingDiameter)} is too small for a bit of ${show(template.bitDiameter)} (template.bitDiameter)`,
        'use a larger bushing or a smaller bit',
      ),
    ];
  const whole = templateInOnePiece(design, dish, ribOf(parts));
  if (template.bed === undefined || fitToBed(whole, template.bed, template.joint, 2) !== null) return [];
  const box = bounds(whole.outline);
  return [
    diagnostic(
      'bed-too-small',
      ['template', 'bed'],
      `template.bed of ${show(template.bed.width)} x ${show(template.bed.height)} does not hold half of the template, which is ${show(Math.ceil(box.maxX - box.minX))} x ${show(Math.ceil(box.maxY - box.minY))}`,
      `use a bed of about ${show(Math.ceil(0.55 * (box.maxX - box.minX)))} x ${show(Math.ceil(box.maxY - box.minY))} or more, a shorter template.tail, or remove template.bed`,
    ),
  ];
}

/**
 * The rib template (`template`, or `template-1` and `template-2` when it is larger than the bed), and the jigs for
 * drilling and setting out. Empty of the template when no two pieces fit the bed (see `templateProblems`).
 * @param parts the parts of the dish, with the rib among them
 */
export function makeTemplates(design: Design, dish: Dish, parts: readonly Part[]): Part[] {
  const { template } = design;
  if (template.guide === 'bushing' && guideOffset(template) <= 0) return [];
  const whole = templateInOnePiece(design, dish, ribOf(parts));
  return [...(fitToBed(whole, template.bed, template.joint, 2) ?? []), ...makeJigs(design, dish)];
}
