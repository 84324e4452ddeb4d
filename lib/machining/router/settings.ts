/** Whether the machining data go together, before there is anything to cut. */
import type { RouterMachine } from './machine.js';
import type { RouterData, RouterProblem } from './types.js';

/**
 * Widest finishing pass, as a share of the bit's diameter: it is taken over the whole depth at once, and beyond a
 * quarter the bit bends; common practice, no source.
 */
const finishingShare = 0.25;
/** Fewest decimals of an inch: with four a place is off by up to 1.3 µm, and the ends of arcs by twice that. */
const inchDecimals = 5;

const mm = (value: number): string => `${Number(value.toFixed(3))} mm`;

/**
 * Settings that exclude each other, or that the tool cannot do.
 * @param toolDiameter of the end mill, mm
 */
export function settingProblems(data: RouterData, toolDiameter: number): RouterProblem[] {
  const problems: RouterProblem[] = [];
  const { machine } = data;
  const { min, max } = machine.spindle;
  const widest = finishingShare * toolDiameter;
  if (data.finishing > widest + 1e-9)
    problems.push({
      code: 'router-finishing',
      severity: 'error',
      key: ['router', 'finishing'],
      message: `router.finishing of ${mm(data.finishing)} is more than a bit of ${mm(toolDiameter)} can take in one pass at full depth`,
      remedy: `use at most ${mm(widest)}, a quarter of its diameter`,
    });
  if (min > max)
    problems.push({
      code: 'router-spindle',
      severity: 'error',
      key: ['machine', 'spindle', 'min'],
      message: `machine.spindle.min of ${min} rev/min is above machine.spindle.max of ${max}`,
      remedy: 'swap the two',
    });
  return [
    ...problems,
    ...feedsOverMachine(data),
    ...placeProblems(machine, data.safeHeight),
    ...decimalProblems(machine),
  ];
}

/** Feeds that the design asks for and the machine cannot run. */
function feedsOverMachine({ plungeFeed, machine }: RouterData): RouterProblem[] {
  const { z } = machine.maxFeed;
  if (plungeFeed === undefined || plungeFeed <= z) return [];
  return [
    {
      code: 'machine-feed',
      severity: 'error',
      key: ['router', 'plungeFeed'],
      message: `router.plungeFeed of ${plungeFeed} mm/min is above the ${z} mm/min that machine.maxFeed.z allows`,
      remedy: `use at most ${z}`,
    },
  ];
}

/** Places off the working area, and a tool change below the clamps. */
function placeProblems(machine: RouterMachine, safeHeight: number): RouterProblem[] {
  const { area, changeAt, changeHeight, parking, toolChange } = machine;
  const problems: RouterProblem[] = [];
  const places = { parking, ...(toolChange === 'by-hand' ? { changeAt } : {}) };
  for (const [key, at] of Object.entries(places)) {
    if (area === undefined || at === undefined) continue;
    if (at.x >= 0 && at.y >= 0 && at.x <= area.width && at.y <= area.height) continue;
    problems.push({
      code: 'machine-place',
      severity: 'error',
      key: ['machine', key],
      message: `machine.${key} of ${mm(at.x)}, ${mm(at.y)} is outside the working area of ${mm(area.width)} x ${mm(area.height)}`,
      remedy: 'use a position within machine.area',
    });
  }
  if (toolChange === 'by-hand' && changeHeight < safeHeight)
    problems.push({
      code: 'machine-place',
      severity: 'error',
      key: ['machine', 'changeHeight'],
      message: `machine.changeHeight of ${mm(changeHeight)} is below the travel height of ${mm(safeHeight)}`,
      remedy: `use at least ${mm(safeHeight)}, which is router.safeHeight`,
    });
  return problems;
}

/** Decimals of an inch with which rounding would show in the part. */
function decimalProblems({ programUnits, decimals }: RouterMachine): RouterProblem[] {
  if (programUnits === 'mm' || decimals === undefined || decimals >= inchDecimals) return [];
  return [
    {
      code: 'machine-decimals',
      severity: 'error',
      key: ['machine', 'decimals'],
      message: `${decimals} decimals of an inch round by more than a micrometre`,
      remedy: `use at least ${inchDecimals}, or millimetres`,
    },
  ];
}
