/** The form of the page: every key of the design file with what is known of it, grouped as the job goes. */
import { defaultText, keyEntries, type KeyEntry, limitsText, valueText } from '../../lib/index.js';
import type { FormGroup, FormKey } from './shown.js';

/** The sections of a design file in the order in which the questions come up at the bench. */
const groups: readonly (readonly [title: string, sections: readonly string[]])[] = [
  ['What is heated, and where', ['vessel', 'load', 'site', 'day', 'sun']],
  ['Dish', ['', 'dish']],
  ['Sheets', ['materials', 'stock', 'extra']],
  ['How it is cut', ['process', 'router', 'machine', 'nest', 'template', 'print', 'marking', 'colours']],
  ['Parts and joints', ['rib', 'hub', 'cleat', 'board', 'panel', 'reflector']],
  ['Stand', ['stand']],
];

/** Measured by coupons, and written by `coupon`: nobody types them. */
const measured = /^machine\.calibration(?:\.|$)/;

function formKey(entry: KeyEntry): FormKey {
  const { path, quantity, about, choices, required } = entry;
  const yesNo = quantity === 'yes-no' ? ['true', 'false'] : [];
  return {
    path,
    kind: quantity,
    about,
    value: valueText(entry),
    fallback: defaultText(entry),
    limits: limitsText(entry),
    required,
    choices: choices ?? yesNo,
  };
}

const topOf = (path: string): string => (/[.[]/.test(path) ? (path.split(/[.[]/)[0] ?? '') : '');

/** A section of the file; '' is what stands in none. */
function section(name: string): FormGroup['sections'][number] {
  const entries = keyEntries().filter(({ path }) => !measured.test(path));
  const own = entries.find(({ path }) => path === name);
  const isHead = ({ quantity, path }: KeyEntry): boolean =>
    quantity === 'group' || path.endsWith('materials') || path === 'stock' || path === 'extra';
  // of a list of sections, such as `router.tools`, each item has its fields
  const hasItems = ({ path }: KeyEntry): boolean => entries.some((one) => one.path.startsWith(`${path}[].`));
  const keys = entries.filter((entry) => topOf(entry.path) === name && !isHead(entry) && !hasItems(entry));
  return { name, about: own?.about ?? 'Name and units of the file.', keys: keys.map(formKey) };
}

/** All groups; every top-level section is in one of them. */
export const formOf = (): readonly FormGroup[] =>
  groups.map(([title, names]) => ({ title, sections: names.map(section) }));
