/** A page as the operators of a PDF (ISO 32000-1): written as text at once, which takes a tenth of the time. */
import { type Edge, edgesOf, edgesOfPath, type Point } from '../../geometry/index.js';
import { decimal } from '../decimal.js';
import { CURVE_SWEEP, curveHandles, POINTS_PER_MM } from '../pdf-curve.js';
import { splitArcs } from '../split-arcs.js';
import { directionOf } from './entity.js';
import { CAPITALS, textWidth } from './font.js';
import { lineLooks } from './lines.js';
import type { ShopPage, Stroke, Words } from './types.js';

/** Name of the font among the page's resources. */
export const FONT = 'F1';

const pt = (mm: number): string => decimal(mm * POINTS_PER_MM, 3);
const at = ({ x, y }: Point): string => `${pt(x)} ${pt(y)}`;

/** An edge that `splitArcs` has left. */
function run(edge: Edge): string {
  if (edge.kind === 'straight') return `${at(edge.to)} l`;
  const [a, b] = curveHandles(edge);
  return `${at(a)} ${at(b)} ${at(edge.to)} c`;
}

function strokeOf({ vertices, closed }: Stroke): string {
  const split = splitArcs(vertices, closed, CURVE_SWEEP);
  const first = split[0];
  if (first === undefined) return '';
  const edges = closed ? edgesOf(split) : edgesOfPath(split);
  return `${at(first)} m ${edges.map(run).join(' ')} ${closed ? 's' : 'S'}`;
}

/** Codes of Windows Latin 1 (WinAnsiEncoding) beyond those that it shares with Unicode. */
const codes: Readonly<Record<string, number>> = {
  '…': 0x85,
  '‘': 0x91,
  '’': 0x92,
  '“': 0x93,
  '”': 0x94,
  '–': 0x96,
  '—': 0x97,
  '€': 0x80,
};

/** A string of the PDF in hexadecimal digits; a question mark for what the font lacks. */
function stringOf(text: string): string {
  const digits = Array.from(text.normalize('NFC'), (letter) => {
    const code = letter.codePointAt(0) ?? 0x3f;
    const known = codes[letter] ?? (code >= 0x20 && code <= 0xff && (code < 0x7f || code >= 0xa0) ? code : 0x3f);
    return known.toString(16).padStart(2, '0');
  });
  return `<${digits.join('')}>`;
}

function wordsOf({ text, at: place, height, anchor, turnDeg }: Words): string {
  const width = textWidth(text, height);
  const back = anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2;
  const { cos, sin } = directionOf(turnDeg);
  const start = { x: place.x - back * cos, y: place.y - back * sin };
  const turn = [cos, sin, -sin, cos].map((value) => decimal(value, 5)).join(' ');
  return `/${FONT} ${pt(height / CAPITALS)} Tf ${turn} ${at(start)} Tm ${stringOf(text)} Tj`;
}

/** The operator that sets the colour of lines, from `#RRGGBB`. */
function inkOf(colour: string): string {
  const parts = [1, 3, 5].map((from) => decimal(parseInt(colour.slice(from, from + 2), 16) / 255, 3));
  return `${parts.join(' ')} RG`;
}

/** All operators of a page. */
export function contentOf({ entities }: ShopPage): string {
  const lines: string[] = [];
  let look = '';
  for (const stroke of entities.flatMap(({ strokes }) => strokes)) {
    const { width, dashes } = lineLooks[stroke.line];
    const ink = inkOf(stroke.colour ?? '#000000');
    const wanted = `${ink} ${pt(width)} w [${dashes.map(pt).join(' ')}] 0 d`;
    if (wanted !== look) lines.push(wanted);
    look = wanted;
    lines.push(strokeOf(stroke));
  }
  for (const solid of entities.flatMap(({ solids }) => solids)) {
    const [first, ...others] = solid;
    if (first) lines.push(`${at(first)} m ${others.map((point) => `${at(point)} l`).join(' ')} f`);
  }
  lines.push('BT', ...entities.flatMap(({ words }) => words).map(wordsOf), 'ET');
  return lines.join('\n');
}
