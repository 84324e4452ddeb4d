/** Records made again from the design in them: as they were, or with what was changed named. */
import { describe, expect, it } from 'vitest';
import { madeAgain, proveFolder, type MadeAgain } from '../../lib/check/index.js';
import { checkAgain } from '../../lib/check/again.js';
import { remadeRecord } from '../../lib/index.js';
import { cutOf, type FixtureName } from '../helpers/fixtures.js';
import { randomOf } from '../helpers/random-nester.js';
import { byDay, seedFrom } from '../helpers/seeds.js';

/** What is changed of a record. */
interface OneRecord {
  readonly parts: {
    quantity: number;
    readonly contours: readonly { readonly vertices: readonly number[][] }[];
    readonly drills: readonly { diameter: number }[];
    readonly labels: readonly { text: string }[];
  }[];
  readonly fasteners: readonly { count: number }[];
  readonly sheets: readonly {
    readonly router?: {
      readonly limits: {
        readonly tools: readonly Record<'feed' | 'plunge' | 'spindle' | 'passDepth' | 'cuttingDepth', number>[];
      };
    };
  }[];
}

/** The record of a fixture, as JSON, and as it is made again. */
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

  it('finds whatever is changed in the record', async () => {
    const { data, again } = await recordOf('press-house');
    const random = randomOf(seedFrom(17));
    const one = <T>(some: readonly T[]): T => some[Math.floor(random() * some.length)]!;
    const changes: readonly ((record: OneRecord) => void)[] = [
      ({ parts }) => {
        one(one(one(parts).contours).vertices)[Math.floor(2 * random())]! += 0.01;
      },
      ({ parts }) => {
        one(parts.filter(({ drills }) => drills.length > 0).flatMap(({ drills }) => drills)).diameter += 0.1;
      },
      ({ parts }) => {
        one(parts.filter(({ labels }) => labels.length > 0).flatMap(({ labels }) => labels)).text += '7';
      },
      ({ parts }) => {
        one(parts).quantity += 1;
      },
      ({ parts }) => {
        parts.splice(Math.floor(random() * parts.length), 1);
      },
      ({ fasteners }) => {
        one(fasteners).count -= 1;
      },
      ({ sheets }) => {
        const { tools } = one(sheets.flatMap(({ router }) => router?.limits ?? []));
        one(tools)[one(['feed', 'plunge', 'spindle', 'passDepth', 'cuttingDepth'] as const)] *= 1.1;
      },
    ];
    for (let i = 0; i < byDay(21, 200); i += 1) {
      const record = structuredClone(data) as unknown as OneRecord;
      changes[i % changes.length]!(record);
      expect(checkAgain(record, again), `change ${i}`).not.toEqual([]);
    }
  });

  it('finds a design of which nothing can be made', async () => {
    const { files } = await cutOf('press-house');
    const record = JSON.parse(String(files.get('job.json'))) as { design: { rib: { joint: unknown }; hub?: unknown } };
    delete record.design.hub;
    const changed = new Map(files).set('job.json', JSON.stringify(record));
    expect(madeAgain(changed, remadeRecord)?.kind).toBe('failed');
  });
});
