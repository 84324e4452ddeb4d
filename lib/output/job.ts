/** `job.json`: the record of what was made, against which the written folder is proven later. Lengths in mm. */
import type { Diagnostic } from '../diagnostic/index.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { Path } from '../geometry/index.js';
import type { RouterLimits, ToolWear } from '../machining/index.js';
import { holesUp, linesUp, type Part, textsUp } from '../part/index.js';
import { decimal } from './decimal.js';
import { sha256Hex } from './sha256.js';

export interface JobContour {
  readonly operation: 'outline' | 'opening' | 'scribe';
  /** Present, and false, on an open scribe; everything else is a closed ring. */
  readonly closed?: false;
  /** x, y, bulge: true, finished size. */
  readonly vertices: readonly (readonly [x: number, y: number, bulge: number])[];
}

export interface JobDrill {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  readonly depth: number | 'through';
  readonly countersink?: number;
}

/** Lettering of a part in its own axes: lower left corner of the first letter, capital height, direction of the line. */
export interface JobLabel {
  /** `{n}` stands for the number of the copy. */
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly angleDeg: number;
}

export interface JobPart {
  readonly id: string;
  readonly name: string;
  readonly material: string;
  readonly thickness: number;
  readonly quantity: number;
  readonly contours: readonly JobContour[];
  readonly drills: readonly JobDrill[];
  /** On every copy but the mirrored ones, where it would stand in mirror writing. */
  readonly labels: readonly JobLabel[];
}

/** How sheets are cut, and whether the files hold paths of the tool's centre (compensated) or finished edges. */
export type JobProcess = { readonly compensated: boolean } & (
  | { readonly kind: 'router'; readonly toolDiameter: number }
  | { readonly kind: 'laser'; readonly kerf: number }
  | { readonly kind: 'hand' }
);

/** A part's contours are turned about the part's origin (mirrored first, x to -x), then moved by x, y. */
export interface JobPlacement {
  readonly part: string;
  /** 1-based number among the part's copies. */
  readonly copy: number;
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: number;
  readonly mirrored: boolean;
}

export interface JobSheet {
  /** Path of the sheet's files in the folder, without the ending. */
  readonly file: string;
  readonly stock: string;
  readonly width: number;
  readonly height: number;
  readonly margin: number;
  readonly placed: readonly JobPlacement[];
  /** Present where the sheet is cut otherwise than the job's process says. */
  readonly process?: JobProcess;
  /** Present where the sheet has router files: their names in the order of running, and what they keep to. */
  readonly router?: {
    readonly files: readonly string[];
    readonly limits: RouterLimits;
    readonly cuttingSeconds: number;
    /** Level travel between cuts, mm. */
    readonly travelLength: number;
    /** Length that each tool cuts, mm. */
    readonly toolWear: readonly ToolWear[];
  };
}

/** A rectangle that is left of a sheet and worth keeping. */
export interface JobOffcut {
  /** The `file` of the sheet. */
  readonly sheet: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A part read from a file of the person's own. */
export interface JobExtra {
  readonly part: string;
  readonly file: string;
}

export interface JobRecord {
  /** Version of the program that made it. */
  readonly version: string;
  readonly units: 'mm';
  readonly seed: number;
  /** The complete design, every default filled in. */
  readonly design: unknown;
  readonly dish: unknown;
  readonly parts: readonly JobPart[];
  readonly sheets: readonly JobSheet[];
  readonly process: JobProcess;
  readonly optics: unknown;
  readonly problems: readonly Diagnostic[];
  readonly offcuts: readonly JobOffcut[];
  readonly extras: readonly JobExtra[];
}

/** A file of the folder as it was written. */
export interface JobFile {
  readonly name: string;
  readonly bytes: number;
  /** SHA-256 (FIPS 180-4), hexadecimal. */
  readonly sha256: string;
}

/** The record as it is written into a folder. */
interface SealedRecord extends JobRecord {
  readonly files?: readonly JobFile[];
  readonly recordHash?: string;
}

const recordRing = (operation: JobContour['operation'], vertices: Path, closed = true): JobContour => ({
  operation,
  ...(closed ? {} : { closed }),
  vertices: vertices.map(({ x, y, bulge }) => [x, y, bulge] as const),
});

/** A part as it stands in the record: what is cut of it, from the face that is up. */
export function recordPart(part: Part): JobPart {
  const { id, name, material, thickness, quantity } = part;
  return {
    id,
    name,
    material,
    thickness,
    quantity,
    contours: [
      recordRing('outline', part.outline),
      ...part.openings.map((opening) => recordRing('opening', opening)),
      ...linesUp(part).map(({ vertices, closed }) => recordRing('scribe', vertices, closed)),
    ],
    drills: holesUp(part).map(({ x, y, diameter, depth, countersink }) => ({
      x,
      y,
      diameter,
      depth,
      ...(countersink === undefined ? {} : { countersink }),
    })),
    labels: textsUp(part).map(({ text, x, y, height, angle }) => ({
      text,
      x,
      y,
      height,
      angleDeg: (angle * 180) / Math.PI,
    })),
  };
}

/** A nanometre; and the decimals of a bulge that place an arc of a metre's chord as well. */
const LENGTH_DIGITS = 6;
const BULGE_DIGITS = 12;
/** Significant figures of everything that is not a place: angles, shares, watts. */
const FIGURES = 12;

const rounded = (value: number, digits: number): number => Number(decimal(value, digits));

function printedPart(part: JobPart): JobPart {
  const length = (value: number) => rounded(value, LENGTH_DIGITS);
  return {
    ...part,
    contours: part.contours.map((contour) => ({
      ...contour,
      vertices: contour.vertices.map(([x, y, bulge]) => [length(x), length(y), rounded(bulge, BULGE_DIGITS)] as const),
    })),
    drills: part.drills.map((drill) => ({
      ...drill,
      x: length(drill.x),
      y: length(drill.y),
      diameter: length(drill.diameter),
    })),
    labels: part.labels.map((label) => ({ ...label, x: length(label.x), y: length(label.y) })),
  };
}

function printedSheet(sheet: JobSheet): JobSheet {
  return {
    ...sheet,
    placed: sheet.placed.map((one) => ({
      ...one,
      x: rounded(one.x, LENGTH_DIGITS),
      y: rounded(one.y, LENGTH_DIGITS),
    })),
  };
}

/**
 * The text of `job.json`. Places are rounded to 1e-6 mm, bulges to 1e-12, all other numbers to 12 significant figures;
 * a number that JSON cannot hold (infinite, none) becomes null there. A list of numbers stands on one line.
 * @throws RangeError for a place that is not a finite number
 */
export function writeJob(record: SealedRecord): string {
  const printed: SealedRecord = {
    ...record,
    parts: record.parts.map(printedPart),
    sheets: record.sheets.map(printedSheet),
  };
  const text = JSON.stringify(
    printed,
    (_key, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(FIGURES)) : value),
    1,
  );
  // within a JSON string a line break is escaped, so this meets only lists
  return `${text.replace(/\[\n\s*([-\d.e+]+(?:,\n\s*[-\d.e+]+)*)\n\s*\]/g, (_, list: string) => `[${list.replace(/\s+/g, ' ')}]`)}\n`;
}

/** The list of a folder's other files for its record, in order of their names. */
export function listFiles(files: ReadonlyMap<string, string | Uint8Array>): JobFile[] {
  return [...files]
    .map(([name, content]) => {
      const bytes = typeof content === 'string' ? utf8ToBytes(content) : content;
      return { name, bytes: bytes.length, sha256: sha256Hex(bytes) };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/**
 * The record with the list of the folder's other files, and closed by a hash of itself: that of this text with zeros
 * in the place of the hash.
 */
export function sealJob(record: JobRecord, files: readonly JobFile[]): string {
  const open = '0'.repeat(64);
  const text = writeJob({ ...record, files, recordHash: open });
  const at = text.lastIndexOf(open);
  return `${text.slice(0, at)}${sha256Hex(utf8ToBytes(text))}${text.slice(at + open.length)}`;
}
