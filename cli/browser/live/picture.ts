/** The dish in section, drawn from a few numbers, with the one before as a ghost behind it. */
import type { Outline } from '../../watch/shown.js';

const space = 'http://www.w3.org/2000/svg';

function drawn(tag: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const made = document.createElementNS(space, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  return made;
}

const both = (points: Outline['profile']): string => {
  const right = points.map(([r, z]) => `${r.toFixed(1)},${(-z).toFixed(1)}`);
  const left = points
    .slice(1)
    .reverse()
    .map(([r, z]) => `${(-r).toFixed(1)},${(-z).toFixed(1)}`);
  return [...left, ...right].join(' ');
};

const rimOf = ({ profile }: Outline): readonly [number, number] => profile.at(-1) ?? [1, 1];

/** Mirror, board, focus and two rays; `ghost` draws the mirror alone. */
function dish(outline: Outline, ghost: boolean): SVGElement {
  const { profile, focus, baseHeight, boardRadius, vessel } = outline;
  const group = drawn('g', { class: ghost ? 'ghost' : 'now' });
  group.append(drawn('polyline', { points: both(profile), class: 'curve' }));
  const cross = rimOf(outline)[0] * 0.03;
  group.append(
    drawn('path', { d: `M${-cross} ${-focus}H${cross}M0 ${-focus - cross}V${-focus + cross}`, class: 'focus' }),
  );
  if (ghost) return group;
  const [rim, height] = rimOf(outline);
  group.append(
    drawn('path', { d: `M${-boardRadius} ${baseHeight}H${boardRadius}`, class: 'plank' }),
    ...[-1, 1].map((side) =>
      drawn('path', { d: `M${side * rim} ${-Math.max(focus, height) * 1.25}V${-height}L0 ${-focus}`, class: 'ray' }),
    ),
  );
  if (vessel) {
    const { diameter, height: tall, offset } = vessel;
    const box = { x: -diameter / 2, y: -focus - offset - tall, width: diameter, height: tall, class: 'pot' };
    group.append(drawn('rect', box));
  }
  return group;
}

/** The ribs in plan. */
function plan({ ribs, innerRadius, profile }: Outline, x: number, y: number): SVGElement {
  const rim = (profile.at(-1) ?? [1])[0];
  const group = drawn('g', { class: 'now', transform: `translate(${x} ${y})` });
  group.append(drawn('circle', { r: innerRadius, class: 'focus' }));
  const at = (radius: number, i: number): string =>
    `${(radius * Math.cos((2 * Math.PI * i) / ribs)).toFixed(1)} ${(radius * Math.sin((2 * Math.PI * i) / ribs)).toFixed(1)}`;
  const spokes = Array.from({ length: ribs }, (_, i) => `M${at(innerRadius, i)}L${at(rim, i)}`).join('');
  const edge = Array.from({ length: ribs }, (_, i) => `${i === 0 ? 'M' : 'L'}${at(rim, i)}`).join('');
  group.append(drawn('path', { d: `${spokes}${edge}Z`, class: 'curve' }));
  return group;
}

/** @param before drawn as a ghost where it is another dish */
export function paint(svg: SVGElement, now: Outline | null, before: Outline | null): void {
  if (!now) {
    svg.replaceChildren();
    return;
  }
  const shown = before ? [now, before] : [now];
  const wide = Math.max(...shown.flatMap((one) => [rimOf(one)[0], one.boardRadius]));
  const pot = now.vessel ? now.vessel.height + Math.max(0, now.vessel.offset) : 0;
  const top = Math.max(...shown.map((one) => Math.max(one.focus, rimOf(one)[1]) * 1.25), now.focus + pot);
  const low = Math.max(...shown.map(({ baseHeight }) => baseHeight));
  const gap = wide * 0.1;
  const tall = Math.max(top + low, 2 * wide) + 2 * gap;
  svg.setAttribute('viewBox', `${-wide - gap} ${-top - gap} ${4 * wide + 3 * gap} ${tall}`);
  const [rim, depth] = rimOf(now);
  svg.setAttribute(
    'aria-label',
    `The dish in section and from above: ${now.ribs} ribs, ${Math.round(2 * rim)} mm across, ${Math.round(depth)} mm deep, focus ${Math.round(now.focus)} mm above the vertex${before ? '; the previous one as a dashed line' : ''}`,
  );
  const children = [dish(now, false), plan(now, 2 * wide + gap, tall / 2 - top - gap)];
  svg.replaceChildren(...(before ? [dish(before, true)] : []), ...children);
}
