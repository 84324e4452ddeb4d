export type { CutError, Fault, FaultCode, Place, Proof, SheetProof } from './types.js';
export { drawSimulation, simulate, type Simulation } from './router-simulation/index.js';
export { verify } from './verify.js';
