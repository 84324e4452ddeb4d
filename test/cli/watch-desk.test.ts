import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Running, serve } from '../../cli/watch/server.js';
import { revisionOf } from '../../cli/watch/revision.js';
import { Board } from '../../cli/watch/state.js';
import { fixtureText } from '../helpers/fixtures.js';
import { type Answer, ask, deskOf, get } from '../helpers/live-page.js';

describe('what the page asks to be done', () => {
  let folder = '';
  let file = '';
  let running: Running;
  let token = '';
  let address = '';
  const begin = async (readOnly = false): Promise<void> => {
    const board = new Board('dish.yaml', readOnly);
    running = await serve(board, deskOf(board, file, readOnly), 0);
    address = running.url;
    token = /data-token="([^"]+)"/.exec((await get(address)).text)?.[1] ?? '';
  };
  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'dishwright-desk-'));
    file = join(folder, 'dish.yaml');
    writeFileSync(file, fixtureText('press-house'));
    await begin();
  });
  afterEach(async () => {
    await running.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const good = fixtureText('press-house');
  const now = (): string => readFileSync(file, 'utf8');
  const edit = { path: ['dish', 'ribs'], value: '26', was: '24', revision: revisionOf(good) };
  const headers = (change: Readonly<Record<string, string | undefined>> = {}): Record<string, string> => {
    const own: Readonly<Record<string, string | undefined>> = {
      Origin: new URL(address).origin,
      'Content-Type': 'application/json',
      'X-Dishwright-Token': token,
      ...change,
    };
    return Object.fromEntries(Object.entries(own).filter((one): one is [string, string] => one[1] !== undefined));
  };
  const post = (name: string, body: string, change?: Readonly<Record<string, string | undefined>>): Promise<Answer> =>
    ask(`${address}${name}`, headers(change), 'POST', body);

  it('is done for the page itself', async () => {
    expect(token.length).toBeGreaterThan(30);
    expect((await post('edit', JSON.stringify(edit))).status).toBe(200);
    expect(now()).toBe(good.replace('ribs: 24', 'ribs: 26'));
    expect((await post('undo', '{}')).status).toBe(200);
    expect(now()).toBe(good);
  });

  it.each<[name: string, change: Readonly<Record<string, string | undefined>>, status: number]>([
    ['another origin', { Origin: 'https://evil.example' }, 403],
    ['an origin that hides', { Origin: 'null' }, 403],
    ['no origin', { Origin: undefined }, 403],
    ['another host', { Host: 'evil.example' }, 403],
    ['a page on another site', { 'Sec-Fetch-Site': 'cross-site' }, 403],
    ['no token', { 'X-Dishwright-Token': undefined }, 403],
    ['a wrong token', { 'X-Dishwright-Token': 'x'.repeat(32) }, 403],
    ['a form', { 'Content-Type': 'application/x-www-form-urlencoded' }, 415],
    ['plain text', { 'Content-Type': 'text/plain' }, 415],
  ])('is refused to %s, and nothing is written', async (_, change, status) => {
    expect((await post('edit', JSON.stringify(edit), change)).status).toBe(status);
    expect(now()).toBe(good);
  });

  it('is refused without the address, and for paths that lead elsewhere', async () => {
    const { origin } = new URL(address);
    expect((await ask(`${origin}/edit`, headers(), 'POST', JSON.stringify(edit))).status).toBe(404);
    for (const name of ['../edit', 'edit/', 'edit/..', '%2e%2e/edit', 'toString', 'constructor', '', 'book'])
      expect((await post(name, JSON.stringify(edit))).status).toBe(404);
    expect(now()).toBe(good);
  });

  it.each([
    ['no JSON', '{', 400],
    ['a list', '[]', 400],
    ['a key that is not known', JSON.stringify({ ...edit, file: '/etc/passwd' }), 400],
    ['a path that is none', JSON.stringify({ ...edit, path: 'dish.ribs' }), 400],
    ['too large', JSON.stringify({ ...edit, value: 'x'.repeat(200_000) }), 413],
    ['a value of many lines', JSON.stringify({ ...edit, value: '26\nname: x' }), 400],
  ])('is refused for %s', async (_, body, status) => {
    expect((await post('edit', body)).status).toBe(status);
    expect(now()).toBe(good);
  });

  it('names no file: neither for work, nor for the folder it goes to', async () => {
    for (const body of [
      { kind: 'cut', out: '/tmp/x' },
      { kind: 'new' },
      { kind: 'stock', sizes: ['--force'] },
      { kind: 'stock', sizes: ['1x1; rm x'] },
    ])
      expect((await post('work', JSON.stringify(body))).status).toBe(400);
  });

  it('asks where the key was changed elsewhere, and merges where it was not', async () => {
    writeFileSync(file, good.replace('ribs: 24', 'ribs: 30'));
    const asked = await post('edit', JSON.stringify(edit));
    expect(asked.status).toBe(409);
    expect(JSON.parse(asked.text)).toMatchObject({ kind: 'conflict', theirs: '30' });
    writeFileSync(file, good.replace('aperture: 1500', 'aperture: 1400'));
    expect(JSON.parse((await post('edit', JSON.stringify(edit))).text)).toMatchObject({ merged: true });
    expect(now()).toContain('aperture: 1400');
    expect(now()).toContain('ribs: 26');
  });

  it('works a draft out without writing it, its picture first', async () => {
    const draft = { edits: [{ path: ['dish', 'ribs'], value: '20' }] };
    const { text } = await post('draft', JSON.stringify(draft));
    const lines = text
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { readonly kind: string; readonly outline?: { readonly ribs: number } });
    expect(lines[0]).toMatchObject({ kind: 'outline', outline: { ribs: 20 } });
    expect(lines.filter(({ kind }) => kind === 'values')).toHaveLength(3);
    const faulty = await post('draft', JSON.stringify({ edits: [{ path: ['dish', 'aperture'], value: '10 mm' }] }));
    expect(faulty.text).toContain('it must be at least 50 mm');
    expect(now()).toBe(good);
  });

  it('changes nothing with --read-only', async () => {
    await running.close();
    await begin(true);
    expect((await post('edit', JSON.stringify(edit))).status).toBe(422);
    for (const kind of ['cut', 'template']) expect((await post('work', JSON.stringify({ kind }))).status).toBe(403);
    expect(now()).toBe(good);
  });
});
