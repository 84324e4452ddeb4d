/**
 * The dish put together from the files, as a builder would: parts as they are cut, at the places that the design and
 * the marks give them. All formulas are this module's own, so that a fault of the program shows.
 */
import { FaultList } from '../faults.js';
import { recordName } from '../job-reader.js';
import type { Fault } from '../types.js';
import { builtOf } from './built.js';
import { checkCentre } from './centre.js';
import { checkCleats } from './cleats.js';
import { checkFasteners } from './fasteners.js';
import type { Report } from './report.js';
import { checkSkin } from './skin.js';
import { checkSplices } from './splices.js';

/**
 * A fault for everything that does not go together. The drawings have been held against the record's parts, so these
 * are what the files cut.
 * @param data the record as JSON
 */
export function checkAssembly(data: unknown): Fault[] {
  const built = builtOf(data);
  if (built === null) return [];
  const faults = new FaultList();
  if (typeof built === 'string') {
    faults.add('assembly-value', recordName, { issue: built });
    return faults.all(recordName);
  }
  const report: Report = (id, values) => {
    faults.add(id, recordName, values);
  };
  checkCentre(built, report);
  checkCleats(built, report);
  checkSkin(built, report);
  checkSplices(built, report);
  checkFasteners(built, report);
  return faults.all(recordName);
}
