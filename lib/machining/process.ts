import type { Process } from './types.js';

/** Width of the cut: tool diameter, kerf, or nothing when the saw follows the line by eye. */
export function cutWidth(process: Process): number {
  switch (process.kind) {
    case 'router':
      return process.toolDiameter;
    case 'laser':
      return process.kerf;
    case 'hand':
      return 0;
  }
}

/** Least distance between two finished edges on a sheet: the width of the cut and the web that is to stay (mm). */
export function spacingFor(process: Process): number {
  return cutWidth(process) + process.web;
}
