/** A DXF drawing as runs of edges. */
import { type SourceDrawing, ExtraFault, limits, placeText, quoted, type ReadingOptions, RunList } from './drawing.js';
import { type Entity, entityPlace, runOf } from './dxf-entities.js';
import { type DxfRecord, recordsOf, sectionsOf, type Tag, tagsOf, integerValue, integerValueOr } from './dxf-tags.js';

/** Values of `$INSUNITS` that are lengths a workshop draws in, mm each. */
const unitsByCode: Readonly<Record<number, { readonly name: string; readonly mm: number }>> = {
  1: { name: 'inches', mm: 25.4 },
  2: { name: 'feet', mm: 304.8 },
  4: { name: 'millimetres', mm: 1 },
  5: { name: 'centimetres', mm: 10 },
  6: { name: 'metres', mm: 1000 },
};

/** Entities that are no lines to cut, and what would make them some. */
const annotations: Readonly<Record<string, string>> = {
  TEXT: 'turn text into outlines if it should be cut',
  MTEXT: 'turn text into outlines if it should be cut',
  ATTDEF: 'turn text into outlines if it should be cut',
  DIMENSION: 'dimensions are not cut',
  LEADER: 'leaders are not cut',
  MULTILEADER: 'leaders are not cut',
  HATCH: 'only the outline around a hatch is cut',
  POINT: 'draw a circle where a hole should be',
  VIEWPORT: 'viewports are not cut',
  IMAGE: 'draw its outline if it should be cut',
};

function unitOf(header: readonly Tag[], options: ReadingOptions, list: RunList): number {
  const at = header.findIndex(({ code, value }) => code === 9 && value === '$INSUNITS');
  const tag = at < 0 ? undefined : header[at + 1];
  const code = tag?.code === 70 ? integerValue(tag) : 0;
  const stated = unitsByCode[code];
  if (options.unit !== undefined) {
    if (stated && Math.abs(stated.mm - options.unit) > 1e-9 * stated.mm)
      list.warn(
        'extra-two-units',
        `it states ${stated.name}, but \`unit\` makes a drawing unit ${options.unit} mm, which was used`,
      );
    return options.unit;
  }
  if (stated) return stated.mm;
  const what =
    code === 0 ? 'it states no unit ($INSUNITS is 0 or missing)' : `its unit ($INSUNITS ${code}) is not supported`;
  throw new ExtraFault(
    'extra-no-unit',
    what,
    'give the length of a drawing unit, such as `unit: 1 mm`, or export it with its unit',
  );
}

function nameOf({ tags }: DxfRecord): string {
  return tags.find(({ code }) => code === 2)?.value ?? '';
}

/** Layers that are off or frozen. */
function hiddenLayers(tables: readonly Tag[]): Set<string> {
  const layers = recordsOf(tables).filter(({ type }) => type.value === 'LAYER');
  const hidden = layers.filter(
    ({ tags }) => (integerValueOr(tags, 70, 0) & 1) !== 0 || integerValueOr(tags, 62, 7) < 0,
  );
  return new Set(hidden.map(nameOf));
}

/** Entities with what belongs to them; what stands on a sheet of paper instead of in the drawing is left out. */
function entitiesOf(tags: readonly Tag[]): Entity[] {
  const entities: Entity[] = [];
  let open: DxfRecord[] | null = null;
  for (const record of recordsOf(tags)) {
    const { value } = record.type;
    if (value === 'VERTEX' && open) open.push(record);
    else if (value === 'SEQEND' || value === 'ATTRIB') continue;
    else {
      const vertices: DxfRecord[] = [];
      open = value === 'POLYLINE' ? vertices : null;
      entities.push({ ...record, vertices });
    }
  }
  return entities.filter((entity) => integerValueOr(entity.tags, 67, 0) !== 1);
}

function named({ type, tags }: DxfRecord): string {
  const place = entityPlace({ type, tags });
  return `the ${type.value.slice(0, 40)} in line ${type.line}${place ? ` at ${placeText(place.x, place.y)}` : ''}`;
}

/**
 * Reads the drawing of a DXF file: lines, arcs, circles, ellipses, polylines and splines of the model space, hidden
 * layers left out.
 * @throws ExtraFault for a file that cannot be taken at all: no unit, cut short, too large
 */
export function readDxfDrawing(text: string, options: ReadingOptions): SourceDrawing {
  const list = new RunList();
  const sections = sectionsOf(tagsOf(text));
  const drawn = sections.get('ENTITIES');
  if (!drawn) throw new ExtraFault('extra-broken', 'it has no ENTITIES section', 'export the drawing again as a DXF');
  const scale = unitOf(sections.get('HEADER') ?? [], options, list);
  const hidden = hiddenLayers(sections.get('TABLES') ?? []);
  const entities = entitiesOf(drawn);
  if (entities.length > limits.entities)
    throw new ExtraFault(
      'extra-too-much',
      `it has ${entities.length} entities, but at most ${limits.entities} are read`,
      'simplify the drawing',
    );
  const left = new Map<string, number>();
  let unseen = 0;
  for (const entity of entities) {
    if (list.full) break;
    const type = entity.type.value;
    if (hidden.has(entity.tags.find(({ code }) => code === 8)?.value ?? '0')) {
      unseen += 1;
      continue;
    }
    if (Object.hasOwn(annotations, type)) {
      left.set(type, (left.get(type) ?? 0) + 1);
      continue;
    }
    const what = named(entity);
    try {
      const run = runOf(entity, scale, options.tolerance);
      if (run) list.add({ what, closed: run.closed, vertices: run.path, deviation: run.deviation });
      else if (type === 'INSERT')
        list.error('extra-block', `${what} is block ${quoted(nameOf(entity))}`, 'explode blocks before exporting');
      else
        list.error(
          'extra-entity',
          `${what} is not supported`,
          'make outlines of lines, arcs, circles, ellipses, polylines and splines',
        );
    } catch (error) {
      if (!(error instanceof ExtraFault) || error.code === 'extra-too-much') throw error;
      list.error(error.code, `${what} cannot be used: ${error.message}`, error.remedy);
    }
  }
  for (const [type, count] of left) list.warn('extra-left-out', `${count} x ${type} left out`, annotations[type]);
  if (unseen > 0) list.warn('extra-left-out', `${unseen} entities on layers that are off or frozen left out`);
  return {
    runs: list.runs,
    findings: list.findings,
    shown: ({ x, y }) => placeText(x / scale, y / scale),
  };
}
