/** A process with what a coupon has shown of the machine. */
import type { Design } from '../design/index.js';
import { isSameBit, type Process } from '../machining/index.js';

const perMetre = 1000;

type Calibration = Design['machine']['calibration'];

/** The axes of a machine that cuts by this process; none where they are true, or were not measured. */
function axesOf({ axes }: Calibration, kind: Process['kind']) {
  if (axes?.cutBy !== kind) return {};
  const { scaleX, scaleY, squarenessMmPerM } = axes;
  if (scaleX === 1 && scaleY === 1 && squarenessMmPerM === 0) return {};
  return { axes: { scaleX, scaleY, lean: squarenessMmPerM / perMetre } };
}

/**
 * The process with its calibrated values: those of the axes in whatever it cuts, the others in this material, and of a
 * router with the bit that cut the coupon.
 */
export function calibrated(process: Process, material: string, { machine }: Design): Process {
  if (process.kind === 'hand') return process;
  const { kind } = process;
  const { materials } = machine.calibration;
  const own = Object.hasOwn(materials, material) ? materials[material] : undefined;
  const axes = axesOf(machine.calibration, kind);
  if (own?.cutBy !== kind) return { ...process, ...axes };
  const bore = own.bore === 0 ? {} : { bore: own.bore };
  if (process.kind === 'laser') return { ...process, kerf: own.width, ...bore, ...axes };
  const { toolDiameter = process.toolDiameter } = own;
  if (!isSameBit(toolDiameter, process.toolDiameter)) return { ...process, ...axes };
  return { ...process, width: own.width, ...bore, ...axes };
}
