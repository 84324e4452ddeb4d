/** Small drawings for the tests of outlines of one's own, and what is read from them. */
import { diagnosticText } from '../../lib/diagnostic/index.js';
import { readExtras, type ReadExtras } from '../../lib/parts/extra.js';
import type { Design } from '../../lib/design/index.js';
import { edgesOf, perimeter, signedArea } from '../../lib/geometry/index.js';
import type { Part } from '../../lib/part/index.js';
import { fixture } from '../helpers/fixtures.js';

/** Tags of a DXF, one `code value` pair a line of text. */
export function dxf(entities: string, units: number | null = 4): string {
  const header = units === null ? '' : `0 SECTION\n2 HEADER\n9 $INSUNITS\n70 ${units}\n0 ENDSEC\n`;
  const pairs = `${header}0 SECTION\n2 ENTITIES\n${entities.trim()}\n0 ENDSEC\n0 EOF`;
  return `${pairs
    .split('\n')
    .filter((pair) => pair !== '')
    .map((pair) => pair.trim().replace(/^(-?\d+) ?/, '$1\n'))
    .join('\n')}\n`;
}

export const line = (x1: number, y1: number, x2: number, y2: number): string =>
  `0 LINE\n8 0\n10 ${x1}\n20 ${y1}\n11 ${x2}\n21 ${y2}`;

export const arc = (x: number, y: number, r: number, from: number, to: number): string =>
  `0 ARC\n8 0\n10 ${x}\n20 ${y}\n40 ${r}\n50 ${from}\n51 ${to}`;

export const circleDrawing = (x: number, y: number, r: number): string => `0 CIRCLE\n8 0\n10 ${x}\n20 ${y}\n40 ${r}`;

export const polyline = (points: readonly (readonly [number, number, number?])[], closed = true): string =>
  [
    `0 LWPOLYLINE\n8 0\n90 ${points.length}\n70 ${closed ? 1 : 0}`,
    ...points.map(([x, y, bulge = 0]) => `10 ${x}\n20 ${y}\n42 ${bulge}`),
  ].join('\n');

export function svg(body: string, attributes = 'width="200mm" height="200mm" viewBox="0 0 200 200"'): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;
}

export const extraDesign: Design = fixture('press-house');

/** Reads one drawing for the demo. @param unit mm a drawing unit */
export function read(text: string, unit?: number): ReadExtras {
  const extra = [{ file: 'own.dxf', material: 'birch12', quantity: 2, unit }];
  return readExtras({ ...extraDesign, extra }, new Map([['own.dxf', text]]));
}

/** The parts of a drawing without a fault. */
export function parts(text: string, unit?: number): readonly Part[] {
  const { parts: made, problems } = read(text, unit);
  const errors = problems.filter(({ severity }) => severity === 'error');
  if (errors.length > 0) throw new Error(errors.map(({ message }) => message).join('\n'));
  return made;
}

/** Area (openings and holes taken off), length of the outline, count of its edges. */
export function measures(part: Part) {
  const { outline, openings } = part;
  const rings = [outline, ...openings].reduce((sum, ring) => sum + signedArea(ring), 0);
  const holes = part.holes.reduce((sum, { diameter }) => sum + (Math.PI * diameter ** 2) / 4, 0);
  return { area: rings - holes, length: perimeter(outline), edges: edgesOf(outline).length };
}

/** The only error of a drawing. */
export function fault(text: string, unit?: number): string {
  const { parts: made, problems } = read(text, unit);
  const errors = problems.filter(({ severity }) => severity === 'error');
  if (errors.length !== 1 || made.length > 0)
    throw new Error(
      `${errors.length} errors, ${made.length} parts: ${errors.map(({ message }) => message).join('\n')}`,
    );
  return errors[0] ? diagnosticText(errors[0]) : '';
}
