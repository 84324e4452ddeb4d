/** Templates, gauges and jigs: those of a material nested together, cut as the design states for templates. */
import type { Design } from '../design/index.js';
import { bounds, element, signedArea } from '../geometry/index.js';
import { machine, type Process, spacingFor } from '../machining/index.js';
import { type Layout, type NestedSheet, type NestStock, nest } from '../nest/index.js';
import type { Part } from '../part/index.js';
import { calibrated } from './calibrated.js';
import { laserProcess } from './laser.js';
import { nestPart, nestStock } from './nesting-request.js';
import { sheetMarks } from './sheet-marks.js';
import type { JobSheet } from './types.js';

/** Clear space along the edge of a sheet for aids, mm. */
const margin = 5;
/** How far arcs that are flattened to the outside may stand out, both sides together, mm. */
const OUTSIDE = 0.2;

/** How aids of a material are cut, before what a coupon has shown. */
function plainProcess(design: Design, material: string): Process {
  const { process, kerf, toolDiameter } = design.template;
  const { web, relief, drillBits } = design.process;
  if (process === 'router') return { kind: process, toolDiameter, web, relief, drills: drillBits };
  if (process === 'laser') return laserProcess(design, material, kerf);
  return { kind: process, web };
}

/** How aids of a material are cut. */
export function aidProcess(design: Design, material: string): Process {
  return calibrated(plainProcess(design, material), material, design);
}

/**
 * What aids of a material are cut from: the machine's bed where one is stated, else what the material is bought as.
 * @returns nothing where neither is known
 */
function stockOf(design: Design, material: string): NestStock[] {
  const { bed } = design.template;
  const own = nestStock(design).filter(({ group }) => group === material);
  if (!bed) return own.map((stock) => ({ ...stock, count: Infinity }));
  return [sheetOf(material, bed.width, bed.height)];
}

const sheetOf = (material: string, width: number, height: number): NestStock => ({
  id: material,
  group: material,
  shape: { kind: 'sheet', width, height },
  count: Infinity,
  price: 0,
  margin,
  keepOuts: [],
});

/** A sheet on which the largest of them fits as it is drawn. */
function sheetFor(material: string, aids: readonly Part[]): NestStock {
  const boxes = aids.map(({ outline }) => bounds(outline));
  const width = Math.max(...boxes.map(({ minX, maxX }) => maxX - minX));
  const height = Math.max(...boxes.map(({ minY, maxY }) => maxY - minY));
  return sheetOf(material, width + 2 * margin + OUTSIDE, height + 2 * margin + OUTSIDE);
}

/** Effort that may save a sheet, as a share of the design's: aids are few, and a person waits. */
const EFFORT = 0.02;
/** Shapes of this share of a sheet's area may fit on it, with some effort (common practice, no source). */
const FILLED = 0.85;

/** Whether one sheet less could hold as much. */
function mayBeFewer({ sheets }: Layout, aids: readonly Part[]): boolean {
  const filled = aids.reduce((sum, { outline, quantity }) => sum + quantity * signedArea(outline), 0);
  const areas = sheets.map(({ width, height }) => width * height);
  return sheets.length > 1 && filled < FILLED * areas.slice(1).reduce((sum, area) => sum + area, 0);
}

/** Aids of one material together; those that are larger than bed and stock on sheets of their own size. */
function layOut(design: Design, material: string, aids: readonly Part[], spacing: number): NestedSheet[] {
  const laid = (stock: readonly NestStock[], own: readonly Part[]): Layout => {
    const parts = own.map((part) => nestPart(design, part));
    const options = { spacing, seed: design.nest.seed, effort: 0 };
    const quick = nest(parts, stock, options);
    if (!mayBeFewer(quick, own)) return quick;
    return nest(parts, stock, { ...options, effort: EFFORT * design.nest.effort });
  };
  const first = laid(stockOf(design, material), aids);
  const larger = aids.filter(({ id }) => first.unplaced.some(({ part }) => part === id));
  if (larger.length === 0) return [...first.sheets];
  const fitting = aids.filter((aid) => !larger.includes(aid));
  const rest = laid([sheetFor(material, larger)], larger);
  if (rest.unplaced.length > 0) throw new Error(`an aid of ${material} fits no sheet of its own size`);
  return [...(fitting.length > 0 ? laid(stockOf(design, material), fitting).sheets : []), ...rest.sheets];
}

/** Of what is bought its own, else that of a sheet for aids. */
const marginOf = (design: Design, stock: string): number =>
  design.stock.find(({ id }) => id === stock)?.margin ?? margin;

/** The sheets of all aids. */
export function aidSheets(design: Design, aids: readonly Part[]): JobSheet[] {
  const parts = new Map(aids.map((aid) => [aid.id, aid]));
  return [...new Set(aids.map(({ material }) => material))].flatMap((material) => {
    const own = aids.filter((aid) => aid.material === material);
    const process = aidProcess(design, material);
    const laid = layOut(design, material, own, spacingFor(process));
    const nested = laid.map((sheet) => ({ ...sheet, stock: material }));
    return machine(
      laid.map((sheet) => ({ ...sheet, stock: material, margin: marginOf(design, sheet.stock) })),
      own,
      process,
      { compensated: process.kind !== 'hand' },
    ).map((cut, i) => {
      const sheet = element(nested, i);
      return { file: `templates/${cut.id}`, nested: sheet, cut: { ...cut, marks: sheetMarks(sheet, parts) } };
    });
  });
}
