/** Whether a facing panel can be bent to the dish, and lives with it. */
import { bendRadius, type Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import type { Grain } from '../part/index.js';
import { inUnits } from './blank.js';

/** Stiffness and strength in bending, MPa. */
interface BendingData {
  readonly modulus: number;
  readonly strength: number;
}

interface Board {
  /** With the stress along the face grain. */
  readonly along: BendingData;
  /** With the stress across it; as along where the board has none. */
  readonly across: BendingData;
  /** Share of the strength that it carries for years. */
  readonly lasting: number;
}

/** Share of its strength that a wooden board carries for years (EN 1995-1-1, permanent load indoors, about; from memory). */
const longTerm = 0.4;

const even = (modulus: number, strength: number, lasting = longTerm): Board => ({
  along: { modulus, strength },
  across: { modulus, strength },
  lasting,
});

/**
 * Cautious ends of published ranges. Plywood along the grain: 6.9 to 9.0 GPa and 38 to 66 MPa over five plywoods (Journal
 * of the Korean Wood Science and Technology 53 (4), table 3: the stiffest and the weakest). Across it: the declared
 * values of five-ply birch of 6.5 mm, 4763 and 29 MPa (Handbook of Finnish Plywood; EN 636 declares both directions by
 * classes F and E; from memory). Hardboard: strength of class HB by EN 622-2 and modulus of tempered board; MDF:
 * EN 622-5 for 6 to 9 mm; OSB/3 of 6 to 10 mm: EN 300; aluminium: data sheet of EN AW-1050A H18, 0.2 % proof stress, under
 * which it keeps no set; all from memory.
 */
const boards: Partial<Record<Design['materials'][string]['kind'], Board>> = {
  plywood: { along: { modulus: 9000, strength: 38 }, across: { modulus: 4763, strength: 29 }, lasting: longTerm },
  osb: { along: { modulus: 3500, strength: 22 }, across: { modulus: 1400, strength: 11 }, lasting: longTerm },
  hardboard: even(5000, 30),
  mdf: even(2700, 23),
  aluminium: even(70_000, 120, 1),
};

const stations = 20;

/** Least radius to which the panel's middle layer is bent between its ends, mm. */
function tightestBend(dish: Dish): number {
  const below = dish.reflectorThickness + dish.panelThickness / 2;
  let min = Infinity;
  for (let i = 0; i <= stations; i++)
    min = Math.min(min, bendRadius(dish.profile, dish.litFrom + ((dish.litTo - dish.litFrom) * i) / stations));
  return min + below;
}

/** A sheet that breaks or creeps when it is bent. */
export interface StiffSheet {
  readonly message: string;
  /** What could be bent so, mm. */
  readonly thickest: number;
  readonly severity: 'error' | 'warning';
  /** Whether it would bend better across its grain. */
  readonly turned: boolean;
}

/**
 * What bending does to a sheet: stress at its faces E·t/2ρ by the beam formula; null where it bears it for years. The
 * stress runs along the part's x axis.
 * @param radius of its middle layer at the tightest place, mm
 * @param grain how the part lies on its sheets; where any way will do, the stiffest is counted on
 */
export function stiffSheet(
  design: Design,
  material: string,
  thickness: number,
  radius: number,
  grain: Grain,
): StiffSheet | null {
  const kind = design.materials[material]?.kind;
  const board = kind === undefined ? undefined : boards[kind];
  if (kind === undefined || board === undefined) return null;
  const { modulus, strength } = grain === 'across' ? board.across : board.along;
  const stress = (modulus * thickness) / (2 * radius);
  const allowed = board.lasting * strength;
  if (stress <= allowed) return null;
  const breaks = stress > strength;
  const turned = board.along.modulus > board.across.modulus && grain !== 'across';
  return {
    message: `${kind} of ${inUnits(design, thickness)} bent to a radius of ${inUnits(design, Math.round(radius))}${turned ? ' along its grain' : ''} carries about ${Math.round(stress)} MPa: it ${breaks ? `breaks at ${strength} MPa` : `will crack in time, as it can carry about ${Math.round(allowed)} MPa for years`}`,
    thickest: Math.floor((20 * radius * allowed) / modulus) / 10,
    severity: breaks ? 'error' : 'warning',
    turned,
  };
}

/**
 * Whether the panels bear their bend.
 * @param grain how they lie on their sheets
 * @returns an error where they break, a warning where they creep and may crack in years
 */
export function bendingProblems(design: Design, dish: Dish, grain: Grain): Diagnostic[] {
  const stiff = stiffSheet(design, design.panel.material, dish.panelThickness, tightestBend(dish), grain);
  if (stiff === null) return [];
  return [
    diagnostic(
      'panel-stiff',
      ['panel', 'material'],
      stiff.message,
      `use panels of at most ${inUnits(design, stiff.thickest)}, ${stiff.turned ? 'sheets on which they lie across the grain, ' : ''}or a longer focal length`,
      stiff.severity,
    ),
  ];
}
