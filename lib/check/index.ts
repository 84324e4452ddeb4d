export type { CutError, Fault, FaultCode, Place, Proof, SheetProof } from './types.js';
export { drawSimulation, simulate, type Simulation } from './router-simulation/index.js';
export type { MessageId, Messages } from './messages/index.js';
export { proveFolder } from './folder.js';
export type { FolderFiles } from './integrity.js';
export { verify } from './verify.js';
export type { JobPart, JobPlacement } from './job-reader.js';
export type {
  Finding,
  FindingCode,
  Motion,
  NgcFile,
  Place3,
  SimulatedSheet,
  SimulatedTool,
  SimulationLimits,
  Turn,
} from './router-simulation/types.js';
export type { Files } from './sheet-proof.js';
