/** Marks lie on the face that the builder sees, where the part goes for which they stand; and nothing is missing. */
import { bounds, vecDot } from '../../geometry/index.js';
import type { Design } from '../../design/index.js';
import { isPlate } from '../copies.js';
import { frontOf, toPart, toSpace } from '../frame.js';
import type { Assembly, JointKind, AssembledPlate } from '../types.js';
import type { AssemblyFault } from './fault.js';

/** A mark may lie this far off the place that it stands for, mm: half of what a scribed line shows. */
const markTolerance = 0.5;

/** The cleat's line: on the face of the rib on which a cleat stands, at the middle of that cleat. */
function cleatLine(rib: AssembledPlate, cleats: readonly AssembledPlate[]): AssemblyFault[] {
  const { part, frame } = rib;
  const lines = part.marks.flatMap((mark) => (mark.kind === 'line' && !mark.closed ? [mark] : []));
  if (cleats.length === 0 || lines.length === 0) return [];
  const stands = cleats.map((cleat) => {
    const { minX, maxX, minY, maxY } = bounds(cleat.part.outline);
    const middle = toSpace(cleat.frame, (minX + maxX) / 2, (minY + maxY) / 2, cleat.part.thickness / 2);
    const [x, , height] = toPart(frame, middle);
    return { x, face: height > part.thickness ? 'front' : 'back' };
  });
  const seen = stands.filter(({ face }) => lines.some((line) => line.face === face));
  if (seen.length === 0)
    return [{ kind: 'mark', part: part.id, what: 'the line for its cleat lies on the other face' }];
  const onLine = seen.some(({ x }) =>
    lines.some(({ vertices }) => vertices.every((vertex) => Math.abs(vertex.x - x) <= markTolerance)),
  );
  return onLine
    ? []
    : [{ kind: 'mark', part: part.id, what: 'the line for its cleat is not at the middle of the cleat' }];
}

/** The front of a part that lies level looks up, where the builder stands, or down for what is fixed from below. */
function levelFronts(plates: readonly AssembledPlate[]): AssemblyFault[] {
  const wanted: Readonly<Record<string, number>> = { board: 1, hub: 1, cleat: 1, splice: -1 };
  return plates.flatMap(({ part, frame }): AssemblyFault[] => {
    const looks = wanted[part.kind];
    if (looks === undefined || vecDot(frontOf(frame), [0, 0, looks]) > 0.5) return [];
    return [{ kind: 'mark', part: part.id, what: 'the face with its marks is hidden' }];
  });
}

/** As many fasteners as the design asks for. */
function counts(design: Design, { fasteners, placed }: Assembly): AssemblyFault[] {
  const cleats = placed.filter(({ part }) => part.kind === 'cleat').length;
  const wanted: readonly (readonly [JointKind, number])[] = [
    ['cleat-to-board', cleats * design.cleat.downScrews],
    ['cleat-to-rib', cleats * design.cleat.ribScrews],
    ['hub-dowel', design.hub.dowels],
    ['hub-bolt', design.hub.boltDiameter > 0 ? 1 : 0],
  ];
  return wanted.flatMap(([joint, number]): AssemblyFault[] => {
    const found = fasteners.filter((fastener) => fastener.joint === joint).length;
    return found === number ? [] : [{ kind: 'count', joint, found, wanted: number }];
  });
}

/** What is wrong with the marks, and which fasteners are missing. */
export function markFaults(design: Design, assembly: Assembly): AssemblyFault[] {
  const plates = assembly.placed.filter(isPlate);
  const cleats = plates.filter(({ part }) => part.kind === 'cleat');
  return [
    ...plates
      .filter(({ part }) => part.kind === 'rib')
      .flatMap((rib) =>
        cleatLine(
          rib,
          cleats.filter((cleat) => cleat.rib === rib.rib),
        ),
      ),
    ...levelFronts(plates),
    ...counts(design, assembly),
  ];
}
