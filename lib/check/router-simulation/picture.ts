/** The sheet as the simulated router leaves it, seen from above and shaded by depth. */
import { drawnEdge, faceColour, printed, throughColour } from '../picture-ink.js';
import { Findings } from './findings.js';
import { edgesOfMotion, isUpright, radiusAt } from './level.js';
import { Machine } from './machine.js';
import { reachedMotion } from './reached-motion.js';
import { readBlocks } from './reader.js';
import type { NgcFile, SimulationLimits } from './types.js';

/** Steps of shading between the face and the spoil board. */
const shades = 8;
const face = [236, 221, 193] as const;
const deep = [62, 44, 30] as const;

function shade(share: number): string {
  const mixed = face.map((from, i) => Math.round(from + (deep[i]! - from) * (0.25 + 0.75 * share)));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

interface Stroke {
  readonly level: number;
  readonly width: number;
  readonly path: Set<string>;
}

/**
 * A picture of a sheet by its router files: every path of a tool as wide as the tool, darker the deeper, black where
 * the sheet is cut through. Faults are for `simulate` to find.
 * @param files in the order in which they are run
 * @returns an SVG of one user unit a millimetre, the sheet's upper edge up
 */
export function drawSimulation(
  files: readonly NgcFile[],
  sheet: { readonly width: number; readonly height: number },
  limits: SimulationLimits,
): string {
  const { width, height } = sheet;
  const findings = new Findings();
  const strokes = new Map<string, Stroke>();
  for (const { name, text } of files) {
    const machine = new Machine(name, limits, findings);
    machine.run(readBlocks(name, text, findings));
    for (const motion of machine.motions.flatMap((one) => reachedMotion(limits.axes, one))) {
      const { rapid, from, to } = motion;
      // the shallower end gives how deep the whole stretch is
      const z = Math.max(from.z, to.z);
      const lowest = isUpright(motion) ? to.z : z;
      if (rapid || lowest >= 0) continue;
      const level = Math.min(shades, Math.floor((-lowest / limits.thickness) * shades + 1e-6));
      const across = 2 * radiusAt(motion, lowest);
      const key = `${level} ${across.toFixed(2)}`;
      const stroke = strokes.get(key) ?? { level, width: across, path: new Set<string>() };
      strokes.set(key, stroke);
      for (const edge of edgesOfMotion(motion)) stroke.path.add(drawnEdge(edge, height));
    }
  }
  const drawnPaths = [...strokes.values()]
    .sort((a, b) => a.level - b.level || a.width - b.width)
    .map(
      ({ level, width: across, path }) =>
        `<path stroke="${level >= shades ? throughColour : shade(level / shades)}" stroke-width="${printed(across)}" d="${[...path].join('')}"/>`,
    );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${printed(width)} ${printed(height)}" role="img">`,
    '<title>The sheet as the router leaves it, darker where it is cut deeper</title>',
    `<rect width="${printed(width)}" height="${printed(height)}" fill="${faceColour}"/>`,
    '<g fill="none" stroke-linecap="round" stroke-linejoin="round">',
    ...drawnPaths,
    '</g>',
    '</svg>',
  ].join('\n');
}
