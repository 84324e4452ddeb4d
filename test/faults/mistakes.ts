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

type Says = readonly [place: RegExp, cause: RegExp, mend: RegExp];

/** A slip in the file: what stands there is replaced, and `check` has to say three things. */
export type FileMistake = readonly [what: string, from: string, to: string, ...says: Says];

/** A slip on the command line, in a folder with garden.yaml, inch.yaml, a folder `made` and a text letter.txt. */
export type CommandMistake = readonly [what: string, args: readonly string[], ...says: Says];

const at = (line: number, column?: number): RegExp => new RegExp(`^garden\\.yaml:${line}:${column ?? '\\d+'}: error: `);

export const fileMistakes: readonly FileMistake[] = [
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
  [
    'an indent that is off',
    '  focalLength: 150',
    '   focalLength: 150',
    at(6),
    /indent/,
    /same number of spaces|under/,
  ],
  ['an indent too few', '  focalLength: 150', ' focalLength: 150', at(6), /indent/, /same number of spaces|under/],
  [
    'a section not indented',
    '  aperture: 300\n  focalLength: 150\n  ribs: 8',
    'aperture: 300\nfocalLength: 150\nribs: 8',
    at(5),
    /unknown key "aperture"/,
    /belongs in dish.*two spaces further in/,
  ],
  ['a brace not closed', 'thickness: 6 }', 'thickness: 6', at(10), /\{.*not closed/, /\}/],
  ['a brace too many', 'thickness: 6 }', 'thickness: 6 }}', at(10), /\}/, /take .* away/],
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
  ['a key given twice', '  ribs: 8', '  ribs: 8\n  ribs: 9', at(8), /ribs.*twice.*line 7/, /take one/],
  [
    'a section given twice',
    'nest: {',
    'rib: { material: ply }\nnest: {',
    at(24),
    /rib.*twice.*line 17/,
    /put .* together|take one/,
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

  // values
  ['a decimal comma', 'aperture: 300', 'aperture: 300,5', at(5), /300,5.*comma|comma.*300,5/, /300\.5/],
  ['a decimal comma with a unit', 'aperture: 300', 'aperture: 0,3 m', at(5), /0,3 m.*comma|comma.*0,3 m/, /0\.3 m/],
  [
    'a decimal comma in braces',
    'thickness: 6 }',
    'thickness: 11,6 }',
    at(10),
    /11,6.*comma|comma.*11,6/,
    /thickness: 11\.6/,
  ],
  ['a decimal comma in a list', '[1.5, 2]', '["1,5", 2]', at(22), /1,5.*comma|comma.*1,5/, /1\.5/],
  ['a decimal comma in a plain list', '[1.5, 2]', '[1,5, 2]', at(22), /\[1,5, 2\].*commas/, /\[1\.5, 2\].*\[1, 5, 2\]/],
  ['a decimal comma in a price', 'price: 20 }', 'price: 20,50 }', at(14), /20,50.*comma|comma.*20,50/, /20\.50/],
  ['a comma for thousands', 'aperture: 300', 'aperture: 1,200', at(5), /1,200/, /1\.2 or 1200|1200/],
  ['a currency with the price', 'price: 20 }', 'price: 20 € }', at(14), /price.*20 €/, /20\b/],
  ['a currency before the price', 'price: 20 }', 'price: $20 }', at(14), /price.*\$20/, /20\b/],
  ['a unit doubled', 'aperture: 300', 'aperture: 300 mm mm', at(5), /300 mm mm.*twice/, /300 mm/],
  ['a unit that is none', 'aperture: 300', 'aperture: 300 yd', at(5), /yd/, /mm, cm, m, in or ft/],
  ['a word after the length', 'aperture: 300', 'aperture: 300 mm across', at(5), /across/, /300 mm/],
  ['a word before the length', 'aperture: 300', 'aperture: about 300', at(5), /about 300/, /300/],
  ['a sign for the diameter', 'aperture: 300', 'aperture: Ø300', at(5), /Ø300/, /300/],
  ['a printed fraction', 'aperture: 300', 'aperture: 12½ in', at(5), /12½ in/, /12-1\/2 in/],
  ['typographic inch marks doubled', 'aperture: 300', "aperture: 12''", at(5), /12''/, /12 in/],
  [
    'a length that is plausible in another unit',
    'aperture: 300',
    'aperture: 12',
    at(5),
    /12 mm.*beyond reason.*12 in|12 in/,
    /write the unit/,
  ],
  ['a thickness that is plausible in another unit', 'thickness: 6 }', 'thickness: 0.25 }', at(10), /0\.25/, /0\.25 in/],
  ['text for a number', 'ribs: 8', 'ribs: eight', at(7), /dish\.ribs is "eight"/, /whole number/],
  ['a number with a word', 'ribs: 8', 'ribs: 8 pieces', at(7), /dish\.ribs is "8 pieces"/, /ribs: 8|write 8/],
  ['half a rib', 'ribs: 8', 'ribs: 8.5', at(7), /dish\.ribs.*8\.5/, /whole number/],
  ['a length below zero', 'aperture: 300', 'aperture: -300', at(5), /dish\.aperture is -300 mm/, /at least|above/],
  ['a list for a value', 'aperture: 300', 'aperture: [300]', at(5), /dish\.aperture is a list/, /one length/],
  [
    'a section for a value',
    'aperture: 300',
    'aperture: { mm: 300 }',
    at(5),
    /dish\.aperture is a section/,
    /one length/,
  ],
  ['a value for a list', '[1.5, 2]', '2', at(22), /process\.drillBits is 2/, /\[2\]/],
  ['a value for a section', 'rib: { material: ply }', 'rib: ply', at(17), /rib is "ply"/, /rib: \{ material: ply \}/],
  [
    'a list for a section',
    'panel: { material: card, gap: 1, fixing: glue }',
    'panel: [card]',
    at(19),
    /panel is a list/,
    /section of keys|panel: \{/,
  ],
  [
    'a section for a list',
    '  - { material: ply, size: 900 x 600, price: 20 }\n  - { material: card, size: 900 x 600, price: 3 }',
    '  material: ply\n  size: 900 x 600',
    at(13),
    /stock is a section/,
    /- \{/,
  ],
  [
    'a word that is none of the choices',
    'kind: plywood',
    'kind: plywod',
    at(10),
    /kind is "plywod"/,
    /did you mean plywood/,
  ],
  [
    'a material that is not listed',
    'rib: { material: ply }',
    'rib: { material: plywood }',
    at(17),
    /"plywood", which is not in materials/,
    /did you mean ply/,
  ],
  ['a name with an accent', '  card: {', '  kartön: {', at(11), /kartön/, /karton/],
  ['a material with a space', '  ply: {', '  birch ply: {', at(10), /birch ply/, /birch-ply/],
  ['a size with one side', 'size: 900 x 600, price: 20', 'size: 900, price: 20', at(14), /size.*900/, /900 x/],
  [
    'a size as a list',
    'size: 900 x 600, price: 20',
    'size: [900, 600], price: 20',
    at(14),
    /size is a list/,
    /900 x 600/,
  ],
  [
    'a size with a word',
    'size: 900 x 600, price: 20',
    'size: 900 by 600, price: 20',
    at(14),
    /900 by 600/,
    /900 x 600/,
  ],
  [
    'a size that is plausible in another unit',
    'size: 900 x 600, price: 20',
    'size: 8 x 4, price: 20',
    at(14),
    /8 mm x 4 mm.*8 ft x 4 ft/,
    /write the unit/,
  ],
  [
    'a unit that is no unit of a file',
    'units: mm',
    'units: inches',
    at(2),
    /units is "inches"/,
    /did you mean in\b|units: in/,
  ],
  ['yes in place of a choice', 'fixing: glue', 'fixing: yes', at(19), /fixing is "yes"/, /one of/],
  ['a date as it is spoken', 'nest: {', 'day: { date: 20.9.2026 }\nnest: {', at(24), /20\.9\.2026/, /2026-09-20/],
  ['degrees and minutes', 'nest: {', "site: { latitude: 46°54'N, longitude: 15 }\nnest: {", at(24), /46°54'N/, /46\.9/],
  [
    'stock of a material left out',
    '  - { material: ply, size: 900 x 600, price: 20 }\n',
    '',
    at(10),
    /no stock of ply/,
    /add one to stock: a sheet of \d+ mm x \d+ mm/,
  ],
  [
    'sheets too small',
    'ply, size: 900 x 600',
    'ply, size: 140 x 130',
    at(14),
    /larger than any stock of ply/,
    /a sheet of \d+ mm x \d+ mm would do/,
  ],
];

const usage = /^error: /;

export const commandMistakes: readonly CommandMistake[] = [
  ['a command misspelt', ['chek', 'garden.yaml'], usage, /unknown command "chek"/, /did you mean check/],
  ['a command in capitals', ['Check', 'garden.yaml'], usage, /unknown command "Check"/, /did you mean check/],
  ['no command but a file', ['garden.yaml'], usage, /garden\.yaml.*no command|no command/, /check garden\.yaml/],
  ['no command', [], usage, /name a command/, /dishwright --help|check/],
  [
    'an option misspelt',
    ['check', 'garden.yaml', '--shet', '900x600'],
    usage,
    /unknown option --shet/,
    /did you mean --sheet/,
  ],
  ['an option with one dash', ['check', 'garden.yaml', '-sheet', '900x600'], usage, /-sheet/, /--sheet/],
  ['an option with a long dash', ['check', 'garden.yaml', '–json'], usage, /–json/, /--json/],
  [
    'an option of another command',
    ['check', 'garden.yaml', '--force'],
    usage,
    /unknown option --force/,
    /check --help/,
  ],
  ['an option without its value', ['check', 'garden.yaml', '--sheet'], usage, /--sheet/, /2500x1250|value/],
  [
    'a size in the wrong unit',
    ['check', 'inch.yaml', '--sheet', '1525x1525'],
    usage,
    /1525 in x 1525 in.*1525 mm x 1525 mm/,
    /write the unit/,
  ],
  ['a size with spaces', ['check', 'garden.yaml', '--sheet', '900', 'x', '600'], usage, /"?x"?.*600|900/, /900x600/],
  ['a size with one side', ['check', 'garden.yaml', '--sheet', '900'], usage, /--sheet.*900/, /width x height|900x/],
  [
    'a choice misspelt',
    ['check', 'garden.yaml', '--process', 'lazer'],
    usage,
    /--process is "lazer"/,
    /did you mean laser/,
  ],
  [
    'a unit that is none',
    ['check', 'garden.yaml', '--units', 'inches'],
    usage,
    /--units is "inches"/,
    /did you mean in\b/,
  ],
  ['a text for a number', ['check', 'garden.yaml', '--seconds', 'ten'], usage, /--seconds.*ten/, /number/],
  ['a number out of range', ['check', 'garden.yaml', '--seed', '-1'], usage, /--seed is -1/, /integer from 0/],
  ['no design', ['check'], usage, /design/, /check my-dish\.yaml/],
  ['no folder to write', ['cut', 'garden.yaml'], usage, /--out|-o/, /-o /],
  ['the folder without its option', ['cut', 'garden.yaml', 'made'], usage, /made/, /-o made/],
  ['two designs', ['check', 'garden.yaml', 'inch.yaml'], usage, /inch\.yaml/, /one/],
  ['a folder for a file', ['check', 'made'], usage, /made is a folder, not a file/, /design file/],
  ['a file for a folder', ['verify', 'garden.yaml'], usage, /garden\.yaml.*(?:not a folder|is a file)/, /folder/],
  ['a folder that was never cut', ['verify', 'made'], usage, /made has no job\.json/, /dishwright cut/],
  [
    'a file that is not there',
    ['check', 'garden.yml'],
    usage,
    /cannot read garden\.yml: there is no such file/,
    /garden\.yaml/,
  ],
  [
    'a file that is no design',
    ['check', 'letter.txt'],
    /^letter\.txt:1:1: error: /,
    /not a design file/,
    /dishwright new/,
  ],
  ['a picture for a design', ['check', 'photo.jpg'], /^photo\.jpg:1:1: error: /, /not a text file/, /design file/],
  ['a file saved as UTF-16', ['check', 'wide.yaml'], /^wide\.yaml:1:1: error: /, /UTF-16/, /UTF-8/],
  ['a file saved in an old encoding', ['check', 'latin.yaml'], /^latin\.yaml:1:\d+: error: /, /character/, /UTF-8/],
  ['a file that is there already', ['new', 'garden.yaml'], usage, /garden\.yaml is there already/, /--force|another/],
  ['a key that is none', ['explain', 'drills'], usage, /no key drills/, /process\.drillBits/],
  ['a shell that is none', ['completion', 'powershell'], usage, /powershell/, /bash, zsh, fish/],
];
