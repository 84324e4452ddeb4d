/** The picture of each step, by what the step does. */
import type { Scene } from '../../illustrate/index.js';
import { battens } from './battens.js';
import * as frame from './frame.js';
import * as more from './more.js';
import * as skin from './skin.js';
import type { Stage } from './stage.js';

const shots = {
  overview: frame.overview,
  join: more.join,
  board: frame.board,
  hub: (stage: Stage) => frame.hub(stage, 'all'),
  'lower-disc': (stage: Stage) => frame.hub(stage, 'lower'),
  cleat: frame.cleat,
  'first-ribs': frame.firstRibsDown,
  'other-ribs': frame.otherRibs,
  'upper-disc': more.upperDisc,
  curve: skin.curve,
  seal: skin.seal,
  panels: skin.panels,
  battens: battens,
  mirror: skin.mirror,
  film: skin.film,
  'first-light': skin.firstLight,
  apart: more.apart,
} as const;

export type SceneName = keyof typeof shots;

/** The scene of a step. */
export function sceneOf(name: SceneName, stage: Stage, label: string): Scene {
  return { from: stage.from, ...shots[name](stage), label };
}

export type { Stage };
export { standScene } from './more.js';
