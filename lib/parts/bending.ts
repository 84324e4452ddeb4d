/** Whether a facing panel can be bent to the dish, and lives with it. */
import { bendRadius, type Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { inUnits } from './blank.js';

/** Stiffness and strength in bending, MPa. */
interface BendingData {
  readonly modulus: number;
  readonly strength: number;
}

/**
 * Cautious ends of published ranges: the stiffest and the weakest of its kind. Plywood: 6.9 to 9.0 GPa and 38 to 66 MPa
 * over five plywoods (Journal of the Korean Wood Science and Technology 53 (4), table 3). Hardboard: strength of class
 * HB by EN 622-2 and modulus of tempered board; MDF: EN 622-5 for 6 to 9 mm; both from memory.
 */
const bending: Partial<Record<Design['materials'][string]['kind'], BendingData>> = {
  plywood: { modulus: 9000, strength: 38 },
  hardboard: { modulus: 5000, strength: 30 },
  mdf: { modulus: 2700, strength: 23 },
};

/** Share of its strength that a wooden board carries for years (EN 1995-1-1, permanent load indoors, about; from memory). */
const longTerm = 0.4;

const stations = 20;

/** Least radius to which the panel's middle layer is bent between its ends, mm. */
function tightestBend(dish: Dish): number {
  const below = dish.reflectorThickness + dish.panelThickness / 2;
  let min = Infinity;
  for (let i = 0; i <= stations; i++)
    min = Math.min(min, bendRadius(dish.profile, dish.litFrom + ((dish.litTo - dish.litFrom) * i) / stations));
  return min + below;
}

/**
 * What bending does to the panel: stress at its faces E·t/2ρ by the beam formula.
 * @returns an error where it breaks, a warning where it creeps and may crack in years
 */
export function bendingProblems(design: Design, dish: Dish): Diagnostic[] {
  const kind = design.materials[design.panel.material]?.kind;
  const data = kind === undefined ? undefined : bending[kind];
  if (kind === undefined || data === undefined) return [];
  const radius = tightestBend(dish);
  const stress = (data.modulus * dish.panelThickness) / (2 * radius);
  const allowed = longTerm * data.strength;
  if (stress <= allowed) return [];
  const thickest = Math.floor((20 * radius * allowed) / data.modulus) / 10;
  const breaks = stress > data.strength;
  return [
    diagnostic(
      'panel-stiff',
      ['panel', 'material'],
      `${kind} of ${inUnits(design, dish.panelThickness)} bent to a radius of ${inUnits(design, Math.round(radius))} carries about ${Math.round(stress)} MPa: it ${breaks ? `breaks at ${data.strength} MPa` : `cracks in time, as it bears about ${Math.round(allowed)} MPa for years`}`,
      `use panels of ${inUnits(design, thickest)} at most, or a longer focal length`,
      breaks ? 'error' : 'warning',
    ),
  ];
}
