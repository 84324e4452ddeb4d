/** From the text of a design file to its keys, with every problem found in one pass and the line of each. */
import { LineCounter } from 'yaml';
import { type Diagnostic, hasError, type Locate } from '../diagnostic/index.js';
import { checkThickness } from './check-thickness.js';
import { complete } from './complete.js';
import type { Design } from './design.js';
import { documentOf, keysOf, NoDesign, unitOf } from './document.js';
import { explained } from './explained.js';
import { readOnce } from './keys.js';
import { locator, shown as showHidden } from './locate.js';
import { type MachineSource, readMachine } from './machine-file.js';
import { designSchema } from './schema.js';

export type DesignReading =
  | {
      readonly kind: 'design';
      readonly design: Design;
      readonly problems: readonly Diagnostic[];
      /** Puts a diagnostic that is made later on its line. */
      readonly locate: Locate;
    }
  | {
      readonly kind: 'refused';
      readonly problems: readonly Diagnostic[];
      /** The design, if it only cannot be built in the workshop: its light can still be forecast. */
      readonly unbuilt?: { readonly design: Design; readonly locate: Locate };
    };

/** What keeps a dish from being cut but not from being forecast. */
const workshop: ReadonlySet<Diagnostic['code']> = new Set<Diagnostic['code']>([
  'stock-shape',
  'margin',
  'board',
  'toe',
  'hub',
  'names-collide',
]);

/** Faults in the order in which a reader of the file meets them. */
function inOrder(problems: readonly Diagnostic[]): Diagnostic[] {
  return [...problems].sort((a, b) => (a.place?.line ?? 0) - (b.place?.line ?? 0));
}

/** The machine of a design by a file of its own; null where the design describes it itself. */
function machineOf(raw: object, source: MachineSource | undefined) {
  return 'machine' in raw && typeof raw.machine === 'string' ? readMachine(raw.machine, source) : null;
}

/** The places of keys, those of a machine in its own file. */
function placed(own: Locate, machine: ReturnType<typeof machineOf>): Locate {
  if (machine?.kind !== 'machine') return own;
  return (found) => {
    const path = found.place?.path ?? [];
    if (path[0] !== 'machine' || path.length < 2) return own(found);
    return machine.locate({ ...found, place: { ...found.place, path: path.slice(1) } });
  };
}

/**
 * Reads and completes a design.
 * @param text the design file, YAML
 * @param file its name, for the places of diagnostics
 * @param machineFile the file that the design names for its machine (see `machineFileOf`)
 * @returns the design with every default filled in, or every problem at once; never throws on any text
 */
export function readDesign(text: string, file?: string, machineFile?: MachineSource): DesignReading {
  try {
    const lines = new LineCounter();
    const document = documentOf(text, lines);
    const raw = keysOf(document.toJS({ maxAliasCount: 0 }));
    const machine = machineOf(raw, machineFile);
    const locate = placed(locator(document, lines, file), machine);
    const schema = designSchema(unitOf(raw));
    const parsed = schema.safeParse(machine === null ? raw : { ...raw, machine: undefined }, readOnce);
    const unfit = machine?.kind !== 'refused' ? [] : machine.located ? machine.problems : machine.problems.map(locate);
    if (!parsed.success || unfit.length > 0) {
      const problems = explained(parsed.error?.issues ?? [], { raw, schema, document, under: [] });
      return { kind: 'refused', problems: [...inOrder(problems.map(locate)), ...unfit] };
    }
    const odd = checkThickness(parsed.data, raw);
    if (odd.length > 0) return { kind: 'refused', problems: odd.map(locate) };
    const data = machine?.kind === 'machine' ? { ...parsed.data, machine: machine.machine } : parsed.data;
    const { design, problems } = complete(data, raw, machine?.kind === 'machine' ? machine.stated : undefined);
    const found = problems.map(locate);
    const light = found.every(({ code, severity }) => severity !== 'error' || workshop.has(code));
    return hasError(found)
      ? { kind: 'refused', problems: found, ...(light ? { unbuilt: { design, locate } } : {}) }
      : { kind: 'design', design, problems: found, locate };
  } catch (error) {
    if (!(error instanceof NoDesign)) throw error;
    const { diagnostic: fault } = error;
    const place = { path: [], ...(file === undefined ? {} : { file }), ...fault.place };
    return { kind: 'refused', problems: [{ ...showHidden(fault), place }] };
  }
}
