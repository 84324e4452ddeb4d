/**
 * For modules whose mutants take hours: a checker that lets only a random share of them through (MUTATION_SAMPLE, 0 to
 * 1, the same ones every time). The others count as mutants that do not compile, which a score leaves out.
 */
import { createHash } from 'node:crypto';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';

const share = Number(process.env.MUTATION_SAMPLE);

class SampleChecker {
  async init() {}

  async check(mutants) {
    const verdict = ({ fileName, location, replacement }) => {
      const name = `${fileName.replace(/^.*\/lib\//, '')} ${JSON.stringify(location)} ${replacement}`;
      const drawn = createHash('sha256').update(name).digest().readUInt32BE() / 2 ** 32 < share;
      return drawn ? { status: 'passed' } : { status: 'compileError', reason: 'not in the sample' };
    };
    return Object.fromEntries(mutants.map((mutant) => [mutant.id, verdict(mutant)]));
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.Checker, 'sample', SampleChecker)];
