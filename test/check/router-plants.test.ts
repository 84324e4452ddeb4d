/**
 * Faults of tool paths, planted at random places of random sheets for random machines: by day a few of each kind, in the
 * long run 200. Each has to be found by its own message.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { FaultList } from '../../lib/check/faults.js';
import { readJob } from '../../lib/check/job-reader.js';
import type { MessageId } from '../../lib/check/messages/index.js';
import { checkRouterFile } from '../../lib/check/router-file.js';
import { randomOf } from '../helpers/random-nester.js';
import { randomRouterJob } from '../helpers/random-router.js';
import { routerData, type Shop, shop, type ShopJob } from '../helpers/router-sheets.js';
import { byDay, seedFrom } from '../helpers/seeds.js';

type Random = () => number;
/** A changed file, or null where there is nothing to plant the fault in. */
type Edit = (text: string, random: Random) => string | null;

interface Made {
  readonly shop: Shop;
  readonly idsOf: (files: ReadonlyMap<string, string>) => readonly MessageId[];
}

/** A job and what was made of it, with its proof against a record of its own. */
function withProof(job: ShopJob, made: Shop): Made {
  const { limits, cuttingSeconds, toolWear, problems } = made.plan;
  const { width, height, placed, data = routerData() } = job;
  const router = { files: [...made.files.keys()], limits, cuttingSeconds, toolWear };
  const record: unknown = {
    version: '0',
    units: 'mm',
    design: {
      name: 'test',
      materials: { ply: { description: 'plywood' } },
      stock: [{ id: 'ply', material: 'ply', keepOuts: [] }],
      process: { web: 0 },
      router: { safeHeight: data.safeHeight },
    },
    parts: [...made.nominal.values()],
    sheets: [{ file: 'ply-1', stock: 'ply', width, height, margin: 10, placed, router }],
    process: { kind: 'router', toolDiameter: 6, compensated: true },
    problems: problems.map(({ code, message }) => ({ code, message })),
  };
  const read = readJob(JSON.parse(JSON.stringify(record)));
  const parts = new Map(read.parts.map((part) => [part.id, part]));
  return {
    shop: made,
    idsOf: (files) => {
      const faults = new FaultList();
      checkRouterFile(files, read, parts, read.sheets[0]!, faults);
      return faults.all('ply-1').map(({ id }) => id);
    },
  };
}

const oneOf = <T>(some: readonly T[], random: Random): T | null => some[Math.floor(random() * some.length)] ?? null;

/** One of the lines that fit, exchanged. */
const exchanged =
  (fits: RegExp, by: (line: string) => string): Edit =>
  (text, random) => {
    const lines = text.split('\n');
    const at = oneOf(
      lines.flatMap((line, i) => (fits.test(line) ? [i] : [])),
      random,
    );
    if (at === null) return null;
    return [...lines.slice(0, at), by(lines[at]!), ...lines.slice(at + 1)].join('\n');
  };

const replaced =
  (from: RegExp, to: string): Edit =>
  (text) =>
    from.test(text) ? text.replace(from, to) : null;

/** The cuts of a file whose titles fit, each with its comment. */
const cutsIn = (text: string, title: RegExp): string[] =>
  [...text.matchAll(/^\([^)]*\)\n(?:(?:N\d+ )?[GXYZ][^\n]*\n)+/gm)]
    .map(([cut]) => cut)
    .filter((cut) => title.test(cut));

const withCut =
  (title: RegExp, by: (text: string, cut: string) => string | null): Edit =>
  (text, random) => {
    const cut = oneOf(cutsIn(text, title), random);
    return cut === null ? null : by(text, cut);
  };

/** An outline before everything else that its tool does. */
const outlineFirst: Edit = withCut(/^\(outline /i, (text, cut) => {
  const part = /^\(outline ([^)]*)\)/i.exec(cut)?.[1] ?? '';
  const before = text.slice(0, text.indexOf(cut));
  const others = cutsIn(before, new RegExp(`^\\((?:opening|drill) ${part}(?: core)?\\)`, 'i'));
  // a hole that is bored: one that is drilled has a tool of its own
  const first = others.find((other) => /\n(?:N\d+ )?X[^\n]*Z-/.test(other));
  return first === undefined ? null : text.replace(cut, '').replace(first, cut + first);
});

/** A mark with itself behind it, if its first line says both where it begins: else it would not begin there again. */
const markAgain: Edit = withCut(/^\((?:mark|scribe) /i, (text, cut) =>
  /^[^\n]*\n(?:N\d+ )?X\S+ Y/.test(cut) ? text.replace(cut, cut + cut) : null,
);

const plants: Readonly<Record<string, readonly [Edit, ...MessageId[]]>> = {
  'a mark left out': [
    withCut(/^\((?:mark|scribe) /i, (text, cut) => text.replace(cut, '')),
    'engraving-missing',
    'engraving-scribe',
  ],
  'a mark run twice': [markAgain, 'cut-twice'],
  'an outline run twice': [withCut(/^\(outline /i, (text, cut) => text.replace(cut, cut + cut)), 'cut-twice'],
  'an outline cut first': [outlineFirst, 'cut-order'],
  'a dwell that is too short': [replaced(/G4 P[1-9]\d*/, 'G4 P0.5'), 'spin-up'],
  'another path mode': [replaced(/^((?:N\d+ )?)G6(?:1\.1|1|4 P[\d.]+)$/m, '$1G64'), 'path-mode'],
  'a bit of another size': [
    replaced(/(tool \d+: )[\d.]+( mm (?:end|drill|v-))/i, '$19.87$2'),
    'tool-comment',
    'head-lacks',
  ],
  'a bit with another flute': [replaced(/^(\(tool \d+: .*), 2 flutes/im, '$1, 3 flutes'), 'tool-comment'],
  'a faster spindle': [
    exchanged(/S\d+ M3/, (line) => line.replace(/S(\d+)/, (_, s) => `S${Number(s) + 500}`)),
    'spindle-other',
  ],
  'a feed that is too fast': [exchanged(/[XY].*F\d/, (line) => line.replace(/F[\d.]+/, 'F99000')), 'feed-other'],
  'a feed that only rubs': [exchanged(/[XY].*F\d/, (line) => line.replace(/F[\d.]+/, 'F0.5')), 'feed-slow'],
  'a plunge that is too fast': [
    exchanged(/G1 Z-[\d.]+ F/, (line) => line.replace(/F([\d.]+)/, (_, f) => `F${3 * Number(f) + 9}`)),
    'plunge-fast',
    // where the ramp is as steep
    'feed-other',
    // where the axis of the machine gives out before the material does
    'feed-axis',
  ],
  'a hop that is too low': [
    replaced(/G0 Z[\d.]+(\n\((?:mark|scribe))/i, 'G0 Z0.01$1'),
    'hop-low',
    'rapid-low',
    'first-moves',
  ],
  'a change of tool too low': [
    (text) => {
      const found = /G0 Z([\d.]+)\n(?:N\d+ )?X\S+ Y\S+\n(?:\([^)]*\)\n)+(?:N\d+ )?M0\n/.exec(text);
      return found === null ? null : text.replace(found[0], found[0].replace(/Z[\d.]+/, `Z${Number(found[1]) * 0.99}`));
    },
    'change-place',
  ],
  'a caution left out': [exchanged(/^\(CAUTION/i, () => '(-)'), 'head-lacks', 'change-caution'],
  'another lowest point': [replaced(/(Lowest point: )-[\d.]+/i, '$1-0.1'), 'head-depth'],
  'the head of another sheet': [replaced(/sheet ply-1/i, 'sheet ply-2'), 'head-lacks'],
};

describe('faults planted in random tool paths', () => {
  const jobs: Made[] = [];

  beforeAll(() => {
    for (let seed = seedFrom(5000); jobs.length < byDay(10, 100); seed += 1) {
      const job = randomRouterJob(seed);
      const made = shop(job);
      // a job that is refused has no files
      if (made.files.size > 0) jobs.push(withProof(job, made));
    }
  });

  it('are not seen before', () => {
    for (const { shop: made, idsOf } of jobs) expect(idsOf(made.files)).toEqual([]);
  });

  it.each(Object.entries(plants))('%s is found', (name, [edit, ...ids]) => {
    const random = randomOf(name.length * 7919);
    const times = byDay(2, 200);
    const missed: string[] = [];
    let planted = 0;
    for (let tries = 0; planted < times && tries < 50 * times; tries += 1) {
      const made = oneOf(jobs, random)!;
      const [file, text] = oneOf([...made.shop.files], random)!;
      const changed = edit(text, random);
      if (changed === null) continue;
      planted += 1;
      const found = made.idsOf(new Map(made.shop.files).set(file, changed));
      if (!found.some((id) => ids.includes(id))) missed.push(`job ${jobs.indexOf(made)}, ${file}: ${found.join()}`);
    }
    expect(missed).toEqual([]);
    expect(planted).toBe(times);
  });
});
