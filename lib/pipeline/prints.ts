/** Full-size prints: of templates, gauges and jigs, and of the parts that somebody cuts by hand. */
import type { Design } from '../design/index.js';
import { drawPart } from '../output/index.js';
import type { PrintOptions } from '../output/print/index.js';
import type { Part } from '../part/index.js';
import { checkLineOf } from '../units/index.js';
import type { JobFiles, Prepared } from './types.js';

function printOptions({ print, units: unit }: Design): PrintOptions {
  const { paper, rollWidth, margin, overlap, measured = checkLineOf(unit).length } = print;
  return {
    paper: paper === 'roll' ? { kind: paper, width: rollWidth } : { kind: paper },
    margin,
    overlap,
    unit,
    measured,
  };
}

/**
 * Parts that are cut by hand and are not copied with an aid: ribs have their template, cleats their jig. A stand's are
 * left to its drawings: straight pieces, of which a print would take paper by the metre.
 */
export function printedParts({ design, parts }: Pick<Prepared, 'design' | 'parts'>): Part[] {
  const aided = ['rib', 'cleat', 'stand'];
  return parts.filter(({ material, kind }) => design.materials[material]?.cut === 'hand' && !aided.includes(kind));
}

/** Prints by path. */
export async function printFiles(design: Design, parts: readonly Part[]): Promise<JobFiles> {
  const { writePrint } = await import('../output/print/index.js');
  const options = printOptions(design);
  const files = new Map<string, Uint8Array>();
  for (const part of parts)
    files.set(`prints/${part.id}.pdf`, await writePrint(drawPart(part, design.colours), options));
  return files;
}
