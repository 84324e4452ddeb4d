/** What has to stand in a tool path for the person at the machine, held here by the proof for itself. */

/** A controller may take capitals and plain signs only, and lines break anywhere: what is left is compared. */
export function squashed(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/[–—]/g, '-')
    .replace(/[^\x20-\x7e]/g, '')
    .toUpperCase()
    .replace(/[^A-Z0-9.,:;=+/-]/g, '');
}

export const changeCautions = [
  'CAUTION: Change of tool by hand: wait until the spindle stands, then cut its power at the plug or the switch that you can lock.',
  'CAUTION: Tighten the collet, take the key out, set Z to zero at the upper face of the sheet where nothing is cut; leave X and Y. Then power on and cycle start.',
] as const;

export const routerCautions = [
  'CAUTION: The machine maker’s manual and limits, local codes and licensed practice come first; so does the bit maker’s table of speeds and feeds.',
  'CAUTION: Dry run first: run the whole file with the tool well above the sheet, a hand on the stop, and watch every move.',
  'CAUTION: Check units, the zero point, the tools and their lengths before the spindle turns.',
  'CAUTION: Hold the sheet down firmly on a spoil board over its whole area; this file knows of no clamp or screw that the design does not name.',
  'CAUTION: Wear eye and ear protection, no gloves or loose clothing; use the guards and dust extraction; keep hands away until the spindle stands.',
  'CAUTION: Never leave the machine alone: a rubbing bit or a loose part can start a fire. Keep an extinguisher at hand and look into the dust bag afterwards.',
] as const;

export const laserCautions = [
  'CAUTION: The machine maker’s manual and limits, local codes and licensed practice come first.',
  'CAUTION: The beam and what it throws back blind and burn, unseen too: keep the lid and its switch in order, and wear eye protection made for the wavelength of this laser where the beam is not enclosed.',
  'CAUTION: Run the file once with the beam off or at its lowest, a hand on the stop, and watch every move; check units and zero first.',
  'CAUTION: Know the material: never cut PVC or anything of which you do not know what its smoke holds. Run the extraction, and the air where there is any.',
  'CAUTION: Never leave it alone, not for a moment: sheets catch fire. Keep an extinguisher at hand, and stay until nothing glows.',
] as const;
