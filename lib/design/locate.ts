/** From the path of a key to its line: the one place that knows where in the text of a design file a key stands. */
import { type Document, isMap, isNode, isScalar, type LineCounter } from 'yaml';
import { type Diagnostic, type KeyPath, type Locate, type Place, visible } from '../diagnostic/index.js';
import { usedInstead } from './used-instead.js';

interface Found {
  readonly offset: number;
  /** Whether the file states the key itself. */
  readonly stated: boolean;
  readonly value?: string | number | boolean;
}

/** The key of the path's last step as it stands in the file, or null where the file does not have it. */
function keyAt(document: Document, path: KeyPath): Found | null {
  const parent = document.getIn(path.slice(0, -1), true);
  const last = path.at(-1);
  const pair = isMap(parent)
    ? parent.items.find((item) => isNode(item.key) && String(item.key) === String(last))
    : undefined;
  const node = pair?.key ?? document.getIn(path, true);
  if (!isNode(node) || !node.range) return null;
  const held: unknown = pair === undefined ? node : pair.value;
  const value = isScalar(held) ? held.value : undefined;
  const plain = typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
  return { offset: node.range[0], stated: true, ...(plain ? { value } : {}) };
}

/**
 * The deepest part of the path that the file states. A key that is left out is shown at its section; where the whole
 * section is left out, at the key that its default follows from.
 */
function find(document: Document, path: KeyPath): Found | null {
  const own = path.length > 0 ? keyAt(document, path) : null;
  if (own) return own;
  const instead = usedInstead(path);
  for (let depth = path.length - 1; depth >= 1; depth -= 1) {
    const above = keyAt(document, path.slice(0, depth));
    if (above) return { offset: above.offset, stated: false };
  }
  if (instead) {
    const other = find(document, instead);
    if (other) return { offset: other.offset, stated: false };
  }
  const top = document.contents;
  return isNode(top) && top.range ? { offset: top.range[0], stated: false } : null;
}

/** A diagnostic whose texts show what they hold, as they quote the file. */
export function shown(diagnostic: Diagnostic): Diagnostic {
  const { message, remedy } = diagnostic;
  return { ...diagnostic, message: visible(message), ...(remedy === undefined ? {} : { remedy: visible(remedy) }) };
}

/**
 * Locates diagnostics in a design file.
 * @param file its name, as it is to be shown
 */
export function locator(document: Document, lines: LineCounter, file: string | undefined): Locate {
  return (found) => {
    const diagnostic = shown(found);
    if (diagnostic.place === undefined) return diagnostic;
    const { path } = diagnostic.place;
    const key = find(document, path);
    const named: Place = { path, ...(file === undefined ? {} : { file }) };
    if (key === null) return { ...diagnostic, place: named };
    const { line, col } = lines.linePos(key.offset);
    const value = key.stated ? key.value : undefined;
    return { ...diagnostic, place: { ...named, line, column: col }, ...(value === undefined ? {} : { value }) };
  };
}
