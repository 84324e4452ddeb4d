export type * from './types.js';
export { assemble } from './assemble.js';
export type { AssemblyFault } from './proof/fault.js';
export { codeDistances } from './proof/code-distances.js';
export { assemblyFaults, assemblyProblems, belowCode } from './proof/problems.js';
