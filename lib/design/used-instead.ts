/** Keys that stand in for those that a file leaves out: a default follows from them, so a fault in it is theirs. */
import type { KeyPath } from '../diagnostic/index.js';
import type { DesignFile } from './schema.js';

type Section = keyof DesignFile;

/** By section; those that every file has are not in it. */
const bySection: Readonly<Partial<Record<Section, readonly [Section, ...string[]]>>> = {
  stock: ['materials'],
  hub: ['dish', 'ribs'],
  cleat: ['board', 'size'],
  board: ['dish', 'aperture'],
  reflector: ['panel', 'material'],
  vessel: ['dish', 'focalLength'],
  load: ['vessel', 'diameter'],
  stand: ['board', 'material'],
  sun: ['dish', 'focalLength'],
  site: ['sun', 'irradiance'],
  day: ['site', 'latitude'],
  process: ['materials'],
  machine: ['process', 'kind'],
  router: ['process', 'kind'],
  nest: ['stock'],
  template: ['rib', 'material'],
  print: ['template', 'material'],
  marking: ['rib', 'material'],
  extra: ['stock'],
  colours: ['process', 'kind'],
};

const byKey: Readonly<Record<string, KeyPath>> = {
  'cleat.material': ['board', 'material'],
  'board.material': ['rib', 'material'],
  'hub.material': ['rib', 'material'],
  'template.material': ['rib', 'material'],
  'stand.material': ['board', 'material'],
  'stand.baseMaterial': ['rib', 'material'],
};

/** The key that a left-out one follows from, or null for a key that every file states. */
export function usedInstead(path: KeyPath): KeyPath | null {
  const [section] = path;
  return byKey[path.join('.')] ?? bySection[section as Section] ?? null;
}
