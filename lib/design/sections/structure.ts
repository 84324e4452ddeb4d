/** Ribs, hub, cleats and the backer board. */
import { choice, group, type KeyMeta, keysIn, textAuto, wholeAuto, wholeOr, yesNo } from '../keys.js';
import * as z from 'zod';
import type { LengthUnit } from '../../units/index.js';

const materialName = z
  .string()
  .meta({ quantity: 'text', about: 'Name of the material, from `materials`.' } satisfies KeyMeta);

export function ribSection(unit: LengthUnit) {
  const { lengthAuto, lengthOr } = keysIn(unit);
  return group(
    { about: 'The ribs.' },
    {
      material: materialName,
      toeRadius: lengthAuto({
        about: 'Radius at which the base ends and the slanting toe cut begins.',
        auto: 'the edge of the backer board less 10 mm, or the rim if the board reaches it',
      }),
      rimHeight: lengthAuto({
        about: 'Height of the rib end at the rim, from the toe cut up to the panel.',
        auto: 'a fifth of the rib height at the rim, at least 40 mm',
      }),
      lightening: yesNo(false, {
        about: 'Whether lightening holes are cut in the ribs.',
        why: 'they save weight, not material',
      }),
      minWeb: lengthOr(40, { about: 'Least width of rib left round a lightening hole.', least: 5, most: 500 }),
      pilotDiameter: lengthOr(3, {
        about: 'Pilot hole in the rib for a screw from the cleat.',
        why: 'suits a 4 mm wood screw',
        above: 0,
        most: 20,
      }),
    },
  );
}

export function hubSection(unit: LengthUnit) {
  const { lengthAuto, lengthOr } = keysIn(unit);
  return group(
    { about: 'The centre piece that the inner rib ends butt against.' },
    {
      shape: choice(['polygon', 'round'], 'polygon', {
        about: 'N-sided with a flat for each rib, or round.',
        why: 'a square rib end seats on a flat',
      }),
      radius: lengthAuto({
        about: 'From the axis to a flat (to the edge if round): the radius at which the ribs start.',
        auto: 'where the ribs clear each other, plus 5 mm',
      }),
      material: textAuto({ about: 'Name of the material, from `materials`.', auto: 'the material of the ribs' }),
      layers: wholeAuto({
        about: 'Number of layers, glued up.',
        auto: 'as many as stay below the inner rib ends',
        least: 1,
        most: 50,
      }),
      boltDiameter: lengthOr(8, { about: 'Hole on the axis; 0 for none.', most: 200 }),
    },
  );
}

export function cleatSection(unit: LengthUnit) {
  const { lengthAuto, lengthOr } = keysIn(unit);
  return group(
    { about: 'The blocks that fix the ribs to the backer board.' },
    {
      material: textAuto({ about: 'Name of the material, from `materials`.', auto: 'the material of the board' }),
      length: lengthOr(80, { about: 'Length along the rib.', least: 20, most: 1000 }),
      width: lengthOr(36, { about: 'Width away from the rib.', least: 12, most: 300 }),
      start: lengthAuto({
        about: 'Radius of the inner end.',
        auto: 'their middle two thirds of the way along the ribs’ base, where they hold best, or further out where they clear each other',
      }),
      perRib: wholeOr(1, { about: 'Cleats on each rib: 1, or 2 for one on each side.', least: 1, most: 2 }),
      downScrews: wholeOr(2, { about: 'Screws through each cleat down into the board.', least: 1, most: 8 }),
      ribScrews: wholeOr(2, {
        about: 'Screws through each cleat sideways into the rib; 0 for glue alone.',
        least: 0,
        most: 8,
      }),
      screwDiameter: lengthOr(4, { about: 'Clearance hole for the screws.', above: 0, most: 12 }),
      headDiameter: lengthOr(8, { about: 'Diameter of the countersink.', above: 0, most: 30 }),
    },
  );
}

export function boardSection(unit: LengthUnit) {
  const { lengthAuto, lengthOr } = keysIn(unit);
  return group(
    { about: 'The backer board under the ribs.' },
    {
      material: textAuto({ about: 'Name of the material, from `materials`.', auto: 'the material of the ribs' }),
      shape: choice(['round', 'square'], 'round', { about: 'Outline of the board.' }),
      size: lengthAuto({
        about: 'Diameter, or side if square.',
        auto: 'four fifths of the aperture',
        above: 0,
      }),
      pilotDiameter: lengthOr(3, { about: 'Pilot hole in the board for a cleat screw.', above: 0, most: 20 }),
      centreHole: lengthOr(8, { about: 'Hole on the axis; 0 for none.', most: 500 }),
      mountingHoles: wholeOr(4, { about: 'Holes for the stand, on a circle.', least: 0, most: 48 }),
      mountingDiameter: lengthOr(10, { about: 'Diameter of the mounting holes.', above: 0, most: 100 }),
      mountingRadius: lengthAuto({
        about: 'Radius of the circle of mounting holes.',
        auto: 'clear of ribs, cleats and hub, about half way out',
      }),
      spliceWidth: lengthAuto({
        about: 'Width of the plates that join the segments of a board larger than its stock.',
        auto: 'an eighth of the board, 50 mm at least and 150 mm at most',
        least: 30,
        most: 1000,
      }),
    },
  );
}
