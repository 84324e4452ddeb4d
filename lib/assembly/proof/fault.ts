/** What is wrong with an assembly, before it is reported in the user's unit. */
import type { JointKind } from '../types.js';

/** Lengths in mm. */
export type AssemblyFault =
  /** Two parts are in one place, by that depth. */
  | { readonly kind: 'overlap'; readonly between: readonly [string, string]; readonly depth: number }
  /** Faces that are made to meet stay apart. */
  | { readonly kind: 'gap'; readonly between: readonly [string, string]; readonly gap: number }
  /** A rib has more or less play in its slot than the design asks for. */
  | {
      readonly kind: 'play';
      readonly between: readonly [string, string];
      readonly play: number;
      readonly wanted: number;
    }
  /** A part stands out of another that has to lie flat. */
  | { readonly kind: 'proud'; readonly part: string; readonly of: string; readonly by: number }
  /** Fewer or more parts than the design asks for. */
  | { readonly kind: 'parts'; readonly what: string; readonly found: number; readonly wanted: number }
  /** A fastener meets no hole in a part, or one that is off its axis. */
  | { readonly kind: 'hole'; readonly joint: JointKind; readonly part: string; readonly off: number | null }
  /** A hole is too wide or too narrow for its fastener. */
  | {
      readonly kind: 'hole-size';
      readonly joint: JointKind;
      readonly part: string;
      readonly diameter: number;
      readonly shank: number;
    }
  /** A fastener comes out of the wood, or would have to be shorter than any that is sold. */
  | { readonly kind: 'length'; readonly joint: JointKind; readonly length: number | null; readonly wood: number }
  /** Too little thread in the last part. */
  | { readonly kind: 'bite'; readonly joint: JointKind; readonly bite: number; readonly needed: number }
  /** Too little wood beside a hole. */
  | {
      readonly kind: 'edge';
      readonly joint: JointKind;
      readonly part: string;
      readonly wood: number;
      readonly needed: number;
    }
  /** Too little clearance for a driver over a screw. */
  | { readonly kind: 'reach'; readonly joint: JointKind; readonly clearance: number; readonly needed: number }
  /** A mark lies on the face that the builder does not see, or not where its part goes. */
  | { readonly kind: 'mark'; readonly part: string; readonly what: string }
  /** Fewer or more fasteners than the design asks for. */
  | { readonly kind: 'count'; readonly joint: JointKind; readonly found: number; readonly wanted: number };
