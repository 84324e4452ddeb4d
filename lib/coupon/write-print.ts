/** The printer's correction put into the text of a design file: `print.measured` alone is written, all else stays. */
import { withKey, type Written } from '../key-file/index.js';
import { printedRange } from '../units/index.js';

/**
 * What the printer makes of 100 mm, by a print that was drawn for an earlier measurement.
 * @param line what its check line measures, mm
 * @param drawnFor the `print.measured` by which it was drawn
 */
export function printerScale(line: number, drawnFor: number): number {
  return Number(((line * drawnFor) / 100).toFixed(3));
}

/**
 * The text with the measurement in it.
 * @param text of a design file
 * @param measured what the printer makes of 100 mm
 */
export function withPrint(text: string, measured: number): Written {
  const value = `${measured} mm`;
  // twice a little is more than the design takes
  if (measured < printedRange.min || measured > printedRange.max)
    return {
      kind: 'refused',
      message: `with the present print.measured, the printer would print 100 mm as ${value}`,
      remedy: 'remove print.measured, print again at 100 % ("actual size") and measure its line',
    };
  return withKey(text, ['print', 'measured'], { source: value });
}
