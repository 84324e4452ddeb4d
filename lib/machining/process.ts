import type { Process } from './types.js';

/** Diameters this close are of one bit, mm: a thousandth of an inch is 0.0254 mm. */
const sameBit = 0.03;

/** Whether two diameters (mm) are of the same bit, or a bit makes a hole of that diameter. */
export const isSameBit = (a: number, b: number): boolean => Math.abs(a - b) <= sameBit;

/** Width of the cut: what the bit takes away, kerf, or nothing when the saw follows the line by eye. */
export function cutWidth(process: Process): number {
  switch (process.kind) {
    case 'router':
      return process.width ?? process.toolDiameter;
    case 'laser':
      return process.kerf;
    case 'hand':
      return 0;
  }
}

/** Width of the path by which a hole is bored: that of the cut, and what holes come out wider. */
export function boreWidth(process: Process): number {
  return cutWidth(process) + (process.kind === 'hand' ? 0 : (process.bore ?? 0));
}

/**
 * Least distance between two finished edges on a sheet (mm): each of the two cuts takes its own width, and the web
 * stays between them, for holding tabs to hold on to.
 */
export function spacingFor(process: Process): number {
  return 2 * cutWidth(process) + process.web;
}
