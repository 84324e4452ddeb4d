export type { CutError, Fault, FaultCode, ProofPoint, Proof, SheetProof } from './types.js';
export { drawSimulation, simulate, type Simulation } from './router-simulation/index.js';
export type { MessageId, Messages } from './messages/index.js';
export { drawBeamCut } from './beam-picture.js';
export { madeAgain, type MadeAgain } from './again.js';
export { proveFolder, proveSomeSheets } from './folder.js';
export type { FolderFiles } from './integrity.js';
export { verify } from './verify.js';
export type { AxesRead, MachineRead, PartRead, PlacementRead } from './job-reader.js';
export type {
  DescribedMachine,
  RouterFinding,
  FindingCode,
  Motion,
  NgcFile,
  ProofPoint3,
  SimulatedSheet,
  SimulatedTool,
  SimulationLimits,
  ArcTurn,
} from './router-simulation/types.js';
export type { TextFiles } from './sheet-proof.js';
