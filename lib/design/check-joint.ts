/** Whether the joint that is asked for suits the screws and the thickness. */
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { formatLength } from '../units/index.js';
import type { Material } from './design.js';
import type { HardwareSizes } from './hardware-sizes.js';
import type { DesignFile } from './schema.js';

/** A groove in thinner boards leaves too little under it and holds too little: common practice, no source. */
const minHousedBoard = 9;
/** A tongue that goes in by less does not find its groove, mm: common practice, no source. */
const minTongue = 2;

/** What a housing cannot be made in. */
function checkHousing(file: DesignFile, board: Material | undefined, depth: number, fit: number): Diagnostic[] {
  if (board === undefined) return [];
  const show = (mm: number): string => formatLength(Math.round(100 * mm) / 100, file.units, 2);
  const refused = (key: string, message: string, remedy: string): Diagnostic[] => [
    diagnostic('rib-joint', ['rib', key], message, remedy),
  ];
  if (board.cut !== 'router')
    return refused(
      'joint',
      `a housing is a groove of fixed depth, which needs a router, but the board of ${board.id} is cut by ${board.cut}`,
      board.cut === 'laser' ? 'use rib.joint: tab-slot' : 'use rib.joint: screwed-cleat, or a router',
    );
  if (board.thickness < minHousedBoard)
    return refused(
      'joint',
      `a board of ${show(board.thickness)} is too thin for a housing`,
      `use a board of ${show(minHousedBoard)} or more, or rib.joint: tab-slot`,
    );
  if (depth > board.thickness / 2)
    return refused(
      'housing',
      `a groove of ${show(depth)} leaves ${show(Math.max(0, board.thickness - depth))} of a board of ${show(board.thickness)}`,
      `use at most ${show(Math.floor(board.thickness) / 2)}, half of the board`,
    );
  if (depth - fit < minTongue)
    return refused(
      'housing',
      `a groove of ${show(depth)} holds only ${show(Math.max(0, depth - fit))} of the rib, as it stops short of the floor by rib.fit`,
      `use ${show(minTongue + fit)} or more`,
    );
  return [];
}

/** What the joint of the ribs cannot be made with. */
export function checkJoint(
  file: DesignFile,
  hardware: HardwareSizes,
  { housing, fit }: { readonly housing: number; readonly fit: number },
  board: Material | undefined,
): Diagnostic[] {
  const { rib, cleat } = file;
  if (rib.joint === 'housing') return checkHousing(file, board, housing, fit);
  if (rib.housing !== undefined)
    return [
      diagnostic(
        'rib-joint',
        ['rib', 'housing'],
        `rib.housing is the depth of the grooves of a housing, but rib.joint is ${hardware.joint}`,
        'use rib.joint: housing, or leave rib.housing out',
      ),
    ];
  const { downScrews, ribScrews } = hardware.cleat;
  if (rib.joint === 'screwed-cleat' && downScrews + ribScrews === 0)
    return [
      diagnostic(
        'rib-joint',
        ['rib', 'joint'],
        'the cleats have no screws: either no screw that is sold suits their thickness, or cleat.downScrews and cleat.ribScrews are 0',
        'use rib.joint: glued-cleat, or a thicker cleat.material',
      ),
    ];
  const key = (['downScrews', 'ribScrews'] as const).find((one) => (cleat[one] ?? 0) > 0);
  if (rib.joint === 'glued-cleat' && key !== undefined)
    return [
      diagnostic(
        'rib-joint',
        ['cleat', key],
        `cleat.${key} of ${cleat[key] ?? 0} asks for screws, but rib.joint is glued-cleat`,
        `leave cleat.${key} out, or use rib.joint: screwed-cleat`,
      ),
    ];
  return [];
}
