/** Strips and rows of the mirror against the panels that they are glued on. */
import { mm } from '../faults.js';
import { type Built, type BuiltPart, crossings, outlineOf } from './built.js';
import { chordAt, layerLength, type Shape } from './facing.js';
import type { Report } from './report.js';

const stations = 12;

/** Between which mid-line radii the facing lies, and by how much an edge may be off, mm. */
interface Range {
  readonly from: number;
  readonly to: number;
  readonly limit: number;
}

const lengthOf = (part: BuiltPart): number => {
  const xs = outlineOf(part).map(({ x }) => x);
  return Math.max(...xs) - Math.min(...xs);
};

/** The mid-line radius at a length along the mirror's middle layer, by halving. */
function radiusAt(shape: Shape, middle: number, { from, to }: Range, length: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 40; i++) {
    const u = (low + high) / 2;
    if (layerLength(shape, middle, from, u) < length) low = u;
    else high = u;
  }
  return (low + high) / 2;
}

/** Half the width of the mirror at a length: that of its panel, less the inset square to the panel's edge. */
function halfWidthAt(shape: Shape, middle: number, range: Range, length: number, inset: number): number {
  const at = (x: number): number => chordAt(shape, radiusAt(shape, middle, range, x)).halfWidth;
  const step = 1;
  const slope = Math.atan2(at(length + step) - at(length - step), 2 * step);
  return at(length - inset * Math.sin(slope)) - inset * Math.cos(slope);
}

export function checkMirrors({ design, mirrors }: Built, shape: Shape, range: Range, report: Report): void {
  const [first] = mirrors;
  if (first === undefined) return;
  const { inset, hem, overlap } = design.reflector;
  const { limit } = range;
  const middle = first.thickness / 2;
  const whole = layerLength(shape, middle, range.from, range.to);
  let start = inset;
  let worst = { off: 0, at: 0 };
  for (const part of mirrors) {
    const own = lengthOf(part);
    const outline = outlineOf(part);
    const end = Math.min(start + own, whole - (hem > 0 ? 0 : inset));
    for (let i = 1; i < stations; i++) {
      const length = start + ((end - start) * i) / stations;
      const across = crossings(outline, length - start);
      const wanted = halfWidthAt(shape, middle, range, length, inset);
      for (const side of [-(across[0] ?? Infinity), across.at(-1) ?? Infinity])
        if (Math.abs(side - wanted) > Math.abs(worst.off)) worst = { off: side - wanted, at: length };
    }
    start += own - overlap;
  }
  if (worst.off > limit) report('mirror-wide', { off: mm(worst.off), at: mm(worst.at) });
  if (worst.off < -limit) report('mirror-narrow', { off: mm(-worst.off), at: mm(worst.at) });
  // a hem comes on top of the panel's length, and is at least as long as it is wide
  const covered = start + overlap - inset;
  const wanted = hem > 0 ? whole - inset + hem : whole - 2 * inset;
  if (covered < wanted - 2 * limit || (hem === 0 && covered > wanted + 2 * limit))
    report('mirror-length', { length: mm(covered), wanted: mm(wanted) });
}
