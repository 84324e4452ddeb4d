/** Speeds and feeds of a motion as the record has them for its tool, and within what is usual of it in the material. */
import { mm } from '../faults.js';
import type { Report } from './described.js';
import { levelLength } from './level.js';
import type { Motion, SimulationLimits } from './types.js';

/** Rounding of a file's numbers, mm. */
const rounding = 0.001;
/** Rounding of a feed, mm/min, and of the slope of a short ramp, degrees. */
const feedRounding = 1;
const angleSlack = 0.2;
/** A descent up to this slope is no plunge, whatever the ramp is set to: rise over run of 0.2. */
const gentleDeg = 11.4;
/** A limit of the material that a whole number of turns or millimetres a minute passes by rounding. */
const limitSlack = 1.001;

/**
 * A stretch that is shorter than this, mm, may be a slope by which an axis limits the feed, though its ends are rounded to
 * one depth, or to less than a rise.
 */
const shortestLevel = 0.1;
const shortestSlope = 1;

/** How steeply a motion goes down, degrees; 0 for one that does not. */
function descent(motion: Motion): number {
  const fall = motion.from.z - motion.to.z;
  return fall <= rounding ? 0 : (Math.atan2(fall - rounding, levelLength(motion)) * 180) / Math.PI;
}

/** A cut along the sheet: its feed makes the chip. */
function checkAlong({ tool, feed }: Motion, speed: number, report: Report): void {
  const { number, flutes, range } = tool;
  if (feed < tool.feed - feedRounding) report('feed-slow', { tool: number, feed: Math.round(feed), min: tool.feed });
  const { minChip = 0, maxChip = Infinity, outside = false } = range;
  const chipOf = (at: number): number => at / (speed * flutes);
  const thin = chipOf(feed + feedRounding) < minChip / limitSlack;
  if (outside || (!thin && chipOf(feed - feedRounding) <= maxChip * limitSlack)) return;
  report('chip-range', { tool: number, chip: mm(chipOf(feed)), min: mm(minChip), max: mm(maxChip) });
}

/** A cut downwards; what is steeper than a ramp is a plunge. */
function checkDown({ tool, feed }: Motion, angle: number, rampAngleDeg: number, report: Report): void {
  const { number, plunge, range } = tool;
  // a hole is begun, and a countersink made, at half the feed
  const slowest = angle > 89 ? Math.round(plunge / 2) : plunge;
  if (feed < slowest - feedRounding) report('feed-slow', { tool: number, feed: Math.round(feed), min: slowest });
  if (angle <= Math.max(rampAngleDeg, gentleDeg) + angleSlack) return;
  if (feed > plunge + feedRounding)
    report('plunge-fast', { tool: number, angle: `${angle.toFixed(1)}°`, feed: Math.round(feed), max: plunge });
  const { maxPlunge = Infinity, outside = false } = range;
  if (!outside && feed > maxPlunge + feedRounding)
    report('plunge-range', { tool: number, feed: Math.round(feed), max: maxPlunge });
}

/** Reports what is not as the record has it. @param speed of the spindle, rev/min */
export function checkAsPlanned(
  motion: Motion,
  speed: number,
  { rampAngleDeg }: Pick<SimulationLimits, 'rampAngleDeg'>,
  report: Report,
): void {
  const { tool, feed, from, to } = motion;
  const { number, spindle, range } = tool;
  const max = Math.max(tool.feed, tool.plunge);
  if (Math.abs(speed - spindle) > 1) report('spindle-other', { tool: number, speed, wanted: spindle });
  const { maxSpindle = Infinity, outside = false } = range;
  if (!outside && speed > maxSpindle * limitSlack) report('spindle-range', { tool: number, speed, max: maxSpindle });
  if (feed > max + feedRounding) report('feed-other', { tool: number, feed: Math.round(feed), max });
  if (to.z >= 0) return;
  const angle = descent(motion);
  if (to.z - from.z > rounding) return;
  if (angle > 0) checkDown(motion, angle, rampAngleDeg, report);
  else if (levelLength(motion) > (from.z === to.z ? shortestLevel : shortestSlope)) checkAlong(motion, speed, report);
}
