/** Joints cut open, seams, and the wrong way beside the right one: small pictures beside those of the steps. */
import type { Fastener, JointKind } from '../../assembly/index.js';
import { profileOf } from '../illustrate/hardware.js';
import { wordsAt } from '../illustrate/notes.js';
import { markup, type Markup } from '../markup.js';
import { hatch } from '../shop/section.js';
import type { BookInput } from './input.js';
import type { Measures } from './measures.js';

/** Words stand to the right of the circle, in rows. */
const WIDTH = 880;
/** Their letters are larger than those of the steps, as the pictures are smaller. */
const LETTERS = 46;
export const SIDE = 400;
const RADIUS = 192;
const ROW = 58;

export const n = (value: number): string => String(Math.round(value));

interface Pointer {
  readonly at: { readonly x: number; readonly y: number };
  readonly text: string;
}

/** A ring that hides all that is outside it. */
const ring = markup`<path class="mat" fill-rule="evenodd" d="M-9-9H${SIDE + 9}V${SIDE + 9}H-9zM${SIDE / 2 - RADIUS} ${SIDE / 2}a${RADIUS} ${RADIUS} 0 1 0 ${2 * RADIUS} 0a${RADIUS} ${RADIUS} 0 1 0-${2 * RADIUS} 0z"/><circle class="lens" cx="${SIDE / 2}" cy="${SIDE / 2}" r="${RADIUS}"/>`;

/** Words in rows beside the circle, from top to bottom as what they point at. */
function pointers(all: readonly Pointer[]): Markup[] {
  const sorted = [...all].sort((a, b) => a.at.y - b.at.y);
  const top = SIDE / 2 - ((sorted.length - 1) * ROW) / 2;
  return sorted.map(({ at, text }, i) => {
    const y = top + i * ROW;
    return markup`<path class="leader" d="M${n(at.x)} ${n(at.y)}L${SIDE + 6} ${n(y)}h12"/><circle class="dot" cx="${n(at.x)}" cy="${n(at.y)}" r="5"/>${wordsAt(text, SIDE + 28, y, 'row', LETTERS)}`;
  });
}

export function detail(body: readonly (Markup | null)[], words: readonly Pointer[], caption: string): Markup {
  return markup`<figure class="detail"><svg class="dish" viewBox="-9 -9 ${WIDTH} ${SIDE + 18}" role="img" aria-label="${caption}">${body}${ring}${pointers(words)}</svg><figcaption>${caption}</figcaption></figure>`;
}

interface Layer {
  readonly name: string;
  readonly thickness: number;
  readonly role: string;
}

/** A layer across the circle, hatched as cut. */
export function cutLayer({ role }: Layer, top: number, bottom: number, rising: boolean): Markup {
  const lines = hatch({ minX: 0, maxX: SIDE / 10, minY: -bottom / 10, maxY: -top / 10 }, rising)
    .flatMap(({ vertices: [a, b] }) =>
      a && b ? [`M${n(10 * a.x)} ${n(-10 * a.y)}L${n(10 * b.x)} ${n(-10 * b.y)}`] : [],
    )
    .join('');
  return markup`<g class="k-${role}"><path class="s6" d="M0 ${n(top)}H${SIDE}V${n(bottom)}H0z"/><path class="hatching" d="${lines}"/><path class="e" d="M0 ${n(top)}H${SIDE}M0 ${n(bottom)}H${SIDE}"/></g>`;
}

interface Span {
  readonly layer: Layer;
  readonly from: number;
  readonly to: number;
}

/** Layers of one kind that lie on each other, named once with their number: a hub may have more than there is room for. */
function alike(spans: readonly Span[], nameOf: (span: Span) => string): { text: string; from: number; to: number }[] {
  const runs: { name: string; count: number; from: number; to: number }[] = [];
  for (const span of spans) {
    const [name, last] = [nameOf(span), runs.at(-1)];
    if (last?.name === name) Object.assign(last, { count: last.count + 1, to: span.to });
    else runs.push({ name, count: 1, from: span.from, to: span.to });
  }
  return runs.map(({ name, count, from, to }) => ({ text: count > 1 ? `${count} x ${name}` : name, from, to }));
}

/** A fastener in its holes, with the layers that it goes through. */
function joint(fastener: Fastener, layers: readonly Layer[], { length }: Measures, caption: string): Markup {
  const { item, through } = fastener;
  const whole = layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const head = item.kind === 'bolt' ? 0.9 * item.diameter : 0.1 * item.diameter;
  const nut = item.kind === 'bolt' ? 1.2 * item.diameter : 0.1 * whole;
  const scale = Math.min(330 / (whole + head + nut), 26);
  const top = (SIDE - (whole + head + nut) * scale) / 2 + head * scale;
  const middle = SIDE / 2;
  let level = top;
  const spans = layers.map((layer) => {
    const from = level;
    level += layer.thickness * scale;
    return { layer, from, to: level };
  });
  const words: Pointer[] = alike(spans, ({ layer }) => `${layer.name} ${length(layer.thickness)}`).map(
    ({ text, from, to }) => ({ at: { x: middle + 120, y: (from + to) / 2 }, text }),
  );
  const holes = spans.map(({ from, to }, i) => {
    const passage = through[i]?.passage ?? (item.kind === 'wood-screw' ? 'pilot' : 'clearance');
    const wide =
      passage === 'pilot' ? (item.pilot ?? item.diameter) : passage === 'tight' ? item.diameter : item.clearance;
    const end = passage === 'pilot' && item.length !== null ? Math.min(to, top + (item.length + 3) * scale) : to;
    const half = (wide / 2) * scale;
    return markup`<path class="bore" d="M${n(middle - half)} ${n(from)}H${n(middle + half)}V${n(end)}H${n(middle - half)}z"/>`;
  });
  const clearance = spans.find((_, i) => through[i]?.passage === 'clearance');
  const pilot = spans.find((_, i) => through[i]?.passage === 'pilot');
  if (clearance && item.kind === 'wood-screw')
    words.push({
      at: { x: middle + (item.clearance / 2) * scale, y: clearance.from + 0.8 * (clearance.to - clearance.from) },
      text: `hole ${length(item.clearance)}`,
    });
  if (pilot && item.pilot !== undefined)
    words.push({
      at: { x: middle + (item.pilot / 2) * scale, y: pilot.from + 0.3 * (pilot.to - pilot.from) },
      text: `pilot ${length(item.pilot)}`,
    });
  const profile = profileOf(item, whole);
  const side = (sign: 1 | -1) => profile.map(([r, z]) => `${n(middle + sign * r * scale)} ${n(top - z * scale)}`);
  const body = `M${side(1).join('L')}L${side(-1).reverse().join('L')}z`;
  const below =
    item.kind === 'bolt'
      ? [
          [2.1, 0.18],
          [1.65, 0.8],
        ].map(([r = 0, h = 0], k) => {
          const [half, high] = [(r * item.diameter * scale) / 2, h * item.diameter * scale];
          const from = level + (k === 0 ? 0 : 0.18 * item.diameter * scale);
          return markup`<path class="s4" d="M${n(middle - half)} ${n(from)}H${n(middle + half)}V${n(from + high)}H${n(middle - half)}z"/>`;
        })
      : [];
  return detail(
    [
      ...spans.map(({ layer, from, to }, i) => cutLayer(layer, from, to, i % 2 === 0)),
      ...holes,
      markup`<g class="k-metal">${below}<path class="s6" d="${body}"/><path class="e" d="${body}"/></g>`,
    ],
    words,
    caption,
  );
}

const firstOf = ({ assembly }: BookInput, kind: JointKind): Fastener | undefined =>
  assembly.fasteners.find((one) => one.joint === kind);

/** The plates that a fastener goes through square to their faces. */
const platesThrough = (fastener: Fastener, names: Readonly<Record<string, string>>): Layer[] =>
  fastener.through.map(({ part: { part } }) => ({
    name: names[part.kind] ?? part.name.toLowerCase(),
    thickness: part.thickness,
    role: part.kind,
  }));

const names = { hub: 'hub', board: 'board', cleat: 'cleat', splice: 'plate', rib: 'rib', panel: 'panel' };

export function boardJoint(input: BookInput, measures: Measures): Markup[] {
  const screw = firstOf(input, 'cleat-to-board');
  return screw
    ? [joint(screw, platesThrough(screw, names), measures, 'The cleat’s screw cut open: its point stays in the board')]
    : [];
}

export function ribJoint(input: BookInput, measures: Measures): Markup[] {
  const screw = firstOf(input, 'cleat-to-rib');
  if (screw === undefined) return [];
  const { ribThickness } = input.dish;
  const layers = [
    { name: 'cleat', thickness: screw.wood - ribThickness, role: 'cleat' },
    { name: 'rib', thickness: ribThickness, role: 'rib' },
  ];
  return [joint(screw, layers, measures, 'The screw from the cleat into the rib, cut open')];
}

export function hubJoint(input: BookInput, measures: Measures): Markup[] {
  const bolt = firstOf(input, 'hub-bolt');
  return bolt ? [joint(bolt, platesThrough(bolt, names), measures, 'The bolt on the axis, cut open')] : [];
}

export function spliceJoint(input: BookInput, measures: Measures): Markup[] {
  return (['splice-to-board', 'splice-bolt'] as const).flatMap((kind) => {
    const one = firstOf(input, kind);
    if (one === undefined) return [];
    const [plate] = platesThrough(one, names);
    const board = input.parts.find((part) => part.kind === 'board');
    if (plate === undefined || board === undefined) return [];
    const layers = [plate, { name: 'board', thickness: board.thickness, role: 'board' }];
    return [
      joint(
        one,
        layers,
        measures,
        kind === 'splice-bolt' ? 'The bolted half, from below' : 'The screwed half, from below',
      ),
    ];
  });
}

/** Two panels over a rib at the rim, cut across: they bear on its middle, and the wedge beside it takes the glue. */
export function seam(input: BookInput, { length }: Measures): Markup[] {
  const { design, dish } = input;
  const { ribThickness: t, panelThickness: p, glueWedge } = dish;
  const scale = Math.min(210 / t, 150 / p, 40);
  const middle = SIDE / 2;
  const top = SIDE / 2 + 10;
  const rise = (2 * glueWedge) / t;
  const gap = Math.max(2, (design.panel.gap / 2) * scale);
  // no further than the ring hides
  const reach = SIDE / 2 + 4;
  const half = (t / 2) * scale;
  const thick = p * scale;
  const mirror = design.reflector.material === undefined ? 0 : Math.max(5, dish.reflectorThickness * scale);
  const plate = (sign: 1 | -1, from: number, high: number): string => {
    const at = (x: number, up: number) => `${n(middle + sign * x)} ${n(top - rise * x - up)}`;
    return `M${at(gap, from)}L${at(reach, from)}L${at(reach, from + high)}L${at(gap, from + high)}z`;
  };
  const glue = (sign: 1 | -1): string =>
    `M${n(middle + sign * gap)} ${n(top)}L${n(middle + sign * half)} ${n(top)}L${n(middle + sign * half)} ${n(top - rise * half - 2)}z`;
  const rib = `M${n(middle - half)} ${n(top)}H${n(middle + half)}V${SIDE}H${n(middle - half)}z`;
  const sides = [1, -1] as const;
  return [
    detail(
      [
        markup`<g class="k-rib"><path class="s6" d="${rib}"/><path class="e" d="${rib}"/></g>`,
        markup`<path class="gluing" d="${sides.map(glue).join('')}"/>`,
        markup`<g class="k-panel"><path class="s6" d="${sides.map((s) => plate(s, 0, thick)).join('')}"/><path class="e" d="${sides.map((s) => plate(s, 0, thick)).join('')}"/></g>`,
        mirror > 0
          ? markup`<g class="k-mirror"><path class="s6" d="${sides.map((s) => plate(s, thick, mirror)).join('')}"/><path class="e" d="${sides.map((s) => plate(s, thick, mirror)).join('')}"/></g>`
          : null,
      ],
      [
        { at: { x: middle, y: top - thick - mirror }, text: `seam ${length(design.panel.gap)}` },
        { at: { x: middle + 130, y: top - rise * 130 - thick / 2 }, text: `panel ${length(p)}` },
        { at: { x: middle + half - 4, y: top - 2 }, text: `glue, up to ${length(glueWedge)}` },
        { at: { x: middle + half / 2, y: top + 90 }, text: `rib ${length(t)}` },
      ],
      'A seam at the rim, cut across the rib: the panels bear on its middle',
    ),
  ];
}

/** A small drawing with a tick or a cross. */
function judged(right: boolean, dx: number, body: Markup, words: string): Markup {
  const sign = right ? 'M-26 2l16 18 34-42' : 'M-22-22l44 44M22-22l-44 44';
  return markup`<g transform="translate(${dx} 0)">${body}<path class="${right ? 'good' : 'bad'}" transform="translate(60 50)" d="${sign}"/></g>${wordsAt(words, dx + 200, 404 - LETTERS / 2, 'under', LETTERS)}`;
}

function pair(right: readonly [Markup, string], wrong: readonly [Markup, string], caption: string): Markup {
  return markup`<figure class="detail"><svg class="dish" viewBox="0 0 ${WIDTH} 408" role="img" aria-label="${caption}">${judged(true, 0, ...right)}${judged(false, 460, ...wrong)}</svg><figcaption>${caption}</figcaption></figure>`;
}

/** A rib from its inner end, the cleat on the face with the line, and on the other. */
export function cleatSide({ design, dish }: BookInput): Markup[] {
  if (design.cleat.perRib !== 1) return [];
  const { width } = design.cleat;
  const t = dish.ribThickness;
  const scale = 150 / (width + t);
  const [w, r] = [width * scale, t * scale];
  const high = 240;
  const thick = Math.max(60, t * scale);
  const sketch = (right: boolean): Markup => {
    const from = right ? 190 : 190 - r - w;
    const rib = `M${n(190 - r)} ${330 - high}h${n(r)}V330h${n(-r)}z`;
    const block = `M${n(from)} ${n(330 - thick)}h${n(w)}V330h${n(-w)}z`;
    // the line on the scribed face, the right one from the hub
    return markup`<g class="k-rib"><path class="s6" d="${rib}"/><path class="e" d="${rib}"/></g><g class="k-cleat"><path class="s6" d="${block}"/><path class="e" d="${block}"/></g><path class="scribed" d="M190 ${330 - high + 30}V${n(330 - (right ? thick : 0))}"/><path class="e" d="M20 330H360"/>`;
  };
  return [
    pair(
      [sketch(true), 'on the scribed face'],
      [sketch(false), 'on the bare face'],
      'A rib seen from the hub: its scribed face (the strong line) is the right one, and the cleat goes there',
    ),
  ];
}

/** Numbers on the upper face, and turned down. */
export function hubFace({ parts }: BookInput): Markup[] {
  const hub = parts.find(({ kind }) => kind === 'hub');
  if (hub === undefined) return [];
  const disc = 'M50 220a140 62 0 1 0 280 0a140 62 0 1 0-280 0zM50 220v40a140 62 0 0 0 280 0v-40';
  const body = (right: boolean): Markup =>
    markup`<g class="k-hub"><path class="s6" d="${disc}"/><path class="e" d="${disc}"/></g>${right ? [wordsAt('1', 290, 222, 'on', LETTERS), wordsAt('2', 220, 184, 'on', LETTERS), wordsAt('3', 130, 200, 'on', LETTERS)] : []}`;
  return [
    pair(
      [body(true), 'numbers up'],
      [body(false), 'numbers down'],
      'Turned over, the holes and numbers run the wrong way round',
    ),
  ];
}
