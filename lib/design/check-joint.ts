/** Whether the joint that is asked for suits the screws and the thickness. */
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import type { HardwareSizes } from './hardware-sizes.js';
import type { DesignFile } from './schema.js';

/** What the joint of the ribs cannot be made with. */
export function checkJoint({ rib, cleat }: DesignFile, hardware: HardwareSizes): Diagnostic[] {
  const { downScrews, ribScrews } = hardware.cleat;
  if (rib.joint === 'screwed-cleat' && downScrews + ribScrews === 0)
    return [
      diagnostic(
        'rib-joint',
        ['rib', 'joint'],
        'the cleats have no screws: none that is sold suits their thickness, or cleat.downScrews and cleat.ribScrews are 0',
        'use rib.joint: glued-cleat, or a thicker cleat.material',
      ),
    ];
  const key = (['downScrews', 'ribScrews'] as const).find((one) => (cleat[one] ?? 0) > 0);
  if (rib.joint === 'glued-cleat' && key !== undefined)
    return [
      diagnostic(
        'rib-joint',
        ['cleat', key],
        `cleat.${key} of ${cleat[key] ?? 0} asks for screws, and rib.joint is glued-cleat`,
        `leave cleat.${key} out, or use rib.joint: screwed-cleat`,
      ),
    ];
  return [];
}
