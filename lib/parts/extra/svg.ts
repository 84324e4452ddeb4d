/** An SVG drawing as runs of edges. No document types, no entities of its own, no references are followed. */
import { SaxesParser, type SaxesTagNS } from 'saxes';
import { type SourceDrawing, ExtraFault, limits, placeText, quoted, type ReadingOptions, RunList } from './drawing.js';
import { type Attributes, shapeNames, shapeRuns } from './svg-shapes.js';
import { after, inPx, type Matrix, mmPerPx, movePoint, readSvgLength, readTransform } from './svg-transform.js';

const svgSpace = 'http://www.w3.org/2000/svg';

/** Elements whose contents are not drawn where they stand, or are words about the drawing. */
const undrawn = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'marker',
  'pattern',
  'metadata',
  'title',
  'desc',
  'linearGradient',
  'radialGradient',
  'filter',
  'script',
]);
const groups = new Set(['svg', 'g', 'a', 'switch']);

/** Elements that would draw something that is not read, and how to fix it. */
const unread: Readonly<Record<string, string>> = {
  use: 'turn copies into separate paths ("unlink")',
  image: 'trace the picture into paths',
  foreignObject: 'draw it as paths',
};

/** Millimetres a user unit, as width, height and viewBox say; null when they do not. @throws ExtraFault */
function statedUnit(attributes: Attributes): number | null {
  const size = (name: string): number | null => {
    const length = readSvgLength(attributes.get(name) ?? '');
    const px = length && inPx(length);
    return px === null || !(px > 0) ? null : px * mmPerPx;
  };
  const [width, height] = [size('width'), size('height')];
  if (width === null && height === null) return null;
  const box = attributes.get('viewBox');
  if (box === undefined) return mmPerPx;
  const [, , across = 0, down = 0, ...more] = box
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (!(across > 0 && down > 0 && Number.isFinite(across + down)) || more.length > 0)
    throw new ExtraFault(
      'extra-no-unit',
      `its viewBox is ${quoted(box)}`,
      'write four numbers there, the last two above 0',
    );
  const [byWidth, byHeight] = [width === null ? null : width / across, height === null ? null : height / down];
  if (byWidth !== null && byHeight !== null && Math.abs(byWidth / byHeight - 1) > 1e-3)
    throw new ExtraFault(
      'extra-no-unit',
      `width and height make a unit of its viewBox ${byWidth.toPrecision(5)} mm across and ${byHeight.toPrecision(5)} mm down`,
      'make them agree, or give `unit`',
    );
  return byWidth ?? byHeight;
}

function unitOf(attributes: Attributes, { unit }: ReadingOptions, list: RunList): number {
  if (unit === undefined) {
    const stated = statedUnit(attributes);
    if (stated !== null) return stated;
    throw new ExtraFault(
      'extra-no-unit',
      'its size has no unit (width and height of <svg>)',
      'give them in mm, cm, in, pt or px, or give the length of a drawing unit, such as `unit: 1 mm`',
    );
  }
  let stated: number | null = null;
  try {
    stated = statedUnit(attributes);
  } catch (error) {
    // what the file states of its size does not matter here
    if (!(error instanceof ExtraFault)) throw error;
  }
  if (stated !== null && Math.abs(stated / unit - 1) > 1e-3)
    list.warn(
      'extra-two-units',
      `its size makes a drawing unit ${Number(stated.toPrecision(6))} mm, but \`unit\` ${unit} mm, which was used`,
    );
  return unit;
}

function hidden(attributes: Attributes): boolean {
  const style = attributes.get('style') ?? '';
  return attributes.get('display') === 'none' || /(?:^|;)\s*display\s*:\s*none/.test(style);
}

interface Open {
  readonly matrix: Matrix;
  readonly drawn: boolean;
}

/** Walks the elements of one file. */
class Walk {
  readonly list = new RunList();
  scale = 0;
  private readonly open: Open[] = [];
  private elements = 0;
  private pathData = 0;
  private texts = 0;
  private unseen = 0;

  constructor(private readonly options: ReadingOptions) {}

  enter(tag: SaxesTagNS, line: number): void {
    const attributes = new Map(Object.values(tag.attributes).map(({ name, value }) => [name, value]));
    const above = this.open.at(-1);
    const element = tag.local;
    const own = tag.uri === svgSpace || tag.uri === '';
    this.elements += 1;
    if (this.elements > limits.entities)
      throw new ExtraFault('extra-too-much', `it has more than ${limits.entities} elements`, 'simplify it');
    if (this.open.length >= limits.depth)
      throw new ExtraFault(
        'extra-too-much',
        `groups are nested more than ${limits.depth} deep, in line ${line}`,
        'ungroup',
      );
    if (!above) {
      if (!own || element !== 'svg')
        throw new ExtraFault(
          'extra-broken',
          `it begins with <${element.slice(0, 40)}>, not <svg>`,
          'export it as an SVG',
        );
      this.scale = unitOf(attributes, this.options, this.list);
      this.open.push({ matrix: [this.scale, 0, 0, -this.scale, 0, 0], drawn: true });
      return;
    }
    const shown = above.drawn && own && !undrawn.has(element);
    if (shown && hidden(attributes)) this.unseen += 1;
    const drawn = shown && !hidden(attributes);
    this.open.push({ ...above, drawn });
    if (!drawn || this.list.full) return;
    const id = attributes.get('id');
    const what = `the <${element.slice(0, 40)}${id === undefined ? '' : ` id=${quoted(id)}`}> in line ${line}`;
    try {
      const matrix = this.transformed(attributes, above.matrix);
      this.open[this.open.length - 1] = { matrix, drawn };
      this.draw(element, attributes, matrix, what);
    } catch (error) {
      if (!(error instanceof ExtraFault) || error.code === 'extra-too-much') throw error;
      this.open[this.open.length - 1] = { ...above, drawn: false };
      this.list.error(error.code, `${what} cannot be used: ${error.message}`, error.remedy);
    }
  }

  leave(): void {
    this.open.pop();
  }

  style(text: string): void {
    if (/(?:^|[\s;{])(?:transform|display|translate|rotate|scale|d|r|rx|ry)\s*:/.test(text))
      this.list.error(
        'extra-style',
        'its <style> moves, hides or shapes elements',
        'save it with them as attributes ("plain SVG")',
      );
  }

  finish(): SourceDrawing {
    const { list, scale } = this;
    if (this.texts > 0)
      list.warn('extra-left-out', `${this.texts} x text left out`, 'turn text into paths if it should be cut');
    if (this.unseen > 0) list.warn('extra-left-out', `${this.unseen} hidden elements left out`);
    return {
      runs: list.runs,
      findings: list.findings,
      shown: ({ x, y }) => placeText(x / scale, -y / scale),
    };
  }

  private transformed(attributes: Attributes, above: Matrix): Matrix {
    if (/(?:^|[\s;])(?:transform|translate|rotate|scale)\s*:/.test(attributes.get('style') ?? ''))
      throw new ExtraFault('extra-transform', 'it is moved by its style', 'use the attribute `transform`');
    const text = attributes.get('transform');
    return text === undefined ? above : after(above, readTransform(text));
  }

  private draw(element: string, attributes: Attributes, matrix: Matrix, what: string): void {
    const at = movePoint(matrix, { x: 0, y: 0 });
    if (shapeNames.has(element)) {
      this.pathData += (attributes.get('d')?.length ?? 0) + (attributes.get('points')?.length ?? 0);
      if (this.pathData > limits.pathData)
        throw new ExtraFault(
          'extra-too-much',
          `it has more than ${limits.pathData} characters of path data`,
          'simplify it or split it into several files',
        );
      let number = 0;
      for (const { path, closed, deviation } of shapeRuns(element, attributes, matrix, this.options.tolerance)) {
        number += 1;
        const which = number > 1 ? `${what} (part ${number})` : what;
        this.list.add({ what: which, closed, vertices: path, deviation });
      }
    } else if (element === 'text') {
      this.texts += 1;
      this.open[this.open.length - 1] = { matrix, drawn: false };
    } else if (element === 'svg')
      throw new ExtraFault('extra-entity', `a drawing within a drawing, at ${placeText(at.x, at.y)} mm`, 'ungroup it');
    else if (Object.hasOwn(unread, element))
      throw new ExtraFault('extra-entity', 'it is not supported', unread[element]);
    else if (!groups.has(element) && element !== 'style' && element !== 'view')
      throw new ExtraFault('extra-entity', 'it is not supported', 'draw it as a path');
  }
}

/**
 * Reads the drawing of an SVG file: paths and shapes with their transforms; what is hidden is left out.
 * @throws ExtraFault for a file that cannot be taken at all: no unit, broken XML, a document type with declarations
 */
export function readSvgDrawing(text: string, options: ReadingOptions): SourceDrawing {
  const parser = new SaxesParser({ xmlns: true, position: true });
  const walk = new Walk(options);
  let styleText = '';
  parser.on('error', (error) => {
    throw new ExtraFault('extra-broken', `it is not well-formed XML: ${error.message.slice(0, 200)}`);
  });
  parser.on('doctype', (doctype) => {
    if (doctype.includes('['))
      throw new ExtraFault('extra-broken', 'it declares entities in a DOCTYPE', 'save it as plain SVG');
  });
  parser.on('opentag', (tag) => {
    styleText = '';
    walk.enter(tag, parser.line);
  });
  const gather = (piece: string): void => {
    if (styleText.length < limits.pathData) styleText += piece;
  };
  parser.on('text', gather);
  parser.on('cdata', gather);
  parser.on('closetag', (tag) => {
    if (tag.local === 'style') walk.style(styleText);
    walk.leave();
  });
  parser.write(text.replace(/^\uFEFF/, '')).close();
  return walk.finish();
}
