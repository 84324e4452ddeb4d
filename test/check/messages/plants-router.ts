/** Faults of a tool path, one for each message of its simulation. */
import { lineMark } from '../../../lib/part/index.js';
import { rectangle } from '../../../lib/geometry/index.js';
import type { routerMessages } from '../../../lib/check/messages/router.js';
import type { RouterMachine } from '../../../lib/machining/index.js';
import { machineData } from '../../helpers/router-sheets.js';
import {
  cutOtherwise,
  type Files,
  groove,
  jobFor,
  ribParts,
  sheetFile,
  smallJob,
  type SmallRecord,
} from '../../helpers/small-job.js';
import { mutated, type Planted, withRecord } from './planted.js';

const name = `${sheetFile}.ngc`;

/** The tool path with a stretch of it changed. */
const inPath =
  (from: string | RegExp, to: string): (() => Files) =>
  () =>
    mutated(smallJob(), name, (text) => text.replace(from, to));
/** The tool path with lines of its own before the first tool. */
const line = (text: string) => inPath('\n(tool 2:', `\n${text}\n(tool 2:`);

type Limits = SmallRecord['sheets'][number]['router']['limits'];

/** The tool path as it is, with other limits in the record. */
const limited =
  (change: (limits: Limits) => Partial<Limits>): (() => Files) =>
  () =>
    withRecord(smallJob(), (record) => {
      const { limits } = record.sheets[0]!.router;
      Object.assign(limits, change(limits));
    });

/** The tool path as it is, with other ranges of its tools in the record. */
const ranged = (range: Limits['tools'][number]['range']): (() => Files) =>
  limited(({ tools }) => ({ tools: tools.map((tool) => ({ ...tool, range: { ...tool.range, ...range } })) }));

/** The tool path with the outline of rib 1 before the rest that the end mill does. */
const outlineFirst = (): Files =>
  mutated(smallJob(), name, (text) => {
    const [outline = ''] = /\(outline rib 1\)\n[^(]*/.exec(text) ?? [];
    const first = text.indexOf('\n(', text.indexOf('(tool 1:')) + 1;
    // each cut begins with places and a motion of its own
    const cut = `G0 ${outline.slice(outline.indexOf('\n') + 1)}`;
    return `${text.slice(0, first)}(outline rib 1)\n${cut}${text.slice(first).replace(outline, '')}`;
  });

/** The files for another machine, with the first of them changed. */
const described =
  (changes: Partial<RouterMachine>, from: string | RegExp, to: string): (() => Files) =>
  () => {
    const files = jobFor(machineData(changes));
    const [path = name] = [...files.keys()].filter((one) => one.endsWith('.ngc'));
    return mutated(files, path, (text) => text.replace(from, to));
  };

/** A whole tool path for another rib, beside the record and the drawings of the right one. */
const pathOf = (changes: Parameters<typeof cutOtherwise>[0]) => (): Files =>
  smallJob().set(name, cutOtherwise(changes).get(name) ?? '');

const languagePlants = {
  'ngc-unknown-code': [line('G77'), 'G77 is not in the language'],
  'ngc-exclusive': [line('M7 M9'), 'M7 and M9 exclude each other on a line'],
  'ngc-long-line': [line(`(${'x'.repeat(255)})`), 'the line has 257 characters; 256 are allowed'],
  'ngc-not-ascii': [line('(\u00f8)'), 'the line is not plain ASCII'],
  'ngc-comment': [line('(a (b) c)'), 'a comment is not closed, or is inside another'],
  'ngc-word': [line('G1 X'), '"X" is not a word of a letter and a number'],
  'ngc-letter': [line('E1'), 'E is not a letter that begins a word'],
  'ngc-letter-twice': [line('S1 S1'), 'S occurs twice'],
  'ngc-many-m': [line('M1 M5 M6 M7 M48'), '5 M words; 4 are allowed'],
  'ngc-percent': [inPath(/%\s*$/, ''), 'the file begins with % and has no % at its end'],

  'after-end': [inPath('M2\n', 'M2\nM5\n'), 'words after the end of the program'],
  'no-end': [inPath('M2\n', ''), 'the program has no end (M2)'],
  'end-tool-down': [inPath('G0 Z10\nM5\nG49\nM2', 'M2'), 'the program ends with the tool down'],
  'word-tool-down': [inPath('G1 X76\n', 'G1 X76\nM0\n'), 'M0 with the tool down'],
  'tool-comment': [
    inPath('(tool 1: 6 mm end mill', '(tool 1: 8 mm end mill'),
    'the comment before a tool says TOOL 1: 8 MM END MILL, 2 FLUTES, not TOOL 1: 6 MM END MILL, 2 FLUTES',
  ],
  'change-unpaused': [described({ toolChange: 'by-hand' }, 'M0\n', ''), 'tool 3 is to cut without a tool change'],
  'change-place': [
    described({ toolChange: 'by-hand' }, 'G0 Z60', 'G0 Z40'),
    'is at 0, 0 mm at 40 mm, not at 0, 0 mm at 60 mm',
  ],
  'change-word': [
    described({ toolChange: 'by-hand' }, 'M0\n', 'M6\nM0\n'),
    'M6 for a machine without automatic tool change',
  ],
  'tools-in-file': [
    described({ toolChange: 'none' }, /(\(tool 2:[^)]*\)\n)/, '$1(tool 3: 12 mm V-bit of 90 degrees, 2 flutes)\n'),
    'a second tool in a file for a machine without tool change',
  ],
  'units-other': [
    described({ programUnits: 'in' }, 'G20', 'G21'),
    'the file is not in inches, the unit of the machine',
  ],
  'path-mode': [inPath('G61\n', 'G64\n'), 'a cut in the path mode G64 without P, not G61'],
  coolant: [described({ coolant: 'mist' }, 'M7', 'M8'), 'a cut with the coolant flood, not mist'],
  'arc-unwanted': [
    limited(({ machine }) => ({ machine: { ...machine, arcs: 'lines' } })),
    'an arc for a machine without arcs',
  ],
  'spindle-other': [inPath('S8000 M3', 'S9000 M3'), 'tool 2 cuts at 9000 rev/min, not 8000'],
  'feed-other': [inPath('F1280', 'F1400'), 'tool 2 cuts at 1400 mm/min, above its 1280'],
  'plunge-fast': [inPath(/Z-0\.3 F\d+/, 'Z-0.3 F690'), 'tool 3 goes down at 90.0° at 690 mm/min, above its 600'],
  'cut-order': [outlineFirst, 'rib 1 is drilled, marked or opened after its outline was begun'],
  'spin-up': [inPath('G4 P3', 'G4 P1'), 'a cut 1 s after the spindle is started, not 3 s'],
  'feed-axis': [inPath('F4000', 'F5000'), 'a feed of 4993 mm/min along Y, above 4000'],
  'comment-long': [line(`(${'x'.repeat(97)})`), 'a comment of 97 characters; 96 are allowed'],
  'end-other': [inPath('M2\n', 'M30\n'), 'the program ends with M30, not M2'],
  parking: [
    described({ parking: { x: 5, y: 5 } }, 'G0 X5 Y5', 'G0 X5 Y6'),
    'the machine ends at 5, 6 mm, not at 5, 5 mm',
  ],
  'feed-slow': [inPath('F4000', 'F400'), 'tool 1 cuts at 400 mm/min, below its 600'],
  'chip-range': [ranged({ minChip: 1, maxChip: 2 }), 'mm, outside 1 mm to 2 mm'],
  'plunge-range': [ranged({ maxPlunge: 100 }), 'plunges at 600 mm/min, above the 100 of the material'],
  'spindle-range': [ranged({ maxSpindle: 5000 }), 'tool 2 turns at 8000 rev/min, above the 5000 of the material'],
  'range-unwarned': [ranged({ outside: true }), 'tool 1 is used outside its range, and no warning says so'],
  'change-caution': [
    described({ toolChange: 'by-hand' }, /\(CAUTION: Tighten [^)]*\)\n((?:\([^)]*\)\n)*M0)/, '$1'),
    'a pause for a tool change without its cautions',
  ],
  'head-lacks': [
    inPath('Dry run first', 'Dry run later'),
    'does not say "CAUTION: Dry run first: run the whole file with the tool well above',
  ],
  'head-other': [
    inPath('(CAUTION: Dry run', '(This file was proven: no dry run)\n(CAUTION: Dry run'),
    'says "THISFILEWASPROVEN:NODRYRUN", which does not belong to this job',
  ],
  'head-depth': [
    inPath('Lowest point: -6.3 mm', 'Lowest point: -3 mm'),
    'the head of the file says that it goes to -3 mm, but it goes to -6.3 mm',
  ],
  'not-provable': [line('G91'), 'G91 cannot be proven here'],
  dwell: [inPath('G4 P3', 'G4'), 'a dwell (G4) needs P, seconds'],
  'tool-length': [inPath('G43 H2', 'G43 H3'), 'the length of tool 3 is used for tool 2'],
  'motion-without-place': [line('G1'), 'a motion without X, Y or Z'],
  'change-turning': [inPath('M5\nT3 M6', 'T3 M6'), 'the tool is changed while the spindle turns'],
  'tool-unknown': [inPath('T3 M6', 'T9 M6'), 'tool 9 is not among the tools of the job'],
  'mode-unset': [inPath('\nG17 ', '\n'), 'the file moves before it sets the plane (G17)'],
  'place-without-motion': [line('X5 Y5'), 'a position without a motion (G0 to G3)'],
  'first-moves': [inPath('G0 Z10\n', 'G0 Z5\n'), 'the first moves do not rise to travel height'],
  'no-tool': [inPath('T2 M6\n', ''), 'a move without a tool (T and M6)'],
  'spindle-still': [inPath('S8000 M3', 'S8000 M4'), 'with the spindle not turning clockwise (M3)'],
  'spindle-speed': [inPath('S8000 M3', 'S99 M3'), 'a feed move at 99 rev/min, outside 8000 to 24000'],
  'no-feed': [inPath('G1 Z-1 F640', 'G1 Z-1'), 'a feed move without a feed (F)'],
  'arc-plane': [inPath('G3 X', 'G18 G3 X'), 'an arc in the plane of G18, not of the sheet (G17)'],
  'arc-bare': [inPath(' I-2 J0', ''), 'an arc without I, J or R'],
  'arc-no-radius': [inPath('I-2 J0', 'I0 J0'), 'an arc has its centre at its start'],
  'arc-ends': [
    inPath('I-2 J0', 'I-2.1 J0'),
    'the ends of an arc differ by 0.2000 mm in their distance from its centre',
  ],
  'arc-no-chord': [inPath('X37.75 Y22 I-2 J0', 'X41.75 Y22 R2'), 'an arc in radius form ends where it starts'],
  'arc-span': [inPath('I-2 J0', 'R1'), 'an arc of radius 1 mm cannot span 4.0000 mm'],
} as const satisfies Partial<Record<keyof typeof routerMessages, Planted>>;

const motionPlants = {
  'rapid-down': [inPath('X24 Y24\nZ1\n', 'X24 Y24\nZ-1\n'), 'a rapid move (G0) down into the material, to -1 mm'],
  'rapid-through': [
    inPath('G0 Z10\n(drill rib 1)\nX66 Y48\n', 'G0 X66 Y48\nZ10\n'),
    'a rapid move (G0) through the material, at -3 mm',
  ],
  'rapid-low': [
    inPath('G0 Z10\n(drill rib 1)\nX66', 'G0 Z5\n(drill rib 1)\nX66'),
    'travel at 5 mm, below the travel height of 10 mm',
  ],
  'hop-low': [
    inPath('G0 Z10\n(mark rib 1)\n', 'G0 Z2\n(mark rib 1)\n'),
    'a hop between marks at 2 mm, below the 3 mm specified',
  ],
  // along the edge of the part, where a clamp may stand beside it
  'hop-open': [
    inPath('G0 Z10\n(mark rib 1)\n', 'G0 Z3\n(mark rib 1)\n'),
    'a low hop at 3 mm that does not stay over one part',
  ],
  'spoil-board': [inPath('Z-6.3 F1280', 'Z-7 F1280'), '1 mm into the spoilboard; 0.3 mm is specified'],
  // the V-bit cuts 6 mm
  'cutting-depth': [inPath('Z-3.5 F300', 'Z-6.2 F300'), 'tool 3 is 6.2 mm deep; it can cut 6 mm'],
  'off-the-sheet': [inPath(/X122 F\d+/, 'X-5 F600'), ' mm off the sheet'],
  'into-clamp': [
    limited(() => ({ keepOuts: [rectangle(60, 55, 64, 65).map(({ x, y }) => ({ x, y }))] })),
    'the tool runs into a place to keep clear',
  ],
  'pass-depth': [
    inPath('G1 Z0 F600\nX16 Z-1.0787 F4000', 'G1 Z-6 F600\nX16 F4000'),
    'a pass of 6 mm; tool 1 can take 4.5 mm',
  ],
  'cut-twice': [
    inPath('X27 Y40 I-5 J0\n', 'X27 Y40 I-5 J0\nX37 Y40 I5 J0\nX27 Y40 I-5 J0\nX37 Y40 I5 J0\nX27 Y40 I-5 J0\n'),
    'a contour is run twice at one depth',
  ],

  'part-loose': [inPath(/Z-4\.5$/gm, 'Z-6.3'), 'rib 1 comes loose before the sheet is done'],
  'holding-unknown': [limited(() => ({ holding: [] })), 'the record does not state how rib 1 is held'],
  'tab-count': [inPath(/Z-4\.5\nY5/g, 'Z-6.3\nY5'), 'rib 1 has 1 tabs 6 mm wide and 1.5 mm high, not 2'],
  // a tab of 43 mm
  'tab-wide': [
    inPath(/X3[78]\.\d+\nX(?:39|40)\.\d+ Z-6\.3/g, 'X62.4\nX64 Z-6.3'),
    'the edge of rib 1 is left uncut over ',
  ],
  'onion-skin-cut': [
    limited(({ holding }) => ({ holding: holding.map((held) => ({ ...held, onionSkin: true })) })),
    'the onion skin that holds rib 1 is cut through',
  ],

  'hole-not-through': [inPath('Z-6.3 F1280', 'Z-5.3 F1280'), 'the 4 mm hole of rib 1 is 5.3 mm deep, not through 6 mm'],
  'hole-depth': [inPath('Z-3 F1280', 'Z-4 F1280'), 'the 4 mm hole of rib 1 is 4 mm deep, not 3 mm'],
  'hole-missing': [
    inPath('X66 Y48\nZ1\nG1 Z-1 F640\nZ-6.3 F1280\n', 'X66 Y48\n'),
    'the 4 mm hole of rib 1 is missing or too shallow',
  ],
  'bore-off': [
    pathOf({ holes: ribParts.holes.map((hole) => (hole.diameter === 9 ? { ...hole, diameter: 9.4 } : hole)) }),
    'the 9 mm hole of rib 1 is 0.2 mm off in place or size',
  ],
  'countersink-wrong': [
    inPath('Z-3.5 F300', 'Z-3.2 F300'),
    'the countersink of the 4 mm hole of rib 2 is missing or of the wrong size',
  ],
  'hole-stray': [
    inPath('Z-3 F1280\nG0 Z10\n', 'Z-3 F1280\nG0 Z10\nX90 Y36\nZ1\nG1 Z-3 F640\nG0 Z10\n'),
    'the tool goes down where no part has a hole',
  ],
  'mark-deep': [inPath('Z-0.3 F600', 'Z-0.5 F600'), 'a mark 0.5 mm deep, not 0.3 mm'],
  'engraving-missing': [
    pathOf({ marks: [ribParts.scribed] }),
    'the mark "No 1" of rib 1 is missing, incomplete or not',
  ],
  'engraving-scribe': [
    pathOf({ marks: [ribParts.lettering] }),
    'a scribed line of rib 1 is missing, incomplete or not where it should be',
  ],
  'engraving-stray': [
    pathOf({
      marks: [
        ribParts.scribed,
        ribParts.lettering,
        lineMark([
          { x: 32, y: 30, bulge: 0 },
          { x: 42, y: 30, bulge: 0 },
        ]),
      ],
    }),
    'the tool marks the sheet where no part has a mark',
  ],

  'pocket-missing': [pathOf({ pockets: [] }), 'a pocket of rib 1 is missing or too shallow'],
  'pocket-off': [
    pathOf({ pockets: [{ ring: groove(6.8), depth: 2, from: 'front' }] }),
    'the edge of a pocket of rib 1 is 0.2 mm off',
  ],
  'pocket-depth': [
    pathOf({ pockets: [{ ring: groove(7), depth: 2.5, from: 'front' }] }),
    'a pocket of rib 1 is 2.5 mm deep, not 2 mm',
  ],
  'pocket-floor': [inPath(/\(pocket rib 1 core\)\n[^(]*/, ''), 'material is left on the floor of a pocket of rib 1'],
  'edge-eaten': [pathOf({ outline: rectangle(0, 0, 60, 39.5) }), 'the cut eats 0.5 mm into rib 1'],
  'edge-left': [pathOf({ outline: rectangle(0, 0, 60, 40.5) }), 'the cut leaves 0.5 mm at the outline of rib 1'],
  'edge-uncut': [inPath(/Z-6\.\d+/g, 'Z-5.9'), 'the outline of rib 1 is not cut through'],
  'no-end-mill': [
    limited(({ tools }) => ({ tools: tools.filter(({ kind }) => kind !== 'mill') })),
    'no end mill cuts rib 1',
  ],
} as const satisfies Partial<Record<keyof typeof routerMessages, Planted>>;

export const routerPlants = { ...languagePlants, ...motionPlants };
