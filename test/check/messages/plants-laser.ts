/** Faults of the tool path of a laser, one for each message about them. */
import type { laserMessages } from '../../../lib/check/messages/laser.js';
import { type Files, laserJob, sealed, sheetFile } from '../../helpers/small-job.js';
import { mutated, type Planted } from './planted.js';

const ngc = `${sheetFile}.ngc`;

const inPath =
  (from: string | RegExp, to: string): (() => Files) =>
  () =>
    mutated(laserJob(), ngc, (text) => text.replace(from, to));

/** The design without its description of the laser. */
const undescribed = (): Files => {
  const files = laserJob();
  const record = JSON.parse(files.get('job.json')!) as { design: { machine: { beam?: string } } };
  delete record.design.machine.beam;
  return files.set('job.json', sealed(record, files));
};

export const laserPlants = {
  'beam-rapid': [inPath(/M5\n\((outline)/, '($1'), 'a rapid move (G0) with the beam on'],
  'beam-still': [inPath(/(S800 M3\n)/, '$1G4 P1\n'), 'G4 with the beam on: it burns in one place'],
  'beam-end': [inPath(/M5\nM2/, 'M2'), 'the program ends with the beam on'],
  'beam-word': [inPath('S800 M3', 'S800 M4'), 'the beam is switched on by M4, not M3'],
  'beam-range': [inPath('S800 M3', 'S1001 M3'), 'the beam is on at S1001, outside 0 to 1000'],
  'beam-power': [inPath('S120 M3', 'S800 M3'), 'scribe at S800, not S120'],
  'beam-feed': [inPath('F900', 'F1900'), 'at 1900 mm/min, not 900'],
  'beam-off': [inPath(/S800 M3\n/, ''), 'a feed move with the beam off'],
  'beam-unplaced': [
    inPath(/G0 (X\S+ Y\S+)/, 'G1 $1 F900'),
    'a feed move before the first rapid move (G0) to a position',
  ],
  'beam-axis': [inPath(/(G0 X\S+ Y\S+)/, '$1 Z5'), 'a word Z: a laser moves along X and Y only'],
  'beam-tool': [inPath('\nM5\n', '\nM5\nT1 M6\n'), 'M6 does not belong in a file for a laser'],
  'beam-unnamed': [inPath(/\((?:drill|scribe)[^)]*\)\n/g, ''), 'no comment says what it cuts'],
  'beam-described': [undescribed, 'the design does not describe the laser'],
} as const satisfies Readonly<Record<keyof typeof laserMessages, Planted>>;
