/** The dish in space, drawn when something has changed and not otherwise. */
import {
  BufferGeometry,
  Color,
  DirectionalLight,
  Float32BufferAttribute,
  Group,
  HemisphereLight,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshStandardMaterial,
  PerspectiveCamera,
  Scene,
  Spherical,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { facesOf, type Instance, type Model, type Solid } from '../lib/output/book/solids.js';
import { trianglesOf } from './triangles.js';

interface BookModel extends Model {
  readonly view: { readonly azimuth: number; readonly elevation: number };
}

/** Where the view stands, so that a page that is made anew can take it up again. */
interface Standing {
  readonly position: readonly [number, number, number];
  readonly spread: number;
}

/** The live page's frame keeps the view in its data; a book that is opened by itself has none. */
function held(): Standing | null {
  const kept = (window.frameElement as HTMLElement | null)?.dataset['standing'];
  return kept === undefined ? null : (JSON.parse(kept) as Standing);
}

function hold(standing: Standing): void {
  const frame = window.frameElement as HTMLElement | null;
  if (frame) frame.dataset['standing'] = JSON.stringify(standing);
}

export interface SpatialView {
  /** Lights up the solids of a part; null puts the light out. */
  light(part: string | null): void;
}

function linesOf(solid: Solid): number[] {
  const points: number[] = [];
  const ring = (corners: readonly (readonly number[])[]) =>
    corners.forEach((from, i) => points.push(...from, ...(corners[(i + 1) % corners.length] ?? from)));
  for (const [from, to] of solid.scribes ?? [])
    if (solid.shape.kind === 'flat') {
      const top = solid.shape.z + solid.shape.thickness;
      points.push(...from, top, ...to, top);
    }
  if (solid.shape.kind !== 'bent') {
    const [top, bottom] = facesOf(solid.shape);
    for (const face of [top, bottom]) if (face) [face.ring, ...face.holes].forEach(ring);
    return points;
  }
  // a bent sheet shows its outline only
  const { sections } = solid.shape;
  // a panel's upper face lies under its mirror, where its lines would show through
  const face = solid.role === 'panel' ? 'bottom' : 'top';
  const side = (sign: number) => sections.map((at) => [at[face][0], sign * at.halfWidth, at[face][1]]);
  ring([...side(-1), ...side(1).reverse()]);
  return points;
}

function geometryOf(solid: Solid): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(facesOf(solid.shape).flatMap(trianglesOf), 3));
  geometry.computeVertexNormals();
  return geometry;
}

function place(group: Group, { turn, lift, out, up }: Instance, spread: number): void {
  group.rotation.z = turn;
  group.position.set(Math.cos(turn) * out * spread, Math.sin(turn) * out * spread, lift + up * spread);
}

function readModel(): BookModel | null {
  const text = document.getElementById('model')?.textContent;
  return text ? (JSON.parse(text) as BookModel) : null;
}

/**
 * Draws the dish on the stage.
 * @returns null where the browser has no way of drawing in space; the drawn picture then stays
 */
export function spatialDish(stage: HTMLElement): SpatialView | null {
  const model = readModel();
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('webgl2', { antialias: true });
  if (!model || !context) return null;
  document.documentElement.classList.add('spatial');
  canvas.setAttribute('aria-hidden', 'true');
  stage.append(canvas);

  const renderer = new WebGLRenderer({ canvas, context, antialias: true });
  const scene = new Scene();
  const camera = new PerspectiveCamera(32, 1, model.reach / 50, model.reach * 40);
  camera.up.set(0, 0, 1);
  scene.add(new HemisphereLight(0xffffff, 0x8a8070, 1.9));
  const sun = new DirectionalLight(0xffffff, 2.1);
  sun.position.set(0.4, -0.5, 0.9);
  scene.add(sun);

  const ink = new LineBasicMaterial();
  const materials = new Map<string, MeshStandardMaterial>();
  const pieces = model.solids.flatMap((solid) => {
    const material =
      materials.get(solid.role) ??
      new MeshStandardMaterial({ roughness: 0.8, polygonOffset: true, polygonOffsetFactor: 2, polygonOffsetUnits: 4 });
    materials.set(solid.role, material);
    const geometry = geometryOf(solid);
    const lines = new BufferGeometry();
    lines.setAttribute('position', new Float32BufferAttribute(linesOf(solid), 3));
    return solid.instances.map((instance) => {
      const group = new Group();
      const mesh = new Mesh(geometry, material);
      group.add(mesh, new LineSegments(lines, ink));
      scene.add(group);
      return { solid, instance, group, mesh };
    });
  });
  const lit = new MeshStandardMaterial({
    roughness: 0.8,
    polygonOffset: true,
    polygonOffsetFactor: 2,
    polygonOffsetUnits: 4,
  });

  let waiting = false;
  const draw = (): void => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      renderer.render(scene, camera);
      hold({ position: camera.position.toArray(), spread: spreadNow });
    });
  };
  const colour = (): void => {
    const style = getComputedStyle(document.documentElement);
    const value = (name: string) => new Color(style.getPropertyValue(`--${name}`).trim());
    for (const [role, material] of materials) material.color = value(role);
    lit.color = value('lit');
    ink.color = value('ink');
    scene.background = value('leaf');
    draw();
  };
  let spreadNow = 0;
  const spread = (share: number): void => {
    spreadNow = share;
    for (const { instance, group } of pieces) place(group, instance, share);
    draw();
  };

  const centre = new Vector3(0, 0, model.centre);
  const controls = new OrbitControls(camera, canvas);
  controls.target.copy(centre);
  controls.enablePan = false;
  controls.enableZoom = false;
  controls.enableDamping = false;
  controls.addEventListener('change', draw);
  canvas.style.touchAction = 'pan-y';
  const away = (model.reach * 0.95) / Math.tan(((camera.fov / 2) * Math.PI) / 180);
  const home = (): void => {
    const { azimuth, elevation } = model.view;
    const direction = new Vector3(
      Math.cos(azimuth) * Math.cos(elevation),
      Math.sin(azimuth) * Math.cos(elevation),
      Math.sin(elevation),
    );
    camera.position.copy(centre).addScaledVector(direction, away);
    controls.update();
    draw();
  };
  /** Turns by angles (radians) about the axis and from above, and scales the distance. */
  const move = (around: number, over: number, distance: number): void => {
    // three counts the polar angle from y; z is up here
    const offset = camera.position.clone().sub(centre);
    const polar = new Spherical().setFromVector3(new Vector3(offset.x, offset.z, -offset.y));
    polar.theta += around;
    polar.phi = Math.min(Math.PI - 0.05, Math.max(0.05, polar.phi + over));
    polar.radius = Math.min(away * 3, Math.max(away * 0.2, polar.radius * distance));
    const next = new Vector3().setFromSpherical(polar);
    camera.position.set(next.x, -next.z, next.y).add(centre);
    controls.update();
    draw();
  };
  const turns: Readonly<Record<string, () => void>> = {
    left: () => move(-0.26, 0, 1),
    right: () => move(0.26, 0, 1),
    up: () => move(0, -0.2, 1),
    down: () => move(0, 0.2, 1),
    in: () => move(0, 0, 0.85),
    out: () => move(0, 0, 1 / 0.85),
    home,
  };
  const keys: Readonly<Record<string, string>> = {
    ArrowLeft: 'left',
    ArrowRight: 'right',
    ArrowUp: 'up',
    ArrowDown: 'down',
    '+': 'in',
    '=': 'in',
    '-': 'out',
    '0': 'home',
  };
  for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-turn]'))
    button.addEventListener('click', () => turns[button.dataset['turn'] ?? '']?.());
  stage.addEventListener('keydown', (event) => {
    const turn = turns[keys[event.key] ?? ''];
    if (!turn || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    turn();
  });
  const slider = document.getElementById('spread');
  if (slider instanceof HTMLInputElement) slider.addEventListener('input', () => spread(Number(slider.value) / 100));

  const fit = (): void => {
    const { clientWidth: width, clientHeight: height } = stage;
    if (width === 0 || height === 0) return;
    renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    renderer.setSize(width, height, false);
    camera.aspect = width / height;
    camera.updateProjectionMatrix();
    draw();
  };
  new ResizeObserver(fit).observe(stage);
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', colour);
  colour();
  home();
  const before = held();
  if (before) {
    camera.position.fromArray(before.position);
    controls.update();
    if (slider instanceof HTMLInputElement) slider.value = String(100 * before.spread);
  }
  spread(before?.spread ?? 0);
  fit();
  return {
    light: (part) => {
      for (const { solid, mesh } of pieces)
        mesh.material =
          part !== null && solid.parts.includes(part) ? lit : (materials.get(solid.role) ?? mesh.material);
      draw();
    },
  };
}
