/** Numbers beside pieces that are too small for them: in the free room of the sheet, with a line to the piece. */
import {
  type Bounds,
  bounds,
  cross,
  flatten,
  placeVertices,
  type Point,
  rotate,
  subtract,
} from '../../geometry/index.js';
import { type Part, type PlacedPart, ringsOf } from '../../part/index.js';
import { textWidth } from '../shop/font.js';
import { overlap, passes, type Segment } from '../shop/free-place.js';
import { inMaterial, segmentsOf } from './label.js';
import type { LaidPicture } from './lengths.js';

/** Edges are followed this closely, of a letter's height. */
const TOLERANCE = 0.1;
/** Clear room round a number, in heights of its capitals. */
const AIR = 0.3;
/** Directions and distances that are tried, nearest first; distances in heights of the capitals. */
const DIRECTIONS = 24;
const FARTHEST = 30;

interface Aside extends Point {
  readonly height: number;
  readonly leader: readonly [Point, Point];
}

interface Piece {
  readonly part: string;
  readonly edges: readonly Segment[];
  readonly box: Bounds;
}

/** Whether two straight lines cross. */
function crossing({ a, b }: Segment, { a: c, b: d }: Segment): boolean {
  const side = (p: Point, q: Point, r: Point): number => cross(subtract(q, p), subtract(r, p));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

export class Asides {
  readonly #pieces: readonly Piece[];
  readonly #picture: LaidPicture;
  readonly #height: number;
  /** Numbers that stand, and lines to their pieces. */
  readonly #taken: { readonly box: Bounds; readonly leader: Segment | null }[] = [];

  /** @param height of the capitals, mm of the sheet */
  constructor(picture: LaidPicture, parts: readonly Part[], height: number) {
    this.#picture = picture;
    this.#height = height;
    this.#pieces = picture.placed.flatMap((at) => {
      const part = parts.find(({ id }) => id === at.part);
      if (part === undefined) return [];
      const edges = ringsOf(part).flatMap((ring) =>
        segmentsOf(flatten(placeVertices(ring, at), TOLERANCE * height, 'on'), true),
      );
      return [{ part: at.part, edges, box: bounds(edges.map(({ b }) => ({ ...b, bulge: 0 }))) }];
    });
  }

  /** Keeps numbers and their lines off a text that stands on its piece. @param wide of the text, mm of the sheet */
  keepOff(
    { x, y, angleDeg, height }: Point & { readonly angleDeg: number; readonly height: number },
    wide: number,
  ): void {
    const turn = (angleDeg * Math.PI) / 180;
    const corners = [-wide / 2, wide / 2].flatMap((along) =>
      [-height / 2, height / 2].map((up) => {
        const off = rotate({ x: along, y: up }, turn);
        return { x: x + off.x, y: y + off.y, bulge: 0 };
      }),
    );
    this.#taken.push({ box: bounds(corners), leader: null });
  }

  /**
   * The nearest free place beside a piece; null where there is none within reach.
   * @param over whether its line may run over other parts
   */
  placeFor(part: Part, at: PlacedPart, text: string, over: boolean): Aside | null {
    const height = this.#height;
    const own = bounds(placeVertices(part.outline, at));
    const middle = { x: (own.minX + own.maxX) / 2, y: (own.minY + own.maxY) / 2 };
    const half = { x: (textWidth(text, 1) / 2 + AIR) * height, y: (0.5 + AIR) * height };
    const radius = Math.min(own.maxX - own.minX, own.maxY - own.minY) / 2;
    for (let far = radius + half.y; far < radius + FARTHEST * height; far += height / 2)
      for (let i = 0; i < DIRECTIONS; i++) {
        const angle = (2 * Math.PI * i) / DIRECTIONS;
        const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
        const [x, y] = [middle.x + far * cos, middle.y + far * sin];
        const box = { minX: x - half.x, minY: y - half.y, maxX: x + half.x, maxY: y + half.y };
        const reach = Math.min(half.x / Math.max(1e-9, Math.abs(cos)), half.y / Math.max(1e-9, Math.abs(sin)));
        const leader: Segment = { a: { x: x - reach * cos, y: y - reach * sin }, b: middle };
        if (!this.#free(box, leader) || (!over && this.#crosses(leader, part.id))) continue;
        this.#taken.push({ box, leader });
        return { x, y, height, leader: [leader.a, leader.b] };
      }
    return null;
  }

  /** Whether a line runs over another part; over others of its kind it misleads nobody. */
  #crosses(leader: Segment, part: string): boolean {
    return this.#pieces.some((piece) => piece.part !== part && piece.edges.some((edge) => crossing(leader, edge)));
  }

  #free(box: Bounds, leader: Segment): boolean {
    const { lengths, width, height } = this.#picture;
    const high = height - lengths[0].bottom;
    const within = lengths.some(
      ({ from, to, bottom }) =>
        box.minX >= 0 && box.maxX <= Math.min(width, to - from) && box.minY >= bottom && box.maxY <= bottom + high,
    );
    if (!within) return false;
    if (
      this.#taken.some(
        (one) => overlap(box, one.box) || (one.leader && passes(one.leader, box)) || passes(leader, one.box),
      )
    )
      return false;
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    return !this.#pieces.some(
      (piece) =>
        overlap(box, piece.box) && (piece.edges.some((edge) => passes(edge, box)) || inMaterial(piece.edges, middle)),
    );
  }
}
