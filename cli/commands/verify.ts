import type { CommandModule } from 'yargs';
import { remadeRecord } from '../../lib/index.js';
import { columns, print, printJson, ProgressLine } from '../console.js';
import { exitCode } from '../exit.js';
import { jsonFlag } from '../flags.js';
import { proofTable } from '../proof-table.js';
import { proveOnCores } from '../prove/on-cores.js';
import { readFolder, unitsOf } from '../read-folder.js';
import { reportFaults } from '../report.js';

interface VerifyArguments {
  readonly folder: string;
  readonly json: boolean;
}

export const verifyCommand: CommandModule<object, VerifyArguments> = {
  command: 'verify <folder>',
  describe: 'prove that the files in a folder cut what was designed',
  builder: (yargs) =>
    yargs
      .positional('folder', { type: 'string', demandOption: true, describe: 'a folder that `cut` has written' })
      .options(jsonFlag)
      .example('$0 verify out/press-house', 'a table of the sheets, and every fault'),
  handler: async ({ folder, json }) => {
    const files = readFolder(folder);
    const units = unitsOf(files);
    const proof = await proveOnCores(files, remadeRecord, new ProgressLine());
    if (json) printJson(proof);
    else for (const line of proofTable(proof, units, columns())) print(line);
    reportFaults(proof, units);
    process.exitCode = proof.ok ? exitCode.done : exitCode.cannotBuild;
  },
};
