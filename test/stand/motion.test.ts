/** The machine moved through its range, against solids of a general-purpose library (manifold-3d). */
import load, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import type { AssembledPlate } from '../../lib/assembly/index.js';
import { motionOf } from '../../lib/stand/index.js';
import { collisions, type Prism } from '../../lib/stand/motion.js';
import { panelSolid, plateSolid } from '../helpers/solids.js';
import { preparedOn, standOn } from './on-stand.js';

const RAD = Math.PI / 180;
let library: ManifoldToplevel;
beforeAll(async () => {
  library = await load();
  library.setup();
});

const prepared = preparedOn('cider-yard', 'stand: { lowest: 12, highest: 90 }');
const stand = standOn(prepared);
const { axis, turn, tilt } = stand.cradle;

/** What tilts and what stands, as one solid each, in the cradle's axes about the tilt axis. */
function halves(): { readonly tilting: Manifold; readonly standing: Manifold } {
  const plates = prepared.assembly.placed.filter((one): one is AssembledPlate => one.form === 'plate');
  const own = (plate: AssembledPlate): boolean => plate.part.kind !== 'stand' || motionOf(plate.part) === 'tilts';
  const about = (solids: Manifold[]): Manifold =>
    library.Manifold.union(solids)
      .translate(0, 0, -axis)
      .rotate(0, 0, -turn / RAD);
  // hub and cleats lie within board and ribs; every second rib and panel is near enough to every edge
  const some = plates.filter(({ part, rib = 0 }) => part.kind !== 'cleat' && part.kind !== 'hub' && rib % 2 === 0);
  const panels = prepared.assembly.placed.flatMap((one) =>
    one.form === 'sheet' && one.part.kind === 'panel' && one.copy % 2 === 0
      ? [panelSolid(library, prepared, one, 12)]
      : [],
  );
  const solid = (plate: AssembledPlate) => plateSolid(library, plate, 0.1);
  return {
    tilting: about([...some.filter(own).map(solid), ...panels]),
    standing: about(some.filter((plate) => !own(plate)).map(solid)),
  };
}

const raised = (prism: Prism, by: number): Prism => ({
  ...prism,
  outline: prism.outline.map(({ x, y }) => ({ x, y: y + by })),
});

describe('a cradle', () => {
  const angles = [0, 15, 30, 45, 60, 78].map((degrees) => degrees * RAD);

  it('is free through its range by prisms, and by solids at some tilts', () => {
    expect(stand.values.collisions).toEqual([]);
    const { tilting, standing } = halves();
    for (const angle of angles)
      expect(
        tilting
          .rotate(0, angle / RAD, 0)
          .intersect(standing)
          .volume(),
        `${angle / RAD}°`,
      ).toBeLessThan(0.5);
  });

  it('collides by prisms wherever it does by solids, once its base is raised', () => {
    const { tilting, standing } = halves();
    let struck = 0;
    for (const lift of [15, 40, 90]) {
      const base = standing.translate(0, 0, lift);
      const prisms = stand.prisms.map((one) => (['base', 'base beam'].includes(one.name) ? raised(one, lift) : one));
      for (const angle of angles) {
        const common = tilting
          .rotate(0, angle / RAD, 0)
          .intersect(base.trimByPlane([0, 0, -1], 0.3 * axis))
          .volume();
        const found = collisions(prisms, stand.cradle, { from: angle, to: angle });
        if (common > 1) {
          struck += 1;
          expect(found.length, `${lift} mm at ${angle / RAD}°`).toBeGreaterThan(0);
        }
      }
    }
    expect(struck).toBeGreaterThan(3);
  });

  it('reports where a collision begins: a bar across the swing of the lower edge', () => {
    // a thin bar at a place that a corner of the arm passes at some tilt, and not before
    const corner = { x: -stand.cradle.arm.halfWidth, y: stand.cradle.arm.bottom };
    const at = (angle: number) => ({
      x: corner.x * Math.cos(angle) + (corner.y - axis) * Math.sin(angle),
      y: axis + (corner.y - axis) * Math.cos(angle) - corner.x * Math.sin(angle),
    });
    const place = at(40 * RAD);
    const bar: Prism = {
      name: 'bar',
      motion: 'stands',
      from: -1e4,
      to: 1e4,
      outline: [
        { x: place.x - 1, y: place.y - 1 },
        { x: place.x + 1, y: place.y - 1 },
        { x: place.x + 1, y: place.y + 1 },
        { x: place.x - 1, y: place.y + 1 },
      ],
    };
    const arms = stand.prisms.filter(({ name }) => name === 'arm');
    const [found] = collisions([...arms, bar], stand.cradle, { from: 0, to: tilt.to });
    expect(found?.between).toEqual(['arm', 'bar']);
    expect(found!.from / RAD).toBeGreaterThan(39);
    expect(found!.from / RAD).toBeLessThan(41);
  });

  it('casts no shadow on the mirror but that of its hanger: all else stays out of the cylinder of light', () => {
    const { rim } = stand.cradle;
    for (const { name, motion, from, to } of stand.prisms)
      if (motion === 'tilts' ? !['dish', 'cross beam'].includes(name) : ['side frame', 'spacer'].includes(name))
        expect(Math.min(Math.abs(from), Math.abs(to)), name).toBeGreaterThan(rim);
    // base, beams and ground lie behind the mirror as long as nothing collides; cross beams under the board
    expect(prepared.design.vessel).toMatchObject({ holderArms: 2 });
  });
});
