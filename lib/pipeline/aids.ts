/** Templates, gauges and jigs: each on a sheet of its own, cut as the design states for templates. */
import type { Design } from '../design/index.js';
import { bounds, placeVertices } from '../geometry/index.js';
import { machine, type Process, spacingFor } from '../machining/index.js';
import type { Part } from '../part/index.js';
import { calibrated } from './calibrated.js';
import { laserProcess } from './laser.js';
import { sheetMarks } from './sheet-marks.js';
import type { JobSheet } from './types.js';

/** Clear space round an aid on its sheet, mm. */
const margin = 5;

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

/** The pieces of an aid, one above the other: on the machine's bed where they fit on it, in the better of two orientations. */
function layOut(aid: Part, design: Design, spacing: number): JobSheet['nested'] {
  const mirrored = aid.up === 'back';
  const laid = (rotationDeg: number) => {
    const box = bounds(placeVertices(aid.outline, { x: 0, y: 0, rotationDeg, mirrored }));
    const step = box.maxY - box.minY + spacing;
    const width = box.maxX - box.minX + 2 * margin;
    return { box, rotationDeg, step, width, height: aid.quantity * step - spacing + 2 * margin };
  };
  const { bed } = design.template;
  const layouts = [laid(0), laid(90)];
  const fitting = bed && layouts.find(({ width, height }) => width <= bed.width && height <= bed.height);
  const chosen = fitting ?? laid(0);
  const size = bed && fitting ? bed : { width: chosen.width, height: chosen.height };
  const placed = Array.from({ length: aid.quantity }, (_, i) => ({
    part: aid.id,
    copy: i + 1,
    x: margin - chosen.box.minX,
    y: margin - chosen.box.minY + i * chosen.step,
    rotationDeg: chosen.rotationDeg,
    mirrored,
  }));
  return { stock: aid.material, ...size, placed, usedLength: chosen.width, offcut: null };
}

/** The sheets of all aids. */
export function aidSheets(design: Design, aids: readonly Part[]): JobSheet[] {
  const parts = new Map(aids.map((aid) => [aid.id, aid]));
  return aids.flatMap((aid) => {
    const process = aidProcess(design, aid.material);
    const nested = layOut(aid, design, spacingFor(process));
    return machine([{ ...nested, margin }], [aid], process, { compensated: process.kind !== 'hand' }).map((cut) => ({
      file: `templates/${aid.id}`,
      nested,
      cut: { ...cut, id: aid.id, marks: sheetMarks(nested, parts) },
    }));
  });
}
