/** Numbers as the book prints them, in the design's unit. */
import { formatLength, inInches, type LengthUnit } from '../../units/index.js';
import { markup, type Markup } from '../markup.js';

const bench: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 2, m: 4, in: 3, ft: 4 };

export interface Measures {
  readonly unit: LengthUnit;
  /** A length with its unit, to a tenth of a millimetre or a thousandth of an inch. */
  readonly length: (mm: number) => string;
  /** The same without the unit, always with all its decimals, for the columns of a table. */
  readonly bare: (mm: number) => string;
  /** A length that a script or a test can read in mm, with what is printed. */
  readonly dim: (name: string, mm: number) => Markup;
  /** A long run, such as a bead of glue: metres or feet. */
  readonly run: (mm: number) => string;
  /** An area given in mm²: square metres or square feet. */
  readonly area: (mm2: number) => string;
  readonly weight: (kg: number) => string;
}

const perMm = (unit: LengthUnit): number => ({ mm: 1, cm: 0.1, m: 0.001, in: 1 / 25.4, ft: 1 / 304.8 })[unit];

export function measuresIn(unit: LengthUnit): Measures {
  const length = (mm: number) => formatLength(mm, unit, bench[unit]);
  const inches = inInches(unit);
  return {
    unit,
    length,
    bare: (mm) => (Math.abs(mm) < 5e-5 ? 0 : mm * perMm(unit)).toFixed(bench[unit]),
    dim: (name, mm) => markup`<span data-dim="${name}" data-mm="${mm.toFixed(4)}">${length(mm)}</span>`,
    run: (mm) => (inches ? formatLength(mm, 'ft', 0) : formatLength(mm, 'm', 1)),
    area: (mm2) => (inches ? `${(mm2 / 304.8 ** 2).toFixed(1)} sq ft` : `${(mm2 / 1e6).toFixed(2)} m²`),
    // the avoirdupois pound is exactly 0.45359237 kg
    weight: (kg) => (inches ? `${(kg / 0.45359237).toFixed(1)} lb` : `${kg.toFixed(1)} kg`),
  };
}
