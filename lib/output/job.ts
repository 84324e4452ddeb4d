/** `job.json`: the record of what was made, against which the written folder is proven later. Lengths in mm. */
import type * as z from 'zod';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { Path } from '../geometry/index.js';
import { holesUp, linesUp, type Part, pocketsUp, textsUp } from '../part/index.js';
import { decimal } from './decimal.js';
import type { recordSchema } from './record-schema.js';
import { sha256Hex } from './sha256.js';

/** The record as it is written into a folder. */
export type JobRecord = z.infer<ReturnType<typeof recordSchema>>;
export type RecordedPart = JobRecord['parts'][number];
export type RecordedSheet = JobRecord['sheets'][number];
/** How sheets are cut, and whether the files hold paths of the tool's centre (compensated) or finished edges. */
export type RecordedProcess = JobRecord['process'];
/** A file of the folder as it was written. */
export type RecordedFile = NonNullable<JobRecord['files']>[number];
type RecordedContour = RecordedPart['contours'][number];

const recordRing = (operation: RecordedContour['operation'], vertices: Path, closed = true): RecordedContour => ({
  operation,
  ...(closed ? {} : { closed }),
  vertices: vertices.map(({ x, y, bulge }) => [x, y, bulge] as const),
});

/** A part as it stands in the record: what is cut of it, from the face that is up. */
export function recordPart(part: Part): RecordedPart {
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
      ...pocketsUp(part).map(({ ring, depth }) => ({ ...recordRing('pocket', ring), depth })),
      ...linesUp(part).map(({ vertices, closed }) => recordRing('scribe', vertices, closed)),
    ],
    drills: holesUp(part).map(({ x, y, diameter, depth, countersink }) => ({
      x,
      y,
      diameter,
      depth,
      ...(countersink === undefined ? {} : { countersink }),
    })),
    labels: textsUp(part).map(({ text, x, y, height, angle, face }) => ({
      text,
      x,
      y,
      height,
      angleDeg: (angle * 180) / Math.PI,
      face,
    })),
  };
}

/** A nanometre; and the decimals of a bulge that place an arc of a metre's chord as well. */
const LENGTH_DIGITS = 6;
const BULGE_DIGITS = 12;
/** Significant digits of everything that is not a place: angles, shares, watts. */
const DIGITS = 12;

const rounded = (value: number, digits: number): number => Number(decimal(value, digits));

function printedPart(part: RecordedPart): RecordedPart {
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

function printedSheet(sheet: RecordedSheet): RecordedSheet {
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
 * The text of `job.json`. Places are rounded to 1e-6 mm, bulges to 1e-12, all other numbers to 12 significant digits;
 * a number that JSON cannot hold (infinite, none) becomes null there. A list of numbers stands on one line.
 * @throws RangeError for a place that is not a finite number
 */
export function writeJob(record: JobRecord): string {
  const printed: JobRecord = {
    ...record,
    parts: record.parts.map(printedPart),
    sheets: record.sheets.map(printedSheet),
  };
  const text = JSON.stringify(
    printed,
    (_key, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(DIGITS)) : value),
    1,
  );
  // within a JSON string a line break is escaped, so this meets only lists
  return `${text.replace(/\[\n\s*([-\d.e+]+(?:,\n\s*[-\d.e+]+)*)\n\s*\]/g, (_, list: string) => `[${list.replace(/\s+/g, ' ')}]`)}\n`;
}

/** The list of a folder's other files for its record, in order of their names. */
export function listFiles(files: ReadonlyMap<string, string | Uint8Array>): RecordedFile[] {
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
export function sealJob(record: JobRecord, files: readonly RecordedFile[]): string {
  const open = '0'.repeat(64);
  const text = writeJob({ ...record, files, recordHash: open });
  const at = text.lastIndexOf(open);
  return `${text.slice(0, at)}${sha256Hex(utf8ToBytes(text))}${text.slice(at + open.length)}`;
}
