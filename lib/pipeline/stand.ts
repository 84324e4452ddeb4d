/** The stand of a dish whose parts are made. */
import type { Assembly } from '../assembly/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, hasError } from '../diagnostic/index.js';
import type { Dish } from '../dish/index.js';
import type { KeyValue } from '../key-values.js';
import { highestSunDeg, startOfDay } from '../optics/index.js';
import type { Part } from '../part/index.js';
import { withFittingLabels } from '../parts/index.js';
import {
  makeStand,
  mountProblems,
  rangeProblems,
  type Stand,
  standProblems,
  standRows,
  type StandSource,
} from '../stand/index.js';
import { formatLength } from '../units/index.js';
import { withLaserNotes } from './laser-notes.js';
import type { Prepared } from './types.js';

export interface Standing {
  /** Null where none is asked for or none can be made. */
  readonly stand: Stand | null;
  readonly problems: readonly Diagnostic[];
}

/** The year's highest sun in whole degrees upward; null without a site. */
function highestOf({ site, day }: Design): number | null {
  const start = startOfDay(day.date);
  if (site === undefined || Number.isNaN(start)) return null;
  return Math.min(90, Math.ceil(highestSunDeg({ latitudeDeg: site.latitude, longitudeDeg: site.longitude }, start)));
}

/** Makes the stand that the design asks for. */
export function standOf(design: Design, dish: Dish, parts: readonly Part[], assembly: Assembly): Standing {
  if (design.stand === undefined) return { stand: null, problems: [] };
  const source: StandSource = {
    design,
    dish,
    stand: design.stand,
    parts,
    highestSunDeg: highestOf(design),
    finish: (part) => withLaserNotes(design, withFittingLabels(part)),
  };
  const before = [...mountProblems(source), ...rangeProblems(source)];
  if (hasError(before)) return { stand: null, problems: before };
  const stand = makeStand(source, assembly);
  return { stand, problems: stand === null ? [] : standProblems(source, stand) };
}

/** The dish on its stand: all parts and bolts in one place, the dish looking up. */
export function assemblyOn(assembly: Assembly, stand: Stand | null): Assembly {
  if (stand === null) return assembly;
  return {
    placed: [...assembly.placed, ...stand.placed],
    // the bolts to the stand are known now with their lengths
    fasteners: [...assembly.fasteners.filter(({ joint }) => joint !== 'board-to-stand'), ...stand.fasteners],
  };
}

/** The values of a prepared design's stand, in its unit; none without a stand. */
export function standValues({ design, stand }: Pick<Prepared, 'design' | 'stand'>): KeyValue[] {
  if (stand === null) return [];
  return standRows(stand, design, (mm) => formatLength(Math.round(10 * mm) / 10, design.units));
}
