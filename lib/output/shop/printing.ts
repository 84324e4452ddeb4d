/** Numbers as a drawing prints them: millimetres, or inches in fractions or in decimals, never mixed. */
import { formatFraction, formatLength, nearestDrill, nearestFraction } from '../../units/index.js';
import { decimal } from '../decimal.js';

export interface Printing {
  readonly unit: 'mm' | 'in';
  /** What the title block prints of it: `mm`, `in, to 1/64`. */
  readonly name: string;
  /** A length without its unit. */
  readonly length: (mm: number) => string;
  /** A thickness of sheet without its unit: films and sheet metal to their thousandths. */
  readonly thickness: (mm: number) => string;
  /** A diameter or depth that a drill makes. */
  readonly drill: (mm: number) => string;
  /** Degrees with their sign, from radians. */
  readonly angle: (radians: number) => string;
  /** Handy steps for heights along a curve, mm. */
  readonly steps: readonly number[];
}

const INCH = 25.4;
/** A drill is called by its fraction where it differs from it by less than this, mm. */
const DRILL = 0.02;

const angle = (radians: number): string => {
  const degrees = (radians * 180) / Math.PI;
  return `${decimal(Math.abs(degrees) < 5e-4 ? 0 : degrees, 3)}°`;
};

const bare = (fraction: string): string => fraction.replace('"', '');

/** Decimals of an inch. */
const inches = (mm: number): string => decimal(mm / INCH, 3);

/** Below this a length may be the width of a slot, in which a tenth is its play, mm. */
const SMALL = 10;

/** Films are thinner, mm. */
const THIN = 0.5;

/** Millimetres, to a tenth or, where a beam cuts thin sheets to fit, a hundredth. */
export function metric(decimals: 1 | 2): Printing {
  return {
    unit: 'mm',
    name: 'mm',
    length: (mm) => decimal(mm, Math.abs(mm) < SMALL ? 2 : decimals),
    thickness: (mm) => decimal(mm, mm < THIN ? 3 : 2),
    drill: (mm) => decimal(mm, 2),
    angle,
    steps: [2, 5, 10, 20, 50, 100, 200, 500],
  };
}

/** Inches, in fractions to 1/under or, where that is null, in decimals. */
export function imperial(under: number | null): Printing {
  const steps = [1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8, 16].map((step) => step * INCH);
  const thickness = (mm: number): string => formatLength(mm, 'in').replace(/ in$/, '');
  if (under === null) return { unit: 'in', name: 'in', length: inches, thickness: inches, drill: inches, angle, steps };
  const drill = (mm: number): string => {
    const fraction = Math.abs(nearestFraction(mm, 64).error);
    if (fraction < DRILL) return bare(formatFraction(mm, 64));
    const named = nearestDrill(mm / INCH);
    // as far off, a drill with a name is no better than the fraction
    return Math.abs(named.inches * INCH - mm) < Math.min(DRILL, fraction)
      ? `${decimal(named.inches, 4)} (${named.name})`
      : inches(mm);
  };
  return {
    unit: 'in',
    name: `in, to 1/${under}`,
    length: (mm) => bare(formatFraction(mm, under)),
    thickness,
    drill,
    angle,
    steps,
  };
}
