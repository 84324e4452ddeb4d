/** The dish in space, drawn when something has changed and not otherwise. */
import { Color, DirectionalLight, HemisphereLight, Scene, WebGLRenderer } from 'three';
import type { Model } from '../../lib/output/illustrate/solids.js';
import { addPieces } from './pieces.js';
import { type Stand, type ViewMove, turntable } from './turntable.js';

interface BookModel extends Model {
  readonly view: Stand;
}

/** Where the view stands, so that a page that is made again can take it up. */
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

function readModel(): BookModel | null {
  const text = document.getElementById('model')?.textContent;
  return text ? (JSON.parse(text) as BookModel) : null;
}

function lamps(scene: Scene): void {
  scene.add(new HemisphereLight(0xffffff, 0x8a8070, 1.9));
  const sun = new DirectionalLight(0xffffff, 2.1);
  sun.position.set(0.4, -0.5, 0.9);
  scene.add(sun);
}

const keys: Readonly<Record<string, ViewMove>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  '+': 'in',
  '=': 'in',
  '-': 'out',
  '0': 'home',
};

function listen(stage: HTMLElement, turn: (turn: ViewMove) => void): void {
  for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-turn]'))
    button.addEventListener('click', () => turn(button.dataset['turn'] as ViewMove));
  stage.addEventListener('keydown', (event) => {
    const asked = keys[event.key];
    if (asked === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    turn(asked);
  });
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
  canvas.setAttribute('aria-hidden', 'true');
  stage.append(canvas);
  document.documentElement.classList.add('spatial');

  const renderer = new WebGLRenderer({ canvas, context, antialias: true });
  const scene = new Scene();
  lamps(scene);
  const pieces = addPieces(scene, model);
  let spreadNow = 0;
  let waiting = false;
  const draw = (): void => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      renderer.render(scene, table.camera);
      hold({ position: table.camera.position.toArray(), spread: spreadNow });
    });
  };
  const table = turntable(canvas, model.reach, model.centre, model.view, draw);
  const spread = (share: number): void => {
    spreadNow = share;
    pieces.spread(share);
    table.makeRoom(share);
  };
  const colour = (): void => {
    const style = getComputedStyle(document.documentElement);
    const of = (name: string) => new Color(style.getPropertyValue(`--${name}`).trim());
    pieces.colour(of);
    scene.background = of('leaf');
    draw();
  };
  const fit = (): void => {
    const { clientWidth: width, clientHeight: height } = stage;
    if (width === 0 || height === 0) return;
    renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    renderer.setSize(width, height, false);
    table.camera.aspect = width / height;
    table.camera.updateProjectionMatrix();
    draw();
  };

  listen(stage, (turn) => table.turn(turn));
  const before = held();
  const slider = document.getElementById('spread');
  if (slider instanceof HTMLInputElement) {
    // a browser may bring back the slider of an earlier visit
    slider.value = String(100 * (before?.spread ?? 0));
    slider.addEventListener('input', () => spread(Number(slider.value) / 100));
  }
  spread(before?.spread ?? 0);
  if (before) table.standAt(before.position);
  colour();
  new ResizeObserver(fit).observe(stage);
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', colour);
  return {
    light: (part) => {
      pieces.light(part);
      draw();
    },
  };
}
