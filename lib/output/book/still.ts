/** The dish as the book's model has it, as pieces of a picture. */
import { type Look, type Piece, picture, type Standpoint } from '../illustrate/index.js';
import type { Markup } from '../markup.js';
import { type Vec3, vecTimes } from '../../geometry/index.js';
import type { Model, Solid } from '../illustrate/solids.js';

export type { Look };

export interface View extends Standpoint {
  /** 0 together to 1 fully exploded. */
  readonly spread: number;
  readonly look: (solid: Solid, index: number) => Look;
  /** What the picture shows, for those who do not see it. */
  readonly label: string;
}

/** The copies that are not hidden; `moved` pulls each away from its place. */
export function piecesOf(
  { solids }: Model,
  look: View['look'],
  moved: (solid: Solid, index: number) => Vec3 = () => [0, 0, 0],
): Piece[] {
  return solids.flatMap((body) =>
    body.instances.flatMap(({ frame }, index): Piece[] => {
      const seen = look(body, index);
      return seen === 'hidden' ? [] : [{ body, frame, moved: moved(body, index), look: seen }];
    }),
  );
}

/** The picture of the model alone. */
export function still(model: Model, { spread, look, label, ...from }: View): Markup {
  const pieces = piecesOf(model, look, ({ instances }, i) => vecTimes(instances[i]?.away ?? [0, 0, 0], spread));
  return picture({ pieces, notes: [], from, label });
}

/** Everything shown, nothing set apart. */
export const all = (): Look => 'there';

/** Height of the eye from which no near panel shows its back: a little over the rim's slope. */
export function safeElevation(rimSlope: number): number {
  return Math.max((36 * Math.PI) / 180, Math.min(rimSlope + (7 * Math.PI) / 180, (80 * Math.PI) / 180));
}
