/**
 * The measures of a cradle, in its own axes with the dish looking up: origin on the dish's axis at the board's upper
 * face, x level towards the sun, y along the tilt axis, z up. Tilted by an angle, the dish's axis leans towards +x and
 * its board swings towards -x. Millimetres, radians.
 */
import { bounds } from '../geometry/index.js';
import type { Design, FilledStand } from '../design/index.js';
import type { Dish } from '../dish/index.js';
import { axleSpan, bolt as boltOf, type Pipe, pipePlay, pipes, pipeFor, washerSpace } from '../hardware/index.js';
import type { Part } from '../part/index.js';
import { type Linkage, linkageOf } from './linkage.js';

/** What is known before the stand is made. */
export interface StandSource {
  readonly design: Design;
  readonly dish: Dish;
  readonly stand: FilledStand;
  /** Parts of the dish. */
  readonly parts: readonly Part[];
  /** The highest sun of the year, degrees; null without a site. */
  readonly highestSunDeg: number | null;
  /** What is done to each part once it is drawn: lettering that fits, notes of the process. */
  readonly finish: (part: Part) => Part;
}

/** Free width between what moves and what stands, mm: common practice, no source. */
const clearance = 15;
/** From the pipe in an arm's end, or from the one it turns on, to where the sight stands. */
const pastPipe = 35;
/** From the counterweights' bolt to the arm's end, past their discs. */
const pastWeights = 150;
/** From the rim to the arm: a hand's hem and the head of the lock's bolt. */
const besideRim = 12;
const pinDiameter = 8;
/** From the lock's holes in an arm to its lower edge, past their letters. */
const belowLetters = 35;
/** Head of a bolt with its washer: common practice, no source. */
export const boltHead = 8;

export interface Cradle {
  /** Direction of x in the dish's plan. */
  readonly turn: number;
  /** Thickness of frames, arms and beams; of base, spacers and pivot plate. */
  readonly sheet: number;
  readonly thin: number;
  /** Play of tabs in their slots. */
  readonly fit: number;
  /** Height of the tilt axis, and of the focus. */
  readonly axis: number;
  readonly focus: number;
  /** Of the base's upper face, and of the ground. */
  readonly baseTop: number;
  readonly ground: number;
  /** Inner faces of arms and side frames, off the middle. */
  readonly armY: number;
  readonly sideY: number;
  /** Between an arm and its side frame, one on the other. */
  readonly spacers: number;
  /** Upright beams under the board; a level flange of that width lies on each and takes what bends it sideways. */
  readonly cross: { readonly x: number; readonly top: number; readonly height: number; readonly flange: number };
  /** Thickness of the packing between board and cross beams: that of the plates under the board's joints. */
  readonly packing: number;
  /** Mounting holes lie at (+-cross.x, +-mountY). */
  readonly mountY: number;
  readonly arm: { readonly halfWidth: number; readonly bottom: number; readonly head: number; readonly top: number };
  /** From the tilt axis to the counterweights; 0 without. */
  readonly lever: number;
  /** What keeps a hanger level that the arms carry; null where it is fixed in the side frames, or where there is none. */
  readonly linkage: Linkage | null;
  readonly foot: number;
  readonly beam: { readonly x: number; readonly height: number };
  readonly base: { readonly halfX: number; readonly halfY: number };
  readonly castors: { readonly x: number; readonly y: number; readonly height: number };
  readonly lock: {
    readonly radius: number;
    readonly hole: number;
    readonly pin: number;
    /** Tilts of the side frames' holes, and offsets of the arms' holes from the arm's middle; 0 is straight down. */
    readonly frame: readonly number[];
    readonly arm: readonly number[];
  };
  readonly pipe: Pipe;
  readonly pipeHole: number;
  /** Bolts of the joints. */
  readonly bolt: string;
  /** Furthest that anything of the dish comes from the tilt axis. */
  readonly swept: number;
  /** Outermost radius of the dish. */
  readonly rim: number;
  /** Tilts in use, from the highest sun to the lowest. */
  readonly tilt: { readonly from: number; readonly to: number };
}

const RAD = Math.PI / 180;
const up5 = (mm: number): number => 5 * Math.ceil(mm / 5 - 1e-9);

/** Mounting holes of the boards, by angle. */
export function mountingHoles({ design, parts }: StandSource): { readonly radius: number; readonly angle: number }[] {
  const { mountingDiameter, centreHole } = design.board;
  return parts
    .filter(({ kind }) => kind === 'board')
    .flatMap(({ holes }) => holes)
    .filter(({ x, y, diameter }) => diameter === mountingDiameter && Math.hypot(x, y) > Math.max(1, centreHole / 2))
    .map(({ x, y }) => ({ radius: Math.hypot(x, y), angle: Math.atan2(y, x) }))
    .sort((a, b) => a.angle - b.angle);
}

/** Turn of the cradle in the dish's plan, and where the mounting holes then lie; null where they are no rectangle. */
function mountOf(source: StandSource): { readonly turn: number; readonly x: number; readonly y: number } | null {
  const holes = mountingHoles(source);
  const [first, second, third, fourth] = holes;
  if (holes.length !== 4 || !first || !second || !third || !fourth) return null;
  const opposite = (a: typeof first, b: typeof first): boolean =>
    Math.abs(a.radius - b.radius) < 0.1 && Math.abs(Math.cos(a.angle - b.angle) + 1) < 1e-6;
  if (!opposite(first, third) || !opposite(second, fourth)) return null;
  const half = (second.angle - first.angle) / 2;
  // beams stand nearer the middle where the holes allow it
  const [turn, open] =
    half >= Math.PI / 4 ? [first.angle + half, half] : [second.angle + Math.PI / 2 - half, Math.PI / 2 - half];
  return { turn, x: first.radius * Math.cos(open), y: first.radius * Math.sin(open) };
}

/** How far the board reaches along the tilt axis. */
function boardAcross({ design: { board } }: StandSource, turn: number): number {
  const half = board.size / 2;
  return board.shape === 'round' ? half : half * (Math.abs(Math.cos(turn)) + Math.abs(Math.sin(turn)));
}

/** The outermost radius of ribs, panels and strips. */
function rimOf({ dish, parts }: StandSource): number {
  const rib = parts.find(({ kind }) => kind === 'rib');
  const tip = dish.innerRadius + (rib ? bounds(rib.outline).maxX : 0);
  return Math.max(dish.apertureRadius, Math.hypot(tip, dish.ribThickness / 2));
}

/** Pairs of holes that the lock steps through: odd, so that the arm's holes lie evenly on both sides of its middle. */
const pairCounts = [5, 7, 9];
/** Wood between two holes, in pins (common practice, no source). */
const woodBetween = 1.3;

/** Least wood between two holes of the arm, mm. */
const minHolePitch = pinDiameter + 1 + woodBetween * pinDiameter;

/** How many holes the arm has: as few as leave wood between them; null when the step is too fine for the radius. */
export const pairsFor = (stepDeg: number, radius: number): number | null =>
  pairCounts.find((count) => (count - 1) * stepDeg * RAD * radius >= minHolePitch) ?? null;

/** The finest step that a lock of that radius takes, degrees. */
export const finestStep = (radius: number): number => minHolePitch / ((pairCounts.at(-1)! - 1) * radius * RAD);

/** Length of a pipe that holds an arm in its side frame and nothing else. */
export const stubLength = ({ sheet, thin, spacers }: Pick<Cradle, 'sheet' | 'thin' | 'spacers'>): number =>
  2 * sheet + spacers * thin + 60;

/**
 * Holes of the lock, as on a vernier: with n holes in the arm, those of the frame lie n steps apart and those of the arm
 * n - 1, so that just one pair meets at each step.
 */
function lockOf(stepDeg: number, to: number, radius: number): Pick<Cradle['lock'], 'frame' | 'arm'> {
  const count = pairsFor(stepDeg, radius) ?? pairCounts.at(-1)!;
  const step = stepDeg * RAD;
  const coarse = count * step;
  const half = (count - 1) / 2;
  const reach = half * (count - 1) * step;
  const first = Math.floor(-reach / coarse + 1e-9);
  const last = Math.ceil((to + reach) / coarse - 1e-9);
  return {
    frame: Array.from({ length: last - first + 1 }, (_, k) => (first + k) * coarse),
    arm: Array.from({ length: count }, (_, j) => (j - half) * (count - 1) * step),
  };
}

/** Wood on either side of a hole into an edge, mm: common practice, no source. */
const besideEdgeHole = 2.5;

/** Thickness of a sheet whose edge takes a bolt. */
export const edgeNeeds = (size: string): number => boltOf(size).clearance + 2 * besideEdgeHole;

/** The thickest bolt, up to M8 or 5/16 in, whose hole leaves wood on both sides in an edge; null when none does. */
export function jointBolt(sheet: number, inch: boolean): string | null {
  const sizes = inch ? ['5/16 in', '1/4 in', '3/16 in'] : ['M8', 'M6', 'M5'];
  return sizes.find((size) => edgeNeeds(size) <= sheet) ?? null;
}

/** Where the tilt axis lies, and what it carries. */
export interface AxisPlace {
  /** Height; the focus where it is left out. */
  readonly axis?: number;
  /** From the tilt axis to the counterweights, 0 without. */
  readonly lever: number;
  /** Weight of the vessel with its load, N. */
  readonly carriedN: number;
}

/** Lowest place of the tilt axis: above the cross beams is wood for the pipe. */
const lowestAxis = (crossTop: number, thin: number, head: number): number => crossTop + thin + 30 + head;

/** Measures of the cradle of a dish; null where its mounting holes make no rectangle. */
export function cradleOf(source: StandSource, { axis: asked, lever, carriedN }: AxisPlace): Cradle | null {
  const { design, dish, stand, parts, highestSunDeg } = source;
  const mount = mountOf(source);
  if (mount === null) return null;
  const thickness = (id: string): number => design.materials[id]?.thickness ?? 0;
  const [sheet, thin, board] = [
    thickness(stand.material),
    thickness(stand.baseMaterial),
    thickness(design.board.material),
  ];
  const packing = parts.find(({ kind }) => kind === 'splice')?.thickness ?? 0;
  const rim = rimOf(source);
  const focus = dish.baseHeight + dish.focusHeight.atRim;
  const armY = Math.ceil(Math.max(rim, boardAcross(source, mount.turn)) + besideRim);
  const carries = asked !== undefined && stand.holder !== 'none';
  const spacers = Math.max(1, Math.ceil(((carries ? Math.max(boltHead, thin) : boltHead) + 3) / thin - 1e-9));
  const sideY = armY + sheet + spacers * thin;
  const crossTop = -(board + packing + thin);
  const crossHeight = Math.max(80, up5((2 * armY) / 14));
  const pipe = pipeFor(axleSpan(dish.apertureRadius), carriedN) ?? pipes.at(-1)!;
  const head = Math.max(55, pipe.outside / 2 + washerSpace(pipe.outside));
  const axis = asked === undefined ? focus : Math.min(focus, Math.max(asked, lowestAxis(crossTop, thin, head)));
  const armBottom = crossTop - crossHeight - 15;
  const armHalf = mount.x + Math.max(sheet, (0.8 * armY) / 6.5) / 2 + 40;
  const boardRadius = (design.board.size / 2) * (design.board.shape === 'round' ? 1 : Math.SQRT2);
  const swept = Math.max(
    Math.hypot(boardRadius, axis - crossTop),
    Math.hypot(armHalf, axis - armBottom),
    Math.hypot(rim, axis - dish.rimEndHeight + design.rib.rimHeight),
    Math.hypot(rim, axis - dish.baseHeight - dish.depth),
  );
  const beamHeight = Math.max(80, up5((2 * sideY) / 16));
  const beamX = stand.foot - 60;
  const overBeam = Math.sqrt(Math.max(0, swept ** 2 - (beamX - sheet / 2) ** 2)) + beamHeight;
  const baseTop = axis - Math.ceil(Math.max(swept, overBeam) + clearance);
  const highest = stand.highest ?? highestSunDeg ?? 90;
  const tilt = { from: (90 - highest) * RAD, to: (90 - stand.lowest) * RAD };
  // below the pipe's head, or between the cross beams where the axis lies near them
  const radius =
    asked === undefined
      ? up5(Math.min(0.33 * (axis - baseTop), 0.5 * (axis - crossTop)))
      : up5(Math.min(0.33 * (axis - baseTop), axis - armBottom - belowLetters) - 5);
  const baseHalfX = stand.foot + 80;
  const linkage = carries ? linkageOf(focus - axis, head, tilt.to) : null;
  const above = linkage === null ? head + pastPipe : focus - axis + head + pastPipe;
  return {
    turn: mount.turn,
    sheet,
    thin,
    fit: design.rib.fit,
    axis,
    focus,
    baseTop,
    ground: baseTop - thin - stand.castor,
    armY,
    sideY,
    spacers,
    cross: { x: mount.x, top: crossTop, height: crossHeight, flange: Math.max(80, up5(armY / 6.5)) },
    packing,
    mountY: mount.y,
    arm: { halfWidth: armHalf, bottom: armBottom, head, top: axis + (lever === 0 ? above : lever + pastWeights) },
    lever,
    linkage,
    foot: stand.foot,
    beam: { x: beamX, height: beamHeight },
    base: { halfX: baseHalfX, halfY: sideY + sheet + 35 },
    castors: { x: baseHalfX - 45, y: sideY + sheet / 2 - 45, height: stand.castor },
    lock: { radius, hole: pinDiameter + 1, pin: pinDiameter, ...lockOf(stand.step, tilt.to, radius) },
    pipe,
    pipeHole: pipe.outside + pipePlay,
    bolt: jointBolt(sheet, design.board.mountingBolt.endsWith('in')) ?? 'M5',
    swept,
    rim,
    tilt,
  };
}
