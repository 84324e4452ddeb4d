import { mkdtempSync, renameSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { createServer, type AddressInfo } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { maxStreams, serve, type Running } from '../../cli/watch/server.js';
import type { State } from '../../cli/watch/shown.js';
import { watchDesign } from '../../cli/watch/watch-design.js';
import { Board } from '../../cli/watch/state.js';
import { fixtureText } from '../helpers/fixtures.js';
import { deskOf, get, looksHere, noNest } from '../helpers/live-page.js';

/** Resolves when the board comes to a state that `fits`. */
function until(board: Board, fits: (state: State) => boolean): Promise<State> {
  return new Promise((resolve) => {
    if (fits(board.state)) {
      resolve(board.state);
      return;
    }
    const deaf = board.listen((state) => {
      if (!fits(state)) return;
      deaf();
      resolve(state);
    });
  });
}

describe('the page’s server', () => {
  let running: Running;
  let board: Board;
  beforeEach(async () => {
    board = new Board('dish.yaml');
    running = await serve(board, deskOf(board, 'dish.yaml'), 0);
  });
  afterEach(() => running.close());

  it('serves its page under the token alone', async () => {
    expect(new URL(running.url).pathname.length).toBeGreaterThan(30);
    const page = await get(running.url);
    expect(page.status).toBe(200);
    expect(page.headers['content-security-policy']).toContain("default-src 'none'");
    const base = `http://127.0.0.1:${running.port}`;
    for (const path of ['/', '/state', '/x/state', `${new URL(running.url).pathname}..%2f`])
      expect((await get(base + path)).status).toBe(404);
  });

  it('answers no other host and no other origin', async () => {
    const state = `${running.url}state`;
    expect((await get(state, { Host: 'evil.example' })).status).toBe(403);
    expect((await get(state, { Host: `evil.example:${running.port}` })).status).toBe(403);
    expect((await get(state, { Origin: 'https://evil.example' })).status).toBe(403);
    expect((await get(state, { Origin: 'null' })).status).toBe(403);
    expect((await get(state, { Origin: `http://127.0.0.1:${running.port}` })).status).toBe(200);
    expect((await get(state, {}, 'PUT')).status).toBe(405);
  });

  it('listens on the loopback interface only', async () => {
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter(({ family, internal }) => family === 'IPv4' && !internal);
    for (const { address } of others)
      await expect(get(running.url.replace('127.0.0.1', address))).rejects.toThrow(/ECONNREFUSED/);
  });

  it('tells of each change as it comes', async () => {
    const reported: string[] = [];
    const done = new Promise<void>((resolve) => {
      request(`${running.url}events`, (response) => {
        response.setEncoding('utf8');
        response.on('data', (piece: string) => {
          reported.push(piece);
          if (piece.includes('later')) resolve();
          else board.show({ standing: 'shown', status: 'later', problems: [] }, '<!DOCTYPE html>');
        });
        response.on('error', () => undefined);
      }).end();
    });
    await done;
    expect(reported.join('')).toMatch(/^data: \{.*\}\n\ndata: \{.*"book":1[,}].*\n\n$/);
    expect((await get(`${running.url}book?1`)).text).toBe('<!DOCTYPE html>');
  });

  it('serves so many pages and no more, and drops those that read nothing', async () => {
    const open = (): Promise<{ readonly status: number; readonly close: () => void }> =>
      new Promise((resolve, reject) => {
        // the answer is left unread
        const asked = request(`${running.url}events`, (response) => {
          response.pause();
          resolve({ status: response.statusCode ?? 0, close: () => asked.destroy() });
        });
        asked.on('error', reject).end();
      });
    const silent = await Promise.all(Array.from({ length: maxStreams }, open));
    expect(silent.every(({ status }) => status === 200)).toBe(true);
    expect((await open()).status).toBe(503);
    const message = 'x'.repeat(500_000);
    // what the system holds on its way differs, so as much is sent as it takes
    for (let i = 0; i < 200 && board.listeners > 0; i += 1) {
      board.show({ standing: 'faulty', status: 'much', problems: [{ severity: 'error', message }] });
      await new Promise((resolve) => setImmediate(resolve));
    }
    expect(board.listeners).toBe(0);
    expect((await open()).status).toBe(200);
    for (const { close } of silent) close();
  });

  it('says so when the port is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await new Promise((resolve) => other.once('listening', resolve));
    const { port } = other.address() as AddressInfo;
    await expect(serve(board, deskOf(board, 'dish.yaml'), port)).rejects.toThrow(
      `port ${port} is in use; give another --port`,
    );
    other.close();
  });
});

describe('following a design file', () => {
  let folder = '';
  let file = '';
  let board: Board;
  let stop = (): void => undefined;
  const start = (background = noNest): void => {
    board = new Board('dish.yaml');
    stop = watchDesign(file, board, { looks: looksHere, background }, () => undefined).end;
  };
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'dishwright-watch-'));
    file = join(folder, 'dish.yaml');
  });
  afterEach(() => {
    stop();
    rmSync(folder, { recursive: true, force: true });
  });
  /** A new file in the old one's place, so that no half of it is ever seen. */
  const save = (text: string) => {
    writeFileSync(`${file}~`, text);
    renameSync(`${file}~`, file);
  };

  it('shows a book after each save, made in place', async () => {
    save(fixtureText('press-house'));
    start();
    await until(board, ({ book }) => book === 1);
    for (const [i, ribs] of [26, 28].entries()) {
      writeFileSync(file, fixtureText('press-house').replace('ribs: 24', `ribs: ${ribs}`));
      await until(board, ({ book }) => book === i + 2);
      expect(board.book).toContain(`${ribs} ribs`);
    }
  });

  it('keeps the last good book over a fault, names its line, and recovers by itself', async () => {
    save(fixtureText('press-house'));
    start();
    await until(board, ({ book }) => book === 1);
    const good = board.book;
    save(fixtureText('press-house').replace('aperture:', 'apperture:'));
    const { problems } = await until(board, ({ standing }) => standing === 'faulty');
    const misspelt = problems.find(({ remedy }) => remedy === 'did you mean aperture?');
    expect(misspelt?.place?.line).toBe(7);
    expect(board.book).toBe(good);
    save(fixtureText('press-house'));
    await until(board, ({ standing }) => standing !== 'faulty');
  });

  it('waits for a file that is not there, and for one that comes back', async () => {
    start();
    expect(board.state).toMatchObject({ standing: 'faulty', book: 0 });
    expect(board.state.problems[0]?.message).toContain('no such file');
    save(fixtureText('table-top'));
    await until(board, ({ book }) => book === 1);
    unlinkSync(file);
    await until(board, ({ standing }) => standing === 'faulty');
    save(fixtureText('table-top'));
    await until(board, ({ standing }) => standing === 'nesting');
  });

  it('sees a drawing that the design names change, go and come back', async () => {
    const drawing = (size: number) =>
      `<svg xmlns="http://www.w3.org/2000/svg" width="${size}mm" height="50mm" viewBox="0 0 ${size} 50"><path d="M0 0H${size}V50H0Z"/></svg>`;
    const extra = join(folder, 'sign.svg');
    writeFileSync(extra, drawing(60));
    save(`${fixtureText('table-top')}\nextra:\n  - { file: sign.svg, material: ply5, quantity: 1 }\n`);
    const laid: number[] = [];
    start((design, extras, report) => {
      laid.push(Number(/width="(\d+)mm"/.exec(extras.get('sign.svg') ?? '')?.[1]));
      return noNest(design, extras, report);
    });
    await until(board, ({ book }) => book === 1);
    expect(laid).toEqual([60]);
    writeFileSync(extra, drawing(70));
    await until(board, ({ book }) => book === 2);
    expect(laid).toEqual([60, 70]);
    unlinkSync(extra);
    const { problems } = await until(board, ({ standing }) => standing === 'faulty');
    expect(problems[0]?.message).toContain('sign.svg');
    writeFileSync(extra, drawing(80));
    await until(board, ({ book }) => book === 3);
    expect(laid).toEqual([60, 70, 80]);
  });

  it('sees the machine that the design names change, with a fault and mended', async () => {
    const machine = join(folder, 'laser.yaml');
    const kerf = (mm: number) => writeFileSync(machine, `kind: laser\nmaterials: { ply5: { kerf: ${mm} } }\n`);
    kerf(0.2);
    save(`${fixtureText('table-top')}\nmachine: laser.yaml\n`);
    const kerfs: unknown[] = [];
    start((design, extras, report) => {
      kerfs.push(design.machine.materials['ply5']?.kerf);
      return noNest(design, extras, report);
    });
    await until(board, ({ book }) => book === 1);
    kerf(0.3);
    await until(board, ({ book }) => book === 2);
    kerf(-1);
    const { problems } = await until(board, ({ standing }) => standing === 'faulty');
    expect(problems[0]?.place).toMatchObject({ file: 'laser.yaml', line: 2 });
    kerf(0.4);
    await until(board, ({ book }) => book === 3);
    expect(kerfs).toEqual([0.2, 0.3, 0.4]);
  });

  it('says why a design cannot be built', async () => {
    save(fixtureText('table-top').replace('focalLength: 220', 'focalLength: 50'));
    start();
    const { problems } = await until(board, ({ standing }) => standing === 'faulty');
    expect(problems[0]?.message).toContain('rim steeper than 70°');
    save(fixtureText('table-top'));
    await until(board, ({ book }) => book === 1);
  });

  it('ends the nest of an older state', async () => {
    const begun: number[] = [];
    const ended: number[] = [];
    save(fixtureText('table-top'));
    start((design, extras, report) => {
      begun.push(design.dish.ribs);
      const nesting = noNest(design, extras, report);
      return { ...nesting, end: () => void ended.push(design.dish.ribs) };
    });
    await until(board, ({ book }) => book === 1);
    save(fixtureText('table-top').replace('ribs: 18', 'ribs: 16'));
    await until(board, ({ book }) => book === 2);
    expect(begun).toEqual([18, 16]);
    expect(ended).toEqual([18]);
  });
});
