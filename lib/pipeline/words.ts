/** What modules without units of their own state, in the units of the design. */
import type { Diagnostic } from '../diagnostic/index.js';
import type { KeyValue } from '../key-values.js';
import { type LengthUnit, proseIn } from '../units/index.js';

/** A problem in the units of the design. */
export const inWords = (problem: Diagnostic, units: LengthUnit): Diagnostic => ({
  ...problem,
  message: proseIn(problem.message, units),
  ...(problem.remedy === undefined ? {} : { remedy: proseIn(problem.remedy, units) }),
});

/** A value with its remark in the units of the design. */
export const valueIn = ({ label, value, note }: KeyValue, units: LengthUnit): KeyValue => ({
  label,
  value: proseIn(value, units),
  ...(note === undefined ? {} : { note: proseIn(note, units) }),
});
