import type { Design } from '../design/index.js';
import { thicknessOf } from './blank.js';

/** What every gauge has in common. */
export function gaugeBlank(design: Design) {
  const { material } = design.template;
  return { kind: 'gauge' as const, material, thickness: thicknessOf(design, material), quantity: 1 };
}
