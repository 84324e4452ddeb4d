/** Battens over the seams: strips of wood that hold two neighbouring panels and are fixed into the rib through the gap. */
import { contourFromPoints, rectangle } from '../geometry/index.js';
import { type BattenCurve, battenCurve, type Dish, ribTopHeight } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { pinDepth, pinFor, sizeSystemOf, type WoodScrew, woodScrew } from '../hardware/index.js';
import { blank, type EdgeHole, type Grain, lineMark, type Part, throughHole } from '../part/index.js';
import { stiffSheet } from './bending.js';
import { grainThatFits, inUnits, thicknessOf } from './blank.js';

/** From the batten's edge to the mirror beside it, square to the rib: common practice, no source. */
const besideBatten = 1;
/** What a batten bears on each panel at least, mm: common practice, no source. */
const minBearing = 4;
/** Clear space between the inner ends of two battens, mm. */
const betweenBattens = 2;
/** From a batten's end to its first screw or pin: mm, and in shanks (EN 1995-1-1 table 8.2, unloaded end; from memory). */
const fromEnd = 15;
const shanksFromEnd = 7;
/** Thread in the rib, in shanks: common practice, no source. */
const shanksDeep = 6;
/** Half the length of the mark across a pin's place. */
const halfMark = 2;
/** Share of the mirror that battens may take: common practice, no source. */
const spared = 0.25;

export const hasBattens = ({ panel }: Pick<Design, 'panel'>): boolean => panel.fixing === 'battens';

/** How far from a panel's edge its mirror ends beside the batten, square to the rib, mm; 0 without battens. */
export function besideBattens(design: Design): number {
  const { battenWidth, gap } = design.panel;
  return hasBattens(design) ? (battenWidth - gap) / 2 + besideBatten : 0;
}

/**
 * What a batten keeps from the sun beside a panel's edge, square to the rib, mm. Light that is reflected close beside it
 * runs inward in the plane of its bay, and so towards the rib, while it climbs the batten's height h over the mirror:
 * by 2·h·sin ψ·sin α, all lost at the rim's slope.
 */
export function battenShade(design: Design, dish: Dish): number {
  if (!hasBattens(design)) return 0;
  const height = Math.max(0, thicknessOf(design, design.panel.battenMaterial) - dish.reflectorThickness);
  const climbed = 2 * height * Math.sin(dish.rimSlopeAngle) * Math.sin(dish.layout.halfAngle);
  return (design.panel.battenWidth - design.panel.gap) / 2 + climbed;
}

/** Over a rib, from where neighbours clear each other to where the panels end. */
export function battenOver(design: Design, dish: Dish): BattenCurve {
  const { battenMaterial, battenWidth: width } = design.panel;
  const { halfAngle } = dish.layout;
  const clear = (width / 2) * Math.cos(halfAngle) + betweenBattens / 2;
  const start = Math.max(dish.innerRadius, clear / Math.sin(halfAngle));
  return battenCurve(dish, { width, thickness: thicknessOf(design, battenMaterial), start });
}

/** A place at which a batten is fixed into its rib. */
interface FixedAt {
  /** Length from the batten's inner end. */
  readonly x: number;
  /** Where its axis meets the rib's top: radius along the rib, height above the board, and the way it slopes. */
  readonly radius: number;
  readonly height: number;
  readonly slopeAngle: number;
  /** From the batten's underside to the rib, mm. */
  readonly reach: number;
}

function fixedAt(dish: Dish, curve: BattenCurve, x: number): FixedAt {
  const { u, z, slopeAngle } = curve.at(x);
  const [sin, cos] = [Math.sin(slopeAngle), Math.cos(slopeAngle)];
  // along the axis from the underside down to the rib's top, by halving
  let [low, high] = [0, 2 * dish.facingThickness + 20];
  for (let i = 0; i < 40; i++) {
    const reach = (low + high) / 2;
    if (z - reach * cos > ribTopHeight(dish, u + reach * sin)) low = reach;
    else high = reach;
  }
  return { x, radius: u + low * sin, height: dish.baseHeight + z - low * cos, slopeAngle, reach: low };
}

/** The places of a batten's screws or pins, from the inner end outward. */
function battenPlaces(design: Design, dish: Dish): FixedAt[] {
  const { battenScrew, fixingSpacing } = design.panel;
  const shank = battenScrew === undefined ? 0 : woodScrew(battenScrew).diameter;
  const end = Math.max(fromEnd, shanksFromEnd * shank);
  const curve = battenOver(design, dish);
  const between = curve.length - 2 * end;
  if (between <= 0) return [];
  const steps = Math.max(1, Math.ceil(between / fixingSpacing));
  return Array.from({ length: steps + 1 }, (_, i) => fixedAt(dish, curve, end + (between * i) / steps));
}

/** What holds the battens: a screw with the length that it should have, or a pin as it is sold. */
export type BattenFixing =
  | { readonly kind: 'wood-screw'; readonly screw: WoodScrew; readonly wanted: number }
  | { readonly kind: 'pin'; readonly size: string; readonly diameter: number; readonly length: number };

export function battenFixing(design: Design, dish: Dish): BattenFixing {
  const { battenMaterial, battenScrew } = design.panel;
  const reach = Math.max(0, ...battenPlaces(design, dish).map((place) => place.reach));
  const before = thicknessOf(design, battenMaterial) + reach;
  if (battenScrew === undefined) {
    const { pin, length } = pinFor(before, pinDepth, sizeSystemOf(design.units));
    return { kind: 'pin', size: pin.size, diameter: pin.diameter, length };
  }
  const screw = woodScrew(battenScrew);
  return { kind: 'wood-screw', screw, wanted: before + shanksDeep * screw.diameter };
}

/** Pilots of the battens' screws in a rib's top edge, in the rib's own axes. */
export function battenPilots(design: Design, dish: Dish): EdgeHole[] {
  if (!hasBattens(design)) return [];
  const fixing = battenFixing(design, dish);
  if (fixing.kind === 'pin') return [];
  const { pilot, diameter } = fixing.screw;
  return battenPlaces(design, dish).map(({ radius, height, slopeAngle }) => ({
    x: radius - dish.innerRadius,
    y: height,
    direction: slopeAngle - Math.PI / 2,
    diameter: pilot,
    length: shanksDeep * diameter,
    height: dish.ribThickness / 2,
  }));
}

/** How battens lie on their sheets: along the grain they are strongest. */
const grainOf = (design: Design, { length }: BattenCurve): Grain =>
  grainThatFits(design, design.panel.battenMaterial, 'along', length, design.panel.battenWidth);

/** What does not fit of the battens. */
export function battenProblems(design: Design, dish: Dish, taken: number): Diagnostic[] {
  if (!hasBattens(design)) return [];
  const { battenMaterial, battenScrew, battenWidth, gap } = design.panel;
  const show = (mm: number) => inUnits(design, Math.round(10 * mm) / 10);
  const problems: Diagnostic[] = [];
  if (battenWidth < gap + 2 * minBearing)
    problems.push(
      diagnostic(
        'batten-width',
        ['panel', 'battenWidth'],
        `battens of ${show(battenWidth)} overlap each panel by only ${show((battenWidth - gap) / 2)} with a panel.gap of ${show(gap)}`,
        `use ${show(gap + 2 * minBearing)} or more`,
      ),
    );
  if (taken > spared)
    problems.push(
      diagnostic(
        'batten-width',
        ['panel', 'battenWidth'],
        `battens of ${show(battenWidth)} cover ${Math.round(100 * taken)} % of the mirror`,
        `use ${show(Math.floor(10 * Math.max(gap + 2 * minBearing, (battenWidth * spared) / taken)) / 10)} at most, or fewer ribs`,
      ),
    );
  const curve = battenOver(design, dish);
  const fixing = battenFixing(design, dish);
  const shank = fixing.kind === 'pin' ? fixing.diameter : fixing.screw.diameter;
  if (shank > gap)
    problems.push(
      diagnostic(
        'batten-gap',
        ['panel', battenScrew === undefined ? 'gap' : 'battenScrew'],
        `${fixing.kind === 'pin' ? 'pins' : 'screws'} of ${show(shank)} do not fit through a panel.gap of ${show(gap)} and would pierce the panels' edges`,
        `use ${fixing.kind === 'pin' ? '' : 'a thinner panel.battenScrew, or '}a panel.gap of ${show(Math.ceil(10 * shank) / 10)} or more`,
      ),
    );
  const thickness = thicknessOf(design, battenMaterial);
  const stiff = stiffSheet(design, battenMaterial, thickness, curve.tightest, grainOf(design, curve));
  if (stiff !== null)
    problems.push(
      diagnostic(
        'batten-stiff',
        ['panel', 'battenMaterial'],
        stiff.message,
        `use battens of at most ${inUnits(design, stiff.thickest)} (panel.battenMaterial), or a longer focal length`,
        stiff.severity,
      ),
    );
  return problems;
}

/** The batten, one over every rib; none where the panels are held otherwise. */
export function makeBattens(design: Design, dish: Dish): Part[] {
  if (!hasBattens(design)) return [];
  const { battenMaterial, battenWidth: width } = design.panel;
  const curve = battenOver(design, dish);
  const thickness = thicknessOf(design, battenMaterial);
  const fixing = battenFixing(design, dish);
  const places = battenPlaces(design, dish);
  const screw = fixing.kind === 'wood-screw' ? fixing.screw : null;
  const sunk = screw !== null && (screw.headDiameter - screw.clearance) / 2 <= thickness - 1;
  return [
    blank({
      id: 'batten',
      kind: 'batten',
      name: 'Seam batten',
      material: battenMaterial,
      thickness,
      quantity: dish.layout.ribs.length,
      grain: grainOf(design, curve),
      outline: rectangle(0, -width / 2, curve.length, width / 2),
      holes:
        screw === null
          ? []
          : places.map(({ x }) => ({
              ...throughHole({ x, y: 0 }, screw.clearance),
              ...(sunk ? { countersink: screw.headDiameter } : {}),
            })),
      marks:
        screw === null
          ? places.map(({ x }) =>
              lineMark(
                contourFromPoints([
                  { x, y: -halfMark },
                  { x, y: halfMark },
                ]),
              ),
            )
          : [],
      notes: [
        `It lies over a seam, its middle on the middle of the rib, its outer end flush with the panels; the inner ends of two neighbours are ${inUnits(design, betweenBattens)} apart or more.`,
        screw === null
          ? 'A pin goes through the middle of each short mark, and through the gap between the panels into the rib.'
          : 'The screws go through the gap between the panels into pilot holes of the rib’s top edge, and pierce no panel.',
      ],
    }),
  ];
}

/** Where a batten is fixed, as lengths from its inner end: read off its holes, or the marks for its pins. */
export function battenFixedAt({ holes, marks }: Part): number[] {
  if (holes.length > 0) return holes.map(({ x }) => x);
  return marks.flatMap((mark) => (mark.kind === 'line' ? mark.vertices.slice(0, 1).map(({ x }) => x) : []));
}
