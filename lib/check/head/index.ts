/** The heads of a sheet's tool paths against the record: which job, which sheet, what it is cut from, with its cautions. */
import type { FaultList } from '../faults.js';
import type { RecordRead, SheetRead } from '../job-reader.js';
import { filled, messages, type MessageValues, type RouterMessageId } from '../messages/index.js';
import type { Motion } from '../router-simulation/types.js';
import { type Head, readHead } from './read.js';
import { changeCautions, laserCautions, routerCautions, squashed } from './words.js';

/** Rounding of the depth that a head states, mm. */
const depthRounding = 0.002;
/** So much of what should not be there is printed. */
const printed = 60;

const unitWords = { mm: 'Millimetres', in: 'Inches' } as const;
const number = (value: number, digits: number): string => String(Number(value.toFixed(digits)));

type Report = <Id extends RouterMessageId>(id: Id, values: MessageValues<Id>) => void;

/** Holds what is said before the notes against sentences that have to stand there, one after the other, and no more. */
function compare({ said }: Head, wanted: readonly string[], report: Report): void {
  let at = 0;
  for (const sentence of wanted) {
    const words = squashed(sentence);
    const found = said.indexOf(words, at);
    if (found < 0) {
      report('head-lacks', { wanted: sentence });
      return;
    }
    if (found > at) report('head-other', { said: said.slice(at, Math.min(found, at + printed)) });
    at = found + words.length;
  }
  if (at < said.length) report('head-other', { said: said.slice(at, at + printed) });
}

function askNotes({ notes }: Head, wanted: readonly string[], report: Report): void {
  for (const sentence of wanted)
    if (!notes.some((note) => note.includes(squashed(sentence)))) report('head-lacks', { wanted: sentence });
}

const sheetName = (file: string): string => file.slice(file.lastIndexOf('/') + 1);

function titleOf(job: RecordRead, sheet: SheetRead): string {
  return `dishwright - ${job.design.name ?? ''} - sheet ${sheetName(sheet.file)}`;
}

function materialOf({ design }: RecordRead, { stock, ...sheet }: SheetRead): string {
  // the sheets of templates and gauges bear the name of their material
  const material = design.stock?.find(({ id }) => id === stock)?.material ?? stock;
  const size = `${number(sheet.width, 1)} x ${number(sheet.height, 1)}`;
  return `${design.materials?.[material]?.description ?? material}, ${size}`;
}

/** The lowest point as the head has it, where the file goes there; reports it where it does not. */
function statedDepth({ said }: Head, motions: readonly Motion[], report: Report): number {
  const lowest = motions.reduce((low, { from, to }) => Math.min(low, from.z, to.z), 0);
  const stated = Number(/LOWESTPOINT:(-?[\d.]+?)MM/.exec(said)?.[1] ?? NaN);
  if (Math.abs(stated - lowest) <= depthRounding) return stated;
  report('head-depth', { said: number(stated, 3), lowest: number(lowest, 3) });
  return Number.isNaN(stated) ? lowest : stated;
}

/** Minutes that the heads of a sheet's files state, against the time in the record: each file rounds up. */
function checkMinutes(heads: readonly Head[], seconds: number, report: Report): void {
  const stated = heads.map(({ notes }) =>
    Number(notes.flatMap((note) => /^ABOUT(\d+)MINUTES/.exec(note)?.[1] ?? [])[0] ?? NaN),
  );
  const sum = stated.reduce((all, one) => all + one, 0);
  const from = Math.ceil(seconds / 60 - 1e-6);
  if (sum >= from && sum < seconds / 60 + heads.length + 1e-6) return;
  report('head-lacks', { wanted: `About ${from} minutes` });
}

/** The height of the lowest travel; what a file rounds to the height of hops is that. */
function hopOf(motions: readonly Motion[], hopHeight: number): number {
  const lowest = motions.reduce((low, { rapid, from, to }) => {
    const level = rapid && Math.hypot(to.x - from.x, to.y - from.y) > 0;
    return level ? Math.min(low, from.z, to.z) : low;
  }, Infinity);
  return Math.abs(lowest - hopHeight) <= depthRounding ? hopHeight : lowest;
}

/** The names of the tools of a file, as comments give them, in the order in which they cut. */
const toolsOf = (motions: readonly Motion[]): number[] => [...new Set(motions.map(({ tool }) => tool.number))];

const kinds = { mill: 'end mill', drill: 'drill bit', v: 'V-bit of 90 degrees' } as const;

function startNote({ tool }: Motion): string {
  const { diameter, sold = diameter, kind, flutes } = tool;
  const words = `${number(sold, 3)} mm ${kinds[kind]}, ${flutes} flutes`;
  return `The file starts with this bit in the spindle and set to zero: tool ${tool.number}: ${words}.`;
}

type RouterRead = NonNullable<SheetRead['router']>;

/** Sentences of the head of a router's file before its notes. */
function routerHead(
  { files, limits }: RouterRead,
  title: string,
  material: string,
  more: {
    readonly file: number;
    readonly depth: number;
    readonly travelHeight: number;
    readonly hop: number;
    readonly byHand: boolean;
  },
): string[] {
  const { machine, thickness } = limits;
  const hops =
    more.hop < more.travelHeight - depthRounding ? ` Between marks of a part at ${number(more.hop, 1)} mm.` : '';
  const part = machine.toolChange === 'none' ? `, file ${more.file + 1} of ${files.length}` : '';
  return [
    `${title}${part}`,
    `${material} x ${number(thickness, 2)} mm`,
    `Zero: X and Y at the lower left corner of the sheet, Z at its top face. ${unitWords[machine.programUnits]}.`,
    `Lowest point: ${number(more.depth, 3)} mm. Travel at ${number(more.travelHeight, 1)} mm: higher than every clamp?${hops}`,
    ...routerCautions,
    ...(more.byHand ? changeCautions : []),
  ];
}

/** What is worth knowing of a sheet by the record, as far as it names the sheet. */
function warningsOf({ problems = [] }: RecordRead, sheet: SheetRead): string[] {
  const name = `${sheetName(sheet.file)}: `;
  return problems
    .filter(({ code, message }) => code.startsWith('router-') && message.startsWith(name))
    .map(({ message }) => message);
}

/** A tool that is used outside its range by the record, without a word of it. */
function checkWarned({ problems = [] }: RecordRead, { limits }: RouterRead, report: Report): void {
  const warned = problems.some(({ code }) => code === 'router-chip-load');
  for (const { number: tool, range } of limits.tools)
    if (range.outside === true && !warned) report('range-unwarned', { tool });
}

/**
 * Holds the heads of a sheet's router files against the record.
 * @param texts of the files by name, in the order of running
 * @param motions of all of them
 */
export function checkRouterHeads(
  texts: readonly { readonly name: string; readonly text: string }[],
  motions: readonly Motion[],
  job: RecordRead,
  sheet: SheetRead,
  travelHeight: number,
  faults: FaultList,
): void {
  const { router } = sheet;
  if (router === undefined) return;
  const reportIn =
    (name: string): Report =>
    (id, values) => {
      faults.take('router', id, name, filled(messages[id].text, values));
    };
  const heads = texts.map(({ name, text }) => readHead(name, text));
  const first = reportIn(texts[0]?.name ?? sheet.file);
  const wear = router.toolWear.map(({ tool, length }) => `tool ${tool} cuts ${(length / 1000).toFixed(1)} m`);
  const notes = [`On the whole sheet ${wear.join(', ')}.`, ...warningsOf(job, sheet)];
  texts.forEach(({ name }, file) => {
    const head = heads[file]!;
    const report = reportIn(name);
    const own = motions.filter((motion) => motion.file === name);
    const depth = statedDepth(head, own, report);
    const { toolChange } = router.limits.machine;
    const byHand = toolChange === 'by-hand' && toolsOf(own).length > 1;
    const more = { file, depth, travelHeight, hop: hopOf(own, router.limits.hopHeight), byHand };
    compare(head, routerHead(router, titleOf(job, sheet), materialOf(job, sheet), more), report);
    const [start] = own;
    askNotes(head, toolChange === 'automatic' || start === undefined ? notes : [startNote(start), ...notes], report);
  });
  checkMinutes(heads, router.cuttingSeconds, first);
  checkWarned(job, router, first);
}

/** Holds the head of a laser's file against the record. */
export function checkLaserHead(
  name: string,
  text: string,
  job: RecordRead,
  sheet: SheetRead,
  {
    programUnits,
    cutPower,
    markPower,
  }: { readonly programUnits: 'mm' | 'in'; readonly cutPower: number; readonly markPower: number },
  faults: FaultList,
): void {
  const report: Report = (id, values) => {
    faults.take('laser', id, name, filled(messages[id].text, values));
  };
  const head = readHead(name, text);
  const wanted = [
    titleOf(job, sheet),
    `${materialOf(job, sheet)} mm`,
    `Zero: X and Y at the lower left corner of the sheet. ${unitWords[programUnits]}. No Z: set the focus.`,
    `Power: S${number(cutPower, 3)} where it cuts, S${number(markPower, 3)} where it marks.`,
    ...laserCautions,
  ];
  compare(head, wanted, report);
  const seconds = sheet.laser?.seconds ?? null;
  if (seconds !== null) askNotes(head, [`in about ${Math.ceil(seconds / 60)} minutes`], report);
}
