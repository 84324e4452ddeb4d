/**
 * Plain DXF and SVG of a drawing that the proof has read, with nothing in them but what the formats ask for. Written
 * anew for the tests, so that a drawing can be mutated in one place and written out again.
 */
import type { ReadBack, ReadBackSheet } from '../../lib/check/drawn.js';

const layersOf = (entities: readonly ReadBack[]): string[] => [...new Set(entities.map(({ layer }) => layer))];

/** The lines of a key that names the colours of layers. */
const keyLines = (key: ReadBackSheet['key']): string[] =>
  [...key].map(([layer, colour]) => `${layer} ${colour}: what it is`);

/** The least DXF that holds a drawing, of a given unit ($INSUNITS). */
export function plainDxf({ width, height, entities, key, colours }: ReadBackSheet, unit = 4): string {
  const tags: (readonly [number, string | number])[] = [
    ...keyLines(key).map((line) => [999, line] as const),
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$INSUNITS'],
    [70, unit],
    [9, '$EXTMAX'],
    [10, width],
    [20, height],
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'TABLES'],
    ...layersOf(entities).flatMap((layer) => [
      [0, 'LAYER'] as const,
      [2, layer] as const,
      ...(colours.get(layer) ?? []).map((colour) => [420, parseInt(colour.slice(1), 16)] as const),
    ]),
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'ENTITIES'],
  ];
  for (const entity of entities) {
    if (entity.kind === 'circle') {
      tags.push([0, 'CIRCLE'], [8, entity.layer], [10, entity.x], [20, entity.y], [40, entity.diameter / 2]);
      continue;
    }
    const { vertices, closed } = entity.line;
    tags.push([0, 'LWPOLYLINE'], [8, entity.layer], [90, vertices.length], [70, closed ? 1 : 0]);
    for (const { x, y, bulge } of vertices) tags.push([10, x], [20, y], [42, bulge]);
  }
  tags.push([0, 'ENDSEC'], [0, 'EOF']);
  return tags.map(([code, value]) => `${code}\n${value}\n`).join('');
}

function pathData(entity: Extract<ReadBack, { kind: 'path' }>, height: number): string {
  const { vertices, closed } = entity.line;
  const data = vertices.map((vertex, i) => {
    const next = vertices[i + 1] ?? vertices[0]!;
    const start = i === 0 ? `M ${vertex.x} ${height - vertex.y}` : '';
    if (i === vertices.length - 1 && !closed) return start;
    const end = `${next.x} ${height - next.y}`;
    if (vertex.bulge === 0) return `${start} L ${end}`;
    const chord = Math.hypot(next.x - vertex.x, next.y - vertex.y);
    const radius = (chord * (1 + vertex.bulge ** 2)) / (4 * Math.abs(vertex.bulge));
    return `${start} A ${radius},${radius} 0 ${Math.abs(vertex.bulge) > 1 ? 1 : 0} ${vertex.bulge > 0 ? 0 : 1} ${end}`;
  });
  return `${data.join(' ')}${closed ? ' Z' : ''}`;
}

/** The least SVG that holds a drawing; `scale` is the size of a user unit in mm. */
export function plainSvg({ width, height, entities, key, colours }: ReadBackSheet, scale = 1): string {
  const groups = entities.map((entity) => {
    const item =
      entity.kind === 'circle'
        ? `<circle cx="${entity.x}" cy="${height - entity.y}" r="${entity.diameter / 2}"/>`
        : `<path d="${pathData(entity, height)}"/>`;
    return `<g class="${entity.layer}" stroke="${colours.get(entity.layer)?.[0] ?? '#000000'}">${item}</g>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width * scale}mm" height="${height * scale}mm" viewBox="0 0 ${width} ${height}"><desc>${keyLines(key).join('\n')}</desc>${groups.join('\n')}</svg>`;
}
