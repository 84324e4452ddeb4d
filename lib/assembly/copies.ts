/** Which copy is which: plates apart from bent sheets, and what a message calls one. */
import type { AssembledPart, AssembledPlate, AssembledSheet } from './types.js';

export const isPlate = (placed: AssembledPart): placed is AssembledPlate => placed.form === 'plate';
export const isSheet = (placed: AssembledPart): placed is AssembledSheet => placed.form === 'sheet';

/** A part that there is once goes by its id, others by id and number. */
export const nameOf = ({ part, copy }: AssembledPart): string => (part.quantity > 1 ? `${part.id} ${copy}` : part.id);
