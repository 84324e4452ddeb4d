/** One step of the assembly, and what its text and picture are put together from. */
import type { BookInput } from './input.js';
import type { Look } from './still.js';
import type { Solid } from '../illustrate/solids.js';
import type { SceneName } from './scenes/index.js';

export interface Step {
  readonly title: string;
  /** Whole sentences. */
  readonly text: readonly string[];
  /** How to know that it is right before going on. */
  readonly checks: readonly string[];
  /** What the picture shows, in words. */
  readonly picture: string;
  readonly scene: SceneName | 'vessel' | 'aim' | 'stand';
  /** Of a step of the stand: what is there and what is new. */
  readonly look?: (solid: Pick<Solid, 'role' | 'parts'>, index: number) => Look;
}

/** Numbers of the ribs to set first: three or four that stand evenly round the board, so that nothing tips. */
export function firstRibs(count: number): number[] {
  const stands = count % 4 === 0 ? 4 : 3;
  return Array.from({ length: stands }, (_, k) => 1 + Math.round((k * count) / stands));
}

/** `1, 2 and 3`. */
export const list = (items: readonly (number | string)[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;

/** The aid of that id by the name it bears, in lower case for the middle of a sentence; null when the design makes none. */
export function aidName({ aids }: BookInput, id: string): string | null {
  const name = aids.find((part) => part.id === id)?.name;
  return name === undefined ? null : name.charAt(0).toLowerCase() + name.slice(1);
}
