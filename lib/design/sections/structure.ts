/** Ribs, hub, cleats and the backer board. */
import {
  choice,
  choiceAuto,
  group,
  type KeyMeta,
  keysIn,
  textAuto,
  integerAuto,
  integerOr,
  sizeAuto,
  yesNo,
} from '../keys.js';
import * as z from 'zod';
import { boltSizes, teeNutSizes, woodScrewSizes } from '../../hardware/index.js';
import type { LengthUnit } from '../../units/index.js';

export const ribJoints = ['screwed-cleat', 'glued-cleat', 'tab-slot', 'housing'] as const;
export type RibJoint = (typeof ribJoints)[number];

const materialName = z
  .string()
  .meta({ quantity: 'text', about: 'Name of the material, from `materials`.' } satisfies KeyMeta);

export function ribSection(unit: LengthUnit) {
  const { lengthAuto, lengthOr } = keysIn(unit);
  return group(
    { about: 'The ribs.' },
    {
      material: materialName,
      joint: choiceAuto(ribJoints, {
        about:
          'How a rib is held: by cleats screwed or glued to it and to the board; by tabs on the rib, glued into slots through the board; or in a housing, a groove that a router cuts in the board for the base of the rib and in the hub layers for its end, glued.',
        auto: 'tab-slot if ribs and board are cut by laser and the ribs are 8 mm or thinner, too thin for screws; otherwise cleats, screwed if they are thick enough for a screw that is sold, else glued. A housing is only made on request, because it needs a router zeroed on the face of a flat board of 9 mm or more',
      }),
      housing: lengthAuto({
        about: 'Depth of a housing’s groove in the board and in the hub layers.',
        auto: 'a third of the board’s thickness, rounded to half a millimetre; at most half of it, as the rest carries the rib',
        above: 0,
        max: 20,
      }),
      fit: lengthAuto({
        about: 'Total play of a rib in its slot or groove, both sides together; the kerf is separate.',
        auto: '0.1 mm for a laser, 0.2 mm for a router, 0.5 mm by hand',
        max: 2,
      }),
      toeRadius: lengthAuto({
        about: 'Radius at which the base ends and the slanting toe cut begins.',
        auto: 'the edge of the backer board less 10 mm, or the rim if the board reaches it',
      }),
      rimHeight: lengthAuto({
        about: 'Height of the rib end at the rim, from the toe cut up to the panel.',
        auto: 'a fifth of the rib height at the rim, at least 40 mm and 2.5 times the thickness of the ribs',
      }),
      lightening: yesNo(false, {
        about: 'Whether lightening holes are cut in the ribs.',
        why: 'they save weight, not material',
      }),
      clampHole: lengthAuto({
        about:
          'Diameter of a hole in each rib near the rim for the arm of a clamp, made where the top and underside of the rib are more than 11° out of parallel and the rib is deep enough; 0 for none. Lightening holes serve the same purpose.',
        auto: '30 mm, or 1-1/4 in in an inch file',
        max: 60,
      }),
      minWeb: lengthOr(40, { about: 'Minimum width of rib left around a lightening hole.', min: 5, max: 500 }),
      pilotDiameter: lengthAuto({
        about: 'Pilot hole in the rib for a screw from the cleat.',
        auto: 'that of `cleat.screw`',
        above: 0,
        max: 20,
      }),
    },
  );
}

export function hubSection(unit: LengthUnit) {
  const { lengthAuto } = keysIn(unit);
  return group(
    { about: 'The centre piece that the inner rib ends butt against.' },
    {
      build: choiceAuto(['layers', 'slotted-discs'], {
        about:
          'A stack of layers that the ribs butt against, or two discs with a slot for each rib, one on the board and one above the noses of the ribs.',
        auto: 'slotted-discs if `rib.joint` is tab-slot and the hub’s material is 8 mm or thinner, else layers',
      }),
      shape: choice(['polygon', 'round'], 'polygon', {
        about: 'N-sided with a flat for each rib, or round.',
        why: 'a square rib end seats on a flat',
      }),
      radius: lengthAuto({
        about:
          'From the axis to a flat (to the edge if round), or to the bottom of a slot: the radius at which the curve of the ribs starts.',
        auto: 'where the ribs clear each other, plus 5 mm, and the panels are wide enough to be cut; for slotted discs, the minimum that leaves wood between the slots and room for the noses of the ribs',
      }),
      material: textAuto({ about: 'Name of the material, from `materials`.', auto: 'the material of the ribs' }),
      layers: integerAuto({
        about: 'Number of layers, glued together; there are always two slotted discs.',
        auto: 'as many as stay below the inner rib ends, or two discs',
        min: 1,
        max: 50,
      }),
      bolt: sizeAuto(
        boltSizes,
        'Bolt on the axis through hub and board: M8, 5/16 in.',
        'M8 or 5/16 in, smaller if the hub is small',
      ),
      boltDiameter: lengthAuto({
        about: 'Hole on the axis; 0 for none.',
        auto: 'the clearance hole of `hub.bolt`',
        max: 200,
      }),
      dowels: integerAuto({
        about:
          'Dowels through hub and board, at unequal radii: they keep the layers from turning and from being fitted upside down.',
        auto: '2, or none if the hub is too small for them',
        max: 2,
      }),
      dowelDiameter: lengthAuto({
        about: 'Diameter of the dowels.',
        auto: 'the thickest sold that is at most 8 mm and a sixth of the hub’s radius (a quarter if your tools make no smaller hole)',
        above: 0,
        max: 30,
      }),
    },
  );
}

export function cleatSection(unit: LengthUnit) {
  const { lengthAuto } = keysIn(unit);
  return group(
    { about: 'The blocks that fix the ribs to the backer board.' },
    {
      material: textAuto({ about: 'Name of the material, from `materials`.', auto: 'the material of the board' }),
      length: lengthAuto({
        about: 'Length along the rib.',
        auto: '80 mm for a dish of 1.5 m and in proportion, from 40 to 120 mm; shorter if the ribs are close together',
        min: 20,
        max: 1000,
      }),
      width: lengthAuto({
        about: 'Width away from the rib.',
        auto: '36 mm for a dish of 1.5 m and in proportion, from 18 to 54 mm; narrower if the ribs are close together, or to suit a screw sold in a length that holds in the rib',
        min: 12,
        max: 300,
      }),
      start: lengthAuto({
        about:
          'Radius of the cleat’s inner end; with two rows, that of the inner row, as the outer row is at the end of the base.',
        auto: 'with their middles two thirds of the way along the base of the ribs, where they hold best (an inner row: one third), or further out where they clear each other',
      }),
      rows: integerAuto({
        about: 'Rows of cleats along each rib: 1, or an inner and an outer one for long ribs.',
        auto: '2 if the base of the ribs is longer than 700 mm, else 1',
        min: 1,
        max: 2,
      }),
      perRib: integerOr(1, { about: 'Cleats on each rib in a row: 1, or 2 for one on each side.', min: 1, max: 2 }),
      downScrews: integerAuto({
        about: 'Screws through each cleat down into the board; 0 for glue only.',
        auto: '2; fewer on a short cleat, none if no screw that is sold holds in both cleat and board',
        min: 0,
        max: 8,
      }),
      ribScrews: integerAuto({
        about: 'Screws through each cleat sideways into the rib; 0 for glue only.',
        auto: '2; fewer on a short cleat, none if the cleat is thinner than three screw diameters and would split',
        min: 0,
        max: 8,
      }),
      screw: sizeAuto(
        woodScrewSizes,
        'Size of the countersunk wood screws: the shank in millimetres, or an inch screw by its number (no 8).',
        'the thickest that is at most three tenths of the cleat’s thickness, up to 4 mm or no 8',
      ),
      screwDiameter: lengthAuto({
        about: 'Clearance hole for the screws.',
        auto: 'that of `cleat.screw`',
        above: 0,
        max: 12,
      }),
      headDiameter: lengthAuto({
        about: 'Diameter of the countersink.',
        auto: 'the head of `cleat.screw`',
        above: 0,
        max: 30,
      }),
    },
  );
}

export function boardSection(unit: LengthUnit) {
  const { lengthAuto } = keysIn(unit);
  return group(
    { about: 'The backer board under the ribs.' },
    {
      material: textAuto({ about: 'Name of the material, from `materials`.', auto: 'the material of the ribs' }),
      shape: choice(['round', 'square'], 'round', { about: 'Outline of the board.' }),
      size: lengthAuto({
        about: 'Diameter, or side if square.',
        auto: 'four fifths of the aperture, or more if the cleats only fit further out',
        above: 0,
      }),
      pilotDiameter: lengthAuto({
        about: 'Pilot hole in the board for a cleat screw.',
        auto: 'that of `cleat.screw`',
        above: 0,
        max: 20,
      }),
      centreHole: lengthAuto({ about: 'Hole on the axis; 0 for none.', auto: 'that of the hub', max: 500 }),
      mountingHoles: integerOr(4, { about: 'Holes for the stand, on a circle.', min: 0, max: 48 }),
      mountingBolt: sizeAuto(
        boltSizes,
        'Bolts to the stand: M8, 5/16 in.',
        'that of the hub, smaller if the ribs leave less room',
      ),
      mountingDiameter: lengthAuto({
        about: 'Diameter of the mounting holes.',
        auto: 'the clearance hole of `board.mountingBolt`',
        above: 0,
        max: 100,
      }),
      mountingRadius: lengthAuto({
        about: 'Radius of the circle of mounting holes.',
        auto: 'clear of ribs, cleats and hub, about half way out',
      }),
      splice: choice(['glued', 'bolted'], 'glued', {
        about:
          'How the plates under the joints of a segmented board are fixed: glued and screwed permanently; or each screwed to one segment and bolted to the next, so that the dish can be taken apart for transport.',
      }),
      segments: integerAuto({
        about: 'Minimum number of segments of a segmented board.',
        auto: 'as few as the sheets allow',
        min: 2,
        max: 12,
      }),
      spliceBolt: sizeAuto(teeNutSizes, 'Bolts for the plates, with tee nuts: M6, 1/4 in.', 'M6 or 1/4 in'),
      spliceWidth: lengthAuto({
        about: 'Width of the plates that join the segments of a board larger than its stock.',
        auto: 'an eighth of the board, at least 50 mm, at most 150 mm',
        min: 30,
        max: 1000,
      }),
    },
  );
}
