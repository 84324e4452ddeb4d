/** A small dish whose joints are cut by a router: quick to cut and to prove. Invented. */
import { buildJob } from '../../lib/pipeline.js';
import type { Job } from '../../lib/pipeline/types.js';
import { designOf } from './fixtures.js';
import { randomNester } from './random-nester.js';

/** @param rib keys of the ribs beside their material */
export const routedText = (rib: string): string => `name: Small routed dish
dish: { aperture: 600, focalLength: 220, ribs: 8, baseHeight: 45 }
materials:
  birch12: { kind: plywood, thickness: 12 }
  card: { kind: card, thickness: 1 }
  film: { kind: film, thickness: 0.05 }
stock:
  - { material: birch12, size: 1500 x 900 }
  - { material: card, size: 900 x 600 }
  - { material: film, rollWidth: 600 }
rib: { material: birch12, ${rib} }
board: { size: 560 }
panel: { material: card }
reflector: { material: film }
process: { kind: router, toolDiameter: 6, drillBits: [4, 4.5] }
template: { process: hand, material: card }
`;

const jobs = new Map<string, Promise<Job>>();

/** All files of that dish, once for each kind of rib. Nothing may change them. */
export function routedJob(rib: string): Promise<Job> {
  const made = jobs.get(rib) ?? buildJob(designOf(routedText(rib)), new Map(), randomNester(1));
  jobs.set(rib, made);
  return made;
}
