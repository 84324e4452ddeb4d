/**
 * What newcomers do wrong in a design file and on the command line, each with what the message has to name: the place,
 * the cause and the mend. Common practice, no source: slips of people who have never seen a file of this kind.
 */

/** A first design, written as a person writes it. */
export const garden = `name: Garden dish
units: mm

dish:
  aperture: 300
  focalLength: 150
  ribs: 8

materials:
  ply: { kind: plywood, thickness: 6 }
  card: { kind: card, thickness: 0.5 }

stock:
  - { material: ply, size: 900 x 600, price: 20 }
  - { material: card, size: 900 x 600, price: 3 }

rib: { material: ply }
cleat: { length: 40, width: 16 }
panel: { material: card, gap: 1, fixing: glue }
process:
  kind: hand
  drillBits: [1.5, 2]
template: { process: hand }
nest: { effort: 0 }
`;

/** The same in inches. */
export const gardenInch = garden
  .replace('units: mm', 'units: in')
  .replace('aperture: 300', 'aperture: 12')
  .replace('focalLength: 150', 'focalLength: 6')
  .replace('thickness: 6', 'thickness: 1/4')
  .replace('thickness: 0.5', 'thickness: 0.02')
  .replaceAll('900 x 600', '36 x 24')
  .replace('length: 40, width: 16', 'length: 1-5/8, width: 5/8')
  .replace('gap: 1,', 'gap: 0.04,')
  .replace('drillBits: [1.5, 2]', 'drillBits: [1/16, 5/64]');

type Statements = readonly [place: RegExp, cause: RegExp, mend: RegExp];

/** A slip in the file: what stands there is replaced, and `check` has to say three things. */
export type FileMistake = readonly [what: string, from: string, to: string, ...statements: Statements];

/** A slip on the command line, in a folder with garden.yaml, inch.yaml, a folder `made` and a text letter.txt. */
export type CommandMistake = readonly [what: string, args: readonly string[], ...statements: Statements];

export const at = (line: number, column?: number): RegExp =>
  new RegExp(`^garden\\.yaml:${line}:${column ?? '\\d+'}: error: `);

export const writingMistakes: readonly FileMistake[] = [
  // the file as text
  ['no space after a colon', 'aperture: 300', 'aperture:300', at(5), /no space after the colon/, /aperture: 300/],
  ['no colon after a section', 'stock:', 'stock', at(13), /no colon after stock/, /stock: /],
  [
    'no space after a colon in braces',
    'kind: plywood',
    'kind:plywood',
    at(10),
    /no space after the colon/,
    /kind: plywood/,
  ],
  ['a tab for an indent', '  aperture: 300', '\taperture: 300', at(5, 1), /tab/, /spaces/],
  ['a tab after spaces', '  aperture: 300', '  \taperture: 300', at(5), /tab/, /spaces/],
  ['no colon', 'aperture: 300', 'aperture 300', at(5), /no colon/, /aperture: 300/],
  ['an equals sign for the colon', 'aperture: 300', 'aperture = 300', at(5), /no colon/, /aperture: 300/],
  ['an indent that is off', '  focalLength: 150', '   focalLength: 150', at(6), /indent/, /equally|under/],
  ['an indent too few', '  focalLength: 150', ' focalLength: 150', at(6), /indent/, /equally|under/],
  [
    'a section not indented',
    '  aperture: 300\n  focalLength: 150\n  ribs: 8',
    'aperture: 300\nfocalLength: 150\nribs: 8',
    at(5),
    /unknown key "aperture"/,
    /belongs in dish.*indented by two more spaces/,
  ],
  ['a brace not closed', 'thickness: 6 }', 'thickness: 6', at(10), /\{.*not closed/, /\}/],
  ['a brace too many', 'thickness: 6 }', 'thickness: 6 }}', at(10), /\}/, /remove it/],
  ['a bracket not closed', '[1.5, 2]', '[1.5, 2', at(22), /\[.*not closed/, /\]/],
  ['no comma in braces', 'plywood, thickness', 'plywood thickness', at(10), /comma/, /plywood, thickness: 6/],
  ['a semicolon for the comma', 'plywood, thickness', 'plywood; thickness', at(10), /comma/, /plywood, thickness: 6/],
  ['no space after a dash', '  - { material: ply', '  -{ material: ply', at(14), /no space after the dash/, /- \{/],
  ['no dash in the list', '  - { material: ply', '    { material: ply', at(14), /dash/, /- \{/],
  ['a quote not closed', 'name: Garden dish', 'name: "Garden dish', at(1), /quot.*not closed/, /"Garden dish"/],
  ['an apostrophe in single quotes', 'name: Garden dish', "name: 'Granny's dish'", at(1), /quot/, /"Granny's dish"/],
  ['an inch mark in double quotes', 'name: Garden dish', 'name: "12" dish"', at(1), /quot/, /'12" dish'/],
  [
    'a colon in a text',
    'name: Garden dish',
    'name: Garden dish: the big one',
    at(1),
    /colon/,
    /"Garden dish: the big one"/,
  ],
  ['a hash at the start of a text', 'name: Garden dish', 'name: #1 dish', at(1), /#.*comment/, /"#1 dish"/],
  ['a star at the start of a text', 'name: Garden dish', 'name: *best* dish', at(1), /\*/, /"\*best\* dish"/],
  ['an at sign at the start of a text', 'name: Garden dish', 'name: @home', at(1), /@/, /"@home"/],
  ['a percent sign at the start of a text', 'name: Garden dish', 'name: %best', at(1), /%/, /"%best"/],
  ['a key given twice', '  ribs: 8', '  ribs: 8\n  ribs: 9', at(8), /ribs.*twice.*line 7/, /delete one/],
  [
    'a section given twice',
    'nest: {',
    'rib: { material: ply }\nnest: {',
    at(24),
    /rib.*twice.*line 17/,
    /merge|delete one/,
  ],
  ['two files in one', 'rib: { material', '---\nrib: { material', at(17), /---/, /take .* away|a file of its own/],
  [
    'typographic quotes',
    'size: 900 x 600, price: 20',
    'size: “900 x 600”, price: 20',
    at(14),
    /“900 x 600”/,
    /900 x 600|straight/,
  ],

  // keys
  [
    'a key misspelt',
    'aperture: 300',
    'apperture: 300',
    at(5, 3),
    /unknown key "apperture" in dish/,
    /did you mean aperture/,
  ],
  ['a section misspelt', 'panel: {', 'pannel: {', at(19, 1), /unknown key "pannel"/, /did you mean panel/],
  [
    'a key in capitals',
    'aperture: 300',
    'Aperture: 300',
    at(5, 3),
    /unknown key "Aperture" in dish/,
    /did you mean aperture/,
  ],
  [
    'a key with a dash',
    'focalLength: 150',
    'focal-length: 150',
    at(6, 3),
    /unknown key "focal-length" in dish/,
    /did you mean focalLength/,
  ],
  [
    'a key with a unit',
    'aperture: 300',
    'aperture mm: 300',
    at(5, 3),
    /unknown key "aperture mm" in dish/,
    /did you mean aperture/,
  ],
  [
    'a key with an accent',
    'aperture: 300',
    'apértüre: 300',
    at(5, 3),
    /unknown key "apértüre" in dish/,
    /did you mean aperture/,
  ],
  [
    'a key in the wrong section',
    'nest: { effort: 0 }',
    'nest: { effort: 0, drillBits: [2] }',
    at(24),
    /drillBits.*nest/,
    /process\.drillBits|belongs in process/,
  ],
  [
    'another word for the drill bits',
    '  drillBits: [1.5, 2]',
    '  drills: [1.5, 2]',
    at(22),
    /unknown key "drills" in process/,
    /drillBits/,
  ],
  [
    'another word for the diameter',
    'aperture: 300',
    'diameter: 300',
    at(5),
    /unknown key "diameter" in dish/,
    /aperture/,
  ],
  [
    'another word for the bit',
    '  kind: hand',
    '  kind: router\n  bit: 6',
    at(22),
    /unknown key "bit" in process/,
    /toolDiameter/,
  ],
  ['another word for the sheets', 'stock:', 'sheets:', at(13), /unknown key "sheets"/, /stock/],
  ['a key left out', '  aperture: 300\n', '', at(4), /dish\.aperture is missing/, /aperture: 1200|such as/],
  ['a key left empty', 'aperture: 300', 'aperture:', at(5), /dish\.aperture.*(?:empty|nothing)/, /aperture: |such as/],
];
