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
  'CAUTION: Tool change by hand: wait until the spindle has stopped, then cut its power at the plug or at a switch that you can lock.',
  'CAUTION: Tighten the collet, take the key out, set Z to zero on the top face of the sheet where nothing is cut; leave X and Y as they are. Then power on and cycle start.',
] as const;

export const routerCautions = [
  'CAUTION: The machine maker’s manual and limits, local codes and licensed practice come first; so does the bit maker’s table of speeds and feeds.',
  'CAUTION: Dry run first: run the whole file with the tool well above the sheet, a hand on the stop, and watch every move.',
  'CAUTION: Check units, the zero point, the tools and their lengths before the spindle turns.',
  'CAUTION: Hold the sheet down firmly on a spoilboard over its whole area; this file does not avoid any clamp or screw that the design does not state.',
  'CAUTION: Wear eye and ear protection, no gloves or loose clothing; use the guards and dust extraction; keep hands away until the spindle has stopped.',
  'CAUTION: Never leave the machine alone: a rubbing bit or a loose part can start a fire. Keep an extinguisher at hand and check the dust bag afterwards.',
] as const;

export const laserCautions = [
  'CAUTION: The machine maker’s manual and limits, local codes and licensed practice come first.',
  'CAUTION: The beam and its reflections blind and burn, even when invisible: keep the lid and its switch in working order, and wear eye protection made for the wavelength of this laser where the beam is not enclosed.',
  'CAUTION: Run the file once with the beam off or at its lowest power, a hand on the stop, and watch every move; check units and zero first.',
  'CAUTION: Know the material: never cut PVC, or anything if you do not know what its smoke contains. Run the extraction, and the air assist if there is one.',
  'CAUTION: Never leave it alone, not for a moment: sheets catch fire. Keep an extinguisher at hand, and stay until nothing glows.',
] as const;
