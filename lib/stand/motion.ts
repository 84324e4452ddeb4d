/**
 * The machine moved through its range: nothing runs into anything. Whatever tilts or stands is held as prisms along the
 * tilt axis, convex in the plane across it, so that two of them meet only where their stretches along the axis overlap
 * and no straight line parts their outlines. Outlines are a little larger than what they stand for, never smaller.
 */
import { add, type Point } from '../geometry/index.js';
import type { Design } from '../design/index.js';
import type { Dish } from '../dish/index.js';
import type { Counterweights } from './balance.js';
import { boltHead, type Cradle } from './cradle.js';
import type { Holder } from './holder.js';
import { hullOf, octagon } from './outline.js';
import { sideHull } from './frame-parts.js';
import { leverRing, linkRing } from './linkage-parts.js';
import { type Motion, posed } from './pose.js';
import { sightHalf, sightHeight, sightOut } from './sight.js';
import { spacerRadius } from './part-shapes.js';

/** A convex outline in x and z of the cradle, between two places along the tilt axis. */
export interface Prism {
  readonly name: string;
  readonly motion: Motion;
  readonly from: number;
  readonly to: number;
  /** The dish looking up. */
  readonly outline: readonly Point[];
}

export interface Collision {
  readonly between: readonly [string, string];
  /** Tilts at which it begins and ends, radians. */
  readonly from: number;
  readonly to: number;
}

/** Slices of the dish along the tilt axis, on either side of its middle. */
const slices = 8;
/** Height of a pipe's flange: common practice, no source. */
const flange = 40;

const box = (fromX: number, fromZ: number, toX: number, toZ: number): Point[] => [
  { x: fromX, y: fromZ },
  { x: toX, y: fromZ },
  { x: toX, y: toZ },
  { x: fromX, y: toZ },
];

const bothSides = (prism: Prism): Prism[] => [prism, { ...prism, from: -prism.to, to: -prism.from }];

/** The dish's body as a solid of revolution, sliced: each slice as wide as where it is nearest to the middle. */
function bodyPrisms({ design, dish }: { readonly design: Design; readonly dish: Dish }, cradle: Cradle): Prism[] {
  const boardRadius = (design.board.size / 2) * (design.board.shape === 'round' ? 1 : Math.SQRT2);
  const { rim, cross } = cradle;
  const rings: readonly (readonly [radius: number, z: number])[] = [
    [boardRadius, cross.top],
    [boardRadius, 0],
    [rim, dish.rimEndHeight - design.rib.rimHeight],
    [rim, dish.baseHeight + dish.depth],
  ];
  return Array.from({ length: slices }, (_, i) => [(rim * i) / slices, (rim * (i + 1)) / slices] as const).flatMap(
    ([from, to]) => {
      const corners = rings.flatMap(([radius, z]) => {
        if (radius <= from) return [];
        const half = Math.sqrt(radius ** 2 - from ** 2);
        return [
          { x: -half, y: z },
          { x: half, y: z },
        ];
      });
      return bothSides({ name: 'dish', motion: 'tilts', from, to, outline: hullOf(corners) });
    },
  );
}

/** What tilts. */
export function tiltingPrisms(
  source: { readonly design: Design; readonly dish: Dish },
  cradle: Cradle,
  weights: Counterweights,
): Prism[] {
  const { arm, axis, armY, sheet, thin, cross, lever } = cradle;
  const low = cross.top - cross.height;
  const head = { x: 0, y: axis };
  const body = hullOf([
    ...box(-arm.halfWidth, arm.bottom, arm.halfWidth, cross.top + thin + 25),
    ...octagon(head, arm.head),
  ]);
  const arms = { name: 'arm', motion: 'tilts', from: armY, to: armY + sheet } as const;
  return [
    ...bodyPrisms(source, cradle),
    ...[-1, 1].map((i): Prism => {
      const x = i * cross.x;
      return {
        name: 'cross beam',
        motion: 'tilts',
        from: -armY,
        to: armY,
        outline: hullOf([
          ...box(x - sheet / 2, low, x + sheet / 2, cross.top),
          ...box(x - cross.flange / 2, cross.top, x + cross.flange / 2, cross.top + thin),
        ]),
      };
    }),
    ...bothSides({ ...arms, outline: body }),
    ...[-1, 1].flatMap((i) =>
      bothSides({
        name: 'bolt of an arm',
        motion: 'tilts',
        from: armY + sheet,
        to: armY + sheet + boltHead,
        outline: octagon({ x: i * cross.x, y: low + cross.height / 2 }, boltHead),
      }),
    ),
    ...bothSides({ ...arms, outline: box(-arm.head, axis - arm.head, arm.head, arm.top) }),
    {
      name: 'sight',
      motion: 'tilts',
      from: armY,
      to: armY + sightOut,
      outline: box(-sightHalf, arm.top, sightHalf, arm.top + 2 * thin + sightHeight),
    },
    ...(lever === 0
      ? []
      : [
          ...bothSides({
            name: 'counterweight',
            motion: 'tilts',
            from: armY + sheet,
            to: armY + sheet + weights.thickness,
            outline: octagon({ x: 0, y: axis + lever }, weights.radius),
          }),
        ]),
  ];
}

/** What stands. */
export function standingPrisms(
  cradle: Cradle,
  holder: Holder | null,
  vesselTop: number,
  vesselRadius: number,
): Prism[] {
  const { axis, baseTop, ground, base, beam, sideY, sheet, thin, pipe, armY, linkage } = cradle;
  const outward = sideY + sheet + flange;
  const side = sideHull(cradle).map(({ x, y }) => ({ x, y: y + baseTop }));
  return [
    ...bothSides({ name: 'side frame', motion: 'stands', from: sideY, to: sideY + sheet, outline: side }),
    {
      name: 'base',
      motion: 'stands',
      from: -base.halfY,
      to: base.halfY,
      outline: box(-base.halfX, baseTop - thin, base.halfX, baseTop),
    },
    ...[-1, 1].map((i): Prism => ({
      name: 'base beam',
      motion: 'stands',
      from: -sideY,
      to: sideY,
      outline: box(i * beam.x - sheet / 2, baseTop, i * beam.x + sheet / 2, baseTop + beam.height),
    })),
    { name: 'ground', motion: 'stands', from: -outward, to: outward, outline: box(-1e5, ground - 1e5, 1e5, ground) },
    ...bothSides({
      name: 'spacer',
      motion: 'stands',
      from: armY + sheet,
      to: sideY,
      outline: octagon({ x: 0, y: axis }, Math.max(spacerRadius, pipe.outside)),
    }),
    // where the arms carry the hanger, its pipes end at the levers and these are for the arms alone
    ...(holder === null || linkage !== null
      ? bothSides({
          name: 'pipe',
          motion: 'stands',
          from: armY,
          to: outward,
          outline: octagon({ x: 0, y: axis }, linkage === null ? pipe.outside / 2 : cradle.arm.head),
        })
      : []),
    ...(holder === null ? [] : heldPrisms(cradle, holder, vesselTop, vesselRadius)),
  ];
}

/** The hanger on its pipes, with the vessel; where the arms carry it, with levers and links. */
function heldPrisms(cradle: Cradle, holder: Holder, vesselTop: number, vesselRadius: number): Prism[] {
  const { focus, linkage, pipe, armY, sideY, sheet, thin, arm } = cradle;
  const motion = linkage === null ? 'stands' : 'level';
  const lever = armY + sheet + thin;
  const middle = { x: 0, y: focus };
  return [
    ...bothSides({
      name: 'pipe',
      motion,
      from: holder.halfY,
      to: linkage === null ? sideY + sheet + flange : lever,
      outline: octagon(middle, pipe.outside / 2),
    }),
    {
      name: 'hanger',
      motion,
      from: -holder.halfY,
      to: holder.halfY,
      outline: box(-holder.halfX, focus + Math.min(holder.bottom, holder.low), holder.halfX, focus + holder.high),
    },
    {
      name: 'vessel',
      motion,
      from: -vesselRadius,
      to: vesselRadius,
      outline: box(-vesselRadius, focus + holder.bottom, vesselRadius, focus + vesselTop),
    },
    ...(linkage === null
      ? []
      : (
          [
            {
              name: 'lever',
              motion,
              from: armY + sheet,
              to: lever,
              outline: moved(leverRing(linkage, arm.head), middle),
            },
            {
              name: 'flange of the hanger',
              motion,
              from: lever,
              to: lever + flange,
              outline: octagon(middle, arm.head),
            },
            {
              name: 'bolt of a link',
              motion,
              from: lever,
              to: sideY + sheet + thin + boltHead,
              outline: octagon(add(middle, linkage.lever), linkage.half),
            },
            {
              name: 'link',
              motion: 'link',
              from: sideY + sheet,
              to: sideY + sheet + thin,
              outline: moved(linkRing(linkage), add({ x: 0, y: cradle.axis }, linkage.lever)),
            },
          ] satisfies Prism[]
        ).flatMap(bothSides)),
  ];
}

/** Arms turn on pipes and spacers, links on their bolts; the dish's hollow is judged apart. */
const touching: readonly (readonly [string, string])[] = [
  ['arm', 'pipe'],
  ['arm', 'spacer'],
  ['dish', 'pipe'],
  ['dish', 'hanger'],
  ['dish', 'vessel'],
  ['bolt of a link', 'link'],
];
const meant = (a: string, b: string): boolean =>
  touching.some(([one, other]) => (a === one && b === other) || (a === other && b === one));

const moved = (ring: readonly Point[], by: Point): Point[] => ring.map((place) => add(place, by));

/** Whether two convex outlines have more than a hair in common. */
function overlap(a: readonly Point[], b: readonly Point[]): boolean {
  const hair = 1e-6;
  const parts = (ring: readonly Point[], other: readonly Point[]): boolean =>
    ring.some((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      const [nx, ny] = [q.y - p.y, p.x - q.x];
      const size = Math.hypot(nx, ny);
      return size > 0 && other.every((r) => ((r.x - p.x) * nx + (r.y - p.y) * ny) / size >= -hair);
    });
  return !parts(a, b) && !parts(b, a);
}

/** Steps of the tilt, radians. */
const step = (0.5 * Math.PI) / 180;

/** Everything that runs into something on the range from `from` to `to` (radians), in steps of half a degree. */
export function collisions(
  prisms: readonly Prism[],
  cradle: Pick<Cradle, 'axis' | 'focus' | 'linkage'>,
  range: { readonly from: number; readonly to: number },
): Collision[] {
  const pairs = prisms.flatMap((a, i) =>
    prisms
      .slice(i + 1)
      .flatMap((b) =>
        a.motion !== b.motion && a.from < b.to - 1e-6 && b.from < a.to - 1e-6 && !meant(a.name, b.name)
          ? [[a, b] as const]
          : [],
      ),
  );
  const found = new Map<string, Collision>();
  const count = Math.ceil((range.to - range.from) / step - 1e-9);
  for (let i = 0; i <= count; i++) {
    const angle = Math.min(range.to, range.from + i * step);
    const at = new Map(prisms.map((one) => [one, one.outline.map((place) => posed(place, one.motion, cradle, angle))]));
    for (const [a, b] of pairs) {
      if (!overlap(at.get(a) ?? [], at.get(b) ?? [])) continue;
      const key = `${a.name} ${b.name}`;
      const known = found.get(key);
      found.set(key, { between: [a.name, b.name], from: known?.from ?? angle, to: angle });
    }
  }
  return [...found.values()];
}

/** How near a level vessel and its hanger come to the mirror at any tilt, mm: below 0 they would strike it. */
export function hollowClearance(dish: Dish, holder: Holder, vesselTop: number, vesselRadius: number): number {
  const corners = [
    Math.hypot(vesselRadius, vesselTop),
    Math.hypot(vesselRadius, holder.bottom),
    Math.hypot(holder.halfX, holder.halfY, holder.high),
    Math.hypot(holder.halfX, holder.halfY, holder.bottom),
  ];
  const { focusHeight, height } = dish.profile;
  let near = Infinity;
  for (let i = 0; i <= 100; i++) {
    const r = (dish.apertureRadius * i) / 100;
    near = Math.min(near, Math.hypot(r, focusHeight - height(r)));
  }
  return near - Math.max(...corners);
}
