/** Coupons: a test sheet for each material that a machine cuts, cut by the same files and proven by the same proof. */
import { couponOf, readingsTemplate, type Coupon, type CouponCut } from '../coupon/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { bounds, placeVertices } from '../geometry/index.js';
import { cutWidth, type Process } from '../machining/index.js';
import { writeCouponSheet } from '../output/coupon-sheet.js';
import { checkLineOf, formatLength, type LengthUnit } from '../units/index.js';
import { nestRequests, type NestRequest } from './nesting-request.js';
import type { JobSheet, Prepared } from './types.js';

/** A coupon with the process that cuts it. */
export interface PlannedCoupon {
  readonly coupon: Coupon;
  readonly process: Process;
}

/** At most so many drill bits get a hole. */
const maxDrills = 5;
/** An offcut at hand costs this share of a sheet of its area: it is taken where the coupon fits. */
const offcutShare = 0.001;

function cutOf(
  process: Exclude<Process, { readonly kind: 'hand' }>,
  material: string,
  thickness: number,
  units: LengthUnit,
): CouponCut {
  const { axes = { scaleX: 1, scaleY: 1, lean: 0 }, bore = 0 } = process;
  const router = process.kind === 'router';
  return {
    material,
    cutBy: process.kind,
    ...(router ? { toolDiameter: process.toolDiameter } : {}),
    width: cutWidth(process),
    bore,
    thickness,
    drills: router ? [...(process.drills ?? [])].sort((a, b) => a - b).slice(0, maxDrills) : [],
    axes,
    printLine: checkLineOf(units).length,
  };
}

/**
 * The coupons of a design: one for each material that parts of the dish are made of and a machine cuts.
 * @param prepared the design's own parts and requests
 * @param only names of materials; all when empty
 */
export function plannedCoupons({ design, requests }: Prepared, only: readonly string[]): PlannedCoupon[] {
  return requests.flatMap(({ process, parts }) => {
    if (process.kind === 'hand') return [];
    const materials = [...new Set(parts.map(({ group }) => group))];
    return materials
      .filter((material) => only.length === 0 || only.includes(material))
      .map((material) => {
        const thickness = design.materials[material]?.thickness ?? 0;
        return { coupon: couponOf(cutOf(process, material, thickness, design.units)), process };
      });
  });
}

/** Stock priced so that the smallest piece is taken on which the coupon fits, an offcut before a sheet. */
function bySize({ stock, ...request }: NestRequest): NestRequest {
  const areaOf = (shape: NestRequest['stock'][number]['shape']): number => {
    if (shape.kind === 'sheet') return shape.width * shape.height;
    if (shape.kind === 'roll') return shape.height;
    const xs = shape.outline.map(({ x }) => x);
    const ys = shape.outline.map(({ y }) => y);
    return offcutShare * (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
  };
  return { ...request, stock: stock.map((item) => ({ ...item, price: areaOf(item.shape) })) };
}

/** The design with the parts of its coupons in place of its own. */
export function preparedCoupons(prepared: Prepared, coupons: readonly PlannedCoupon[]): Prepared {
  const { design } = prepared;
  const parts = coupons.flatMap(({ coupon }) => coupon.parts);
  return {
    ...prepared,
    parts,
    aids: [],
    splices: [],
    stand: null,
    assembly: { placed: [], fasteners: [] },
    requests: nestRequests(design, parts).map(bySize),
    problems: coupons.flatMap(({ coupon }) => leftOut(coupon)),
  };
}

/** What a coupon of this material cannot show. */
function leftOut({ cut, fits }: Coupon): Diagnostic[] {
  if (fits.length > 0) return [];
  return [
    diagnostic(
      'coupon-left-out',
      ['materials', cut.material, 'thickness'],
      `the coupon of ${cut.material} has no slots: a cut of ${Number(cut.width.toFixed(2))} mm cannot make any for a sheet of ${Number(cut.thickness.toFixed(2))} mm`,
      'to measure its fit, use a bit thinner than the sheet',
      'warning',
    ),
  ];
}

const readingsFile = (material: string): string => `measured-${material}.yaml`;

/** How far from the lower left corner of their sheet the parts of a coupon reach, with the cut round them. */
function reachOf(
  { parts }: Coupon,
  sheets: readonly JobSheet[],
  width: number,
): { readonly x: number; readonly y: number } {
  const boxes = sheets.flatMap(({ nested }) =>
    nested.placed.flatMap((at) =>
      parts.filter(({ id }) => id === at.part).map(({ outline }) => bounds(placeVertices(outline, at))),
    ),
  );
  const past = (side: number): number => Math.ceil(side + width);
  return { x: past(Math.max(...boxes.map(({ maxX }) => maxX))), y: past(Math.max(...boxes.map(({ maxY }) => maxY))) };
}

/** The measuring sheets and the files to fill in. */
export function couponFiles(
  design: Design,
  coupons: readonly PlannedCoupon[],
  sheets: readonly JobSheet[],
  designFile: string,
): [string, string][] {
  return coupons.flatMap(({ coupon, process }): [string, string][] => {
    const { material } = coupon.cut;
    const { description = material } = design.materials[material] ?? {};
    const length = (mm: number) => formatLength(mm, design.units, 3);
    const machine =
      process.kind === 'router'
        ? `Router, bit of ${length(process.toolDiameter)}, assumed to cut ${length(coupon.cut.width)} wide.`
        : `Laser, assumed to cut ${length(coupon.cut.width)} wide.`;
    const file = readingsFile(material);
    const reach = reachOf(coupon, sheets, cutWidth(process));
    const page = writeCouponSheet({
      title: design.name,
      material: description,
      machine,
      file,
      command: `dishwright coupon ${designFile} --measured ${file}`,
      parts: coupon.parts,
      readings: coupon.readings,
      fits: coupon.fits,
      router: process.kind === 'router',
      notes: [
        `The parts lie within ${length(reach.x)} by ${length(reach.y)} of the lower left corner of the sheet: a piece of that size is enough.`,
        ...leftOut(coupon).map(({ message, remedy }) => `${message}; ${remedy ?? ''}.`),
      ],
    });
    return [
      [`measuring-${material}.html`, page],
      [file, readingsTemplate(coupon, design.name)],
    ];
  });
}
