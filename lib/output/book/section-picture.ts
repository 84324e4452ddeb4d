/** The dish cut through its axis: where the vessel hangs, and how the dish is aimed. */
import { bounds } from '../../geometry/index.js';
import { markup, type Markup, px } from '../markup.js';
import type { BookInput } from './input.js';
import type { Measures } from './measures.js';
import { ribInPlace } from './rib-place.js';
import { ringPath } from './ring-path.js';
import { CAPITALS, textWidth } from '../shop/font.js';

/** Tilt of the aimed dish, degrees: a sun half way up. */
const tilt = 42;

interface Levels {
  readonly focus: number;
  readonly underside: number;
  readonly top: number;
}

function levelsOf({ design, dish }: BookInput): Levels {
  const focus = dish.baseHeight + dish.focusHeight.atRim;
  const underside = focus + (design.vessel?.offset ?? 0);
  return { focus, underside, top: underside + (design.vessel?.height ?? 0) };
}

/** The vessel as it hangs: a level one stays plumb while the dish is turned by `turn` degrees. */
function pot(input: BookInput, turn: number): Markup | null {
  const { vessel } = input.design;
  if (vessel === undefined) return null;
  const { diameter, height, offset, mount } = vessel;
  const plumb = mount === 'level' ? -turn : 0;
  return markup`<g transform="translate(0 ${px(-levelsOf(input).focus)}) rotate(${plumb})"><rect class="pot" x="${px(-diameter / 2)}" y="${px(-offset - height)}" width="${px(diameter)}" height="${px(height)}"/></g>`;
}

/** Board, hub, two ribs and mirror, upright; y down, the board's face at 0. */
function body(input: BookInput): Markup {
  const { assembly, design, dish, facets, parts } = input;
  const { board, materials } = design;
  const thickness = (name: string) => materials[name]?.thickness ?? 0;
  const rib = parts.find((part) => part.kind === 'rib')?.outline;
  const mirror = facets.map(({ u, z }) => `${px(u)} ${px(-dish.baseHeight - z)}`).join('L');
  const half = markup`${rib ? markup`<path class="stuff" d="${ringPath(ribInPlace(rib, dish), true, 0)}"/>` : null}<path class="mirror-line" d="M${mirror}"/>`;
  const hubs = assembly.placed.flatMap((one) => {
    if (one.form !== 'plate' || one.part.kind !== 'hub') return [];
    const { minX, maxX } = bounds(one.part.outline);
    const top = one.frame.origin[2] + one.part.thickness;
    return [
      markup`<rect class="stuff" x="${px(minX)}" y="${px(-top)}" width="${px(maxX - minX)}" height="${px(one.part.thickness)}"/>`,
    ];
  });
  return markup`<rect class="stuff" x="${px(-board.size / 2)}" y="0" width="${px(board.size)}" height="${px(thickness(board.material))}"/>
${half}<g transform="scale(-1 1)">${half}</g>
${hubs}`;
}

/** Rays that come down along the axis and meet at the focus. */
function rays(input: BookInput, from: number): Markup {
  const { dish, facets } = input;
  const focus = -levelsOf(input).focus;
  const some = [facets[Math.floor(facets.length / 3)], facets[Math.floor((2 * facets.length) / 3)], facets.at(-1)];
  const lines = some.flatMap((facet) =>
    facet
      ? [facet.u, -facet.u].map((x) => `M${px(x)} ${px(from)}V${px(-dish.baseHeight - facet.z)}L0 ${px(focus)}`)
      : [],
  );
  return markup`<path class="ray" d="${lines.join('')}"/>`;
}

/** The focal stick as it stands plumb on the hub, its top where the vessel hangs. */
function stick({ aids }: BookInput, underside: number): Markup | null {
  const part = aids.find(({ id }) => id === 'focal-stick');
  if (part === undefined) return null;
  const { maxX } = bounds(part.outline);
  const points = part.outline.map(({ x, y }) => `${px(y)} ${px(maxX - x - underside)}`).join('L');
  return markup`<path class="aid" d="M${points}Z"/>`;
}

/** The vessel's height above the board and above the mirror's lowest point, dimensioned. */
export function vesselPicture(input: BookInput, measures: Measures, label: string): Markup {
  const { apertureRadius: R, baseHeight, innerRadius } = input.dish;
  const { underside, top } = levelsOf(input);
  const size = R / 11;
  const side = R + size * 1.2;
  const height = Math.max(top, input.dish.rimEndHeight) + size;
  const above = underside - baseHeight;
  const reach = measures.length(underside);
  const overMirror = measures.length(above);
  // beside the dish as much as the longer of the two dimensions takes, in a font that is wide
  const letters = 1.2 * Math.max(...[reach, overMirror].map((text) => textWidth(text, size * CAPITALS)));
  const half = side + size * 0.5 + letters;
  return markup`<svg class="plan" viewBox="${px(-half)} ${px(-height)} ${px(2 * half)} ${px(height + size * 1.5)}" role="img" aria-label="${label}">
${body(input)}${pot(input, 0)}${stick(input, underside)}${rays(input, -height)}
<path class="axis" d="M0 ${px(-height)}V${px(size)}"/>
<path class="thin" d="M${px(size * 0.5)} ${px(-underside)}H${px(side + size * 0.4)}M${px(side)} 0V${px(-underside)}M${px(R)} 0H${px(side + size * 0.4)}M${px(-size * 0.5)} ${px(-underside)}H${px(-side - size * 0.4)}M${px(-side)} ${px(-baseHeight)}V${px(-underside)}M${px(-innerRadius)} ${px(-baseHeight)}H${px(-side - size * 0.4)}"/>
<text class="after" font-size="${px(size)}" x="${px(side + size * 0.3)}" y="${px(-underside / 2)}" data-dim="vessel.aboveBoard" data-mm="${underside.toFixed(4)}">${reach}</text>
<text class="before" font-size="${px(size)}" x="${px(-side - size * 0.3)}" y="${px(-baseHeight - above / 2)}" data-dim="vessel.aboveVertex" data-mm="${above.toFixed(4)}">${overMirror}</text>
</svg>`;
}

/** The dish tilted so that its axis, and a stick square to the rim, point at the sun. */
export function aimPicture(input: BookInput, label: string): Markup {
  const { apertureRadius: R, rimEndHeight: rim } = input.dish;
  const half = input.design.board.size / 2;
  const sun = levelsOf(input).top + R * 0.7;
  const stick = 0.35 * R;
  const angle = (tilt * Math.PI) / 180;
  const corners = [
    [-half, 0.05 * R],
    [half, 0.05 * R],
    [R, -rim],
    [-R, -rim],
    [-R, -sun],
    [0.1 * R, -sun - 0.1 * R],
  ] as const;
  const xs = corners.map(([x, y]) => x * Math.cos(angle) - y * Math.sin(angle));
  const ys = corners.map(([x, y]) => x * Math.sin(angle) + y * Math.cos(angle));
  const [left, top] = [Math.min(...xs) - 0.05 * R, Math.min(...ys) - 0.05 * R];
  const box = `${px(left)} ${px(top)} ${px(Math.max(...xs) + 0.05 * R - left)} ${px(Math.max(...ys) + 0.05 * R - top)}`;
  return markup`<svg class="plan" viewBox="${box}" role="img" aria-label="${label}">
<g transform="rotate(${tilt})">${body(input)}${pot(input, tilt)}<path class="axis" d="M0 ${px(-sun)}V0"/><circle class="sun" cx="0" cy="${px(-sun)}" r="${px(R / 10)}"/>
<rect class="pot" x="${px(-R)}" y="${px(-rim - stick)}" width="${px(R / 40)}" height="${px(stick)}"/>
<path class="ray" d="M${px(-R + R / 80)} ${px(-sun)}V${px(-rim - stick)}"/></g></svg>`;
}
