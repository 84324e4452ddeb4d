/** What is seen of a ring and of a repeated feature without its measures. */

export type EdgeSketch =
  | { readonly kind: 'straight' }
  /** `about` where the middle of the arc is the drawing's origin, or is measured itself. */
  | { readonly kind: 'arc'; readonly anticlockwise: boolean; readonly about: 'origin' | 'measured' | 'neither' }
  /** A curve given by heights along it; backwards where the ring runs it from its far end. */
  | {
      readonly kind: 'curve';
      readonly name: string;
      readonly along: 'x' | 'y';
      readonly backwards: boolean;
      /** The other side of a symmetric part. */
      readonly opposite: boolean;
    };

/** A corner, rounded where its arc touches both neighbours; the measures are those of the sharp corner. */
export interface CornerSketch {
  readonly rounded: boolean;
}

export type RingSketch =
  | { readonly kind: 'circle' }
  | { readonly kind: 'regular'; readonly sides: number }
  /** Corners of one of `times` equal parts round the origin; edge i leaves corner i, the last to the next part. */
  | {
      readonly kind: 'repeated';
      readonly times: number;
      readonly corners: readonly CornerSketch[];
      readonly edges: readonly EdgeSketch[];
    }
  | { readonly kind: 'corners'; readonly corners: readonly CornerSketch[]; readonly edges: readonly EdgeSketch[] }
  /** Like another of its pattern. */
  | { readonly kind: 'copy' };

/** Something that is there once or several times, evenly round the origin. */
export interface FeatureSketch {
  readonly id: string;
  readonly kind: 'hole' | 'ring' | 'line';
  readonly places: 'single' | 'round' | 'partly-round';
  /** Indices among the part's holes, rings or line marks, in the order of the copies. */
  readonly of: readonly number[];
}

/** A closed line mark, measured as a ring is; its measures name it by a number beyond those of the part's rings. */
export interface ScribedSketch {
  /** Index among the part's line marks. */
  readonly line: number;
  readonly ring: number;
  readonly shape: RingSketch;
}
