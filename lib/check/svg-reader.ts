/**
 * A strict reader of the SVG that `cut` writes: groups of paths and circles in user units of one millimetre. It knows
 * no transforms, styles, references or entities of its own; a file that has any is refused.
 */
import { SaxesParser } from 'saxes';
import { type ReadBack, type ReadBackSheet, unreadable } from './drawn.js';
import { readKey } from './key.js';
import { farthest, maxEntities } from './limits.js';
import { lineOf } from './ring.js';
import { readPathData } from './svg-path.js';

/** Attributes that an element may have; anything else could change what a program cuts. */
const attributes: Readonly<Record<string, readonly string[]>> = {
  svg: ['xmlns', 'version', 'width', 'height', 'viewBox', 'fill', 'stroke-width', 'stroke'],
  g: ['class', 'stroke', 'fill', 'stroke-width'],
  path: ['d', 'vector-effect'],
  circle: ['cx', 'cy', 'r', 'vector-effect'],
  title: [],
  desc: [],
};

const parents: Readonly<Record<string, readonly string[]>> = {
  svg: [''],
  g: ['svg'],
  path: ['g'],
  circle: ['g'],
  title: ['svg', 'path', 'circle', 'g'],
  desc: ['svg'],
};

type Attributes = Readonly<Record<string, string>>;

function attribute(of: Attributes, element: string, name: string): string {
  const value = of[name];
  if (value === undefined) throw unreadable('svg-lacks', { element, name });
  return value;
}

function number(text: string, what: string): number {
  const value = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/.test(text) ? Number(text) : NaN;
  if (!(Math.abs(value) <= farthest)) throw unreadable('svg-number', { name: what, text: text.slice(0, 40) });
  return value;
}

/** The size of the page in user units, which must be its size in mm. */
function pageOf(of: Attributes): { width: number; height: number; scale: number } {
  const size = (name: string): number => {
    const text = attribute(of, 'svg', name);
    if (!text.endsWith('mm')) throw unreadable('svg-not-mm', { name });
    return number(text.slice(0, -2), name);
  };
  const width = size('width');
  const height = size('height');
  const [left, top, across, down, more] = attribute(of, 'svg', 'viewBox')
    .trim()
    .split(/[\s,]+/);
  if (left === undefined || top === undefined || across === undefined || down === undefined || more !== undefined)
    throw unreadable('svg-view-box', {});
  if (number(left, 'viewBox') !== 0 || number(top, 'viewBox') !== 0) throw unreadable('svg-view-origin', {});
  const units = { width: number(across, 'viewBox'), height: number(down, 'viewBox') };
  if (!(units.width > 0 && units.height > 0 && width > 0 && height > 0)) throw unreadable('svg-page-size', {});
  const scale = width / units.width;
  if (Math.abs(height / units.height - scale) > 1e-9 * scale) throw unreadable('svg-page-shape', {});
  return { ...units, scale };
}

function drawn(element: string, of: Attributes, layer: string, height: number): ReadBack {
  if (element === 'circle') {
    const diameter = 2 * number(attribute(of, element, 'r'), 'r');
    if (!(diameter > 0)) throw unreadable('svg-circle-size', {});
    const x = number(attribute(of, element, 'cx'), 'cx');
    const y = height - number(attribute(of, element, 'cy'), 'cy');
    return { kind: 'circle', layer, x, y, diameter };
  }
  const { vertices, closed } = readPathData(attribute(of, element, 'd'));
  const turned = vertices.map(({ x, y, bulge }) => ({ x, y: height - y, bulge: -bulge }));
  return { kind: 'path', layer, line: lineOf(turned, closed) };
}

/**
 * Reads an SVG file.
 * @returns the drawing in user units, y up, and how many mm a user unit is
 * @throws Unreadable for what is not well-formed XML, or holds what a cut file has no use for
 */
export function readSvg(text: string): { readonly sheet: ReadBackSheet; readonly scale: number } {
  const parser = new SaxesParser();
  const open: string[] = [];
  const entities: ReadBack[] = [];
  // set by the root: what has none is not well-formed
  let page = { width: 0, height: 0, scale: 0 };
  const colours = new Map<string, string[]>();
  let description = '';
  let layer = '';
  parser.on('error', (error) => {
    throw unreadable('svg-xml', { why: error.message });
  });
  parser.on('doctype', () => {
    throw unreadable('svg-doctype', {});
  });
  parser.on('opentag', ({ name, attributes: of }) => {
    const parent = open.at(-1) ?? '';
    if (parents[name]?.includes(parent) !== true) throw unreadable('svg-element', { element: name, parent });
    for (const key of Object.keys(of))
      if (attributes[name]?.includes(key) !== true) throw unreadable('svg-attribute', { element: name, name: key });
    // other effects let a line turn or stay behind where its neighbours are moved
    if (of['vector-effect'] !== undefined && of['vector-effect'] !== 'non-scaling-stroke')
      throw unreadable('svg-attribute', { element: name, name: `vector-effect="${of['vector-effect'].slice(0, 40)}"` });
    if (of['fill'] !== undefined && of['fill'] !== 'none')
      throw unreadable('svg-fill', { element: name, fill: JSON.stringify(of['fill']) });
    open.push(name);
    if (name === 'svg') {
      page = pageOf(of);
    } else if (name === 'g') {
      layer = attribute(of, name, 'class');
      colours.set(layer, [...(colours.get(layer) ?? []), attribute(of, name, 'stroke')]);
    } else if (name === 'path' || name === 'circle') {
      entities.push(drawn(name, of, layer, page.height));
      if (entities.length > maxEntities) throw unreadable('too-many-entities', { max: maxEntities });
    }
  });
  parser.on('text', (text) => {
    if (open.at(-1) === 'desc') description += text;
  });
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(text).close();
  const key = readKey(description.split('\n'));
  return { sheet: { width: page.width, height: page.height, entities, key, colours }, scale: page.scale };
}
