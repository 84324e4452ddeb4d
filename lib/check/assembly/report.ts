import type { assemblyMessages } from '../messages/assembly.js';
import type { ValuesOf } from '../messages/text.js';

type Id = keyof typeof assemblyMessages;

/** Reports a fault of the assembly by its message. */
export type Report = <One extends Id>(id: One, values: ValuesOf<(typeof assemblyMessages)[One]['text']>) => void;
