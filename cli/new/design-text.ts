/** The commented design file that `new` writes: every section and key, taken from the schema itself. */
import { keyEntries, type KeyEntry, type LengthUnit, mmPer, schemaLine, wrapped } from '../../lib/index.js';
import { type Answers, drillSet } from './answers.js';

const proseWidth = 96;

/** Prose as comment lines: "#" and a space, so that it differs from a default, which is "#" and the key at once. */
export function prose(text: string, indent: string): string[] {
  return wrapped(text, proseWidth - indent.length - 2).map((line) => `${indent}# ${line}`);
}

/** A length as a bare number of the file's unit. */
function bare(mm: number, units: LengthUnit): string {
  return String(Number((mm / mmPer[units]).toFixed(units === 'mm' ? 3 : 5)));
}

/** Values for keys without a default, in sections that a design may leave out. */
const examples: Readonly<Record<string, string>> = {
  'vessel.diameter': '220 mm',
  'load.mass': '5',
  'site.latitude': '45',
  'site.longitude': '10',
};

function keyLines(entry: KeyEntry, stated: ReadonlyMap<string, string>, indent: string): string[] {
  const name = nameOf(entry);
  const value = stated.get(entry.path);
  const words = entry.choices && entry.quantity === 'choice' ? ` One of: ${entry.choices.join(', ')}.` : '';
  const unit = entry.unit === undefined ? '' : ` In ${entry.unit}.`;
  const why = entry.why === undefined ? '' : ` Reason for the default: ${entry.why}.`;
  const about = `${entry.about}${words}${unit}${why}`;
  if (value !== undefined) return [...prose(about, indent), `${indent}${name}: ${value}`];
  const fallback = entry.shown ?? examples[entry.path];
  if (fallback !== undefined) {
    // a colour's "#" would begin a comment
    const safe = fallback.startsWith('#') ? `'${fallback}'` : fallback;
    return [...prose(about, indent), `${indent}#${name}: ${safe}`];
  }
  const left = entry.auto === undefined ? 'Optional.' : `Default: ${entry.auto}.`;
  return prose(`${name}: ${about} ${left}`, indent);
}

/** What may stand in each item of a list of sections, as prose. */
function itemKeys(path: string, entries: readonly KeyEntry[], indent: string): string[] {
  const below = entries.filter((entry) => entry.path.startsWith(path));
  return below.flatMap((entry) => {
    const name = entry.path.slice(path.length);
    const fallback = entry.auto ?? entry.shown;
    return prose(`${name}: ${entry.about}${fallback === undefined ? '' : ` Default: ${fallback}.`}`, indent);
  });
}

/** The keys right below a path, sections within it and items of its lists with them. */
export function bodyLines(
  path: string,
  entries: readonly KeyEntry[],
  stated: ReadonlyMap<string, string>,
  indent: string,
): string[] {
  const below = entries.filter(
    (entry) => entry.path.startsWith(`${path}.`) && !/[.[]/.test(entry.path.slice(path.length + 1)),
  );
  return below.flatMap((entry) => {
    if (entry.quantity === 'group') return groupLines(entry, entries, stated, indent);
    const items = [`${entry.path}[].`, `${entry.path}.<name>.`].flatMap((path) => itemKeys(path, entries, indent));
    return [
      ...(items.length > 0 ? [...prose(`Each of ${nameOf(entry)}:`, indent), ...items] : []),
      ...keyLines(entry, stated, indent),
    ];
  });
}

const nameOf = ({ path }: KeyEntry): string => path.split('.').at(-1) ?? path;

/** A section: a comment of its own, its name, its keys. It is commented out when nothing in it is stated. */
function groupLines(
  section: KeyEntry,
  entries: readonly KeyEntry[],
  stated: ReadonlyMap<string, string>,
  indent: string,
): string[] {
  const active = [...stated.keys()].some((path) => path.startsWith(`${section.path}.`));
  const body = bodyLines(section.path, entries, stated, `${indent}  `);
  const open = entries.some(
    ({ path, required }) =>
      required && path.slice(0, path.lastIndexOf('.')) === section.path && examples[path] === undefined,
  );
  // a section without defaults, or with keys that must be given, is none with its comment signs taken away
  const inProse = !active && (open || body.every((line) => line.trim().startsWith('# ')));
  return [
    ...prose(section.about, indent),
    `${indent}${active ? '' : inProse ? '# ' : '#'}${nameOf(section)}:`,
    ...(inProse ? body.map((line) => line.replace(/^(\s*)#(?! )/, '$1# ')) : body),
  ];
}

interface Chosen {
  readonly stated: ReadonlyMap<string, string>;
  readonly materials: readonly string[];
  readonly stock: readonly string[];
}

/** Materials of the skin, by what their stock is sold in. Millimetres. */
interface Skin {
  readonly panel: { readonly name: string; readonly kind: string; readonly thickness: number };
  readonly mirror: {
    readonly name: string;
    readonly kind: string;
    readonly finish: string;
    readonly thickness: number;
    readonly roll: number;
  };
}

/** Stress that hardboard bears for years over its stiffness, by which it bends (EN 622-2 class HB, from memory). */
const hardboardStrain = 12 / 5000;

/** A small dish, and one that bends its panels tightly, takes card and film where a large one takes hardboard and aluminium. */
export function skinOf({ units, aperture, focalLength }: Answers): Skin {
  const inches = units === 'in';
  const board = inches ? mmPer.in / 8 : 3;
  const small = aperture < 800;
  // the least radius of a paraboloid is 2f; a bent panel carries E·t/2ρ
  const tight = board / (4 * focalLength) > hardboardStrain;
  return {
    panel:
      small || tight
        ? { name: 'card', kind: 'card', thickness: inches ? mmPer.in / 32 : 1 }
        : { name: 'hardboard', kind: 'hardboard', thickness: board },
    mirror: small
      ? {
          name: 'film',
          kind: 'film',
          finish: 'mirror-film',
          thickness: inches ? 0.002 * mmPer.in : 0.05,
          roll: inches ? 20 * mmPer.in : 500,
        }
      : {
          name: 'sheet',
          kind: 'aluminium',
          finish: 'bright-anodised',
          thickness: inches ? 0.012 * mmPer.in : 0.3,
          roll: inches ? 24 * mmPer.in : 600,
        },
  };
}

/** Edge of a roll that no part may use, on both sides together, mm: the default margin. */
const rollMargins = 20;

/** The drill bits as a list of the file. */
function drills({ units, drillBits }: Answers): string {
  if (drillBits === null) return drillSet[units === 'in' ? 'in' : 'mm'];
  return `[${drillBits.map((mm) => bare(mm, units)).join(', ')}]`;
}

const priced = (price: number): string => (price > 0 ? `, price: ${price}` : '');

function chosen(answers: Answers): Chosen {
  const { units, aperture, focalLength, heats, kind, thickness, machine, place, price } = answers;
  const length = (mm: number) => bare(mm, units);
  const { panel, mirror } = skinOf(answers);
  const ribs = kind === panel.kind || kind === mirror.kind ? `${kind}-ribs` : kind;
  const sheet = `${length(answers.sheet.width)} x ${length(answers.sheet.height)}`;
  const item = (name: string, of: string, mm: number) => `  ${name}: { kind: ${of}, thickness: ${length(mm)} }`;
  const chord = aperture * Math.sin(Math.PI / answers.ribs);
  const stated = new Map<string, string>([
    ['name', 'My dish'],
    ['units', units],
    ['dish.aperture', length(aperture)],
    ['dish.focalLength', length(focalLength)],
    ['dish.ribs', String(answers.ribs)],
    ['rib.material', ribs],
    ['panel.material', panel.name],
    ['reflector.material', mirror.name],
    ['reflector.finish', mirror.finish],
    ...(chord > mirror.roll - rollMargins ? ([['reflector.layout', 'rows']] as const) : []),
    ['process.kind', machine],
    // small parts of small dishes have no room for tabs: the file says so where it can be changed
    ...(machine === 'router'
      ? ([
          ['process.drillBits', drills(answers)],
          ['router.tabs.without', 'onion-skin'],
        ] as const)
      : []),
    ...(answers.bit === null ? [] : ([['process.toolDiameter', length(answers.bit)]] as const)),
    ...(place
      ? ([
          ['site.latitude', String(place.latitude)],
          ['site.longitude', String(place.longitude)],
        ] as const)
      : []),
    ...(heats
      ? ([
          ['vessel.diameter', length(heats.diameter)],
          ['load.mass', String(heats.litres)],
        ] as const)
      : []),
  ]);
  return {
    stated,
    materials: [
      item(ribs, kind, thickness),
      item(panel.name, panel.kind, panel.thickness),
      item(mirror.name, mirror.kind, mirror.thickness),
    ],
    stock: [
      `  - { material: ${ribs}, size: ${sheet}${priced(price)} }`,
      `  - { material: ${panel.name}, size: ${sheet}${priced(answers.panelPrice)} }`,
      `  - { material: ${mirror.name}, rollWidth: ${length(mirror.roll)}${priced(answers.reflectorPrice)} }`,
    ],
  };
}

/** The design file's text for the answers, valid as it stands. */
export function designText(answers: Answers): string {
  const entries = keyEntries();
  const { stated, materials, stock } = chosen(answers);
  const lines = [
    schemaLine,
    ...prose(
      `Design of a ribbed paraboloid dish. Bare lengths are in ${answers.units}; text with a unit of its own, such as 3/4 in, 1.2 m or 2 ft 6 in, is accepted anywhere. A line such as "#figure: panel" shows a default: remove its # to change it (and the # of its section, if there is one). "dishwright explain <key>" says more about a key, "dishwright check <this file>" checks the design.`,
      '',
    ),
  ];
  for (const entry of entries) {
    if (/[.[]/.test(entry.path)) continue;
    if (entry.path === 'materials') {
      lines.push(
        '',
        ...prose(entry.about, ''),
        ...itemKeys('materials.<name>.', entries, ''),
        'materials:',
        ...materials,
      );
    } else if (entry.path === 'stock') {
      lines.push('', ...prose(entry.about, ''), ...itemKeys('stock[].', entries, ''), 'stock:', ...stock);
    } else if (entry.path === 'extra') {
      lines.push('', ...prose(entry.about, ''), ...itemKeys('extra[].', entries, ''), '#extra: []');
    } else if (entry.quantity === 'group') {
      lines.push('', ...groupLines(entry, entries, stated, ''));
    } else lines.push('', ...keyLines(entry, stated, ''));
  }
  return `${lines.join('\n')}\n`;
}
