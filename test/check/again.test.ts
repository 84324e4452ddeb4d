/** Records made again from the design in them: as they were, or with what was changed named. */
import { describe, expect, it } from 'vitest';
import { madeAgain, proveFolder, type MadeAgain } from '../../lib/check/index.js';
import { checkAgain } from '../../lib/check/again.js';
import { remadeRecord } from '../../lib/index.js';
import { cutOf, type FixtureName } from '../helpers/fixtures.js';

/** The record of a fixture, as text and as JSON. */
async function recordOf(
  fixture: FixtureName,
): Promise<{ readonly data: Record<string, never>; readonly again: MadeAgain }> {
  const { files } = await cutOf(fixture);
  const again = madeAgain(files, remadeRecord);
  if (again === null) throw new Error(`the record of ${fixture} cannot be read`);
  return { data: JSON.parse(String(files.get('job.json'))) as Record<string, never>, again };
}

describe('a record made again from its design', () => {
  it.each(['press-house', 'cider-yard', 'hand-cut-inch', 'classroom'] as const)('is the one of %s', async (fixture) => {
    const { data, again } = await recordOf(fixture);
    expect(again.kind).toBe('made');
    expect(checkAgain(data, again)).toEqual([]);
  });

  it('finds that the design was changed afterwards', async () => {
    const { files } = await cutOf('press-house');
    const record = JSON.parse(String(files.get('job.json'))) as {
      design: { cleat: { width: number }; router: { finishing: number } };
    };
    record.design.cleat.width += 2;
    record.design.router.finishing = 0.5;
    const changed = new Map(files).set('job.json', JSON.stringify(record));
    const found = proveFolder(changed, new Map(), madeAgain(changed, remadeRecord)).faults.map(({ id }) => id);
    expect(found).toEqual(expect.arrayContaining(['part-other', 'limits-other']));
  });

  it('finds a design of which nothing can be made', async () => {
    const { files } = await cutOf('press-house');
    const record = JSON.parse(String(files.get('job.json'))) as { design: { rib: { joint: unknown }; hub?: unknown } };
    delete record.design.hub;
    const changed = new Map(files).set('job.json', JSON.stringify(record));
    expect(madeAgain(changed, remadeRecord)?.kind).toBe('failed');
  });
});
