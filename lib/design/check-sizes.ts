/** Sizes that no key can be checked for by itself: whether they go together. */
import { type Diagnostic, diagnostic, type KeyPath } from '../diagnostic/index.js';
import { edgeOffsetAt, minHeightOverDiscs } from '../dish/index.js';
import type { DesignFile } from './schema.js';
import { roundingSlack, type Sizes } from './worked-out.js';
import { formatLength } from '../units/index.js';

/** A design under check: reports, and shows lengths in the user's unit. */
interface Checking {
  readonly file: DesignFile;
  readonly sizes: Sizes;
  readonly report: (code: Diagnostic['code'], path: KeyPath, message: string, remedy: string) => void;
  /** A length in the unit of the file. */
  readonly show: (mm: number) => string;
}

function checkShape({ file, sizes, report, show }: Checking): void {
  const { ribs } = file.dish;
  const { minHubRadius } = sizes;
  const { apertureRadius, innerRadius: hubRadius, ribThickness } = sizes.shape;
  const slotted = sizes.joinery.hubBuild === 'slotted-discs';
  const reason = slotted
    ? `${ribs} slots for ribs of this thickness leave wood between them and room for the noses from ${show(minHubRadius)} on`
    : sizes.joinery.housing > 0
      ? `${ribs} grooves for ribs of this thickness leave wood between them from ${show(minHubRadius)} on`
      : `${ribs} ribs of this thickness clear each other from ${show(minHubRadius)} on`;
  // a round hub gives no flat to seat on, so the rib's corners decide; both clear at the same radius
  if (hubRadius < minHubRadius)
    report(
      'set-back',
      ['hub', 'radius'],
      `hub.radius of ${show(hubRadius)} is too small: ${reason}`,
      `use ${show(Math.ceil(minHubRadius))} or more, or fewer ribs`,
    );
  if (hubRadius >= 0.8 * apertureRadius)
    report(
      'set-back',
      ['dish', 'ribs'],
      `${ribs} ribs of ${show(ribThickness)} cannot start before ${show(hubRadius)}, which leaves too little of the ${show(apertureRadius)} radius`,
      'use fewer or thinner ribs',
    );
}

function checkFacing({ sizes, report, show }: Checking): void {
  const { apertureRadius, baseHeight, facingThickness: facing, profile, ribThickness } = sizes.shape;
  const edgeOffset = edgeOffsetAt(sizes.shape, profile.slopeAngle(apertureRadius));
  if (edgeOffset >= ribThickness / 2 && ribThickness > 0)
    report(
      'facing',
      ['panel', 'gap'],
      `panels would not reach the ribs: their edges are ${show(edgeOffset)} off the rib's centre plane, and the rib is ${show(ribThickness)} thick`,
      'use a smaller panel.gap or a thinner facing',
    );
  if (baseHeight - facing <= 5)
    report(
      'facing',
      ['dish', 'baseHeight'],
      `dish.baseHeight of ${show(baseHeight)} leaves nothing of the ribs under a facing of ${show(facing)} at the vertex`,
      `use at least ${show(Math.ceil(facing + 6))}`,
    );
}

function checkBoardAndRib({ sizes, report, show }: Checking): void {
  const { boardSize, hubReach, rimEnd, rimHeight, toeRadius } = sizes;
  const { apertureRadius, innerRadius: hubRadius } = sizes.shape;
  if (boardSize / 2 <= hubReach + 10)
    report(
      'board',
      ['board', 'size'],
      `board.size of ${show(boardSize)} is too small for the hub of ${show(hubReach)} radius`,
      `use more than ${show(2 * (hubReach + 10))}`,
    );
  if (toeRadius > apertureRadius || toeRadius <= hubRadius)
    report(
      'toe',
      ['rib', 'toeRadius'],
      `rib.toeRadius of ${show(toeRadius)} is not on the rib`,
      `it must be between the hub (${show(hubRadius)}) and the rim (${show(apertureRadius)})`,
    );
  if (rimHeight > rimEnd || rimHeight <= 0)
    report(
      'toe',
      ['rib', 'rimHeight'],
      `rib.rimHeight of ${show(rimHeight)} is not possible`,
      `it must be between 0 and the rib's height at the rim, ${show(rimEnd)}`,
    );
}

function checkHub({ file, sizes, report, show }: Checking): void {
  const { hubLayers, hubThickness, innerHeight } = sizes;
  if (sizes.joinery.hubBuild === 'slotted-discs') {
    const min = minHeightOverDiscs(hubThickness);
    if (innerHeight < min)
      report(
        'hub',
        ['dish', 'baseHeight'],
        `the inner ends of the ribs, ${show(innerHeight)} high, leave no room for two slotted discs of ${show(hubThickness)} with the nose of the rib between them`,
        `use ${show(min - innerHeight)} more, or hub.build: layers`,
      );
    if (file.hub.layers !== undefined && file.hub.layers !== hubLayers)
      report(
        'hub',
        ['hub', 'layers'],
        `a hub of slotted discs has ${hubLayers}, not ${file.hub.layers}`,
        'leave hub.layers out, or use hub.build: layers',
      );
    return;
  }
  if (hubThickness > 0 && hubLayers * hubThickness > innerHeight + roundingSlack)
    report(
      'hub',
      file.hub.layers === undefined ? ['dish', 'baseHeight'] : ['hub', 'layers'],
      `${hubLayers} hub layer(s) of ${show(hubThickness)} are higher than the inner rib ends (${show(innerHeight)})`,
      'use fewer layers or a larger dish.baseHeight',
    );
}

function checkVessel({ file, sizes, report, show }: Checking): void {
  const { load, vessel } = file;
  const { aperture } = file.dish;
  const { focusHeight } = sizes.shape.profile;
  if (load && load.target <= load.start)
    report(
      'load',
      ['load', 'target'],
      `load.target of ${load.target} °C is not above load.start (${load.start} °C)`,
      `use more than ${load.start} °C`,
    );
  if (vessel && vessel.diameter > aperture)
    report(
      'vessel',
      ['vessel', 'diameter'],
      `vessel.diameter of ${show(vessel.diameter)} is larger than the aperture`,
      `use at most ${show(aperture)}; a tenth to a quarter of that is usual`,
    );
  if (vessel && focusHeight + vessel.offset <= 0)
    report(
      'vessel',
      ['vessel', 'offset'],
      `vessel.offset of ${show(vessel.offset)} puts the vessel below the vertex`,
      `use more than ${show(-focusHeight)}; 0 puts it at the focus`,
    );
}

/** What does not go together among the sizes. */
export function checkSizes(file: DesignFile, sizes: Sizes): Diagnostic[] {
  const found: Diagnostic[] = sizes.noProfile === null ? [] : [sizes.noProfile];
  const checking: Checking = {
    file,
    sizes,
    report: (code, path, message, remedy) => found.push(diagnostic(code, path, message, remedy)),
    show: (mm) => formatLength(mm, file.units, file.units === 'mm' ? 2 : 3),
  };
  checkShape(checking);
  checkFacing(checking);
  checkBoardAndRib(checking);
  checkHub(checking);
  checkVessel(checking);
  return found;
}
