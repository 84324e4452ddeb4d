export type * from './types.js';
export { assemble } from './assemble.js';
export type { AssemblyFault } from './proof/fault.js';
export { assemblyFaults, assemblyProblems } from './proof/problems.js';
