/**
 * What a machine's error is corrected by, held against the calibrated values of the design: the files of a sheet are
 * judged by the correction that the record states, so that has to be the one that was measured.
 */
import * as z from 'zod';
import type { ComparisonId } from './messages/index.js';

const number = z.number();

/** What of a design's calibration a correction follows from. */
export const calibrationRead = z.object({
  axes: z.object({ cutBy: z.string(), scaleX: number, scaleY: number, squarenessMmPerM: number }).optional(),
  materials: z.record(
    z.string(),
    z.object({ cutBy: z.string(), width: number, bore: number.optional(), toolDiameter: number.optional() }),
  ),
});

/** How a sheet is cut, by the record. */
export const processRead = z.object({
  kind: z.string(),
  toolDiameter: number.optional(),
  width: number.optional(),
  kerf: number.optional(),
  bore: number.optional(),
  axes: z.object({ scaleX: number, scaleY: number, lean: number }).optional(),
});

/** A bit this much off the one that cut the coupon is another, mm. */
const sameBit = 0.03;
const perMetre = (value: number): string => `${Number(value.toFixed(3))} mm per metre`;

type Report = (
  id: ComparisonId,
  recorded: number,
  byDesign: number,
  printing: { readonly of: string; readonly print?: (value: number) => string },
) => void;

type Sheet = z.infer<typeof processRead>;
type Calibration = z.infer<typeof calibrationRead> | undefined;

function checkWidths(sheet: Sheet, calibration: Calibration, material: string, of: string, report: Report): void {
  const { kind, toolDiameter } = sheet;
  const own = calibration?.materials[material];
  const sameTool =
    toolDiameter === undefined || Math.abs((own?.toolDiameter ?? toolDiameter) - toolDiameter) <= sameBit;
  const measured = own?.cutBy === kind && sameTool ? own : undefined;
  if (toolDiameter !== undefined)
    report('cut-width', sheet.width ?? toolDiameter, measured?.width ?? toolDiameter, { of });
  report('cut-bore', sheet.bore ?? 0, measured?.bore ?? 0, { of });
}

/** An axis that was not measured is taken as true. */
const trueAxes = { scaleX: 1, scaleY: 1, squarenessMmPerM: 0 };

function checkAxes({ kind, axes }: Sheet, calibration: Calibration, of: string, report: Report): void {
  const known = calibration?.axes?.cutBy === kind ? calibration.axes : trueAxes;
  const { scaleX, scaleY, lean } = axes ?? { scaleX: 1, scaleY: 1, lean: 0 };
  const print = perMetre;
  report('axis-x', 1000 * scaleX, 1000 * known.scaleX, { of, print });
  report('axis-y', 1000 * scaleY, 1000 * known.scaleY, { of, print });
  report('axis-lean', 1000 * lean, known.squarenessMmPerM, { of, print });
}

/** Reports where a sheet's correction is not what its design has measured of the machine in that material. */
export function checkCorrection(
  sheet: Sheet,
  calibration: Calibration,
  material: string,
  of: string,
  report: Report,
): void {
  if (sheet.kind === 'hand') return;
  checkWidths(sheet, calibration, material, of, report);
  checkAxes(sheet, calibration, of, report);
}
