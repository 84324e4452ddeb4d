/** Faults of the drawings of a sheet, by themselves and against the record, one for each message about them. */
import { rectangle } from '../../../lib/geometry/index.js';
import type { sheetMessages } from '../../../lib/check/messages/sheet.js';
import {
  cutOtherwise,
  drawingsOnly,
  type Files,
  groove,
  sheetFile,
  type SmallRecord,
} from '../../helpers/small-job.js';
import { mutated, type Planted, withRecord } from './planted.js';

const dxf = `${sheetFile}.dxf`;
const svg = `${sheetFile}.svg`;

const inSvg =
  (from: string | RegExp, to: string): (() => Files) =>
  () =>
    mutated(drawingsOnly(), svg, (text) => text.replace(from, to));
const recorded =
  (change: (record: SmallRecord) => unknown): (() => Files) =>
  () =>
    withRecord(drawingsOnly(), change);
/** Drawings of another rib beside the record of the right one. */
const drawn =
  (changes: Parameters<typeof cutOtherwise>[0], ...names: readonly string[]): (() => Files) =>
  () => {
    const files = drawingsOnly();
    const other = cutOtherwise(changes);
    for (const name of names) files.set(name, other.get(name) ?? '');
    return files;
  };
/** The same drawings by a record of a job for a laser. */
const byLaser = recorded((record) => ({
  ...record,
  sheets: record.sheets.map((sheet) => ({ ...sheet, router: undefined })),
  process: { kind: 'laser', kerf: 0.2, compensated: true },
}));
/** The second rib elsewhere by the record; the drawings are as before. */
const second = (place: Partial<SmallRecord['sheets'][number]['placed'][number]>, web?: number) =>
  recorded((record) => {
    Object.assign(record.sheets[0]!.placed[1]!, place);
    if (web === undefined) return record;
    const design = { ...record.design, process: { ...record.design.process, web } };
    return { ...record, design, process: { kind: 'hand', compensated: false } };
  });
const keptOff = (minX: number, minY: number, maxX: number, maxY: number) =>
  recorded((record) => {
    const corners = rectangle(minX, minY, maxX, maxY).map(({ x, y }) => ({ x, y }));
    const design = { ...record.design, stock: record.design.stock.map((one) => ({ ...one, keepOuts: [corners] })) };
    return { ...record, design };
  });
/** A plug of 6 mm in the opening of the first rib, which the drawing cuts after the opening. */
const plug = (): Files => {
  const files = mutated(drawingsOnly(), svg, (text) =>
    text.replace('<g class="outline" stroke="#009E73">', '$&<path d="M26 26L38 26L38 38L26 38Z"/>'),
  );
  return withRecord(files, (record) => {
    const [rib] = record.parts;
    const square = [
      [0, 0, 0],
      [6, 0, 0],
      [6, 6, 0],
      [0, 6, 0],
    ];
    const contours = [{ operation: 'outline', vertices: square }];
    const part = { ...rib, id: 'plug', quantity: 1, contours, drills: [], labels: [] };
    const place = { part: 'plug', copy: 1, x: 29, y: 37, rotationDeg: 0, mirrored: false };
    record.sheets[0]!.placed.push(place);
    return { ...record, parts: [...record.parts, part] };
  });
};
/** The group of a layer put last. */
const last = (layer: string): (() => Files) =>
  inSvg(new RegExp(`(  <g class="${layer}"(?:[^]*?)</g>\n)([^]*)(</svg>)`), '$2$1$3');

export const sheetPlants = {
  'dxf-unit': [
    () => mutated(drawingsOnly(), dxf, (text) => text.replace('$INSUNITS\n70\n4', '$INSUNITS\n70\n1')),
    '$INSUNITS is 1, not 4 (millimetres)',
  ],
  // printed at 99 %
  'svg-unit': [
    inSvg('width="180mm" height="72mm"', 'width="178.2mm" height="71.28mm"'),
    'a user unit is 0.99 mm, not 1 mm',
  ],
  'page-size': [inSvg(/180(mm)?(?=[ "])/g, '190$1'), 'the page is 190 mm x 72 mm, not 180 mm x 72 mm'],
  'edge-for-laser': [byLaser, 'the edge of the sheet is drawn: a laser would cut along it'],
  'edge-count': [inSvg(/<g class="sheet-edge"[^]*?<\/g>/, ''), 'it has 0 sheet edges, not one'],
  'edge-size': [
    inSvg('M0 72L180 72L180 0L0 0Z', 'M0 72L90 72L90 0L0 0Z'),
    'the sheet edge is 90 mm x 72 mm, 0.5 times as wide as the sheet',
  ],
  'off-sheet': [inSvg('M122 20L132 20', 'M122 20L192 20'), 'a line on layer scribe runs off the sheet'],

  'layer-unknown': [inSvg('class="opening"', 'class="cut"'), 'layer "cut" is not an operation'],
  'layer-circle': [inSvg('class="countersink"', 'class="opening"'), 'a circle is on layer opening'],
  'line-twice': [inSvg(/<circle[^>]*>/, '$&$&'), 'a line on layer drill-4mm occurs twice'],
  'circle-size': [inSvg(' r="2"', ' r="2.2"'), 'a circle of 4.4 mm is on layer drill-4mm'],
  'path-open': [inSvg(/Z"(?=[^>]*><title>rib 2)/, '"'), 'a path on layer outline is not closed'],
  'edge-short': [inSvg('M167 56L', 'M167 56L167 56L'), 'a path on layer outline has an edge without length'],

  'key-missing': [inSvg('opening #56B4E9:', 'opening:'), 'the key does not give the colour of layer opening'],
  'key-other': [
    inSvg('class="outline" stroke="#009E73"', 'class="outline" stroke="#E69F00"'),
    'layer outline has the colour #E69F00, but #009E73 in the key',
  ],
  'key-design': [
    inSvg(/#009E73/g, '#00FF00'),
    'the key gives layer outline the colour #00FF00, but the design says #009E73',
  ],

  'pair-page': [inSvg(/180(mm)?(?=[ "])/g, '190$1'), 'the page is 190 mm x 72 mm, but 180 mm x 72 mm in the DXF'],
  'pair-order': [last('countersink'), 'is on layer scribe, but on layer countersink in the DXF'],
  'pair-count': [inSvg(/<circle[^>]*>/, ''), 'layer drill-4mm has 3 lines, but 4 in the DXF'],
  'pair-circle': [inSvg('cx="24"', 'cx="24.1"'), 'a circle differs by 0.1 mm from the DXF, on layer drill-4mm'],
  'pair-path': [inSvg('M122 20L132 20', 'M122 20L132 21'), 'a path differs from the DXF, on layer scribe'],
  'pair-kind': [
    inSvg(/<circle cx="24" cy="48" r="2"[^>]*>/, '<path d="M22 48A2 2 0 0 1 26 48A2 2 0 0 1 22 48Z"/>'),
    'a path replaces a circle of the DXF, or the reverse, on layer drill-4mm',
  ],

  'path-missing': [
    inSvg(/<path[^>]*><title>rib 2<\/title><\/path>/, ''),
    'no path cuts the outline of rib 2 where it should be',
  ],
  'countersink-missing': [inSvg(/<circle[^>]* r="3.5"[^>]*>/, ''), 'the 7 mm countersink of rib 1 is missing'],
  'path-stray': [
    inSvg('<g class="outline" stroke="#009E73">', '$&<path d="M85 10L95 10L95 20Z"/>'),
    'a path on layer outline belongs to no part',
  ],
  'circle-stray': [
    inSvg(/<circle[^>]*>/, '<circle cx="90" cy="36" r="2"/>$&'),
    'a circle on layer drill-4mm belongs to',
  ],
  'bore-layer': [inSvg('class="drill-9mm"', 'class="drill-8mm"'), 'a 9 mm hole is on layer drill-8mm'],
  'pocket-layer': [
    drawn({ pockets: [{ ring: groove(7), depth: 3, from: 'front' }] }, dxf, svg),
    'a pocket 2 mm deep is on layer pocket-3mm',
  ],
  'cut-into': [
    drawn({ outline: rectangle(0, 0, 60, 39.5) }, dxf, svg),
    'the cut eats 0.5 mm into the part: outline of rib 1',
  ],
  'cut-leaves': [drawn({ outline: rectangle(0, 0, 60, 40.5) }, dxf, svg), ' mm outside the part: outline of rib 1'],
  'scribe-off': [inSvg('M122 20L132 20', 'M122 20L132 20.5'), 'a scribed line of rib 2 is 0.5 mm out of place'],
  'hole-off': [inSvg('cx="24"', 'cx="24.2"'), 'the 4 mm drill of rib 1 is 0.2 mm off in place or size'],
  'hole-bare': [byLaser, 'the 4 mm drill of rib 1 is a bare circle, which a beam of 0.2 mm cuts too wide'],
  'mark-missing': [inSvg(/<path d="M32 52[^>]*>/, ''), 'the mark "No 1" of rib 1 is missing, incomplete or not where'],
  'mark-stray': [
    inSvg('<g class="scribe" stroke="#7F7F7F">', '$&<path d="M50 30L60 30"/>'),
    'a scribed line is not a mark of any part placed there',
  ],

  'order-within': [last('opening'), 'an opening of rib 1 comes after its outline'],
  'order-machine': [
    recorded((record) => ({
      ...record,
      design: {
        ...record.design,
        machine: {
          ...record.design.machine,
          kind: 'laser',
          beam: 'M3',
          order: ['opening', 'drill', 'scribe', 'outline'],
        },
      },
      process: { kind: 'laser', kerf: 6, compensated: true },
    })),
    'rib 1: drill comes before opening, against the order of the machine',
  ],
  'order-nested': [plug, 'plug 1 lies in an opening of rib 1, which is cut first'],

  // a plus: no corner of one lies within the other
  overlap: [second({ x: 66, y: 6, rotationDeg: 90, mirrored: false }, 0), 'rib 1 and rib 2 overlap'],
  // 104 - 16 - 76 mm; two widths of the tool and the web are asked
  spacing: [second({ x: 148 }), 'rib 1 and rib 2 are 12 mm apart, not 16 mm'],
  'keep-out-on': [keptOff(40, 20, 50, 50), 'rib 1 is on a place of the stock to keep clear'],
  'keep-out-near': [keptOff(86, 0, 90, 72), 'rib 1 is 10 mm from a place of the stock to keep clear, not 16 mm'],
  'margin-outside': [second({ x: -80 }), 'rib 2 is outside the sheet, not 10 mm within it'],
  'margin-near': [second({ x: 175 }), 'rib 2 is 5 mm from the edge of the sheet, not 10 mm'],
} as const satisfies Partial<Record<keyof typeof sheetMessages, Planted>>;
