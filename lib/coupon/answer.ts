/** The calibrated values that a filled-in file of readings comes to, as `machine.calibration` has them. */
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import type { Readings } from './measured-file.js';
import { contradiction, type Estimate, readingUncertainty, solve, type Solved } from './solve.js';

/** Readings that differ from the others by more (mm) contradict them: wood and callipers scatter by less. */
const agree = 0.15;
/** Diagonals may differ from what the sides make of them by this, mm: corners wear. */
const agreeDiagonal = 0.4;
/** Between the last slot that refuses the tab and the first that takes it, mm. */
const playStep = 0.05;

/** What is written under `calibration.axes`. */
export interface AxesAnswer {
  readonly cutBy: 'router' | 'laser';
  readonly date: string;
  readonly scaleX: number;
  readonly scaleY: number;
  readonly scaleUncertaintyMmPerM: number;
  readonly squarenessMmPerM: number;
  readonly squarenessUncertaintyMmPerM: number;
}

/** What is written under `calibration.materials`; lengths in mm. */
export type MaterialAnswer = Readonly<Record<string, number | string>>;

export interface Answer {
  readonly material: string;
  readonly axes: AxesAnswer;
  readonly values: MaterialAnswer;
  readonly solved: Solved;
  readonly fit: Estimate | null;
  /** Whether the tabs did; of a router. */
  readonly tabs: Readings['tabs'];
  /** What the check line of a print measures, mm. */
  readonly print: Readings['print'];
}

export type Answered =
  | { readonly kind: 'answer'; readonly answer: Answer }
  | { readonly kind: 'refused'; readonly problems: readonly Diagnostic[] };

const round = (value: number, digits: number): number => Number(value.toFixed(digits));
const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

/** Callipers that were not at zero, or an axis the wrong way round, show in the diagonals. */
function diagonalProblem({ measured }: Readings): Diagnostic[] {
  const value = (id: string): number | undefined => measured.find(({ reading }) => reading.id === id)?.value;
  const side = (axis: 'x' | 'y'): number =>
    mean(
      measured.flatMap(({ reading, value: read }) =>
        reading.id.startsWith(`bar-${axis}`) && Number.isFinite(read) ? [read] : [],
      ),
    );
  const [rising, falling] = [value('diagonal-A-C'), value('diagonal-B-D')];
  if (rising === undefined || falling === undefined) return [];
  // the parallelogram law: the squares of the diagonals are those of all four sides
  const expected = Math.sqrt(side('x') ** 2 + side('y') ** 2);
  const found = Math.sqrt((rising ** 2 + falling ** 2) / 2);
  if (!(Math.abs(found - expected) > agreeDiagonal)) return [];
  return [
    diagnostic(
      'reading-contradiction',
      ['readings', 'diagonal-A-C'],
      `the diagonals of ${round(rising, 2)} and ${round(falling, 2)} mm do not match sides of ${round(side('x'), 2)} and ${round(side('y'), 2)} mm, which give ${round(expected, 2)} mm`,
      'measure both diagonals and the bars again, with callipers that read zero when closed',
    ),
  ];
}

function lacking(names: readonly string[]): Diagnostic {
  return diagnostic(
    'reading-missing',
    ['readings'],
    `nothing can be worked out without ${names.join(' and ')}`,
    'take these readings: bars along both axes, both diagonals, and at least one reading with the inside jaws',
  );
}

/** What too few readings leave open. */
function gaps({ measured }: Readings): string[] {
  const has = (test: (id: string) => boolean): boolean => measured.some(({ reading }) => test(reading.id));
  return [
    ...(has((id) => id.startsWith('bar-x')) ? [] : ['a bar along X']),
    ...(has((id) => id.startsWith('bar-y')) ? [] : ['a bar along Y']),
    ...(has((id) => id === 'diagonal-A-C') && has((id) => id === 'diagonal-B-D') ? [] : ['both diagonals']),
    ...(measured.some(({ reading }) => reading.measure.kind === 'inside') ? [] : ['a reading with the inside jaws']),
  ];
}

/** The play of the slot into which the tab went, as it came out. */
function fitOf({ coupon: { cut }, fit, thickness, step }: Readings, { width, scaleX }: Solved): Estimate | null {
  if (fit === null) return null;
  const sent = cut.thickness + fit - cut.width;
  const slot = (scaleX.value / cut.axes.scaleX) * sent + width.value;
  const uThickness = readingUncertainty(step) / Math.sqrt(thickness.length);
  // the play lies anywhere within the step to the slot before: a rectangular distribution (GUM 4.3.7)
  const uStep = playStep / 2 / Math.sqrt(3);
  return { value: slot - Math.min(...thickness), uncertainty: Math.hypot(uStep, width.uncertainty, uThickness) };
}

function valuesOf(readings: Readings, solved: Solved, fit: Estimate | null): MaterialAnswer {
  const { cut } = readings.coupon;
  const pair = (name: string, estimate: Estimate | null): Record<string, number> =>
    estimate === null
      ? {}
      : { [name]: round(estimate.value, 3), [`${name}Uncertainty`]: round(Math.max(0.001, estimate.uncertainty), 3) };
  const { drilled } = solved;
  return {
    cutBy: cut.cutBy,
    date: readings.date,
    thickness: round(mean(readings.thickness), 2),
    ...pair('width', solved.width),
    ...(cut.toolDiameter === undefined ? {} : { toolDiameter: cut.toolDiameter }),
    ...pair('bore', solved.bore),
    ...(drilled === null ? {} : { drilled: round(drilled.value, 3) }),
    ...pair('fit', fit),
    ...pair('depth', solved.depth),
  };
}

/** Works out what the readings come to, or says which of them contradict each other. */
export function answerOf(readings: Readings): Answered {
  const missing = gaps(readings);
  if (missing.length > 0) return { kind: 'refused', problems: [lacking(missing)] };
  const { coupon, measured, step } = readings;
  const stray = contradiction(coupon, measured, agree);
  const problems = [
    ...(stray === null
      ? []
      : [
          diagnostic(
            'reading-contradiction',
            ['readings', stray.id],
            `${stray.id} of ${round(measured.find(({ reading }) => reading.id === stray.id)?.value ?? NaN, 3)} mm contradicts the other readings, which give ${round(stray.expected, 2)} mm`,
            'measure it again, or write none if the edge there is damaged',
          ),
        ]),
    ...diagonalProblem(readings),
  ];
  if (problems.length > 0) return { kind: 'refused', problems };
  const solved = solve(coupon, measured, step);
  const fit = fitOf(readings, solved);
  const { scaleX, scaleY, lean } = solved;
  return {
    kind: 'answer',
    answer: {
      material: coupon.cut.material,
      axes: {
        cutBy: coupon.cut.cutBy,
        date: readings.date,
        scaleX: round(scaleX.value, 5),
        scaleY: round(scaleY.value, 5),
        scaleUncertaintyMmPerM: round(Math.max(scaleX.uncertainty, scaleY.uncertainty) * 1000, 3),
        squarenessMmPerM: round(lean.value * 1000, 3),
        squarenessUncertaintyMmPerM: round(lean.uncertainty * 1000, 3),
      },
      values: valuesOf(readings, solved, fit),
      solved,
      fit,
      tabs: readings.tabs,
      print: readings.print,
    },
  };
}
