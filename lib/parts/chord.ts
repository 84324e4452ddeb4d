import type { DevelopedPanel } from '../dish/index.js';

/** Parameter of the chord at a length (mm) from the panel's inner end, by halving; the nearest end outside. */
export function chordAtLength(panel: DevelopedPanel, length: number): number {
  let [low, high] = [panel.from, panel.to];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (panel.chord(middle).length < length) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
