/** The parts of a sheet where they should be, at their finished size. */
import type { Vertex } from '../geometry/index.js';
import { EdgeSet } from './edge-set.js';
import { spelling, strokesOf } from './lettering.js';
import type { AxesRead, RecordRead, PartRead, PlacementRead, ProcessRead, SheetRead } from './job-reader.js';
import { remembered } from './remembered.js';
import { type Box, boxOf, type Line, lineOf, ringArea } from './ring.js';
import type { ProofPoint } from './types.js';

/** A hole, round, with its countersink if it has one. */
export interface NominalHole extends ProofPoint {
  readonly diameter: number;
  readonly countersink: number | undefined;
}

/** A ring within which all is cleared to a depth. */
export interface NominalPocket {
  readonly ring: Line;
  readonly depth: number;
}

/** A placed part. Rings run with the material on their left. */
export interface Nominal {
  readonly part: string;
  readonly copy: number;
  readonly outlines: readonly Line[];
  readonly openings: readonly Line[];
  readonly pockets: readonly NominalPocket[];
  readonly scribes: readonly Line[];
  readonly holes: readonly NominalHole[];
  /** Lettering of the face that lies up, as it should be engraved. */
  readonly labels: readonly { readonly text: string; readonly strokes: readonly Line[] }[];
  /** Around the outlines. */
  readonly box: Box;
  /** Edges of outlines and openings. */
  readonly edges: EdgeSet;
}

/** A part and the number of its copy, for a message. */
export function nameOf({ part, copy }: Pick<Nominal, 'part' | 'copy'>): string {
  return `${part} ${copy}`;
}

/** Mirrors (x to -x) if asked, turns about the part's origin, then moves. */
function placer({ x, y, rotationDeg, mirrored }: PlacementRead): (point: ProofPoint) => ProofPoint {
  // whole quarter turns are exact
  const quarters = rotationDeg / 90;
  const angle = (rotationDeg * Math.PI) / 180;
  const cos = Number.isInteger(quarters) ? [1, 0, -1, 0][((quarters % 4) + 4) % 4]! : Math.cos(angle);
  const sin = Number.isInteger(quarters) ? [0, 1, 0, -1][((quarters % 4) + 4) % 4]! : Math.sin(angle);
  return (point) => {
    const px = mirrored ? -point.x : point.x;
    return { x: x + px * cos - point.y * sin, y: y + px * sin + point.y * cos };
  };
}

/** The same ring run the other way. */
function turnedBack(vertices: readonly Vertex[]): Vertex[] {
  const count = vertices.length;
  return vertices.map((_, i) => {
    const here = vertices[count - 1 - i]!;
    const before = vertices[(2 * count - 2 - i) % count]!;
    return { x: here.x, y: here.y, bulge: -before.bulge };
  });
}

function materialLeft(line: Line, operation: 'outline' | 'opening' | 'pocket'): Line {
  const anticlockwise = ringArea(line.edges) > 0;
  return anticlockwise === (operation === 'outline') ? line : lineOf(turnedBack(line.vertices), true);
}

/** The drawings and the tool paths of a sheet are held against the same parts. */
const placedBy = remembered((placement: PlacementRead) => remembered((part: PartRead) => placed(part, placement)));

/** Where a part of the record lies on its sheet. */
export function placePart(part: PartRead, placement: PlacementRead): Nominal {
  return placedBy(placement)(part);
}

function placed(part: PartRead, placement: PlacementRead): Nominal {
  const place = placer(placement);
  const turn = placement.mirrored ? -1 : 1;
  const of = (operation: PartRead['contours'][number]['operation']): PartRead['contours'] =>
    part.contours.filter((contour) => contour.operation === operation);
  const lineFor = ({ vertices, closed }: PartRead['contours'][number]): Line =>
    lineOf(
      vertices.map(([x, y, bulge]) => ({ ...place({ x, y }), bulge: turn * bulge })),
      closed ?? true,
    );
  const outlines = of('outline').map((one) => materialLeft(lineFor(one), 'outline'));
  const openings = of('opening').map((one) => materialLeft(lineFor(one), 'opening'));
  return {
    part: placement.part,
    copy: placement.copy,
    outlines,
    openings,
    pockets: of('pocket').map((one) => ({ ring: materialLeft(lineFor(one), 'pocket'), depth: one.depth ?? 0 })),
    scribes: of('scribe').map(lineFor),
    holes: part.drills.map(({ x, y, diameter, countersink }) => ({ ...place({ x, y }), diameter, countersink })),
    labels: part.labels
      .filter(({ face }) => face === (placement.mirrored ? 'back' : 'front'))
      .map((label) => ({
        text: spelling(label.text, placement.copy),
        strokes: strokesOf(label, placement.copy).map((stroke) =>
          lineOf(
            // text on the back is read from behind: mirrored twice, it stands as it is written
            stroke.map(({ x, y, bulge }) => ({ ...place({ x: turn * x, y }), bulge })),
            false,
          ),
        ),
      })),
    box: boxOf(outlines.map(({ box }) => box)),
    edges: new EdgeSet([...outlines, ...openings].flatMap(({ edges }) => edges)),
  };
}

/** Width of the cut that the paths of a sheet are offset for, mm; 0 where they are the finished edges. */
export function widthOfCut(process: ProcessRead): number {
  if (!process.compensated) return 0;
  switch (process.kind) {
    case 'router':
      return process.width ?? process.toolDiameter;
    case 'laser':
      return process.kerf;
    case 'hand':
      return 0;
  }
}

/** Axes of the machine that are not true, if the files make up for such; undefined where they are true. */
export function axesOf(process: ProcessRead): AxesRead | undefined {
  return process.kind === 'hand' ? undefined : process.axes;
}

/** How much wider than its diameter a bored hole comes out, which its path has to make up for. */
export function boreOf(process: ProcessRead): number {
  return process.kind === 'hand' || !process.compensated ? 0 : (process.bore ?? 0);
}

/** How a sheet is cut: by its own process, if it has one, or by that of the job. */
export function processOf(job: RecordRead, sheet: SheetRead): ProcessRead {
  return sheet.process ?? job.process;
}
