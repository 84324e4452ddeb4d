/** Whether the machining data go together, before there is anything to cut. */
import type { RouterData, RouterProblem } from './types.js';

/**
 * Widest finishing pass, as a share of the bit's diameter: it is taken over the whole depth at once, and beyond a
 * quarter the bit bends; common practice, no source.
 */
const finishingShare = 0.25;

const mm = (value: number): string => `${Number(value.toFixed(3))} mm`;

/**
 * Settings that exclude each other, or that the tool cannot do.
 * @param toolDiameter of the end mill, mm
 */
export function settingProblems(data: RouterData, toolDiameter: number): RouterProblem[] {
  const problems: RouterProblem[] = [];
  const { min, max } = data.spindle;
  const widest = finishingShare * toolDiameter;
  if (data.finishing > widest + 1e-9)
    problems.push({
      code: 'router-finishing',
      severity: 'error',
      key: ['finishing'],
      message: `router.finishing of ${mm(data.finishing)} is more than a bit of ${mm(toolDiameter)} takes in one pass over the whole depth`,
      remedy: `use at most ${mm(widest)}, a quarter of its diameter`,
    });
  if (min > max)
    problems.push({
      code: 'router-spindle',
      severity: 'error',
      key: ['spindle', 'min'],
      message: `router.spindle.min of ${min} rev/min is above router.spindle.max of ${max}`,
      remedy: 'exchange the two',
    });
  return problems;
}
