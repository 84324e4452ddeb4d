/** The block beside a rib: x along the rib, y away from it, the rib against y = 0. */
import { contourFromPoints, element, rectangle } from '../geometry/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { blank, lineMark, type Part, textMark, throughHole } from '../part/index.js';
import { inUnits, thicknessOf } from './blank.js';

/** Wood left between a screw and the next hole or the end of the cleat, mm: common practice, no source. */
const woodBetween = 2;

/** Where the screws of a cleat sit, as lengths along it from its inner end. */
export interface CleatScrews {
  /** Sideways into the rib. */
  readonly rib: readonly number[];
  /** Down into the board, on the middle of the width. */
  readonly down: readonly number[];
}

/**
 * Screws at even steps along the cleat, both kinds taking turns. A second cleat on the other side of the rib is the
 * same block turned half round, so its rib screws come from the far end: the pattern keeps the two apart in
 * the rib.
 */
export function cleatScrews(design: Design): CleatScrews {
  const { length, ribScrews, downScrews, perRib } = design.cleat;
  const slots = ribScrews + downScrews;
  const pitch = length / slots;
  const sideways = (slot: number): boolean =>
    Math.floor(((slot + 1) * ribScrews) / slots) > Math.floor((slot * ribScrews) / slots);
  const all = Array.from({ length: slots }, (_, slot) => slot);
  const meet = perRib === 2 && all.some((slot) => sideways(slot) && sideways(slots - 1 - slot));
  const at = (slot: number): number => pitch * (slot + (sideways(slot) && meet ? 0.75 : 0.5));
  return {
    rib: all.filter(sideways).map(at),
    down: all.filter((slot) => !sideways(slot)).map(at),
  };
}

/** Whether the screws have wood round them. */
export function cleatProblems(design: Design): Diagnostic[] {
  const { length, width, screwDiameter, headDiameter, material, ribScrews, downScrews } = design.cleat;
  const show = (mm: number) => inUnits(design, mm);
  const problems: Diagnostic[] = [];
  const { rib, down } = cleatScrews(design);
  const sorted = [
    ...rib.map((x) => ({ x, head: screwDiameter })),
    ...down.map((x) => ({ x, head: headDiameter })),
  ].sort((a, b) => a.x - b.x);
  // every place scales with the length, so the greatest shortfall gives the length that would do
  const shortfalls = sorted.map(({ x, head }, i) => {
    const next = sorted[i + 1];
    const ahead = next
      ? ((head + next.head) / 2 + woodBetween) / (next.x - x)
      : (head / 2 + woodBetween) / (length - x);
    return i === 0 ? Math.max(ahead, (head / 2 + woodBetween) / x) : ahead;
  });
  const minLength = length * Math.max(...shortfalls);
  if (minLength > length + 1e-6)
    problems.push(
      diagnostic(
        'cleat-crowded',
        ['cleat', 'length'],
        `cleat.length of ${show(length)} is too short for ${rib.length} screws into the rib and ${down.length} into the board`,
        `use ${show(Math.ceil(minLength))} or more, or fewer screws`,
      ),
    );
  if (downScrews > 0 && width < headDiameter + 2 * woodBetween)
    problems.push(
      diagnostic(
        'cleat-crowded',
        ['cleat', 'width'],
        `cleat.width of ${show(width)} leaves no wood around a screw head of ${show(headDiameter)}`,
        `use ${show(headDiameter + 2 * woodBetween)} or more`,
      ),
    );
  const thickness = thicknessOf(design, material);
  if (downScrews > 0 && headDiameter < screwDiameter)
    problems.push(
      diagnostic(
        'screw-head',
        ['cleat', 'headDiameter'],
        `cleat.headDiameter of ${show(headDiameter)} is smaller than cleat.screwDiameter (${show(screwDiameter)})`,
        `use more than ${show(screwDiameter)}; the head of a wood screw is about twice its diameter`,
      ),
    );
  if (ribScrews > 0 && thickness < screwDiameter + 2 * woodBetween)
    problems.push(
      diagnostic(
        'cleat-thin',
        ['cleat', 'material'],
        `cleats of ${show(thickness)} split when a screw of ${show(screwDiameter)} goes into their edge`,
        `use a material of ${show(screwDiameter + 2 * woodBetween)} or more, thinner screws, or cleat.ribScrews: 0 and glue`,
        'warning',
      ),
    );
  return problems;
}

/** The cleat; `count` of them are needed. */
export function makeCleat(design: Design, count: number): Part {
  const { length, width, material, screwDiameter, headDiameter } = design.cleat;
  const thickness = thicknessOf(design, material);
  const { rib, down } = cleatScrews(design);
  const guides = rib.map((x) =>
    lineMark(
      contourFromPoints([
        { x, y: 0 },
        { x, y: width },
      ]),
    ),
  );
  const letters = Math.min(5, width / 5);
  const notes = [
    `The edge marked RIB goes against the rib, flush with its base${down.length > 0 && headDiameter > screwDiameter ? '; the countersinks face up' : ''}.`,
    ...(rib.length > 0
      ? [
          `Drill ${inUnits(design, screwDiameter)} right across the width on each scribed line, ${inUnits(design, thickness / 2)} above the bottom face.`,
          'Screw the cleat to its rib at the bench: on the board, among its neighbours, there is little room for a driver.',
        ]
      : ['Glue the cleat to its rib at the bench, and clamp it until the glue is hard.']),
  ];
  return blank({
    id: 'cleat',
    kind: 'cleat',
    name: 'Cleat',
    material,
    thickness,
    quantity: count,
    outline: rectangle(0, 0, length, width),
    holes: down.map((x) => ({
      ...throughHole({ x, y: width / 2 }, screwDiameter),
      ...(headDiameter > screwDiameter ? { countersink: headDiameter } : {}),
    })),
    marks: [...guides, textMark('RIB', { x: clearOf(rib, length, letters), y: letters / 2 }, letters)],
    edges: [{ ring: 0, from: 0, to: 0, role: 'seat' }],
    edgeHoles: rib.map((x) => ({
      x,
      y: width,
      direction: -Math.PI / 2,
      diameter: screwDiameter,
      length: width,
      height: thickness / 2,
    })),
    notes,
  });
}

/** Where the lettering starts: right of a guide line, in the widest bay between them. */
function clearOf(guides: readonly number[], length: number, letters: number): number {
  const stops = [0, ...guides, length];
  const bays = stops.slice(1).map((to, i) => ({ from: element(stops, i), space: to - element(stops, i) }));
  const widest = bays.reduce((best, bay) => (bay.space > best.space ? bay : best));
  return widest.from + letters / 2;
}
