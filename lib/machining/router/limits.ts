/** What the files of a sheet keep to, as far as it follows from the settings, wherever the parts lie. */
import type { Process } from '../types.js';
import { cuttingOf, recordedTool } from './feeds.js';
import { tabHeightOf } from './holding.js';
import { allowanceOf } from './lead.js';
import type { RouterData, RouterLimits, RouterTool, SheetMaterial } from './types.js';

/**
 * Limits that do not depend on where parts lie.
 * @param tools in use
 */
export function settledLimits(
  tools: readonly RouterTool[],
  material: SheetMaterial,
  data: RouterData,
  process: Process,
): Omit<RouterLimits, 'holding' | 'tabs' | 'keepOuts'> {
  const { machine } = data;
  return {
    tools: tools.map((tool) => recordedTool(cuttingOf(tool, material, data), material, data)),
    thickness: material.thickness,
    overcut: data.overcut,
    rampAngleDeg: data.rampAngleDeg,
    finishing: allowanceOf(data, process),
    markDepth: data.markDepth,
    hopHeight: data.hopHeight,
    tabWidth: data.tabs.width,
    tabHeight: tabHeightOf(material, data),
    onionSkin: data.tabs.onionSkin,
    minSpindle: machine.spindle.min,
    maxSpindle: machine.spindle.max,
    machine,
  };
}
