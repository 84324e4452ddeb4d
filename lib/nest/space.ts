/** One sheet as the nest sees it: a rectangle that parts keep the margin from, and places that they may not touch. */
import type { Point, Polygon } from '../geometry/index.js';
import { ringArea } from './clipping.js';
import { growOuter } from './grow.js';
import { outsideFit, type NoFit, type NoFits } from './no-fit.js';
import { withoutCollinear, type NestShape, type Shapes } from './shape.js';
import type { NestStock } from './types.js';

/** Something fixed that parts keep off. */
export interface Obstacle {
  readonly x: number;
  readonly y: number;
  /** The region that the moving shape's reference point keeps out of, seen from x, y. */
  noFit(moving: NestShape): NoFit;
}

/** A piece of stock. Several sheets may share one space. */
export interface Space {
  readonly stock: NestStock;
  /** Box of the stock; of a roll the greatest length. */
  readonly width: number;
  readonly height: number;
  readonly margin: number;
  readonly obstacles: readonly Obstacle[];
  /** Greatest area that parts could cover (mm²). */
  readonly area: number;
  /** From the space's lower left corner to the stock's own origin. */
  readonly originX: number;
  readonly originY: number;
}

function keepOut(ring: Polygon, shapes: Shapes, noFits: NoFits, dx: number, dy: number): Obstacle {
  const laid = shapes.orient(ring, [], 0, false);
  return {
    x: dx - laid.originX,
    y: dy - laid.originY,
    noFit: (moving) => noFits.of(laid.shape, moving),
  };
}

function frame(outline: Polygon, margin: number, dx: number, dy: number): Obstacle {
  const within = growOuter(outline, -margin).map((ring): Point[] => [...ring].reverse());
  const known = new Map<NestShape, NoFit>();
  return {
    x: dx,
    y: dy,
    noFit: (moving) => {
      const made = known.get(moving) ?? outsideFit(within, moving);
      known.set(moving, made);
      return made;
    },
  };
}

/** The space of a stock. */
export function spaceOf(stock: NestStock, shapes: Shapes, noFits: NoFits): Space {
  const { shape, margin } = stock;
  if (shape.kind === 'offcut') {
    const outline = withoutCollinear(shape.outline);
    const ring = ringArea(outline) < 0 ? outline.reverse() : outline;
    const minX = Math.min(...ring.map(({ x }) => x));
    const minY = Math.min(...ring.map(({ y }) => y));
    const width = Math.max(...ring.map(({ x }) => x)) - minX;
    const height = Math.max(...ring.map(({ y }) => y)) - minY;
    const rectangular = ring.length === 4 && Math.abs(ringArea(ring) - width * height) < 1e-6;
    return {
      stock,
      width,
      height,
      margin,
      obstacles: [
        ...(rectangular ? [] : [frame(ring, margin, -minX, -minY)]),
        ...stock.keepOuts.map((k) => keepOut(k, shapes, noFits, -minX, -minY)),
      ],
      area: ringArea(ring),
      originX: minX,
      originY: minY,
    };
  }
  const width = shape.kind === 'sheet' ? shape.width : shape.maxLength;
  const { height } = shape;
  const obstacles = stock.keepOuts.map((ring) => keepOut(ring, shapes, noFits, 0, 0));
  const area = Math.max(0, width - 2 * margin) * Math.max(0, height - 2 * margin);
  return { stock, width, height, margin, obstacles, area, originX: 0, originY: 0 };
}
