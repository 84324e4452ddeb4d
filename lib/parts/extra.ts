/** Outlines of the user's own, from DXF and SVG files, as parts that are nested along with the dish. */
import type { Contour } from '../geometry/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { thicknessOf } from './blank.js';
import { type SourceDrawing, ExtraFault, type DrawingMessage, limits, type ReadingOptions } from './extra/drawing.js';
import { readDxfDrawing } from './extra/dxf.js';
import { joinRuns } from './extra/join.js';
import { asCircle, makeShapes, type ExtraShape } from './extra/rings.js';
import { readSvgDrawing } from './extra/svg.js';
import { blank, type Hole, type Part, throughHole } from '../part/index.js';

/** Round holes up to this diameter (mm) are drilled or bored; larger ones are openings that parts may lie in. */
const largestDrill = 20;

/** An outline of the user's own: the text of a DXF or SVG file, or what reads a drawing that stands in memory. */
export type ExtraSource = string | ((options: ReadingOptions) => SourceDrawing);

export interface ReadExtras {
  readonly parts: readonly Part[];
  readonly problems: readonly Diagnostic[];
}

function readDrawing(text: string, options: ReadingOptions): SourceDrawing {
  if (text.length > limits.text)
    throw new ExtraFault('extra-too-much', `the file is larger than ${limits.text / 1e6} MB`, 'simplify the drawing');
  if (text.trim() === '') throw new ExtraFault('extra-broken', 'the file is empty', 'export the drawing again');
  // by what is in it, not by its name: a DXF begins with a group code, an SVG with a bracket
  return /^\uFEFF?\s*</.test(text) ? readSvgDrawing(text, options) : readDxfDrawing(text, options);
}

function shapesIn(
  source: ExtraSource,
  options: ReadingOptions,
): { shapes: readonly ExtraShape[]; findings: readonly DrawingMessage[] } {
  try {
    const drawing = typeof source === 'string' ? readDrawing(source, options) : source(options);
    const { rings, findings: open } = joinRuns(drawing);
    const { shapes, findings: wrong } = makeShapes(rings, drawing.shown);
    const findings = [...drawing.findings, ...open, ...wrong];
    if (shapes.length === 0 && !findings.some(({ severity }) => severity === 'error')) {
      const message = 'it has no closed outline';
      const remedy = 'draw one, or remove the file from `extra`';
      return { shapes, findings: [...findings, { code: 'extra-no-outline', severity: 'error', message, remedy }] };
    }
    return { shapes, findings };
  } catch (error) {
    if (!(error instanceof ExtraFault)) throw error;
    return {
      shapes: [],
      findings: [{ code: error.code, severity: 'error', message: error.message, remedy: error.remedy }],
    };
  }
}

/** The name of a file without folders and ending, fit for a title. */
function titleOf(file: string): string {
  const name = file.split(/[\\/]/).at(-1) ?? '';
  const plain = name
    .replace(/\.[^.]*$/, '')
    .replace(/[^\p{L}\p{N} ._()+-]/gu, '')
    .trim();
  return plain === '' ? 'outline' : plain.slice(0, 60);
}

/** An outline as a part, its holes drilled where they are small and round. */
function partOf(design: Design, item: Design['extra'][number], index: number, shape: ExtraShape, number: number): Part {
  const holes: Hole[] = [];
  const openings: Contour[] = [];
  for (const ring of shape.openings) {
    const round = asCircle(ring);
    if (round && round.diameter <= largestDrill) holes.push(throughHole(round.centre, round.diameter));
    else openings.push(ring);
  }
  return blank({
    id: `extra-${index + 1}-${number}`,
    kind: 'extra',
    name: `${titleOf(item.file)} ${number}`,
    material: item.material,
    thickness: thicknessOf(design, item.material),
    quantity: item.quantity,
    outline: shape.outline,
    openings,
    holes,
    fitDeviation: shape.deviation,
    file: item.file,
  });
}

/**
 * Reads the outlines of the files that `extra` names: every closed outline is a part, one within another is an
 * opening of it, one within an opening is a part again. True size, the lower left corner at the origin.
 * @param sources texts of the files, or drawings in memory, by the name in the design
 * @returns the parts, and what is wrong with a drawing, where, and how to fix it; an error stops the job
 */
export function readExtras(design: Design, sources: ReadonlyMap<string, ExtraSource>): ReadExtras {
  const parts: Part[] = [];
  const problems: Diagnostic[] = [];
  design.extra.forEach((item, index) => {
    const report = ({ code, message, remedy, severity }: DrawingMessage): number =>
      problems.push(
        diagnostic(code, ['extra', index, 'file'], `extra[${index + 1}], ${item.file}: ${message}`, remedy, severity),
      );
    const source = sources.get(item.file);
    if (source === undefined) {
      report({ code: 'extra-missing', severity: 'error', message: 'the file was not read' });
      return;
    }
    const { shapes, findings } = shapesIn(source, { unit: item.unit, tolerance: design.dish.arcTolerance });
    const errorsFirst = [...findings].sort(
      (a, b) => Number(a.severity === 'warning') - Number(b.severity === 'warning'),
    );
    errorsFirst.slice(0, limits.reported).forEach(report);
    const more = errorsFirst.slice(limits.reported);
    if (more[0])
      report({
        code: 'extra-more',
        severity: more[0].severity,
        message: `${more.length} more of this kind`,
        remedy: 'correct these first',
      });
    if (findings.some(({ severity }) => severity === 'error')) return;
    shapes.forEach((shape, i) => parts.push(partOf(design, item, index, shape, i + 1)));
  });
  return { parts, problems };
}
