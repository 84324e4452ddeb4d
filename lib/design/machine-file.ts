/** The machine in a file of its own, which several designs name (`machine: my-router.yaml`). */
import { LineCounter } from 'yaml';
import type * as z from 'zod';
import { type Diagnostic, diagnostic, type DiagnosticCode, type Locate } from '../diagnostic/index.js';
import { documentOf, keysOf, NoDesign, unitOf } from './document.js';
import { explained } from './explained.js';
import { readOnce } from './keys.js';
import { locator } from './locate.js';
import { machineSection } from './sections/machine.js';

/** What came of reading the file that a design names. */
export type MachineSource =
  | { readonly kind: 'text'; readonly text: string }
  | {
      readonly kind: 'refused';
      readonly code: DiagnosticCode;
      readonly message: string;
      readonly remedy: string;
    };

type Machine = z.output<ReturnType<typeof machineSection>>;

export type MachineReading =
  | {
      readonly kind: 'machine';
      readonly machine: Machine;
      /** What the file states. */
      readonly stated: Readonly<Record<string, unknown>>;
      readonly locate: Locate;
    }
  /** In the machine's file, or, without one, at the key of the design that names it. */
  | { readonly kind: 'refused'; readonly problems: readonly Diagnostic[]; readonly located: boolean };

/** The name of the file in which a design has its machine; null where it has none, or is no design. */
export function machineFileOf(text: string): string | null {
  try {
    const keys = keysOf(documentOf(text, new LineCounter()).toJS({ maxAliasCount: 0 }));
    return 'machine' in keys && typeof keys.machine === 'string' ? keys.machine : null;
  } catch (error) {
    if (error instanceof NoDesign) return null;
    throw error;
  }
}

/**
 * The machine by its own file: the keys of the section `machine`, and `units` for its bare lengths.
 * @param name as the design has it, for the places of diagnostics
 */
export function readMachine(name: string, source: MachineSource | undefined): MachineReading {
  if (source?.kind !== 'text') {
    const {
      code,
      message,
      remedy,
    }: Omit<Extract<MachineSource, { readonly kind: 'refused' }>, 'kind'> = source ?? {
      code: 'cannot-read',
      message: `the file ${name} was not given`,
      remedy: 'describe the machine in the design itself, or pass its file along',
    };
    return {
      kind: 'refused',
      located: false,
      problems: [diagnostic(code, ['machine'], `machine: ${message}`, remedy)],
    };
  }
  try {
    const lines = new LineCounter();
    const document = documentOf(source.text, lines);
    const raw = keysOf(document.toJS({ maxAliasCount: 0 }));
    const locate = locator(document, lines, name);
    const keys = Object.fromEntries(Object.entries(raw).filter(([key]) => key !== 'units'));
    const schema = machineSection(unitOf(raw));
    const parsed = schema.safeParse(keys, readOnce);
    if (parsed.success) return { kind: 'machine', machine: parsed.data, stated: keys, locate };
    const problems = explained(parsed.error.issues, { raw: keys, schema, document, under: ['machine'] });
    return { kind: 'refused', located: true, problems: problems.map(locate) };
  } catch (error) {
    if (!(error instanceof NoDesign)) throw error;
    const { diagnostic: fault } = error;
    const place = { ...fault.place, path: [], file: name };
    return { kind: 'refused', located: true, problems: [{ ...fault, place }] };
  }
}

/** What is wrong with the text of a machine's file by itself. */
export function machineProblems(name: string, text: string): readonly Diagnostic[] {
  const reading = readMachine(name, { kind: 'text', text });
  return reading.kind === 'refused' ? reading.problems : [];
}
