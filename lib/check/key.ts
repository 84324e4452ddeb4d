/** Whether each line has the colour that the file's own key gives its operation, and the key those of the design. */
import { layerKind, type ReadBackSheet } from './drawn.js';
import type { FaultList } from './faults.js';

/** A colour, as `#RRGGBB`, for each operation. */
export type LayerColours = Readonly<Record<string, string>>;

/** A line of a key: the layer, its colour, what is done along its lines. */
const keyLine = /^(\S+) (#[0-9A-Fa-f]{6}): \S/;

/** The colours that a key gives, by layer. */
export function readKey(lines: readonly string[]): Map<string, string> {
  return new Map(
    lines.flatMap((line): [string, string][] => {
      const [, layer, colour] = keyLine.exec(line.trim()) ?? [];
      return layer === undefined || colour === undefined ? [] : [[layer, colour]];
    }),
  );
}

/** The colour sets what a machine does along a line, so colour, key and design have to agree. */
export function checkKey(
  sheet: ReadBackSheet,
  design: LayerColours | undefined,
  file: string,
  faults: FaultList,
): void {
  const used = new Set(sheet.entities.map(({ layer }) => layer));
  const same = (a: string, b: string): boolean => a.toUpperCase() === b.toUpperCase();
  for (const layer of used) {
    const operation = layerKind(layer);
    // a layer without a meaning is reported as that
    if (operation === null) continue;
    const key = sheet.key.get(layer);
    if (key === undefined) {
      faults.add('key-missing', file, { layer });
      continue;
    }
    for (const colour of sheet.colours.get(layer) ?? [])
      if (!same(colour, key)) faults.add('key-other', file, { layer, colour, key });
    const asked = design?.[operation];
    if (asked !== undefined && !same(key, asked)) faults.add('key-design', file, { layer, key, design: asked });
  }
}
