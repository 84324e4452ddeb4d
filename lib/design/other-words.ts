/** What people call the keys of a design file before they know their names: words of the bench, common practice. */

/** By the path of a key, as `explain` has it. Lower case, without spaces and dashes. */
const wordsFor: Readonly<Record<string, readonly string[]>> = {
  name: ['title', 'job', 'project'],
  units: ['unit', 'measure'],
  dish: ['mirror', 'parabola', 'bowl'],
  'dish.aperture': ['diameter', 'dia', 'width', 'size'],
  'dish.focalLength': ['focus', 'focal', 'f'],
  'dish.ribs': ['ribcount', 'numberofribs', 'count', 'segments'],
  materials: ['material', 'wood', 'timber'],
  'materials.<name>.thickness': ['thick', 'depth'],
  'materials.<name>.kind': ['type', 'material'],
  stock: ['sheets', 'sheet', 'boards', 'panels', 'shopping'],
  'stock[].size': ['dimensions', 'sheet', 'format', 'width', 'length'],
  'stock[].count': ['quantity', 'number', 'pieces', 'howmany'],
  'stock[].price': ['cost', 'euro', 'eur', 'usd'],
  'stock[].rollWidth': ['roll', 'width'],
  rib: ['ribs'],
  board: ['base', 'backer', 'backerboard', 'back'],
  panel: ['facing', 'facings', 'facet', 'skin'],
  reflector: ['foil', 'film', 'reflective'],
  vessel: ['pot', 'kettle', 'pan', 'receiver', 'cooker'],
  load: ['food', 'water', 'contents', 'heat'],
  site: ['place', 'location', 'where'],
  process: ['cutting', 'cut'],
  'process.kind': ['machine', 'type', 'method'],
  'process.toolDiameter': ['bit', 'tool', 'cutter', 'mill', 'endmill', 'bitdiameter', 'tooldia'],
  'process.drillBits': ['drills', 'drill', 'drillbit', 'bits', 'twistdrills'],
  'process.kerf': ['cutwidth', 'beam', 'laserwidth'],
  'process.web': ['spacing', 'gap', 'distance', 'bridge'],
  'process.margin': ['edge', 'border'],
  stand: ['frame', 'legs', 'tripod', 'mount'],
};

/** The letters of a word alone: without accents, spaces, dashes and capitals. */
export const lettersOf = (word: string): string =>
  word
    .normalize('NFD')
    .replace(/[^A-Za-z]/g, '')
    .toLowerCase();

/**
 * The path of the key that a word may stand for: within a section, or anywhere.
 * @param section its path as `explain` has it, `` for the top
 */
export function meantBy(word: string, section: string | null): string | null {
  const asked = lettersOf(word);
  const found = Object.entries(wordsFor).find(
    ([path, words]) =>
      words.includes(asked) && (section === null || path.slice(0, Math.max(0, path.lastIndexOf('.'))) === section),
  );
  return found?.[0] ?? null;
}

/** Words for one of a few choices. */
const choiceWords: Readonly<Record<string, readonly string[]>> = {
  router: ['cnc', 'cncrouter', 'mill', 'milling'],
  laser: ['lasercutter'],
  hand: ['saw', 'jigsaw', 'byhand', 'manual'],
  plywood: ['ply', 'birch', 'multiplex'],
  aluminium: ['aluminum', 'alu'],
  acrylic: ['plexiglass', 'perspex'],
};

/** The choice that another word stands for, or null. */
export function choiceMeant(word: string, choices: readonly string[]): string | null {
  const asked = lettersOf(word);
  return choices.find((choice) => choiceWords[choice]?.includes(asked)) ?? null;
}
