/** What the disk, links and hostile names can do to a run. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkRoom, claimFolder } from '../../cli/claim.js';
import { writeFolder } from '../../cli/folder.js';
import type { JobFiles } from '../../lib/index.js';
import { commandPath, dishwright, inProcess, workshop } from '../helpers/command.js';
import { smallDish } from './small-dish.js';

const place = workshop({ 'small.yaml': smallDish('Small') });
const cut = (...flags: string[]) => inProcess(place.folder, ['cut', 'small.yaml', ...flags]);
/** The same in a process of its own. */
const cutApart = (...flags: string[]) => dishwright(place.folder, ['cut', 'small.yaml', ...flags]);

afterAll(() => {
  place.clear();
});

describe('cut', () => {
  it('follows no link in place of its folder', async () => {
    const elsewhere = join(place.folder, 'elsewhere');
    mkdirSync(elsewhere);
    symlinkSync(elsewhere, join(place.folder, 'link'));
    const ran = await cut('-o', 'link', '--force');
    expect(ran.code).toBe(3);
    expect(ran.err).toContain('is a link');
    expect(readdirSync(elsewhere)).toEqual([]);
  });

  it('takes a link in its folder for somebody else’s file, and does not write through it', async () => {
    mkdirSync(join(place.folder, 'linked'));
    writeFileSync(join(place.folder, 'precious'), 'precious');
    symlinkSync(join(place.folder, 'precious'), join(place.folder, 'linked', 'job.json'));
    const ran = await cut('-o', 'linked', '--force');
    expect(ran.code).toBe(3);
    expect(readFileSync(join(place.folder, 'precious'), 'utf8')).toBe('precious');
  });

  it.each([['../outside'], [join(place.folder, 'beside', 'outside')], ['..\\outside']])(
    'keeps a material called %s within its folder',
    async (name) => {
      const text = smallDish('Small')
        .replaceAll('ply:', `"${name.replaceAll('\\', '\\\\')}":`)
        .replaceAll('material: ply', `material: "${name.replaceAll('\\', '\\\\')}"`);
      writeFileSync(join(place.folder, 'hostile.yaml'), text);
      const before = readdirSync(place.folder).sort();
      const ran = await inProcess(place.folder, ['cut', 'hostile.yaml', '-o', 'hostile', '--force']);
      expect(
        readdirSync(place.folder)
          .sort()
          .filter((file) => file !== 'hostile'),
      ).toEqual(before.filter((file) => file !== 'hostile'));
      expect(existsSync(join(place.folder, 'beside'))).toBe(false);
      // either refused with a reason, or written with a name that is harmless
      if (ran.code !== 0) expect(ran.err).toMatch(/outside/);
      else
        for (const entry of readdirSync(join(place.folder, 'hostile'), { recursive: true }))
          expect(String(entry)).toMatch(/^[\w./-]+$/);
    },
  );

  it('writes text of a design into no file as code', async () => {
    const nasty = `"=HYPERLINK(1)</title><script>alert(1)</script>'&"`;
    writeFileSync(
      join(place.folder, 'nasty.yaml'),
      smallDish(nasty.slice(1, -1).replace(/^/, '"').concat('"')).replace(
        'thickness: 6 }',
        `thickness: 6, description: "=cmd|'/C x'!A1<script>" }`,
      ),
    );
    const ran = await inProcess(place.folder, ['cut', 'nasty.yaml', '-o', 'nasty', '--force']);
    expect(ran.code, ran.err).toBe(0);
    const files = readdirSync(join(place.folder, 'nasty'), { recursive: true, withFileTypes: true }).filter((entry) =>
      entry.isFile(),
    );
    for (const entry of files) {
      const text = readFileSync(join(entry.parentPath, entry.name), 'utf8');
      if (/\.(?:svg|html)$/.test(entry.name)) expect(text, entry.name).not.toContain('<script>alert');
      if (entry.name.endsWith('.dxf')) expect(text, entry.name).toMatch(/^[\x20-\x7e\r\n]*$/);
      // a spreadsheet takes a cell that begins so for a formula
      if (entry.name.endsWith('.csv'))
        for (const cell of text.split(/[\r\n,;\t]+/)) expect(cell, entry.name).not.toMatch(/^"?[=@+]/);
    }
  });

  /** Files of which the first takes the whole folder with it once it is written. */
  class Vanishing extends Map<string, string> {
    override *[Symbol.iterator](): MapIterator<[string, string]> {
      for (const [i, entry] of [...this.entries()].entries()) {
        if (i === 1) removePart();
        yield entry;
      }
    }
  }
  const removePart = (): void => {
    for (const name of readdirSync(place.folder))
      if (name.startsWith('.gone.part-')) rmSync(join(place.folder, name), { recursive: true });
  };
  const removeWhileProving = (): Promise<void> => {
    removePart();
    return Promise.resolve();
  };
  const twoFiles = [
    ['job.json', '{}'],
    ['sheets/ply-1.dxf', '0'],
  ] as const;

  it.each<[string, JobFiles, () => Promise<void>]>([
    ['while it writes', new Vanishing(twoFiles), () => Promise.resolve()],
    ['while it proves', new Map(twoFiles), removeWhileProving],
  ])('says so when its folder is removed %s, and leaves nothing behind', async (_, files, prove) => {
    const claim = claimFolder(join(place.folder, 'gone'), false);
    try {
      await expect(writeFolder(claim, files, prove)).rejects.toThrow(/nothing was changed/);
    } finally {
      claim.release();
    }
    expect(readdirSync(place.folder).filter((name) => name.includes('gone'))).toEqual([]);
  });
});

describe('an output folder that cannot be written', () => {
  // the design cannot be built for want of stock, which the nest would find: the folder is looked at before
  const hopeless = smallDish('Hopeless').replace(
    '{ material: ply, size: 900 x 600 }',
    '{ material: ply, size: 90 x 60 }',
  );
  const cutHopeless = (target: string) => {
    writeFileSync(join(place.folder, 'hopeless.yaml'), hopeless);
    return inProcess(place.folder, ['cut', 'hopeless.yaml', '-o', target]);
  };

  it('is found before the parts are nested', async () => {
    expect((await cutHopeless('fine')).code).toBe(1);
    const ran = await cutHopeless('/proc/dishwright/out');
    expect(ran.code).toBe(3);
    expect(ran.err).toContain('[cannot-write]');
    expect((await cutHopeless('small.yaml/out')).err).toContain('part of the path is a file');
  });

  it('leaves no empty folders on the way to it', async () => {
    expect((await cutHopeless('new/deep/out')).code).toBe(1);
    expect(existsSync(join(place.folder, 'new'))).toBe(false);
  });

  it('is refused for want of room', () => {
    expect(() => checkRoom(place.folder, 1e18)).toThrow(/is too full: .* MB free, and the files may need/);
    expect(() => checkRoom(place.folder, 1)).not.toThrow();
  });
});

describe('two runs into one folder', () => {
  const locks = () => readdirSync(place.folder).filter((name) => name.includes('.lock-'));

  it('are one too many: the second is refused and says which the first is', async () => {
    const claim = claimFolder(join(place.folder, 'shared'), false);
    try {
      const ran = cutApart('-o', 'shared');
      expect(ran.code).toBe(3);
      expect(ran.err).toContain(`another run (process ${process.pid}) is writing shared`);
      expect(locks()).toHaveLength(1);
    } finally {
      claim.release();
    }
    expect((await cut('-o', 'shared')).code).toBe(0);
    expect(locks()).toEqual([]);
  });

  it('are none where the first was killed: its lock is removed', async () => {
    const dead = spawnSync(process.execPath, ['-e', '0']).pid;
    writeFileSync(join(place.folder, `.crashed.lock-${dead}-00000000`), '');
    expect((await cut('-o', 'crashed')).code).toBe(0);
    expect(locks()).toEqual([]);
  });

  it('are none where the number of a dead run was given to another process', () => {
    const lock = join(place.folder, `.reused.lock-${process.pid}-00000000`);
    writeFileSync(lock, '');
    utimesSync(lock, new Date(0), new Date(0));
    expect(cutApart('-o', 'reused').code).toBe(0);
    expect(locks()).toEqual([]);
  });
});

/** A disk of its own needs the rights to mount one. */
const mounts = process.getuid?.() === 0 && process.platform === 'linux';

describe.runIf(mounts)('cut on a full disk', () => {
  const disk = join(place.folder, 'disk');
  let mounted = false;

  beforeAll(() => {
    mkdirSync(disk);
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', disk], { stdio: 'ignore' });
      mounted = true;
    } catch {
      // a container may forbid it even to root; the device that is always full is tried below all the same
    }
  });
  afterAll(() => {
    if (mounted) execFileSync('umount', [disk]);
  });

  it('says so and leaves what was there', async ({ skip }) => {
    if (!mounted) skip('no rights to mount a disk');
    writeFileSync(join(disk, 'mine.txt'), 'mine');
    const ran = await cut('-o', 'disk/out');
    expect(ran.code, ran.err).toBe(3);
    expect(ran.err).toMatch(/full|space/);
    expect(readdirSync(disk)).toEqual(['mine.txt']);
  });
});

describe('cut with its output full', () => {
  it('ends with a message, not a stack trace', () => {
    const shell = `"${process.execPath}" "${commandPath}" check small.yaml --json > /dev/full`;
    let text = '';
    let code: number | null = 0;
    try {
      execFileSync('sh', ['-c', shell], { cwd: place.folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
    } catch (error) {
      const failed = error as { status: number | null; stderr: string };
      text = failed.stderr;
      code = failed.status;
    }
    expect(code).toBeGreaterThan(0);
    expect(text).not.toMatch(/\n\s+at /);
  });
});
