/**
 * A shop drawing: what a person makes a part by. Pages of entities on paper, mm from the lower left corner, y up; and
 * for every printed measure what it states of the part, so that the drawing can be held against it.
 */
import type { Point, Vertex } from '../../geometry/index.js';
import type { FeatureSketch, RingSketch, ScribedSketch } from './sketch.js';

export type Axis = 'x' | 'y';

/**
 * What a printed measure states. Rings count as in the part: 0 is the outline, k the k-th opening. Corners and edges
 * count as in the ring's sketch; features by their letter.
 */
export type Fact =
  | {
      readonly of: 'corner';
      readonly ring: number;
      readonly corner: number;
      readonly axis: Axis;
      /** The printed value is this far on the other side of the middle line. */
      readonly opposite?: true;
    }
  | { readonly of: 'rounding'; readonly ring: number; readonly corner: number }
  | { readonly of: 'arc'; readonly ring: number; readonly edge: number; readonly what: 'radius' | Axis }
  | { readonly of: 'circle'; readonly ring: number; readonly what: 'diameter' | Axis }
  /** Distance of the flats of a regular polygon from its middle, and the direction of the first. */
  | { readonly of: 'flats'; readonly ring: number; readonly what: 'radius' | 'direction' }
  | { readonly of: 'curve'; readonly curve: string; readonly station: number; readonly what: 'along' | 'height' }
  | {
      readonly of: 'hole';
      readonly feature: string;
      readonly what: 'diameter' | 'depth' | 'countersink' | Axis;
    }
  /** A point of a scribed line; `radius` of the arc about the middle that leads on from it. */
  | { readonly of: 'line'; readonly feature: string; readonly point: number; readonly axis: Axis | 'radius' }
  /** A hole into an edge, by its index in the part; its direction is counted anticlockwise from the x axis. */
  | {
      readonly of: 'edge-hole';
      readonly hole: number;
      readonly what: 'diameter' | 'length' | 'height' | 'direction' | Axis;
    }
  /** The middle of a short mark, by the index of the line among the part's. */
  | { readonly of: 'pin'; readonly line: number; readonly axis: Axis }
  | { readonly of: 'pattern'; readonly feature: string; readonly what: 'count' | 'first' | 'pitch' };

/** Line types and widths by what they are for: `lines.ts`. */
export type LineKind =
  'outline' | 'hidden' | 'centre' | 'thin' | 'mark' | 'optical' | 'seat' | 'phantom' | 'hatch' | 'frame' | 'rule';

export interface Stroke {
  readonly line: LineKind;
  readonly closed: boolean;
  readonly vertices: readonly Vertex[];
  /** `#RRGGBB`; black, or the ink of the page, where it is left out. */
  readonly colour?: string;
}

/** A line of text on its base line. */
export interface Words {
  readonly text: string;
  readonly at: Point;
  /** Of the capitals, mm. */
  readonly height: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Turned anticlockwise: 0 is read from below, 90 from the right. */
  readonly turnDeg: number;
  readonly states: readonly Fact[];
}

export type EntityKind =
  | 'outline'
  | 'hidden'
  | 'centre-line'
  | 'mark'
  | 'dimension'
  | 'leader'
  | 'label'
  | 'hatch'
  | 'grain-arrow'
  | 'edge-mark'
  | 'table'
  | 'notes'
  | 'title-block'
  | 'frame';

export interface Entity {
  readonly kind: EntityKind;
  readonly strokes: readonly Stroke[];
  /** Filled: arrow heads. */
  readonly solids: readonly (readonly Point[])[];
  readonly words: readonly Words[];
}

export interface ShopPage {
  readonly width: number;
  readonly height: number;
  readonly entities: readonly Entity[];
}

/** What a person sees of a part before reading a number: how many corners, which edges are straight. */
export interface Sketch {
  readonly rings: readonly RingSketch[];
  readonly features: readonly FeatureSketch[];
  /** Indices among the part's edge holes. */
  readonly edgeHoles: readonly number[];
  /** Short marks: indices among the part's line marks. */
  readonly pins: readonly number[];
  readonly scribed: readonly ScribedSketch[];
  /** The part was turned by this about its origin, then its `datum` made the origin of all measures. */
  readonly turnDeg: number;
  readonly datum: Point;
}

export interface ShopDrawing {
  /** Of the part, or of the assembly. */
  readonly id: string;
  readonly title: string;
  /** Of ISO 5455: `1:5`. */
  readonly scale: string;
  readonly pages: readonly ShopPage[];
  /** Null where no single part is drawn. */
  readonly sketch: Sketch | null;
}
