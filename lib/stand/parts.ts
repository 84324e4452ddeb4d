/**
 * The parts of a cradle, each in its own axes: upright plates along x or y of the cradle have x along it and y up, level
 * ones x and y as the cradle. Heights of side frames and beams count from the base's upper face, of arms and cross
 * beams from the board's.
 */
import { circle, rectangle } from '../geometry/index.js';
import { washerSpace } from '../hardware/index.js';
import { blank, type Part, throughHole } from '../part/index.js';
import type { Cradle } from './cradle.js';
import { base, baseBeam, side } from './frame-parts.js';
import { linkageParts } from './linkage-parts.js';
import { clearanceOf, heavyBolt, pivotRadius, spacerRadius, type StandMaterials } from './part-shapes.js';
import { sightPlates } from './sight.js';
import { arm, crossBeam, flange } from './swing-parts.js';

/** All parts of a cradle, in the order of building. */
export function cradleParts(cradle: Cradle, materials: StandMaterials): Part[] {
  const [rear, front] = sightPlates();
  const thick = { kind: 'stand', material: materials.sheet, thickness: cradle.sheet } as const;
  const thin = { kind: 'stand', material: materials.thin, thickness: cradle.thin } as const;
  const packing = 2 * washerSpace(clearanceOf(materials.mountingBolt)) + 20;
  return [
    blank({ ...thin, ...base(cradle) }),
    blank({ ...thick, ...baseBeam(cradle) }),
    blank({ ...thick, ...side(cradle) }),
    blank({ ...thick, ...crossBeam(cradle, materials) }),
    blank({ ...thin, ...flange(cradle, materials) }),
    blank({ ...thick, ...arm(cradle) }),
    blank({
      ...thin,
      id: 'stand-spacer',
      name: 'Spacer',
      quantity: 2 * cradle.spacers,
      outline: circle({ x: 0, y: 0 }, Math.max(spacerRadius, cradle.pipe.outside)),
      holes: [throughHole({ x: 0, y: 0 }, cradle.pipeHole)],
      notes: ['Keeps arm and side frame apart on the pipe; wax both faces.'],
    }),
    blank({
      ...thin,
      id: 'stand-pivot',
      name: 'Pivot plate',
      quantity: 1,
      outline: circle({ x: 0, y: 0 }, pivotRadius),
      holes: [throughHole({ x: 0, y: 0 }, heavyBolt.hole)],
      notes: ['Lies on the ground, pegged or weighted; the base turns about its bolt.'],
    }),
    blank({ ...thin, ...rear }),
    blank({ ...thin, ...front }),
    ...(linkageParts(cradle) ?? []).map((made) => blank({ ...thin, ...made })),
    ...(cradle.packing === 0
      ? []
      : [
          blank({
            kind: 'stand',
            material: materials.packing,
            id: 'stand-packing',
            name: 'Packing',
            thickness: cradle.packing,
            quantity: 4,
            outline: rectangle(-packing / 2, -packing / 2, packing / 2, packing / 2),
            holes: [throughHole({ x: 0, y: 0 }, clearanceOf(materials.mountingBolt))],
          }),
        ]),
  ];
}
