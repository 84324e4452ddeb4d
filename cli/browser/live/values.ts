/** The table of values: before, now, and the variants that are kept. */
import type { Value, Variant } from '../../watch/shown.js';
import { element, make, speak } from './dom.js';

const titles: Readonly<Record<Value['group'], string>> = {
  dish: 'Dish',
  stock: 'Sheets and cost, from a quick nest',
  nested: 'Sheets as nested in the book',
  light: 'Spot and power',
};
const order: readonly Value['group'][] = ['light', 'stock', 'nested', 'dish'];

/** What a builder decides by; the rest is shown on request. */
const decides: readonly (readonly [Value['group'], string])[] = [
  ['light', 'power absorbed'],
  ['light', 'hits the vessel'],
  ['light', 'radius of 90 % of the light'],
  ['light', 'time to target'],
  ['stock', 'cost'],
  ['nested', 'cost as nested'],
  ['stock', 'waste'],
  ['stock', 'weight to carry home'],
  ['dish', 'depth'],
  ['dish', 'rib height'],
];

const isSheets = ({ group, label }: Value): boolean => group === 'stock' && /^(?:sheets|roll) of /.test(label);

const valueOf = (values: readonly Value[], { group, label }: Value): string =>
  values.find((one) => one.group === group && one.label === label)?.value ?? '';

interface Columns {
  readonly now: readonly Value[];
  readonly before: readonly Value[];
  readonly variants: readonly Variant[];
}

function row(value: Value, { now, before, variants }: Columns): HTMLTableRowElement {
  const [was, is] = [valueOf(before, value), valueOf(now, value)];
  const changed = was !== '' && was !== is;
  const head = make('th', { scope: 'row' }, value.label);
  if (value.note !== undefined) head.append(make('small', {}, value.note));
  const cell = make('td', { class: changed ? 'changed' : undefined }, is);
  if (changed) cell.append(make('span', { class: 'unseen' }, ' changed'));
  const others = variants.map((variant) => {
    const text = valueOf(variant.values, value);
    return make('td', { class: text === is ? undefined : 'changed' }, text);
  });
  return make('tr', {}, head, ...(before.length === 0 ? [] : [make('td', {}, was)]), cell, ...others);
}

/** Every value once, in the order of the newest list. */
function labels(group: Value['group'], lists: readonly (readonly Value[])[]): Value[] {
  const seen = new Set<string>();
  return lists.flat().filter((value) => {
    if (value.group !== group || seen.has(value.label)) return false;
    seen.add(value.label);
    return true;
  });
}

export function showValues(columns: Columns, actions: (variant: Variant) => readonly Node[]): void {
  const { now, before, variants } = columns;
  const heads = variants.map((variant) => make('th', { scope: 'col' }, variant.name, ...actions(variant)));
  const head = make(
    'tr',
    {},
    make('th', { scope: 'col' }, 'Value'),
    ...(before.length === 0 ? [] : [make('th', { scope: 'col' }, 'Before')]),
    make('th', { scope: 'col' }, 'Now'),
    ...heads,
  );
  const all = [now, before, ...variants.map(({ values }) => values)];
  const body = (title: string, found: readonly Value[]): HTMLTableSectionElement => {
    const heading = make(
      'th',
      { scope: 'rowgroup', colspan: String((before.length === 0 ? 2 : 3) + variants.length) },
      title,
    );
    return make('tbody', {}, make('tr', {}, heading), ...found.map((value) => row(value, columns)));
  };
  const known = order.map((group) => ({ group, found: labels(group, all) }));
  const first = decides.flatMap(([group, label]) =>
    known.flatMap(({ found }) => found).filter((one) => one.group === group && one.label === label),
  );
  const sheets = known.flatMap(({ found }) => found).filter(isSheets);
  const whole = (element('every-value') as HTMLInputElement).checked;
  const bodies = [
    body('What decides', [...first, ...sheets]),
    ...(whole ? known.map(({ group, found }) => body(titles[group], found)) : []),
  ];
  element('values').replaceChildren(
    make('caption', {}, 'Results of the design'),
    make('thead', {}, head),
    ...bodies.filter((one) => one.rows.length > 1),
  );
}

/** Says the two values that decide. */
export function speakValues(now: readonly Value[]): void {
  const wanted = ['power absorbed', 'cost'];
  const found = now.filter(({ label }) => wanted.includes(label)).map(({ label, value }) => `${label} ${value}`);
  if (found.length > 0) speak(found.join(', '));
}
