/** Numbers as the book prints them, in the design's unit. */
import {
  formatArea,
  formatFraction,
  formatLength,
  formatMass,
  formatRun,
  inInches,
  type LengthUnit,
  proseIn,
} from '../../units/index.js';
import { markup, type Markup } from '../markup.js';

export interface Measures {
  readonly unit: LengthUnit;
  /** A length with its unit, to a tenth of a millimetre or a sixty-fourth of an inch. */
  readonly length: (mm: number) => string;
  readonly metric: boolean;
  /** A length for a table whose head names the unit: `17-23/32`. */
  readonly bare: (mm: number) => string;
  /** A length that need not be kept closely: whole inches. */
  readonly about: (mm: number) => string;
  /** A length that a script or a test can read in mm, with what is printed. */
  readonly dim: (name: string, mm: number) => Markup;
  /** A long run, such as a bead of glue: metres or feet. */
  readonly run: (mm: number) => string;
  /** An area given in mm²: square metres or square feet. */
  readonly area: (mm2: number) => string;
  readonly weight: (kg: number) => string;
  /** A sentence that states metric values. */
  readonly words: (text: string) => string;
}

export function measuresIn(unit: LengthUnit): Measures {
  const length = (mm: number) => formatLength(mm, unit);
  const inches = inInches(unit);
  return {
    unit,
    length,
    metric: !inches,
    bare: (mm) => (inches ? formatFraction(mm, 32).replace('"', '') : length(mm).replace(/ \S+$/, '')),
    about: (mm) => length(inches ? 25.4 * Math.round(mm / 25.4) : mm),
    dim: (name, mm) => markup`<span data-dim="${name}" data-mm="${mm.toFixed(4)}">${length(mm)}</span>`,
    run: (mm) => formatRun(mm, unit),
    area: (mm2) => formatArea(mm2, unit),
    weight: (kg) => formatMass(kg, unit),
    words: (text) => proseIn(text, unit),
  };
}
