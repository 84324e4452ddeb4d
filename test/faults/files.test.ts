/** Paths that name no plain file, and links that lead out of the design's folder. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { dishwright, inProcess, workshop } from '../helpers/command.js';
import { smallDish } from './small-dish.js';

const secret = 'SECRET-7f3a';
const place = workshop({ 'home/small.yaml': smallDish('Small'), 'private.txt': `${secret}\n` });
afterAll(() => place.clear());

describe('a design file that is no plain file', () => {
  execFileSync('mkfifo', [join(place.folder, 'pipe.yaml')]);
  writeFileSync(join(place.folder, 'vast.yaml'), '');
  truncateSync(join(place.folder, 'vast.yaml'), 5_000_000);

  it.each([
    ['/dev/zero', /device, pipe or socket/],
    ['pipe.yaml', /device, pipe or socket/],
    ['.', /is a folder, not a file/],
    ['vast.yaml', /is larger than 1 MB/],
  ])('is refused at once: %s', async (file, message) => {
    for (const command of ['check', 'optics', 'stock']) {
      // the first in a process of its own, which can be ended if it reads on for ever
      const ran = await (command === 'check' ? dishwright : inProcess)(place.folder, [command, file]);
      expect(ran.code, ran.err).toBe(2);
      expect(ran.err).toMatch(message);
      expect(ran.err).toContain('[not-a-file]');
    }
  });
});

describe('a link beside the design', () => {
  const checkWith = (file: string) => {
    const text = smallDish('Small', `extra:\n  - { file: ${file}, material: ply }\n`);
    writeFileSync(join(place.folder, 'home', 'linked.yaml'), text);
    return inProcess(place.folder, ['check', 'home/linked.yaml', '--json']);
  };

  it.each(['way-out.svg', 'folder-out/private.txt'])('is not followed out of the folder: %s', async (file) => {
    if (file === 'way-out.svg') symlinkSync('../private.txt', join(place.folder, 'home', file));
    else symlinkSync('..', join(place.folder, 'home', 'folder-out'));
    const ran = await checkWith(file);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('a link to somewhere outside the folder');
    expect(ran.out + ran.err).not.toContain(secret);
    expect(JSON.parse(ran.out)).toMatchObject({ problems: [{ code: 'outside-folder', place: { line: 16 } }] });
  });

  it('is followed within it', async () => {
    mkdirSync(join(place.folder, 'home', 'drawings'));
    const drawing =
      '<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="50mm" viewBox="0 0 50 50"><path d="M0 0H50V50H0Z"/></svg>';
    writeFileSync(join(place.folder, 'home', 'drawings', 'square.svg'), drawing);
    symlinkSync('drawings/square.svg', join(place.folder, 'home', 'inner.svg'));
    expect((await checkWith('inner.svg')).code).toBe(0);
  });
});
