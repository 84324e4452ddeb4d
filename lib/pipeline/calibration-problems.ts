/**
 * What is left of a machine's error after its calibration, held against the joints. An error is taken at twice its
 * standard uncertainty, which covers it 95 times of 100 (JCGM 100:2008, GUM, 6.2 and G.6.6).
 */
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic, type KeyPath } from '../diagnostic/index.js';
import { isSameBit } from '../machining/index.js';
import { takesRibs } from '../parts/index.js';
import { formatLength } from '../units/index.js';
import type { Prepared } from './types.js';

/** Coverage factor. */
const coverage = 2;
/** A joint bears half of its play as error: the rest is for glue, paint and damp (common practice, no source). */
const playShare = 0.5;
/** Thickness of the coupon and of the sheet may differ by this share before the width of the cut does (from memory). */
const thicknessShare = 0.15;
/** A dowel is glued well with this much play at most, mm: from memory of makers' sheets of glue. */
const dowelPlay = 0.2;

type MaterialValues = NonNullable<Design['machine']['calibration']['materials'][string]>;

/** Materials that this machine cuts, with what was measured in them. */
function inUse({ design, requests }: Prepared): { readonly id: string; readonly values: MaterialValues }[] {
  const { materials } = design.machine.calibration;
  const used = new Set(
    requests.filter(({ process }) => process.kind !== 'hand').flatMap(({ parts }) => parts.map(({ group }) => group)),
  );
  return [...used].flatMap((id) => {
    const values = Object.hasOwn(materials, id) ? materials[id] : undefined;
    return values !== undefined && values.cutBy === design.materials[id]?.cut ? [{ id, values }] : [];
  });
}

/** Coupons of another bit or another thickness. */
function others(prepared: Prepared): Diagnostic[] {
  const { design } = prepared;
  const show = (mm: number): string => formatLength(mm, design.units, 3);
  return inUse(prepared).flatMap(({ id, values }): Diagnostic[] => {
    const path: KeyPath = ['machine', 'calibration', 'materials', id];
    const { toolDiameter, thickness } = values;
    const found: Diagnostic[] = [];
    if (
      values.cutBy === 'router' &&
      toolDiameter !== undefined &&
      !isSameBit(toolDiameter, design.process.toolDiameter)
    )
      found.push(
        diagnostic(
          'calibration-other',
          [...path, 'toolDiameter'],
          `the coupon in ${id} was cut with a bit of ${show(toolDiameter)}, and process.toolDiameter is ${show(design.process.toolDiameter)}: its measured width is not used`,
          'cut a coupon with this bit (`dishwright coupon`)',
          'warning',
        ),
      );
    const sheet = design.materials[id]?.thickness ?? thickness;
    if (Math.abs(sheet - thickness) > thicknessShare * thickness)
      found.push(
        diagnostic(
          'calibration-other',
          [...path, 'thickness'],
          `the coupon in ${id} was ${show(thickness)} thick, and the sheet is ${show(sheet)}: the width of the cut may differ`,
          'cut a coupon from this sheet (`dishwright coupon`)',
          'warning',
        ),
      );
    return found;
  });
}

/** What the error of the axes comes to over a length, from part to part. */
function overLength({ axes }: Design['machine']['calibration'], length: number): number {
  if (axes === undefined) return 0;
  const perM = Math.max(axes.scaleUncertaintyMmPerM, axes.squarenessUncertaintyMmPerM);
  // two parts, each with its own error
  return (coverage * Math.SQRT2 * perM * length) / 1000;
}

function jointProblem(
  path: KeyPath,
  what: string,
  left: number,
  borne: number,
  remedy: string,
  design: Design,
): Diagnostic[] {
  if (left <= borne) return [];
  const show = (mm: number): string => formatLength(mm, design.units, 3);
  return [
    diagnostic(
      'calibration-joint',
      path,
      `${what}: after calibration an error of up to ${show(left)} remains, but the joint only allows ${show(borne)}`,
      remedy,
      'warning',
    ),
  ];
}

/** Tabs or bases of ribs in slots or grooves of the board, ribs in those of the hub: width and place. */
function slotProblems(prepared: Prepared): Diagnostic[] {
  const { design, dish } = prepared;
  const tabs = design.rib.joint === 'tab-slot' || design.rib.joint === 'housing';
  if (!tabs && !takesRibs(design)) return [];
  const { calibration } = design.machine;
  const slotted = new Set([
    ...(tabs ? [design.board.material] : []),
    ...(takesRibs(design) ? [design.hub.material] : []),
  ]);
  const borne = playShare * design.rib.fit;
  const widths = inUse(prepared)
    .filter(({ id }) => slotted.has(id))
    .flatMap(({ id, values }) =>
      jointProblem(
        ['machine', 'calibration', 'materials', id, 'widthUncertainty'],
        `slots in ${id}`,
        coverage * values.widthUncertainty,
        borne,
        'cut another coupon and measure with finer callipers, or give rib.fit more play',
        design,
      ),
    );
  const reach = tabs ? Math.min(design.board.size / 2, dish.apertureRadius) : design.hub.radius;
  const far = jointProblem(
    ['machine', 'calibration', 'axes'],
    `tabs and slots up to ${formatLength(Math.round(reach), design.units)} off the axis`,
    overLength(calibration, reach),
    borne,
    'measure the bars of the coupon with finer callipers, or give rib.fit more play',
    design,
  );
  return [...widths, ...far];
}

/** The hub's dowels in drilled holes, and holes of the board that meet those of the cleats. */
function holeProblems(prepared: Prepared): Diagnostic[] {
  const { design } = prepared;
  const { hub } = design;
  if (hub.dowels === 0) return [];
  return inUse(prepared)
    .filter(({ id }) => id === hub.material)
    .flatMap(({ id, values: { drilled, boreUncertainty, bore } }): Diagnostic[] => {
      const path: KeyPath = ['machine', 'calibration', 'materials', id];
      const bits = [...design.process.drillBits, design.process.toolDiameter];
      const byBit = bits.some((bit) => isSameBit(bit, hub.dowelDiameter));
      const what = `dowels of ${formatLength(hub.dowelDiameter, design.units)} in the hub`;
      if (byBit && drilled !== undefined)
        return jointProblem(
          [...path, 'drilled'],
          what,
          Math.abs(drilled),
          dowelPlay,
          'use a drill bit that makes a more accurate hole',
          design,
        );
      if (byBit || bore === 0) return [];
      return jointProblem(
        [...path, 'boreUncertainty'],
        what,
        coverage * boreUncertainty,
        dowelPlay,
        'measure the bored holes of the coupon again',
        design,
      );
    });
}

/** Cuts that do not go through although they should. */
function depthProblems(prepared: Prepared): Diagnostic[] {
  const { design } = prepared;
  return inUse(prepared).flatMap(({ id, values: { depth, depthUncertainty, cutBy } }) =>
    cutBy !== 'router' || depth === undefined
      ? []
      : jointProblem(
          ['machine', 'calibration', 'materials', id, 'depth'],
          `cuts through ${id}`,
          coverage * depthUncertainty - depth,
          design.router.overcut,
          'set zero on the sheet more carefully, or use a larger router.overcut',
          design,
        ),
  );
}

/** What `check` has to say of the calibration of a prepared design. */
export function calibrationProblems(prepared: Prepared): Diagnostic[] {
  return [...others(prepared), ...slotProblems(prepared), ...holeProblems(prepared), ...depthProblems(prepared)];
}
