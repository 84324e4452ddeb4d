/** What each step needs: parts by their numbers, hardware drawn true to size, tools and what is used up. */
import type { FastenerItem, JointKind } from '../../assembly/index.js';
import type { Part, PartKind } from '../../part/index.js';
import { profileOf } from '../illustrate/hardware.js';
import { markup, type Markup } from '../markup.js';
import { hasBattens } from './batten-steps.js';
import { fastenersOf, sizeText } from './hardware.js';
import type { BookInput } from './input.js';
import { firstRibs, type Step } from './step.js';

type Need =
  | { readonly kind: 'part'; readonly number: number; readonly count: number; readonly name: string }
  | { readonly kind: 'hardware'; readonly item: FastenerItem; readonly count: number; readonly name: string }
  | { readonly kind: 'tool'; readonly name: string };

const tool = (...names: readonly string[]): Need[] => names.map((name) => ({ kind: 'tool', name }));

function partsOf({ parts }: BookInput, kind: PartKind, count?: number): Need[] {
  return parts.flatMap((part, i): Need[] =>
    part.kind === kind
      ? [{ kind: 'part', number: i + 1, count: count ?? part.quantity, name: part.name.toLowerCase() }]
      : [],
  );
}

const kinds: Readonly<Record<FastenerItem['kind'], string>> = {
  'wood-screw': 'countersunk screw',
  bolt: 'bolt',
  dowel: 'dowel',
  pin: 'panel pin',
  staple: 'staple',
};

function hardware(input: BookInput, joint: JointKind, share = 1): Need[] {
  const found = fastenersOf(input, joint);
  if (found === null) return [];
  const { item, count } = found;
  return [{ kind: 'hardware', item, count: Math.round(count * share), name: `${kinds[item.kind]} ${sizeText(item)}` }];
}

const aids = ({ aids: all }: BookInput, ...ids: readonly string[]): Need[] =>
  all
    .filter(({ id }) => ids.some((one) => id === one || id.startsWith(`${one}-`)))
    .map(({ name }): Need => ({ kind: 'tool', name: name.toLowerCase() }));

/** Parts of the stand that are new in a step. */
function standParts({ parts }: BookInput, step: Step): Need[] {
  const isNew = ({ id }: Part): boolean => step.look?.({ role: 'stand', parts: [id] }, 0) === 'new';
  return parts.flatMap((part, i): Need[] =>
    part.kind === 'stand' && isNew(part)
      ? [{ kind: 'part', number: i + 1, count: part.quantity, name: part.name.toLowerCase() }]
      : [],
  );
}

const careful = ['dark eye protection', 'water', 'cover'];

/** Of each kind of part the first, the stand's apart. */
function allParts(input: BookInput): Need[] {
  const { parts } = input;
  const first = (part: Part, i: number): boolean => parts.findIndex(({ kind }) => kind === part.kind) === i;
  const kindsHere = parts.filter((part, i) => first(part, i) && part.kind !== 'stand' && part.kind !== 'extra');
  return kindsHere.flatMap(({ kind }) => partsOf(input, kind));
}

/** Some ribs with their cleats and the screws that go down through them. */
function ribsWithCleats(input: BookInput, ribs: number): Need[] {
  const count = input.dish.layout.ribs.length;
  const cleats = input.parts.some(({ kind }) => kind === 'cleat');
  return [
    ...partsOf(input, 'rib', ribs),
    ...(cleats ? partsOf(input, 'cleat', ribs * input.design.cleat.perRib) : []),
    ...hardware(input, 'cleat-to-board', ribs / count),
    ...(fastenersOf(input, 'cleat-to-board') === null ? [] : tool('screwdriver')),
  ];
}

/** Whether nothing is driven through the panels, so that the mirror goes on them while both are flat. */
const mirrorFirst = (input: BookInput): boolean => fastenersOf(input, 'panel-to-rib') === null;

/** The mirror and what it goes on with. */
const mirrorNeeds = (input: BookInput): Need[] => {
  const mirror = partsOf(input, 'reflector');
  if (mirror.length === 0) return [];
  const hem = input.design.reflector.hem > 0 ? ['flat bar', 'hammer'] : [];
  return [...mirror, ...tool('contact glue', 'soft roller', ...hem)];
};

type ByScene = Readonly<Record<Step['scene'], (input: BookInput, step: Step) => readonly Need[]>>;

const firstCount = ({ dish }: BookInput): number => firstRibs(dish.layout.ribs.length).length;

/** Ribs in slots are dry-fitted and come out again for the glue. */
const restCount = (input: BookInput): number =>
  input.dish.layout.ribs.length - (input.cleatStart === null ? 0 : firstCount(input));

const byScene: ByScene = {
  overview: (input) => [...allParts(input), ...tool('calliper', 'sandpaper')],
  join: (input) => [
    ...partsOf(input, 'board'),
    ...partsOf(input, 'splice'),
    ...hardware(input, 'splice-to-board'),
    ...hardware(input, 'splice-bolt'),
    ...tool('wood glue', ...(fastenersOf(input, 'splice-to-board') === null ? ['clamps'] : ['screwdriver'])),
    ...(fastenersOf(input, 'splice-bolt') === null ? [] : tool('hammer', 'spanner')),
  ],
  board: (input) => [...partsOf(input, 'board'), ...tool('straight edge', 'pencil', 'drill', 'two level battens')],
  hub: (input) => [
    ...partsOf(input, 'hub'),
    ...hardware(input, 'hub-dowel'),
    ...hardware(input, 'hub-bolt'),
    ...tool('wood glue', 'hammer', 'spanner'),
  ],
  'lower-disc': (input) => [...partsOf(input, 'hub', 1), ...hardware(input, 'hub-dowel'), ...tool('wood glue')],
  'upper-disc': (input) => [
    ...partsOf(input, 'hub', 1),
    ...hardware(input, 'hub-bolt'),
    ...tool('wood glue', 'spanner'),
  ],
  cleat: (input) => [
    ...partsOf(input, 'rib'),
    ...partsOf(input, 'cleat'),
    ...hardware(input, 'cleat-to-rib'),
    ...tool('wood glue', ...(fastenersOf(input, 'cleat-to-rib') === null ? ['clamps'] : ['screwdriver'])),
  ],
  'first-ribs': (input) => [...ribsWithCleats(input, firstCount(input)), ...tool('square', 'tape measure')],
  'other-ribs': (input) => [
    ...ribsWithCleats(input, restCount(input)),
    ...aids(input, 'rim-spacer'),
    ...tool('wood glue', 'straight edge'),
  ],
  curve: (input) => [...aids(input, 'gauge-rib'), ...tool('plane', 'strip of card')],
  seal: (input) => tool(...(hasBattens(input) ? [] : ['masking tape']), 'outdoor varnish or paint', 'brush'),
  panels: (input) => [
    ...partsOf(input, 'panel'),
    ...(mirrorFirst(input) ? mirrorNeeds(input) : []),
    ...hardware(input, 'panel-to-rib'),
    ...hardware(input, 'panel-over-joint'),
    ...aids(input, 'gauge-panel', 'gauge-seam'),
    ...(hasBattens(input) ? [] : tool('gap-filling glue', 'batten and two clamps')),
    ...(mirrorFirst(input)
      ? tool('sandbags or a strap')
      : tool(input.design.panel.fixing === 'staples' ? 'staple gun' : 'hammer')),
  ],
  battens: (input) => [
    ...partsOf(input, 'batten'),
    ...hardware(input, 'batten-to-rib'),
    ...tool(
      ...(fastenersOf(input, 'batten-to-rib')?.item.kind === 'wood-screw' ? ['drill', 'screwdriver'] : ['hammer']),
    ),
  ],
  mirror: mirrorNeeds,
  vessel: (input) => [
    ...aids(input, 'focal-stick'),
    ...tool(...(input.design.vessel ? ['vessel'] : []), 'plumb line', 'cover'),
  ],
  aim: () => tool('straight stick', 'cover', 'ballast'),
  apart: () => tool('cover', 'screwdriver', 'spanner', 'blanket', 'two people'),
  film: () => tool(...careful),
  'first-light': () => tool(...careful),
  stand: standParts,
};

/** A fastener from its side, true to size on paper and, as far as a screen is told its own size, there. */
function trueSize(item: FastenerItem): Markup | null {
  if (item.length === null || item.kind === 'staple') return null;
  const profile = profileOf(item, item.length);
  const heights = profile.map(([, z]) => z);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const half = Math.max(...profile.map(([r]) => r)) + 0.3;
  const at = (sign: 1 | -1) => profile.map(([r, z]) => `${(z - low).toFixed(2)} ${(sign * r).toFixed(2)}`);
  const path = `M${at(1).join('L')}L${at(-1).reverse().join('L')}z`;
  const [width, height] = [high - low + 0.6, 2 * half];
  return markup`<svg class="true" width="${width.toFixed(2)}mm" height="${height.toFixed(2)}mm" viewBox="-0.3 ${(-half).toFixed(2)} ${width.toFixed(2)} ${height.toFixed(2)}" aria-hidden="true"><path d="${path}"/></svg>`;
}

function entry(need: Need): Markup {
  switch (need.kind) {
    case 'part':
      return markup`<li><b class="ball">${need.number}</b> ${need.count} × ${need.name}</li>`;
    case 'hardware':
      return markup`<li>${need.count} × ${need.name}${trueSize(need.item)}</li>`;
    case 'tool':
      return markup`<li>${need.name}</li>`;
  }
}

/** The strip over a step. */
export function needsStrip(step: Step, input: BookInput): Markup | null {
  const needs = byScene[step.scene](input, step);
  return needs.length === 0
    ? null
    : markup`<ul class="needs"><li><strong>You need</strong></li>${needs.map(entry)}</ul>`;
}
