/**
 * Every message that the proof can print has a planted fault that makes it appear. A small job that has everything is
 * proven first; then one thing of it is changed at a time, and the message has to come with its own words. A message
 * that is in the list and has no plant fails the test, and so does a plant that raises something else.
 */
import { describe, expect, it } from 'vitest';
import { proveFolder } from '../../lib/check/index.js';
import { type MessageId, messages } from '../../lib/check/messages/index.js';
import { drawingsOnly, laserJob, smallJob } from '../helpers/small-job.js';
import { type Planted, smallAgain } from './messages/planted.js';
import { assemblyPlants } from './messages/plants-assembly.js';
import { laserPlants } from './messages/plants-laser.js';
import { readingPlants } from './messages/plants-reading.js';
import { recordPlants } from './messages/plants-folder.js';
import { routerPlants } from './messages/plants-router.js';
import { sheetPlants } from './messages/plants-sheet.js';

/** Messages for which a plant is still to be found: exactly these, so that the list can only shrink. */
const notYetPlanted: readonly MessageId[] = [];

const plants: Readonly<Partial<Record<MessageId, Planted>>> = {
  ...recordPlants,
  ...assemblyPlants,
  ...readingPlants,
  ...sheetPlants,
  ...routerPlants,
  ...laserPlants,
};

describe('messages of the proof', () => {
  it('are not seen of a job without a fault', () => {
    expect(proveFolder(smallJob(), undefined, smallAgain()).faults).toEqual([]);
    expect(proveFolder(drawingsOnly()).faults).toEqual([]);
    expect(proveFolder(laserJob()).faults).toEqual([]);
  });

  it.each(Object.entries(plants))('%s is seen where its fault is planted', (id, [make, words, again = null]) => {
    const { faults, ok } = proveFolder(make(), undefined, again);
    const raised = faults.filter((fault) => fault.id === id).map(({ message }) => message);
    expect(raised, `raised instead: ${faults.map((fault) => fault.id).join(', ')}`).not.toEqual([]);
    expect(
      raised.filter((message) => message.includes(words)),
      raised.join('\n'),
    ).not.toEqual([]);
    expect(ok).toBe(false);
  });

  it('have a plant each', () => {
    const unplanted = Object.keys(messages).filter((id) => !(id in plants));
    expect(unplanted.sort()).toEqual([...notYetPlanted].sort());
  });
});
