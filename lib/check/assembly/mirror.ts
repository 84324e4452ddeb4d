/** Strips and rows of the mirror against the panels that they are glued on. */
import { mm } from '../faults.js';
import { type Built, type BuiltPart, crossings, outlineOf } from './built.js';
import { chordAt, halved, layerLength, type Shape } from './facing.js';
import type { Report } from './report.js';

const stations = 12;
/** From a batten's edge to the mirror, and half the mirror's width at its narrow end between two, mm. */
const besideBatten = 1;
const narrowEnd = 2;

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

/** The mid-line radius at a length along the mirror's middle layer. */
function radiusAt(shape: Shape, middle: number, { from, to }: Range, length: number): number {
  const [low, high] = halved(from, to, 40, (u) => layerLength(shape, middle, from, u) < length);
  return (low + high) / 2;
}

/** Half the width of the mirror at a length: that of its panel, less the inset square to the panel's edge. */
function halfWidthAt(shape: Shape, middle: number, range: Range, length: number, inset: number): number {
  const at = (x: number): number => chordAt(shape, radiusAt(shape, middle, range, x)).halfWidth;
  const step = 1;
  const slope = Math.atan2(at(length + step) - at(length - step), 2 * step);
  return at(length - inset * Math.sin(slope)) - inset * Math.cos(slope);
}

/** Length at which a panel leaves a mirror between two battens. */
function lengthFrom(shape: Shape, middle: number, { from, to }: Range, inset: number): number {
  const [, open] = halved(from, to, 60, (u) => chordAt(shape, u).halfWidth - inset < narrowEnd);
  return layerLength(shape, middle, from, open);
}

/** By how much the hem of the outermost piece reaches over the ribs on which its panel lies, mm. */
function overRibs({ design: { panel }, rib }: Built, last: BuiltPart, flap: number, halfWidth: number): number {
  const outline = outlineOf(last);
  const end = Math.max(...outline.map(({ x }) => x));
  const free = halfWidth - Math.max(0, (rib.thickness - panel.gap) / 2);
  const across = [0.1, 0.5, 0.9].flatMap((share) => crossings(outline, end - share * flap));
  return Math.max(...across.map(Math.abs)) - free;
}

export function checkMirrors(built: Built, shape: Shape, range: Range, report: Report): void {
  const { design, mirrors } = built;
  const [first] = mirrors;
  const last = mirrors.at(-1);
  if (first === undefined || last === undefined) return;
  const { inset: ends, hem, overlap } = design.reflector;
  const { limit } = range;
  const { battenWidth, fixing, gap } = design.panel;
  const battened = fixing === 'battens';
  const inset = battened ? Math.max(ends, (battenWidth - gap) / 2 + besideBatten) : ends;
  const middle = first.thickness / 2;
  const whole = layerLength(shape, middle, range.from, range.to);
  let start = battened ? Math.max(ends, lengthFrom(shape, middle, range, inset)) : ends;
  const begin = start;
  let worst = { off: 0, at: 0 };
  for (const part of mirrors) {
    const own = lengthOf(part);
    const outline = outlineOf(part);
    const end = Math.min(start + own, whole - (hem > 0 ? 0 : ends));
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
  const covered = start + overlap - begin;
  const wanted = hem > 0 ? whole - begin + hem : whole - begin - ends;
  if (covered < wanted - 2 * limit || (hem === 0 && covered > wanted + 2 * limit))
    report('mirror-length', { length: mm(covered), wanted: mm(wanted) });
  if (hem === 0) return;
  const over = overRibs(built, last, covered + begin - whole, halfWidthAt(shape, middle, range, whole, 0));
  if (over > limit) report('mirror-hem', { off: mm(over) });
}
