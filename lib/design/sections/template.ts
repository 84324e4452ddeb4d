/** The template for copying a rib by hand, prints and marking out. */
import { choice, choiceAuto, group, keysIn, numberOr, textAuto } from '../keys.js';
import { checkLineOf, type LengthUnit } from '../../units/index.js';

export function templateSection(unit: LengthUnit) {
  const { lengthOr, size } = keysIn(unit);
  return group(
    { about: 'A rib in thin stock, for copying by hand with a trimming router.' },
    {
      material: textAuto({ about: 'Name of the material, from `materials`.', auto: 'the material of the ribs' }),
      process: choice(['laser', 'router', 'hand'], 'laser', { about: 'How the template itself is cut.' }),
      kerf: lengthOr(0.2, { about: 'Width of the laser’s cut.', finest: 0.01, max: 3 }),
      toolDiameter: lengthOr(6, { about: 'Router bit that cuts the template.', above: 0, max: 50 }),
      bed: size({ about: 'Bed of the machine, length x width; a longer template is split.' }).optional(),
      guide: choice(['bearing', 'bushing'], 'bearing', {
        about: 'How the trimming router follows: flush bit with a bearing (same size), or guide bushing (offset).',
      }),
      bushingDiameter: lengthOr(17, { about: 'Outside diameter of the guide bushing.', above: 0, max: 80 }),
      bitDiameter: lengthOr(8, { about: 'Diameter of the bit in the bushing.', above: 0, max: 50 }),
      tail: lengthOr(60, { about: 'Length of the clamping tail past the inner end; 0 for none.', max: 500 }),
      joint: choice(['dovetail', 'finger'], 'dovetail', { about: 'How a split template is joined.' }),
      gauge: choice(['vertex-to-rim', 'rim-to-rim'], 'vertex-to-rim', {
        about: 'How far the gauges reach: over one rib or panel, or right across the dish.',
        why: 'a short gauge is easier to keep true and to cut',
      }),
    },
  );
}

export function printSection(unit: LengthUnit) {
  const { lengthOr, lengthAuto } = keysIn(unit);
  const { min, max } = checkLineOf(unit);
  return group(
    { about: 'Full-size prints.' },
    {
      paper: choiceAuto(['a4', 'letter', 'a3', 'roll'], {
        about: 'Paper size; `roll` is a plotter roll.',
        auto: 'a4, or letter in an inch file',
      }),
      rollWidth: lengthOr(914, { about: 'Width of the plotter roll.', above: 0, max: 5000 }),
      margin: lengthOr(10, { about: 'Edge that the printer cannot reach.', max: 200 }),
      overlap: lengthOr(10, { about: 'How far pages overlap for gluing.', max: 200 }),
      measured: lengthAuto({
        about:
          'What the check line of a print, 100 mm or, in an inch file, 4 in long, measures on paper; prints are rescaled by it.',
        auto: '100 mm, or 4 in in an inch file',
        min,
        max,
      }),
    },
  );
}

export function markingSection(unit: LengthUnit) {
  const { lengthAuto, lengthOr } = keysIn(unit);
  return group(
    { about: 'The marking-out table for hand work.' },
    {
      step: lengthAuto({
        about: 'Distance between two marks along the base.',
        auto: '25 mm, or 1 in in an inch file',
        min: 1,
        max: 1000,
      }),
      sag: lengthOr(0.25, {
        about: 'Acceptable sag of the curve between two marks; the table recommends a step that keeps to it.',
        above: 0,
        max: 20,
      }),
      fraction: numberOr(32, { about: 'Denominator to which inch fractions are rounded.', min: 2, max: 128 }),
    },
  );
}
