/**
 * Strip packing of published instances: one JSON line each. A file, or all files of `--dir` (the nine that stand in
 * `fixtures/nesting` when left out).
 */
import { readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import yargs from 'yargs';
import { hideBin } from 'yargs/helpers';
import { nestOnCores } from '../nest/on-cores.js';
import { areaOf, placementsOf, readInstance, requestOf, stripFaults } from './nest-instance.js';

const args = await yargs(hideBin(process.argv))
  .scriptName('npm run bench:nest --')
  .usage('$0 [FILE] [--seconds N] [--placements OUT.json]')
  .options({
    seconds: { type: 'number', default: 60, describe: 'time for each instance' },
    placements: { type: 'string', describe: 'write the placements of FILE here' },
    dir: { type: 'string', default: resolve('fixtures/nesting'), describe: 'folder of instances' },
    seed: { type: 'number', default: 1, describe: 'start of the random search' },
    cores: { type: 'number', describe: 'threads; all cores when left out' },
  })
  .strictOptions()
  .parseAsync();

const [named] = args._.map(String);
const files =
  named === undefined
    ? readdirSync(args.dir)
        .filter((name) => name.endsWith('.json'))
        .sort()
        .map((name) => join(args.dir, name))
    : [named];

for (const file of files) {
  const instance = readInstance(file);
  const { parts, stock } = requestOf(instance);
  const begun = performance.now();
  const layout = await nestOnCores(parts, stock, {
    spacing: 0,
    seed: args.seed,
    effort: 1,
    seconds: args.seconds,
    ...(args.cores !== undefined && { cores: args.cores }),
  });
  const seconds = (performance.now() - begun) / 1000;
  const placements = placementsOf(layout);
  const length = layout.sheets.reduce((sum, sheet) => sum + sheet.usedLength, 0);
  const faults = stripFaults(instance, placements, length);
  for (const fault of faults) console.error(`${instance.name}: ${fault}`);
  const density = (100 * areaOf(instance)) / (length * instance.stripWidth);
  const line = { name: instance.name, length, density, seconds, valid: faults.length === 0 };
  console.log(JSON.stringify(line));
  if (args.placements !== undefined && named !== undefined)
    writeFileSync(args.placements, `${JSON.stringify({ name: instance.name, length, placements })}\n`);
  if (faults.length > 0) process.exitCode = 1;
}
