/** Every hazard of the dish and of the machines is named wherever cautions stand, whatever the words around it. */
import { describe, expect, it } from 'vitest';
import { routerCautions } from '../../lib/output/gcode/cautions.js';
import { cautions, cautionsShort } from '../../lib/output/cautions.js';

const long = cautions.flatMap(({ sentences }) => sentences).join('\n');

// the hazards of a focus in the open and of cutting machines: common practice, no source
const ofDish: readonly RegExp[] = [
  /\bburn skin\b/,
  /\bfire\b/,
  /\bblind\b/,
  /\boff to the side\b/,
  /\bnever look\b/i,
  /\balong the axis\b/,
  /\bstand clear\b/i,
  /\bdark eye protection\b/,
  /\bcovered or turned away from the sun\b/,
  /\bunattended\b/,
  /\bwater at hand\b/i,
  /\bballast it\b/,
  /\bguards\b/,
  /\beye, ear and dust protection\b/,
  /\bLocal codes\b/,
  /\bmanual\b/,
  /\blicensed practice come first\b/,
  /\bestimates, not promises\b/,
];

const ofRouter: readonly RegExp[] = [
  /\bmanual\b/,
  /\blicensed practice\b/,
  /\bDry run first\b/,
  /\bhand on the stop\b/,
  /\bunits\b/,
  /\bzero point\b/,
  /\btools and their lengths\b/,
  /\bHold the sheet down\b/,
  /\bclamp or screw\b/,
  /\beye and ear protection\b/,
  /\bno gloves or loose clothing\b/,
  /\bdust extraction\b/,
  /\bhands away\b/,
  /\bNever leave the machine alone\b/,
  /\bextinguisher\b/,
];

describe('cautions', () => {
  const flat = (text: string): string => text.replace(/\s+/g, ' ');

  it.each(ofDish)('in full and in short name %s', (hazard) => {
    expect(flat(long)).toMatch(hazard);
    expect(flat(cautionsShort)).toMatch(hazard);
  });

  it('keep others and animals clear', () => {
    expect(long).toMatch(/keep others and animals clear/);
  });

  it.each(ofRouter)('of router files name %s', (hazard) => {
    expect(routerCautions.join(' ')).toMatch(hazard);
  });
});
