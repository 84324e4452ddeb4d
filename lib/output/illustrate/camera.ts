/** How a picture looks at the dish: parallel projection, so that what is parallel stays so. */
import { type Vec3, vecDot } from '../../geometry/index.js';

export interface Standpoint {
  /** Direction from which the dish is seen, and height above the level, radians. */
  readonly azimuth: number;
  readonly elevation: number;
}

export interface Camera {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toward: Vec3;
}

export function camera({ azimuth: a, elevation: e }: Standpoint): Camera {
  const [ca, sa, ce, se] = [Math.cos(a), Math.sin(a), Math.cos(e), Math.sin(e)];
  return { right: [-sa, ca, 0], up: [-ca * se, -sa * se, ce], toward: [ca * ce, sa * ce, se] };
}

/** A point of the picture: x to the right, y down, and how near it is; all in units of the picture. */
export interface Seen {
  readonly x: number;
  readonly y: number;
  readonly near: number;
}

/** From space into the picture. */
export type Project = (point: Vec3) => Seen;

export interface Canvas {
  readonly project: Project;
  readonly width: number;
  readonly height: number;
  /** Units of the picture to the millimetre. */
  readonly scale: number;
}

/** A picture's share of its width and height that is kept free on each side for what is written round the dish. */
export interface Margins {
  readonly side: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * The picture that shows some points.
 * @param width of the picture, in its own units
 * @param maxHeight beyond which it is drawn smaller
 */
export function canvasFor(
  eye: Camera,
  points: readonly Vec3[],
  width: number,
  maxHeight: number,
  margins: Margins,
): Canvas {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const point of points) {
    const [x, y] = [vecDot(point, eye.right), -vecDot(point, eye.up)];
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  }
  const upright = margins.top + margins.bottom;
  const scale = Math.min(
    (width - 2 * margins.side) / Math.max(1e-6, maxX - minX),
    (maxHeight - upright) / Math.max(1e-6, maxY - minY),
  );
  const left = (width - (maxX - minX) * scale) / 2;
  return {
    width,
    height: Math.ceil((maxY - minY) * scale + upright),
    scale,
    project: (point) => ({
      x: (vecDot(point, eye.right) - minX) * scale + left,
      y: (-vecDot(point, eye.up) - minY) * scale + margins.top,
      near: vecDot(point, eye.toward) * scale,
    }),
  };
}
