/** Design files of the dishes that are no shallow paraboloid. Invented, like the fixtures. */
import { fixtureText } from './fixtures.js';

/** The demo with its light spread over the vessel's base. */
export const spreadText = fixtureText('press-house').replace('  ribs: 24\n', '  ribs: 24\n  profile: spread\n');

/** A deep dish: the focus lies 170 mm below the rim. */
export const deepText = `name: Deep dish
dish: { aperture: 1000, focalLength: 180, ribs: 20, baseHeight: 50 }
materials:
  ply: { kind: plywood, thickness: 9 }
  face: { kind: card, thickness: 1.5 }
  film: { kind: film, thickness: 0.1 }
stock:
  - { material: ply, size: 2440 x 1220, price: 40 }
  - { material: face, size: 1200 x 1000, price: 5 }
  - { material: film, rollWidth: 400, price: 5 }
rib: { material: ply }
board: { size: 700 }
panel: { material: face, fixing: glue }
reflector: { material: film }
vessel: { diameter: 200 }
load: { mass: 2 }
process: { kind: router, toolDiameter: 6, drillBits: [1.5, 3, 8] }
`;
