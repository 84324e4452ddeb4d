/** Faults of a folder as a whole and of its record, one for each message about them. */
import type { comparisons, folderMessages } from '../../../lib/check/messages/folder.js';
import { drawingsOnly, type Files, sheetFile, smallJob, type SmallRecord } from '../../helpers/small-job.js';
import { mutated, type Planted, smallAgain, withRecord } from './planted.js';

const svg = `${sheetFile}.svg`;

/** Another record of the drawings, well sealed. */
const recorded =
  (change: (record: SmallRecord) => unknown): (() => Files) =>
  () =>
    withRecord(drawingsOnly(), change);
/** A record that states a correction of the machine which its design does not have. */
const corrected = (correction: object): (() => Files) =>
  recorded((record) => ({ ...record, process: { ...record.process, ...correction } }));
/** Another record of drawings and tool path. */
const routed =
  (change: (limits: SmallRecord['sheets'][number]['router']['limits']) => void): (() => Files) =>
  () =>
    withRecord(smallJob(), (record) => {
      change(record.sheets[0]!.router.limits);
    });
const inFile =
  (name: string, from: string | RegExp, to: string): (() => Files) =>
  () =>
    mutated(drawingsOnly(), name, (text) => text.replace(from, to));
const without =
  (name: string): (() => Files) =>
  () => {
    const files = drawingsOnly();
    files.delete(name);
    return files;
  };

const folderPlants = {
  'record-missing': [without('job.json'), 'job.json: the record is missing'],
  'record-not-json': [inFile('job.json', '{', '['), 'job.json: it is not JSON: '],
  'record-value': [recorded((record) => ({ ...record, sheets: 1 })), 'a value is missing or wrong: sheets: '],
  'record-unlisted': [inFile('job.json', '"recordHash"', '"hash"'), 'it has no list of files and hashes'],
  'record-changed': [
    inFile('job.json', '"version": "0"', '"version": "1"'),
    'job.json: it has been changed since it was',
  ],
  'file-missing': [without(svg), `${svg}: the file is missing`],
  'file-size': [inFile(svg, /$/, ' '), ' bytes, not '],
  'file-content': [inFile(svg, `<title>${sheetFile}`, '<title>other'), 'written: same size, different content'],
  'file-stray': [() => drawingsOnly().set('old.nc', 'M2'), 'old.nc: the record does not name this file'],
  'more-alike': [
    inFile(svg, '<g class="outline"', `<g class="countersink" stroke="#E69F00">${circles(13)}</g><g class="outline"`),
    '3 more faults of the kind "circle-stray"',
  ],

  'part-twice': [
    recorded(({ parts }) => {
      parts.push(parts[0]!);
    }),
    'part "rib" occurs twice',
  ],
  'part-count': [
    recorded(({ parts }) => {
      parts[0]!.quantity = 3;
    }),
    '2 of 3 pieces of "rib" are on the sheets',
  ],
  'copy-twice': [
    recorded(({ sheets }) => {
      sheets[0]!.placed[1]!.copy = 1;
    }),
    'copy 1 of "rib" is placed 2 times',
  ],
  'copy-beyond': [
    recorded(({ parts }) => {
      parts[0]!.quantity = 1;
    }),
    'copy 2 of "rib" is placed, of 1',
  ],
  'sheet-file-twice': [
    recorded(({ sheets }) => {
      sheets.push(sheets[0]!);
    }),
    'two sheets have the same file',
  ],
  'part-unknown': [
    recorded(({ sheets }) => {
      sheets[0]!.placed[1]!.part = 'none';
    }),
    'ply-1 places "none", which is not one of the parts',
  ],

  'design-value': [
    recorded((record) => ({ ...record, design: { ...record.design, dish: 1 } })),
    'a value for the comparison with the design is missing or wrong: design.dish: ',
  ],
  'design-process': [
    recorded(({ design }) => {
      design.materials.ply.cut = 'laser';
    }),
    'ply-1 is cut by router, but by laser in the design',
  ],
  'sheet-machine': [
    routed((limits) => {
      limits.machine = { ...limits.machine, spinUp: 1 };
    }),
    'ply-1: machine.spinUp differs from the design',
  ],
  'design-unmade': [smallJob, 'design in the record: no dish', { kind: 'failed', why: 'no dish' }],
  'part-invented': [
    smallJob,
    'part "rib" does not follow from the design',
    smallAgain(({ parts }) => {
      parts[0]!.id = 'hub';
    }),
  ],
  'part-lacking': [
    smallJob,
    'part "hub" follows from the design but is not in the record',
    smallAgain(({ parts }) => {
      parts.push({ ...parts[0]!, id: 'hub' });
    }),
  ],
  'part-other': [
    smallJob,
    'part "rib" differs from what its design makes: contours[0].vertices[1][0]',
    smallAgain(({ parts }) => {
      parts[0]!.contours[0]!.vertices[1]![0] += 0.001;
    }),
  ],
  'fasteners-other': [
    () => withRecord(smallJob(), (record) => ({ ...record, fasteners: [{ joint: 'hub', count: 1 }] })),
    'the fasteners are not those that follow from the design: in number (1, not 0)',
    smallAgain(),
  ],
  'limits-other': [
    smallJob,
    'ply-1: a limit of its tool paths differs from the design: tools[2].feed',
    smallAgain(({ sheets }) => {
      sheets[0]!.router.limits.tools[2]!.feed = 3000;
    }),
  ],
  'warning-lacking': [
    smallJob,
    'a warning that follows from the design is left out: the screws come out',
    smallAgain(({ problems }) => {
      problems.push({ code: 'screw', message: 'the screws come out' });
    }),
  ],
  'offcut-of-nothing': [
    recorded(({ offcuts }) => {
      offcuts[0]!.sheet = 'none';
    }),
    'an offcut is listed for none, which is not a sheet',
  ],
  'offcut-beyond': [
    recorded(({ offcuts }) => {
      offcuts[0]!.x = 175;
    }),
    'the offcut of ply-1 reaches beyond the sheet',
  ],
} as const satisfies Partial<Record<keyof typeof folderMessages, Planted>>;

function circles(count: number): string {
  return Array.from({ length: count }, (_, i) => `<circle cx="${90 + i / 2}" cy="30" r="1"/>`).join('');
}

const comparisonPlants = {
  'dish-radius': [
    recorded(({ dish }) => {
      dish.apertureRadius = 501;
    }),
    'the dish has a radius of 501 mm, but 500 mm in the design',
  ],
  'dish-base': [
    recorded(({ dish }) => {
      dish.baseHeight = 61;
    }),
    'the dish has a base height of 61 mm, but 60 mm in the design',
  ],
  'dish-ribs': [
    recorded(({ dish }) => {
      dish.layout.ribs.push(0);
    }),
    'the number of ribs of the dish is 3, but 2 in the design',
  ],
  'rib-thickness': [
    recorded(({ dish }) => {
      dish.ribThickness = 6.5;
    }),
    'the ribs have a thickness of 6.5 mm, but 6 mm in the design',
  ],
  'focal-length': [
    recorded(({ dish }) => {
      dish.profile.focusHeight = 401;
    }),
    'the dish has a focal length of 401 mm, but 400 mm in the design',
  ],
  'dish-depth': [
    recorded(({ dish }) => {
      dish.depth = 157;
    }),
    // 1000² / (16 · 400) = 156.25
    'the dish has a depth of 157 mm, but 156.25 mm in the design',
  ],
  'part-thickness': [
    recorded(({ parts }) => {
      parts[0]!.thickness = 6.5;
    }),
    'part "rib" has a thickness of 6.5 mm, but 6 mm in the design',
  ],
  'rib-count': [
    recorded(({ parts }) => {
      parts[0]!.quantity = 3;
    }),
    'the number of ribs to be made is 3, but 2 in the design',
  ],
  'nest-seed': [recorded((record) => ({ ...record, seed: 2 })), 'the seed of the nest is 2, but 1 in the design'],
  'tool-diameter': [
    recorded((record) => {
      record.process.toolDiameter = 6.35;
    }),
    'the tool has a diameter of 6.35 mm, but 6 mm in the design',
  ],
  kerf: [
    recorded((record) => ({
      ...record,
      design: { ...record.design, process: { ...record.design.process, kind: 'laser' } },
      process: { kind: 'laser', kerf: 0.3, compensated: true },
    })),
    'the kerf is 0.3 mm, but 0.2 mm in the design',
  ],
  'cut-width': [corrected({ width: 6.1 }), 'ply-1: the cut is 6.1 mm wide, but 6 mm in the design'],
  'cut-bore': [corrected({ bore: 0.1 }), 'ply-1: bored holes come out 0.1 mm wider, but 0 mm in the design'],
  'axis-x': [
    corrected({ axes: { scaleX: 1.001, scaleY: 1, lean: 0 } }),
    'ply-1: X makes 1001 mm per metre, but 1000 mm per metre in the design',
  ],
  'axis-y': [
    corrected({ axes: { scaleX: 1, scaleY: 0.999, lean: 0 } }),
    'ply-1: Y makes 999 mm per metre, but 1000 mm per metre in the design',
  ],
  'axis-lean': [
    corrected({ axes: { scaleX: 1, scaleY: 1, lean: 0.0005 } }),
    'ply-1: Y leans by 0.5 mm per metre, but 0 mm per metre in the design',
  ],
  'sheet-thickness': [
    routed((limits) => {
      limits.thickness = 6.5;
    }),
    'ply-1: the material has a thickness of 6.5 mm, but 6 mm in the design',
  ],
  'sheet-overcut': [
    routed((limits) => {
      limits.overcut = 1;
    }),
    'ply-1: the overcut is 1 mm, but 0.3 mm in the design',
  ],
  'sheet-mark-depth': [
    routed((limits) => {
      limits.markDepth = 0.5;
    }),
    'ply-1: the depth of marks is 0.5 mm, but 0.3 mm in the design',
  ],
  'sheet-margin': [
    recorded(({ sheets }) => {
      sheets[0]!.margin = 5;
    }),
    'ply-1: the margin is 5 mm, but 10 mm in the design',
  ],
  'roll-width': [
    recorded(({ design }) => {
      Object.assign(design.stock[0]!, { rollWidth: 80 });
    }),
    'ply-1: the roll has a width of 72 mm, but 80 mm in the design',
  ],
  'sheet-width': [
    recorded(({ design }) => {
      design.stock[0]!.size.width = 200;
    }),
    'ply-1: the sheet has a width of 180 mm, but 200 mm in the design',
  ],
  'sheet-height': [
    recorded(({ design }) => {
      design.stock[0]!.size.height = 80;
    }),
    'ply-1: the sheet has a height of 72 mm, but 80 mm in the design',
  ],
} as const satisfies Partial<Record<keyof typeof comparisons, Planted>>;

export const recordPlants = { ...folderPlants, ...comparisonPlants };
