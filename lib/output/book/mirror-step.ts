/** The mirror glued on after the panels, over what fixes them. */
import type { Design } from '../../design/index.js';
import type { Step } from './step.js';

/** The step of a design whose panels are pinned or stapled. */
export function mirrorStep(design: Pick<Design, 'reflector'>): Step {
  return {
    title: 'Glue on the mirror',
    text: [
      'Brush dust and proud heads off, then spread contact glue on a panel and on the back of its strip and let both grow dry to the touch.',
      'Lay the strip down from the hub outward, middle first, pressed on with a soft roller; its narrow end flush with the panel’s. Contact glue holds at once: line the strip up before it touches.',
      ...(design.reflector.hem > 0
        ? [
            'The hem, turned down square at the bench, comes over the panel’s rim at the end: drive it back under with a flat bar, between the ribs.',
          ]
        : []),
      'Leave the protective film on. It comes off under the cover, before the dish is aimed: from then on it burns.',
    ],
    checks: ['No bubble or ridge to be felt; each spreads the focus.', 'Strips keep off the seams, edge by edge.'],
    picture: 'The mirror strips on the panels',
    scene: 'mirror',
  };
}
