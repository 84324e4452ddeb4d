/** Whether the machine stands: gravity against wind about each edge of its castors, tilt by tilt. N, mm, kg, radians. */
import type { Vec3 } from '../geometry/index.js';
import { type DishFace, plateForce, sideForce } from './wind.js';

/** m/s². */
export const gravity = 9.81;

/** One state of the machine, x towards the sun, z from the ground. */
export interface Standing {
  readonly tilt: number;
  /** All masses together, ballast left out. */
  readonly kg: number;
  readonly centre: Vec3;
  /** Middle of the aperture's plane. */
  readonly face: Vec3;
}

/** Half the castors' contact rectangle, and the height in which ballast lies in its middle. */
export interface Stance {
  readonly halfX: number;
  readonly halfY: number;
}

interface Load {
  readonly at: Vec3;
  readonly force: Vec3;
}

/** Loads of one wind: from front or back square to the aperture with its middle moved either shift, or from a side. */
function windLoads({ tilt, face }: Standing, dish: DishFace, speed: number): Load[] {
  const [sin, cos] = [Math.sin(tilt), Math.cos(tilt)];
  const square = plateForce(dish, tilt, speed);
  const off = dish.radius / 2;
  const plate = [1, -1].flatMap((sign) =>
    [-1, 0, 1].map((shift): Load => ({
      at: [face[0] + shift * off * cos, face[1], face[2] - shift * off * sin],
      force: [sign * square * sin, 0, sign * square * cos],
    })),
  );
  const side = sideForce(dish, speed);
  const edge: Load[] = [
    [side, 0],
    [-side, 0],
    [0, side],
    [0, -side],
  ].map(([x = 0, y = 0]) => ({ at: face, force: [x, y, 0] }));
  return [...plate, ...edge];
}

/** Moments about one edge: what holds without ballast, what tips, and the lever of ballast. N·mm. */
export interface EdgeMoments {
  readonly holding: number;
  readonly tipping: number;
  readonly lever: number;
}

function edgeMoments({ kg, centre }: Standing, { halfX, halfY }: Stance, { at, force }: Load): EdgeMoments[] {
  return ([0, 1] as const).flatMap((axis) =>
    [1, -1].map((sign): EdgeMoments => {
      const lever = axis === 0 ? halfX : halfY;
      const out = (place: Vec3): number => sign * place[axis];
      return {
        holding: kg * gravity * (lever - out(centre)),
        // level force by its height, upward force by its distance from the edge
        tipping: sign * force[axis] * at[2] + force[2] * (lever - out(at)),
        lever,
      };
    }),
  );
}

export const tippingFactor = 1.5;

/** The least factor of holding over tipping over all winds and edges; Infinity without wind. */
export function factorOf(
  states: readonly Standing[],
  stance: Stance,
  dish: DishFace,
  speed: number,
  ballastKg: number,
): number {
  let min = Infinity;
  for (const state of states)
    for (const load of windLoads(state, dish, speed))
      for (const { holding, tipping, lever } of edgeMoments(state, stance, load)) {
        const holds = holding + ballastKg * gravity * lever;
        if (holds <= 0) return 0;
        if (tipping > 0) min = Math.min(min, holds / tipping);
      }
  return min;
}

/** Ballast in the middle of the base that brings every factor to `wanted`, kg; 0 where none is needed. */
export function ballastFor(
  states: readonly Standing[],
  stance: Stance,
  dish: DishFace,
  speed: number,
  wanted = tippingFactor,
): number {
  let kg = 0;
  for (const state of states)
    for (const load of windLoads(state, dish, speed))
      for (const { holding, tipping, lever } of edgeMoments(state, stance, load))
        kg = Math.max(kg, (wanted * tipping - holding) / (gravity * lever));
  return kg;
}

/** The wind in which the least factor is just `wanted`, m/s: forces go with the square of the speed. */
export function windFor(
  states: readonly Standing[],
  stance: Stance,
  dish: DishFace,
  ballastKg: number,
  wanted = tippingFactor,
): number {
  const atOne = factorOf(states, stance, dish, 1, ballastKg);
  return atOne === 0 ? 0 : Math.sqrt(atOne / wanted);
}
