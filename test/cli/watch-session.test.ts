import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { statedKeys } from '../../lib/index.js';
import { revisionOf } from '../../cli/watch/revision.js';
import { type Edit, type Outcome, Session } from '../../cli/watch/session.js';
import { fixtureText } from '../helpers/fixtures.js';

let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'dishwright-session-'));
  file = join(folder, 'dish.yaml');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const good = fixtureText('press-house');
const now = (): string => readFileSync(file, 'utf8');
const start = (text = good, readOnly = false): Session => {
  writeFileSync(file, text);
  return new Session(file, readOnly);
};
const edit = (session: Session, path: Edit['path'], value: string | null, was: string | null): Outcome =>
  session.edit({ path, value, was }, revisionOf(now()));

describe('edits of a design file from the page', () => {
  it('leave it byte for byte after a hundred of them, each taken back', () => {
    const session = start();
    const stated = statedKeys(good) ?? [];
    const texts = [good];
    for (let i = 0; i < 100; i += 1) {
      const { path } = stated[(7 * i) % stated.length]!;
      const was = (statedKeys(now()) ?? []).find((one) => one.path.join() === path.join())?.shown ?? null;
      const out = i % 5 === 4 ? edit(session, path, null, was) : edit(session, path, String(i), was);
      // a section of which nothing is left went earlier
      if (out.kind === 'done' && now() !== texts.at(-1)) texts.push(now());
    }
    expect(texts.length).toBeGreaterThan(80);
    for (const text of texts.slice(0, -1).reverse()) {
      expect(session.undo().kind).toBe('done');
      expect(now()).toBe(text);
    }
    expect(session.undo().kind).toBe('refused');
    expect(now()).toBe(good);
    for (const text of texts.slice(1)) {
      session.redo();
      expect(now()).toBe(text);
    }
    expect(readdirSync(folder)).toEqual(['dish.yaml']);
  });

  it('lose nothing where the file is edited in two places at once', () => {
    const session = start();
    const seen = revisionOf(good);
    const theirs = good.replace('focalLength: 550', 'focalLength: 560 # measured');
    writeFileSync(file, theirs);
    const mine = session.edit({ path: ['dish', 'ribs'], value: '26', was: '24' }, seen);
    expect(mine).toMatchObject({ kind: 'done', merged: true });
    expect(now()).toBe(theirs.replace('ribs: 24', 'ribs: 26'));
    const asked = session.edit({ path: ['dish', 'focalLength'], value: '600', was: '550' }, seen);
    expect(asked).toEqual({ kind: 'conflict', path: ['dish', 'focalLength'], theirs: '560' });
    expect(now()).toContain('focalLength: 560 # measured');
  });

  it('are taken back key by key where the file was changed since', () => {
    const session = start();
    edit(session, ['dish', 'ribs'], '26', '24');
    writeFileSync(file, now().replace('aperture: 1500', 'aperture: 1400'));
    expect(session.undo()).toMatchObject({ kind: 'done', merged: true });
    expect(now()).toBe(good.replace('aperture: 1500', 'aperture: 1400'));
    edit(session, ['dish', 'ribs'], '28', '24');
    writeFileSync(file, now().replace('ribs: 28', 'ribs: 30'));
    expect(session.undo()).toMatchObject({ kind: 'refused', message: 'dish.ribs has been changed elsewhere since' });
    expect(now()).toContain('ribs: 30');
  });

  it('keep the permissions of the file', () => {
    const session = start();
    chmodSync(file, 0o640);
    edit(session, ['dish', 'ribs'], '26', '24');
    expect(statSync(file).mode & 0o777).toBe(0o640);
  });

  it('never go through a link, into a file that is gone, or past --read-only', () => {
    const other = join(folder, 'other.yaml');
    writeFileSync(other, good);
    const linked = join(folder, 'link.yaml');
    symlinkSync(other, linked);
    const out = new Session(linked, false).edit({ path: ['dish', 'ribs'], value: '26', was: '24' }, revisionOf(good));
    expect(out).toMatchObject({ kind: 'refused', message: 'the design file is a link' });
    expect(readFileSync(other, 'utf8')).toBe(good);
    const gone = new Session(join(folder, 'none.yaml'), false);
    expect(gone.edit({ path: ['name'], value: 'x', was: null }, '')).toMatchObject({ kind: 'refused' });
    expect(edit(start(good, true), ['dish', 'ribs'], '26', '24')).toMatchObject({ message: 'the page is read-only' });
    expect(now()).toBe(good);
  });

  it('take what a person types: lengths with units, lists, texts that need quotes', () => {
    const session = start();
    edit(session, ['dish', 'aperture'], ' 4 ft 11 in ', '1500');
    edit(session, ['process', 'drillBits'], '[3, 4]', '[2.5, 3, 4, 4.5]');
    edit(session, ['name'], 'Kettle: 12 l # big', 'Press house kettle dish');
    edit(session, ['vessel', 'diameter'], '[260', '260');
    const stated = new Map((statedKeys(now()) ?? []).map(({ path, shown }) => [path.join('.'), shown]));
    expect(stated.get('dish.aperture')).toBe('4 ft 11 in');
    expect(stated.get('process.drillBits')).toBe('[3, 4]');
    expect(stated.get('name')).toBe('Kettle: 12 l # big');
    expect(stated.get('vessel.diameter')).toBe('[260');
  });
});
