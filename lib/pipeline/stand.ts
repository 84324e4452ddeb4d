/** The stand of a dish whose parts are made. */
import type { Assembly } from '../assembly/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic, hasError } from '../diagnostic/index.js';
import type { Dish } from '../dish/index.js';
import type { KeyValue } from '../key-values.js';
import { type Forecast, highestSunDeg, startOfDay } from '../optics/index.js';
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
import { parkedOf } from './forecast.js';
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

/** Aim error that the stand may add, as a share of what the vessel bears. */
const aimShare = 0.25;

/** The finest of the forecast's aim tolerances, mrad; null without a vessel. */
function toleranceMrad(forecast: Forecast | null | undefined): number | null {
  if (!forecast?.vessel) return null;
  const { low, high, aside } = forecast.vessel.aim.toleranceDeg;
  return (1000 * Math.PI * Math.min(low.value, high.value, aside.value)) / 180;
}

/** Whether the stand gives more in its working wind than the aim bears. */
export function aimProblems({ stand }: Pick<Prepared, 'stand'>, forecast: Forecast | null): Diagnostic[] {
  const tolerance = toleranceMrad(forecast);
  if (stand === null || tolerance === null) return [];
  const { totalMrad } = stand.values.deflection;
  if (totalMrad <= aimShare * tolerance) return [];
  return [
    diagnostic(
      'stand-loaded',
      ['stand', 'workingWind'],
      `the stand gives ${totalMrad.toFixed(1)} mrad, more than a quarter of the ${tolerance.toFixed(1)} mrad that the aim tolerates`,
      'use a thicker stand.material and stand.baseMaterial, or a wider vessel',
      'warning',
    ),
  ];
}

/**
 * The values of a prepared design's stand, in its unit; none without a stand.
 * @param forecast for what its aim bears, where there is one
 */
export function standValues(
  { design, stand }: Pick<Prepared, 'design' | 'stand'>,
  forecast?: Forecast | null,
): KeyValue[] {
  if (stand === null) return [];
  const tolerance = toleranceMrad(forecast);
  const parked = parkedOf(design);
  return [
    ...standRows(stand, design, (mm) => formatLength(Math.round(10 * mm) / 10, design.units)),
    ...(tolerance === null
      ? []
      : [
          {
            label: 'aim tolerance',
            value: `${tolerance.toFixed(1)} mrad`,
            note: 'in its most sensitive direction; the stand may use a quarter of it',
          },
        ]),
    parked === null
      ? { label: 'parked', value: 'looking up', note: 'under its cover, pins in, brakes set' }
      : {
          label: 'parked',
          value: `to the ${parked.towards}`,
          note: `tilted to its lowest and covered: at no time of the year does the sun come within ${parked.angleDeg}° of its axis`,
        },
  ];
}
