/**
 * The geometry of the fixtures' drawings by hash: a change that moves a line by a micrometre is seen here, and has
 * to be explained in the change list. `npm run golden` writes the hashes again.
 */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readDxfLines } from '../../lib/check/dxf-reader.js';
import { cutOf, allFixtureNames } from '../helpers/fixtures.js';
import { textsOf } from '../helpers/jobs.js';

const place = new URL('../../fixtures/golden.json', import.meta.url);
const writes = process.env['DISHWRIGHT_GOLDEN'] === 'write';

/** Lines in their order, to a micrometre, and a bulge to what moves a line of a metre by as much. */
function normalised(text: string): string {
  const micrometres = (value: number): number => Math.round(value * 1000) + 0;
  return readDxfLines(text)
    .sheet.entities.map((entity) => {
      if (entity.kind === 'circle')
        return `${entity.layer} ${[entity.x, entity.y, entity.diameter].map(micrometres).join(' ')}`;
      const { vertices, closed } = entity.line;
      const points = vertices.map(({ x, y, bulge }) => [micrometres(x), micrometres(y), Math.round(bulge * 1e6) + 0]);
      return `${entity.layer} ${String(closed)} ${points.join(' ')}`;
    })
    .join('\n');
}

it.each(allFixtureNames)('the lines of %s are where they were', async (name) => {
  const job = await cutOf(name);
  const texts = textsOf(job);
  const hashes = Object.fromEntries(
    [...texts]
      .filter(([file]) => file.endsWith('.dxf'))
      .map(([file, text]) => [file, createHash('sha256').update(normalised(text)).digest('hex').slice(0, 24)]),
  );
  const golden = JSON.parse(readFileSync(place, 'utf8')) as Record<string, Record<string, string>>;
  if (writes) writeFileSync(place, `${JSON.stringify({ ...golden, [name]: hashes }, null, 2)}\n`);
  else expect(hashes).toEqual(golden[name]);
});
