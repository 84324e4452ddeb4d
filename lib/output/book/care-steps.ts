/** Steps that keep the wood dry and people safe. */
import type { Step } from './step.js';

/** What the wood needs before panels and mirror cover it. @param glued whether the panels are glued to the ribs */
export function sealStep(glued: boolean): Step {
  return {
    title: 'Seal the wood',
    text: [
      ...(glued
        ? [
            'Tape over what will be glued: the top edges of the ribs, and a strip along both long edges of each panel’s underside.',
          ]
        : []),
      `Two coats of outdoor varnish or paint on all faces, and a third on every edge and round every hole: cut edges drink most, and a swollen rib is another curve. ${glued ? '' : 'Battens on both faces. '}Panels: underside and edges now; the mirror seals the rest.`,
      `Let it dry as its maker says${glued ? ', then take the tape off' : ''}.`,
    ],
    checks: [
      'A drop of water stands on the edges.',
      ...(glued ? ['The top edges of the ribs are bare wood, clean and dry.'] : []),
    ],
    picture: 'The frame of ribs that is sealed',
    scene: 'seal',
  };
}

/** The step after which the dish burns. */
export function liveStep(): Step {
  return {
    title: 'Take off the film, under the cover',
    text: [
      'The cover goes on from behind, never from the mirror’s side: its loops over the upper rib ends, let it fall over the mirror, walk round behind and draw the cord tight.',
      'Caution: from this step on the dish is live. Do it indoors, or with the dish turned away from the sun; the cover goes on panel by panel behind you.',
      'Dark eye protection on, water at hand, nobody else near. Peel the protective film from the rim inward; wipe with water and a soft cloth, never dry.',
    ],
    checks: ['The cover is on and tied.', 'No strip of film is left: it shrinks in the sun and lifts the mirror.'],
    picture: 'The mirror that is uncovered',
    scene: 'film',
  };
}
