/** What the page shows of a state of the design, quickest first: shape, key values, what is bought, light. */
import {
  type Design,
  type Diagnostic,
  formatLength,
  formatMass,
  forecastOf,
  type Forecast,
  hasError,
  keyValues,
  type Layout,
  type LengthUnit,
  litOf,
  prepare,
  quickNest,
  rowIn,
  standValues,
  stockProblems,
  summaryRows,
  type Totals,
  totalsOf,
  valueIn,
} from '../../lib/index.js';
import type { Outline, Value } from './shown.js';

export type Look =
  | { readonly stage: 'outline'; readonly outline: Outline }
  | { readonly stage: 'built'; readonly values: readonly Value[]; readonly problems: readonly Diagnostic[] }
  /** `layouts` of that quick nest, one a request. */
  | { readonly stage: 'bought'; readonly values: readonly Value[]; readonly layouts: readonly Layout[] }
  | { readonly stage: 'light'; readonly values: readonly Value[] };

/** Rays of a light that is shown at once: its power scatters by a per cent or two. */
const quickRays = 1000;
const points = 32;

/** The dish in section: all that is known within a blink. */
export function outlineOf(design: Design): Outline {
  const { dish } = litOf(design);
  const { profile, apertureRadius, innerRadius, baseHeight, layout } = dish;
  const { vessel, board } = design;
  return {
    profile: Array.from({ length: points + 1 }, (_, i) => {
      const radius = (apertureRadius * i) / points;
      return [radius, profile.height(radius)] as const;
    }),
    ribs: layout.ribs.length,
    innerRadius,
    boardRadius: board.size / 2,
    baseHeight,
    focus: profile.focusHeight,
    vessel: vessel ? { diameter: vessel.diameter, height: vessel.height, offset: vessel.offset } : null,
  };
}

const hasPrices = ({ stock }: Design): boolean => stock.some(({ price }) => price > 0);

function boughtValues(totals: Totals, design: Design): Value[] {
  const group = 'stock' as const;
  const unit: LengthUnit = design.units;
  const size = (mm: number): string => formatLength(mm, unit);
  const lines = totals.bought.map(({ id, material, roll, count, width, height, cost }): Value => ({
    group,
    label: `${roll ? 'roll' : 'sheets'} of ${material}${id.startsWith(material) ? '' : ` (${id})`}`,
    value: roll ? size(width) : String(count),
    note: `${roll ? `${size(height)} wide` : `${size(width)} x ${size(height)}`}${cost === null ? ', no price' : `, ${cost.toFixed(2)}`}`,
  }));
  const unpriced = totals.unpriced.length === 0 ? undefined : `without ${totals.unpriced.join(', ')}`;
  return [
    ...lines,
    {
      group,
      label: 'cost',
      value: totals.cost === null || !hasPrices(design) ? 'no prices' : totals.cost.toFixed(2),
      ...(unpriced === undefined ? {} : { note: unpriced }),
    },
    { group, label: 'weight to carry home', value: formatMass(totals.boughtKg, unit) },
    { group, label: 'weight of the parts', value: formatMass(totals.partsKg, unit) },
    { group, label: 'waste', value: `${Math.round(100 * totals.waste)} %`, note: 'from a nest without a search' },
  ];
}

/** What the nest of the book comes to, which a search has made; what a change costs is told by quick nests. */
export function nestedValues({ cost, waste }: Totals, design: Design): Value[] {
  const group = 'nested' as const;
  const note = 'from the nest in the book';
  return [
    ...(cost === null || !hasPrices(design) ? [] : [{ group, label: 'cost as nested', value: cost.toFixed(2), note }]),
    { group, label: 'waste as nested', value: `${Math.round(100 * waste)} %`, note },
  ];
}

/** The head of the forecast; the book has the rest of it, by the hour and by the month. */
export function lightValues(forecast: Forecast, unit: LengthUnit): Value[] {
  const rows = summaryRows(forecast).map((row) => rowIn(row, unit));
  const rest = rows.findIndex(({ label }) => /^(?:sun \d|at \d|costs:|gains:|lost:)/.test(label));
  return rows.slice(0, rest < 0 ? rows.length : rest).map(({ label, value, error, note }) => ({
    group: 'light',
    label,
    value: `${value}${error === '' ? '' : ` ${error}`}`,
    ...(note === undefined ? {} : { note }),
  }));
}

/**
 * Works a design out in steps.
 * @param extras texts of its `extra` files
 * @param report given each step as soon as it is known
 * @param wanted asked between steps: whether anybody still waits
 */
export async function lookAt(
  design: Design,
  extras: ReadonlyMap<string, string>,
  report: (look: Look) => void,
  wanted: () => Promise<boolean>,
): Promise<void> {
  report({ stage: 'outline', outline: outlineOf(design) });
  if (!(await wanted())) return;
  const prepared = prepare(design, extras);
  const problems = [...prepared.problems, ...stockProblems(prepared)];
  const values = [
    ...keyValues(design, prepared.dish, prepared.parts, prepared.cleatStart, prepared.assembly),
    ...standValues(prepared).map((value) => valueIn(value, design.units)),
  ].map((value): Value => ({ group: 'dish', ...value }));
  report({ stage: 'built', values, problems });
  if (hasError(problems) || !(await wanted())) return;
  const layouts = quickNest(prepared);
  if (layouts.every(({ unplaced }) => unplaced.length === 0))
    report({ stage: 'bought', values: boughtValues(totalsOf(prepared, layouts), design), layouts });
  if (!(await wanted())) return;
  const { forecast } = forecastOf(prepared, quickRays);
  if (forecast) report({ stage: 'light', values: lightValues(forecast, design.units) });
}
