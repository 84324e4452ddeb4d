import type { DevelopedPanel } from '../dish/index.js';

/** Parameter at which a length that grows along the panel comes to `wanted` (mm); the nearest end outside. */
export function parameterAt(panel: DevelopedPanel, length: (t: number) => number, wanted: number): number {
  if (wanted <= length(panel.from)) return panel.from;
  if (wanted >= length(panel.to)) return panel.to;
  let [low, high] = [panel.from, panel.to];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (length(middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Parameter of the chord at a length (mm) from the panel's inner end. */
export function chordAtLength(panel: DevelopedPanel, length: number): number {
  return parameterAt(panel, (t) => panel.chord(t).length, length);
}
