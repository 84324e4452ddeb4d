/**
 * A strict reader of the DXF that `cut` writes: a list of tags, each a line with a group code and a line with a value
 * (Autodesk, DXF Reference, edition of 2012). Anything that such a file does not need is refused, not skipped, because a
 * machine might cut it.
 */
import type { Vertex } from '../geometry/index.js';
import { type ReadBack, type ReadBackSheet, unreadable } from './drawn.js';
import { readKey } from './key.js';
import { farthest, maxEntities } from './limits.js';
import { lineOf } from './ring.js';

interface Tag {
  readonly code: number;
  readonly value: string;
  readonly line: number;
}

const integerText = /^\s*[-+]?\d{1,9}\s*$/;
const decimalNumber = /^\s*[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?\s*$/;

function tagsOf(text: string): Tag[] {
  const lines = text.split(/\r\n|\n/);
  if (lines.at(-1) === '') lines.pop();
  const tags: Tag[] = [];
  for (let i = 0; i < lines.length; i += 2) {
    const code = lines[i] ?? '';
    const value = lines[i + 1];
    if (!integerText.test(code)) throw unreadable('dxf-code', { line: i + 1, text: quoted(code) });
    if (value === undefined) throw unreadable('dxf-half', { line: i + 1 });
    tags.push({ code: Number(code), value, line: i + 2 });
  }
  const last = tags.at(-1);
  if (last?.code !== 0 || last.value !== 'EOF') throw unreadable('dxf-cut-short', {});
  return tags;
}

function quoted(text: string): string {
  return JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);
}

function real({ value, line }: Tag): number {
  const number = decimalNumber.test(value) ? Number(value) : NaN;
  if (!(Math.abs(number) <= farthest)) throw unreadable('dxf-number', { line, text: quoted(value) });
  return number;
}

function integer({ value, line }: Tag): number {
  if (!integerText.test(value)) throw unreadable('dxf-integer', { line, text: quoted(value) });
  return Number(value);
}

/** Tags of each section, by name. */
function sectionsOf(tags: readonly Tag[]): Map<string, Tag[]> {
  const sections = new Map<string, Tag[]>();
  let open: Tag[] | null = null;
  for (let i = 0; i < tags.length - 1; i += 1) {
    const tag = tags[i]!;
    if (tag.code === 0 && tag.value === 'SECTION') {
      const name = tags[i + 1];
      if (open !== null || name?.code !== 2) throw unreadable('dxf-section-begin', { line: tag.line });
      if (sections.has(name.value)) throw unreadable('dxf-section-twice', { name: quoted(name.value) });
      open = [];
      sections.set(name.value, open);
      i += 1;
    } else if (tag.code === 0 && tag.value === 'ENDSEC') {
      if (open === null) throw unreadable('dxf-section-end', { line: tag.line });
      open = null;
    } else if (open === null) {
      if (tag.code !== 999) throw unreadable('dxf-no-section', { line: tag.line });
    } else {
      open.push(tag);
    }
  }
  if (open !== null) throw unreadable('dxf-section-open', {});
  return sections;
}

/** The tags that follow a variable of the header, up to the next one. */
function variable(header: readonly Tag[], name: string): readonly Tag[] {
  const start = header.findIndex(({ code, value }) => code === 9 && value === name);
  if (start < 0) throw unreadable('dxf-variable', { name });
  const end = header.findIndex(({ code }, i) => i > start && code === 9);
  return header.slice(start + 1, end < 0 ? undefined : end);
}

function tagOf(tags: readonly Tag[], code: number, what: string): Tag {
  const found = tags.find((tag) => tag.code === code);
  if (found === undefined) throw unreadable('dxf-lacks-code', { what, group: code });
  return found;
}

/** The layers of the LAYER table with their true colours (group code 420). */
function layersOf(tables: readonly Tag[]): Map<string, string[]> {
  const names = new Map<string, string[]>();
  tables.forEach((tag, i) => {
    if (tag.code !== 0 || tag.value !== 'LAYER') return;
    const end = tables.findIndex(({ code }, j) => j > i && code === 0);
    const record = tables.slice(i + 1, end < 0 ? undefined : end);
    const name = tagOf(record, 2, `the layer in line ${tag.line}`).value;
    const flags = record.find(({ code }) => code === 70);
    const colour = record.find(({ code }) => code === 62);
    // frozen, or off by a negative colour: a program would leave it out
    if ((flags !== undefined && (integer(flags) & 1) !== 0) || (colour !== undefined && integer(colour) < 0))
      throw unreadable('dxf-hidden-layer', { name: quoted(name) });
    const trueColour = record.find(({ code }) => code === 420);
    names.set(name, trueColour === undefined ? [] : [`#${integer(trueColour).toString(16).padStart(6, '0')}`]);
  });
  return names;
}

/** Codes that an entity may have in addition to its geometry: handle, owner, subclass, layer. */
const common = new Set([5, 330, 100, 8]);
/** Line type, colour and line weight, which may say no more than that they are the layer's. */
const byLayer = new Map([
  [6, 'BYLAYER'],
  [62, '256'],
  [370, '-1'],
]);

function isCommon({ code, value }: Tag): boolean {
  return common.has(code) || byLayer.get(code) === value.trim().toUpperCase();
}

function layerOf(tags: readonly Tag[], type: Tag): string {
  return tagOf(tags, 8, `the ${type.value} in line ${type.line}`).value;
}

function refuse(tag: Tag, type: Tag): never {
  throw unreadable('dxf-stray-code', { entity: type.value, line: type.line, group: tag.code });
}

function circle(tags: readonly Tag[], type: Tag): ReadBack {
  const what = `the CIRCLE in line ${type.line}`;
  for (const tag of tags) if (!isCommon(tag) && ![10, 20, 30, 40].includes(tag.code)) refuse(tag, type);
  const diameter = 2 * real(tagOf(tags, 40, what));
  if (!(diameter > 0)) throw unreadable('dxf-no-size', { what });
  return {
    kind: 'circle',
    layer: layerOf(tags, type),
    x: real(tagOf(tags, 10, what)),
    y: real(tagOf(tags, 20, what)),
    diameter,
  };
}

function polyline(tags: readonly Tag[], type: Tag): ReadBack {
  const vertices: { x: number; y: number | null; bulge: number }[] = [];
  let count = -1;
  let flags = 0;
  for (const tag of tags) {
    const last = vertices.at(-1);
    if (tag.code === 10) vertices.push({ x: real(tag), y: null, bulge: 0 });
    else if (tag.code === 20 && last?.y === null) last.y = real(tag);
    else if (tag.code === 42 && last !== undefined) last.bulge = real(tag);
    else if (tag.code === 90) count = integer(tag);
    else if (tag.code === 70) flags = integer(tag);
    else if ([38, 39, 43].includes(tag.code) && real(tag) === 0) continue;
    else if (!isCommon(tag)) refuse(tag, type);
  }
  const what = `the LWPOLYLINE in line ${type.line}`;
  if (count !== vertices.length) throw unreadable('dxf-vertex-count', { what, stated: count, count: vertices.length });
  if (vertices.length < 2) throw unreadable('dxf-few-vertices', { what });
  const planVertices = vertices.map(({ x, y, bulge }): Vertex => {
    if (y === null) throw unreadable('dxf-vertex-y', { what });
    return { x, y, bulge };
  });
  return { kind: 'path', layer: layerOf(tags, type), line: lineOf(planVertices, (flags & 1) === 1) };
}

function entitiesOf(tags: readonly Tag[]): ReadBack[] {
  const entities: ReadBack[] = [];
  for (let i = 0; i < tags.length;) {
    const type = tags[i]!;
    let end = i + 1;
    while (end < tags.length && tags[end]!.code !== 0) end += 1;
    const body = tags.slice(i + 1, end);
    if (type.code === 0 && type.value === 'LWPOLYLINE') entities.push(polyline(body, type));
    else if (type.code === 0 && type.value === 'CIRCLE') entities.push(circle(body, type));
    else throw unreadable('dxf-entity', { line: type.line, name: quoted(type.value) });
    if (entities.length > maxEntities) throw unreadable('too-many-entities', { max: maxEntities });
    i = end;
  }
  return entities;
}

/** Number of records between BLOCK and ENDBLK that would be drawn. */
function hiddenInBlocks(blocks: readonly Tag[]): Tag | undefined {
  return blocks.find(({ code, value }) => code === 0 && value !== 'BLOCK' && value !== 'ENDBLK');
}

/**
 * Reads a DXF file.
 * @returns the drawing, and `units` when the file does not say millimetres
 * @throws Unreadable for a file that is cut short, broken, or holds what a cut file has no use for
 */
export function readDxfLines(text: string): { readonly sheet: ReadBackSheet; readonly unit: number } {
  const tags = tagsOf(text);
  const sections = sectionsOf(tags);
  const header = sections.get('HEADER');
  const tables = sections.get('TABLES');
  const drawn = sections.get('ENTITIES');
  if (header === undefined || tables === undefined || drawn === undefined) throw unreadable('dxf-sections', {});
  const unit = integer(tagOf(variable(header, '$INSUNITS'), 70, '$INSUNITS'));
  const extent = variable(header, '$EXTMAX');
  const block = hiddenInBlocks(sections.get('BLOCKS') ?? []);
  if (block !== undefined) throw unreadable('dxf-block', { name: quoted(block.value), line: block.line });
  const layers = layersOf(tables);
  const entities = entitiesOf(drawn);
  for (const { layer } of entities) if (!layers.has(layer)) throw unreadable('dxf-layer', { name: quoted(layer) });
  return {
    sheet: {
      width: real(tagOf(extent, 10, '$EXTMAX')),
      height: real(tagOf(extent, 20, '$EXTMAX')),
      entities,
      key: readKey(tags.flatMap(({ code, value }) => (code === 999 ? [value] : []))),
      colours: layers,
    },
    unit,
  };
}
