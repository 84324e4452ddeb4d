/** The proof of a folder before it takes its place. */
import { ProgressLine } from './console.js';
import { exitCode, Stop } from './exit.js';
import { proveOnCores } from './prove/on-cores.js';
import { readFolder } from './read-folder.js';

/** Reads the folder back. @throws Stop when the files are not what was designed */
export async function proveWritten(folder: string): Promise<void> {
  const proof = await proveOnCores(readFolder(folder), undefined, new ProgressLine());
  if (proof.ok) return;
  throw new Stop(
    exitCode.cannotBuild,
    proof.faults.map(({ message }) => ({ code: 'not-proven', severity: 'error', message })),
    'the files failed the proof; nothing was written; please report this with the design file',
  );
}
