/** Faces that are made to meet without a joint that holds them by its shape: segments of the board, plates under it, layers of the hub. */
import { bounds, nearestOnContour, sideOfContour } from '../../geometry/index.js';
import type { Design } from '../../design/index.js';
import { isPlate, nameOf } from '../copies.js';
import { frontOf, toPart, toSpace } from '../frame.js';
import type { Assembly, AssembledPlate } from '../types.js';
import type { AssemblyFault } from './fault.js';

/** Faces may stay apart by this, mm. */
const tolerance = 0.01;
const stations = 9;

interface Near {
  readonly board: AssembledPlate;
  readonly off: number;
}

/** The two segments whose edges lie nearest to a place on the line of a plate, in the board's plan; none where it lies in one of them. */
function besidePlace(boards: readonly AssembledPlate[], at: readonly [number, number, number]): readonly Near[] {
  const near = boards.map((board): Near => {
    const [x, y] = toPart(board.frame, at);
    const { distance } = nearestOnContour(board.part.outline, { x, y });
    const inside = sideOfContour(board.part.outline, { x, y }, tolerance / 2) === 'inside';
    return { board, off: inside ? -distance : distance };
  });
  if (near.some(({ off }) => off < 0)) return [];
  return near.sort((a, b) => a.off - b.off).slice(0, 2);
}

/** The widest that a seam over the line of a plate is open. */
function seamFault(plate: AssembledPlate, boards: readonly AssembledPlate[]): AssemblyFault[] {
  const { minX, maxX, minY, maxY } = bounds(plate.part.outline);
  const open = Array.from({ length: stations + 1 }, (_, i) => {
    const at = toSpace(plate.frame, minX + ((maxX - minX) * i) / stations, (minY + maxY) / 2, 0);
    const near = besidePlace(boards, at);
    return { near, gap: near.reduce((sum, { off }) => sum + off, 0) };
  });
  const worst = open.reduce((a, b) => (b.gap > a.gap ? b : a));
  const [one, other] = worst.near;
  if (one === undefined || other === undefined || worst.gap <= tolerance) return [];
  return [{ kind: 'gap', between: [nameOf(one.board), nameOf(other.board)], gap: worst.gap }];
}

/** A level plate's lower and upper face. */
function levels({ part, frame }: AssembledPlate): readonly [number, number] {
  const heights = [0, part.thickness].map((h) => frame.origin[2] + h * frontOf(frame)[2]) as [number, number];
  return [Math.min(...heights), Math.max(...heights)];
}

/** Whether a plate lies on another: what is open between the upper face of the one and the lower of the other. */
function onFaces(lower: AssembledPlate, upper: AssembledPlate): AssemblyFault[] {
  const gap = levels(upper)[0] - levels(lower)[1];
  return gap > tolerance ? [{ kind: 'gap', between: [nameOf(upper), nameOf(lower)], gap }] : [];
}

/** Seams that stay open, and plates that do not lie on what they are made to lie on. */
export function seamFaults(design: Design, { placed }: Assembly): AssemblyFault[] {
  const plates = placed.filter(isPlate);
  const of = (kind: string) => plates.filter(({ part }) => part.kind === kind);
  const [boards, splices, hub, cleats] = [of('board'), of('splice'), of('hub'), of('cleat')];
  const [board] = boards;
  if (board === undefined) return [];
  const layers =
    design.hub.build === 'layers' ? [board, ...[...hub].sort((a, b) => levels(a)[0] - levels(b)[0])] : [board];
  return [
    ...splices.flatMap((plate) => seamFault(plate, boards)),
    ...splices.flatMap((plate) => onFaces(plate, board)),
    ...cleats.flatMap((cleat) => onFaces(board, cleat)),
    ...layers.slice(1).flatMap((layer, i) => onFaces(layers[i] ?? board, layer)),
  ];
}
