import type { DxfParser as Parser, IDxf } from 'dxf-parser';
import exported from 'dxf-parser';

// the package's types describe an ES module, but Node is given the CommonJS one, whose export is the class itself
const DxfParser = exported as unknown as new () => Parser;

/** A DXF text as dxf-parser reads it. */
export function readDxf(text: string): IDxf {
  const read = new DxfParser().parseSync(text);
  if (read === null) throw new Error('dxf-parser reads nothing');
  return read;
}
