/** The proof of a router's file by simulated cutting. Nothing here is shared with what made the file. */
import { type Nominal, placePart } from '../nominal.js';
import { checkEdges, passesOf } from './edges.js';
import { HeightField } from './field.js';
import { Findings } from './findings.js';
import { checkHeld } from './held.js';
import { checkHoles } from './holes.js';
import { Machine } from './machine.js';
import { checkMarks } from './marks.js';
import { reachedMotion } from './reached-motion.js';
import { readBlocks } from './reader.js';
import { checkPockets } from './pockets.js';
import { checkSequence } from './sequence.js';
import { checkTwice } from './twice.js';
import type { Motion, NgcFile, SimulatedSheet, Simulation, SimulationLimits } from './types.js';
import { checkMotions } from './motions.js';

/**
 * Reads the files of one sheet as the standard has them, cuts the sheet by them, and proves: no rapid move through
 * material, no pass deeper than its tool takes, nothing off the sheet or in a clamp, the spoil board cut no deeper
 * than set, every hole and pocket in its place, every finished edge within 0.05 mm and every tab in its size (exact distances), every
 * part held to the end (a grid of 1 mm).
 * @param files in the order in which they are run
 */
export function simulate(files: readonly NgcFile[], sheet: SimulatedSheet, limits: SimulationLimits): Simulation {
  const findings = new Findings();
  const motions: Motion[] = files.flatMap(({ name, text }) => {
    const machine = new Machine(name, limits, findings);
    machine.run(readBlocks(name, text, findings));
    return machine.motions.flatMap((motion) => reachedMotion(limits.axes, motion));
  });
  const file = files[0]?.name ?? '';
  const field = new HeightField(sheet.width, sheet.height);
  const nominals: Nominal[] = sheet.placed.flatMap((placement) => {
    const part = sheet.parts.get(placement.part);
    return part === undefined ? [] : [placePart(part, placement)];
  });
  const deepestInSpoilBoard = checkMotions(motions, sheet, nominals, limits, field, findings);
  const passes = passesOf(motions);
  const worstBore = checkHoles(nominals, sheet, motions, passes, limits, file, findings);
  const worstPocket = checkPockets(nominals, motions, passes, field, file, findings);
  const worstEdge = Math.max(worstBore, worstPocket, checkEdges(nominals, passes, limits, file, findings));
  checkMarks(nominals, motions, limits, file, findings);
  checkTwice(motions, findings);
  checkSequence(nominals, motions, limits, findings);
  checkHeld(nominals, motions, field, limits, file, findings);
  return { findings: findings.all(), worstEdge, deepestInSpoilBoard, motions };
}
