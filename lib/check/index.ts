export type { CutError, Fault, FaultCode, Place, Proof, SheetProof } from './types.js';
export { verify } from './verify.js';
