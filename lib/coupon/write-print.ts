/** The printer's correction put into the text of a design file: `print.measured` alone is written, all else stays. */
import { withKey, type Written } from '../key-file/index.js';
import { checkLineOf, type LengthUnit, lineText } from '../units/index.js';

/**
 * What the printer makes of the check line, by a print that was drawn for an earlier measurement, mm.
 * @param line what the check line of that print measures, mm
 * @param drawnFor the `print.measured` by which it was drawn; undefined where there was none
 * @param unit of the design
 */
export function printerScale(line: number, drawnFor: number | undefined, unit: LengthUnit): number {
  const { length } = checkLineOf(unit);
  return Number(((line * (drawnFor ?? length)) / length).toFixed(3));
}

/**
 * The text with the measurement in it.
 * @param text of a design file
 * @param measured what the printer makes of the check line, mm
 * @param unit of the design
 */
export function withPrint(text: string, measured: number, unit: LengthUnit): Written {
  const { name, min, max } = checkLineOf(unit);
  const value = lineText(measured, unit);
  // twice a little is more than the design takes
  if (measured < min || measured > max)
    return {
      kind: 'refused',
      message: `with the present print.measured, the printer would print ${name} as ${value}`,
      remedy: 'remove print.measured, print again at 100 % ("actual size") and measure its line',
    };
  return withKey(text, ['print', 'measured'], { source: value });
}
