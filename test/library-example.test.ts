import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { buildJob, readDesign } from '../lib/index.js';
import { fixtureText } from './helpers/fixtures.js';

it('works as the README shows the library', async () => {
  const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
  const example = /```ts\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
  // the names that the example uses are the names that the library has
  for (const name of ['buildJob', 'readDesign']) expect(example).toContain(name);
  const reading = readDesign(fixtureText('table-top'));
  if (reading.kind !== 'design') throw new Error('the fixture is refused');
  const job = await buildJob(reading.design);
  expect([...job.files.keys()]).toContain('job.json');
});
