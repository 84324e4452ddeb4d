/** The eye's path round the dish: by pointer, by steps, and back to where it began. */
import { PerspectiveCamera, Spherical, Vector3 } from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';

export type ViewMove = 'left' | 'right' | 'up' | 'down' | 'in' | 'out' | 'home';

export interface Turntable {
  readonly camera: PerspectiveCamera;
  turn(turn: ViewMove): void;
  /** Goes so much farther off that the exploded dish still fits. */
  makeRoom(share: number): void;
  /** Takes up a stand of before. */
  standAt(position: readonly [number, number, number]): void;
}

export interface Stand {
  readonly azimuth: number;
  readonly elevation: number;
}

/** How much farther off the fully exploded dish is seen from. */
const space = 0.75;

/**
 * @param reach radius of what is looked at, about a point `centre` above the origin
 * @param changed called when the eye has moved
 */
export function turntable(
  canvas: HTMLCanvasElement,
  reach: number,
  centre: number,
  from: Stand,
  changed: () => void,
): Turntable {
  const camera = new PerspectiveCamera(32, 1, reach / 6, reach * 25);
  camera.up.set(0, 0, 1);
  const middle = new Vector3(0, 0, centre);
  const away = (reach * 0.95) / Math.tan(((camera.fov / 2) * Math.PI) / 180);
  const controls = new OrbitControls(camera, canvas);
  controls.target.copy(middle);
  controls.enablePan = false;
  // the wheel belongs to the page
  controls.enableZoom = false;
  controls.addEventListener('change', changed);
  // a finger that moves up or down scrolls the page
  canvas.style.touchAction = 'pan-y';
  let farther = 1;

  const settle = (): void => {
    controls.update();
    changed();
  };
  const home = (): void => {
    const { azimuth, elevation } = from;
    const level = Math.cos(elevation);
    camera.position
      .set(Math.cos(azimuth) * level, Math.sin(azimuth) * level, Math.sin(elevation))
      .multiplyScalar(away * farther)
      .add(middle);
    settle();
  };
  /** Turns by angles (radians) about the axis and from above, and scales the distance. */
  const move = (around: number, over: number, distance: number): void => {
    // three counts the polar angle from y; z is up here
    const { x, y, z } = camera.position.clone().sub(middle);
    const polar = new Spherical().setFromVector3(new Vector3(x, z, -y));
    polar.theta += around;
    polar.phi = Math.min(Math.PI - 0.05, Math.max(0.05, polar.phi + over));
    polar.radius = Math.min(away * 4, Math.max(away * 0.2, polar.radius * distance));
    const next = new Vector3().setFromSpherical(polar);
    camera.position.set(next.x, -next.z, next.y).add(middle);
    settle();
  };
  const turns: Readonly<Record<ViewMove, () => void>> = {
    left: () => move(-0.26, 0, 1),
    right: () => move(0.26, 0, 1),
    up: () => move(0, -0.2, 1),
    down: () => move(0, 0.2, 1),
    in: () => move(0, 0, 0.85),
    out: () => move(0, 0, 1 / 0.85),
    home,
  };
  home();
  return {
    camera,
    turn: (turn) => turns[turn](),
    makeRoom: (share) => {
      const wanted = 1 + space * share;
      move(0, 0, wanted / farther);
      farther = wanted;
    },
    standAt: (position) => {
      camera.position.fromArray([...position]);
      settle();
    },
  };
}
