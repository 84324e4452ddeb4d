/** The shop drawings of a design: one for every part and aid. */
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { Design } from '../../design/index.js';
import type { Part } from '../../part/index.js';
import { inInches } from '../../units/index.js';
import { sha256Hex } from '../sha256.js';
import { type Paper, papers } from './paper.js';
import { drawnPart } from './part-drawing.js';
import { imperial, metric, type Printing } from './printing.js';
import { type DishSection, dishSection } from './section.js';
import type { Title } from './title-block.js';
import type { ShopDrawing } from './types.js';

export type ShopDesign = Pick<Design, 'name' | 'units' | 'process' | 'marking' | 'materials'>;

/** An inch rule for wood shows 64ths (common practice, no source). */
const RULE = 64;
/** What a joiner keeps without being asked, and at the edge that gives the mirror its shape, mm: common practice, no source. */
const TOLERANCE = { usual: 0.5, optical: 0.2 } as const;

/** How the drawings of a design print their numbers: those by hand in inches are in fractions. */
export function printingFor({ units, process, marking }: ShopDesign): Printing {
  if (!inInches(units)) return metric(process.kind === 'laser' ? 2 : 1);
  return imperial(process.kind === 'hand' ? Math.max(RULE, marking.fraction) : null);
}

/** Inch designs are printed on Letter. */
export const paperFor = ({ units }: ShopDesign): Paper => (inInches(units) ? papers.letter : papers.a4);

/** Names what a drawing shows, so that two prints can be told apart: the first digits of its SHA-256. */
function revisionOf(part: Part): string {
  const { outline, openings, holes, marks, edgeHoles, material, thickness, quantity } = part;
  const shown = { outline, openings, holes, marks, edgeHoles, material, thickness, quantity };
  const rounded = JSON.stringify(shown, (_, value: unknown) =>
    typeof value === 'number' ? Number(value.toFixed(4)) : value,
  );
  return sha256Hex(utf8ToBytes(rounded)).slice(0, 6);
}

const grains = { along: 'along x', across: 'across x', any: 'any' } as const;

function titleOf(part: Part, design: ShopDesign, printing: Printing) {
  const revision = revisionOf(part);
  const material = design.materials[part.material]?.description ?? part.material;
  const { usual, optical } = TOLERANCE;
  const hasOptical = part.edges.some(({ role }) => role === 'optical');
  const tolerance = `± ${printing.length(usual)}${hasOptical ? `, the mirror’s edge ± ${printing.length(optical)}` : ''}`;
  return (scale: string, page: number, pages: number): Title => ({
    projection: printing.unit === 'mm' ? 'first' : 'third',
    rows: [
      [
        { head: 'dish', text: design.name, share: 55 },
        { head: 'title', text: part.name, share: 70 },
        { head: 'drawing', text: part.id, share: 35 },
        { head: 'page', text: `${page} of ${pages}`, share: 20 },
      ],
      [
        { head: 'material', text: material, share: 85 },
        { head: 'thickness', text: printing.thickness(part.thickness), share: 25 },
        { head: 'number off', text: String(part.quantity), share: 20 },
        { head: 'grain', text: grains[part.grain], share: 25 },
        { head: 'face shown', text: part.up === 'front' ? 'front, up when cut' : 'front, down when cut', share: 25 },
      ],
      [
        { head: 'lengths in', text: printing.name, share: 28 },
        { head: 'tolerance, edges square', text: tolerance, share: 70 },
        { head: 'revision', text: revision, share: 20 },
        { head: 'scale', text: scale, share: 16 },
      ],
    ],
  });
}

/** The whole dish, cut through its axis. */
export function sectionDrawing(design: ShopDesign, section: DishSection): ShopDrawing {
  const printing = printingFor(design);
  const revision = sha256Hex(utf8ToBytes(section.parts.map(revisionOf).join(''))).slice(0, 6);
  const title = (scale: string): Title => ({
    projection: printing.unit === 'mm' ? 'first' : 'third',
    rows: [
      [
        { head: 'dish', text: design.name, share: 55 },
        { head: 'title', text: 'Dish in section', share: 70 },
        { head: 'drawing', text: 'dish', share: 35 },
        { head: 'page', text: '1 of 1', share: 20 },
      ],
      [
        { head: 'lengths in', text: printing.name, share: 28 },
        { head: 'cut', text: 'through the axis and a rib, which is not hatched', share: 70 },
        { head: 'revision', text: revision, share: 20 },
        { head: 'scale', text: scale, share: 16 },
      ],
    ],
  });
  return dishSection(section, { paper: paperFor(design), printing, title });
}

/**
 * A drawing of every part and aid, in the order given.
 * @throws RangeError for a part that no page takes at any scale
 */
export function partDrawings(design: ShopDesign, parts: readonly Part[]): ShopDrawing[] {
  const printing = printingFor(design);
  const paper = paperFor(design);
  return parts.map((part) => drawnPart({ part, paper, printing, title: titleOf(part, design, printing) }));
}
