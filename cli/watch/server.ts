/**
 * The page's server: on the loopback interface alone, under a random path, for its own page and no other origin.
 */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { randomBytes } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { exitCode, stop } from '../exit.js';
import type { Desk } from './desk.js';
import { formOf } from './form.js';
import { watchPage } from './page.js';
import { barred, bodyOf, sameText } from './post.js';
import type { State } from './shown.js';
import type { Board } from './state.js';

const loopback = '127.0.0.1';
/** Keeps a silent line open through anything between (ms). */
const heartbeat = 15_000;
/** Pages that may listen at a time. */
export const maxStreams = 16;
/** What a page may leave unread (bytes). */
const maxUnread = 1_000_000;

const guards: Readonly<Record<string, string>> = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

function answer(
  response: ServerResponse,
  status: number,
  type: string,
  body: string,
  extra: Record<string, string> = {},
): void {
  response.writeHead(status, { ...guards, 'Content-Type': `${type}; charset=utf-8`, ...extra });
  response.end(body);
}

/** Whether a request comes from the page itself, or from the person who opened its address. */
function trusted(request: IncomingMessage, port: number): boolean {
  const hosts = [`${loopback}:${port}`, `localhost:${port}`];
  const { host, origin } = request.headers;
  if (host === undefined || !hosts.includes(host)) return false;
  return origin === undefined || origin === `http://${host}`;
}

function events(response: ServerResponse, board: Board): void {
  if (board.listeners >= maxStreams) {
    answer(response, 503, 'text/plain', 'too many pages are open; close one\n', { 'Retry-After': '10' });
    return;
  }
  response.writeHead(200, { ...guards, 'Content-Type': 'text/event-stream; charset=utf-8' });
  const send = (state: State): void => {
    // a page that does not read what it is sent would fill the memory; it comes back by itself and gets the last state
    if (response.writableLength > maxUnread) response.destroy();
    else response.write(`data: ${JSON.stringify(state)}\n\n`);
  };
  send(board.state);
  const deaf = board.listen(send);
  const timer = setInterval(() => response.write(':\n\n'), heartbeat);
  response.on('close', () => {
    clearInterval(timer);
    deaf();
  });
}

function sendPage(response: ServerResponse, token: string): void {
  const { html, policy } = watchPage(randomBytes(16).toString('base64'), token);
  answer(response, 200, 'text/html', html, { 'Content-Security-Policy': policy });
}

function sendBook(response: ServerResponse, book: string | null): void {
  if (book === null) answer(response, 404, 'text/plain', 'no book yet\n');
  else answer(response, 200, 'text/html', book, { 'Content-Security-Policy': "frame-ancestors 'self'" });
}

const sendJson = (response: ServerResponse, status: number, body: object): void =>
  answer(response, status, 'application/json', JSON.stringify(body));

/** Streams a draft, a line for each step. */
async function sendDraft(response: ServerResponse, desk: Desk, body: object): Promise<void> {
  response.writeHead(200, { ...guards, 'Content-Type': 'application/x-ndjson; charset=utf-8' });
  await desk.draft(body, (line) => {
    if (!response.destroyed) response.write(`${JSON.stringify(line)}\n`);
  });
  response.end();
}

async function posted(request: IncomingMessage, response: ServerResponse, { desk, token }: Site, name: string) {
  const bar = barred(request, token);
  const taken = bar ?? (await bodyOf(request));
  if (taken.kind === 'barred') {
    // what was not read is not waited for
    answer(response, taken.status, 'text/plain', `${taken.why}\n`, { Connection: 'close' });
    return;
  }
  if (name === 'draft') {
    await sendDraft(response, desk, taken.body);
    return;
  }
  const reply = desk.act(name, taken.body);
  if (reply) sendJson(response, reply.status, reply.body);
  else answer(response, 404, 'text/plain', 'nothing here\n');
}

/** What is served, and the tokens: that of the address, and that of the page for what it asks to be done. */
interface Site {
  readonly board: Board;
  readonly desk: Desk;
  readonly address: string;
  readonly token: string;
}

function got(response: ServerResponse, { board, token }: Site, name: string | undefined): void {
  if (name === '') sendPage(response, token);
  else if (name === 'events') events(response, board);
  else if (name === 'state') sendJson(response, 200, board.state);
  else if (name === 'form') sendJson(response, 200, formOf());
  else if (name === 'book') sendBook(response, board.book);
  else answer(response, 404, 'text/plain', 'nothing here\n');
}

async function handle(request: IncomingMessage, response: ServerResponse, site: Site, port: number): Promise<void> {
  const [path = ''] = (request.url ?? '').split('?');
  const [, given = '', name = '', ...more] = path.split('/');
  const { method } = request;
  if (!trusted(request, port)) answer(response, 403, 'text/plain', 'access refused\n');
  else if (method !== 'GET' && method !== 'POST')
    answer(response, 405, 'text/plain', 'only GET and POST are allowed\n', { Allow: 'GET, POST' });
  else if (!sameText(given, site.address) || more.length > 0) answer(response, 404, 'text/plain', 'nothing here\n');
  else if (method === 'GET') got(response, site, path.split('/').length === 3 ? name : undefined);
  else await posted(request, response, site, name);
}

export interface Running {
  readonly url: string;
  readonly port: number;
  close(): Promise<void>;
}

/**
 * Starts the server.
 * @param port 0 for any free one
 * @throws Stop when the port is taken or forbidden
 */
export async function serve(board: Board, desk: Desk, port: number): Promise<Running> {
  const random = (): string => randomBytes(24).toString('base64url');
  const site: Site = { board, desk, address: random(), token: random() };
  const server: Server = createServer((request, response) => {
    handle(request, response, site, (server.address() as AddressInfo).port).catch(() => response.destroy());
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const reason =
        error.code === 'EADDRINUSE'
          ? `port ${port} is in use`
          : error.code === 'EACCES'
            ? `you may not use port ${port}`
            : `port ${port} cannot be used: ${error.message}`;
      reject(stop(exitCode.wrongInput, 'usage', reason, 'give another --port, or leave it out for a free one'));
    });
    server.listen(port, loopback, resolve);
  });
  const taken = (server.address() as AddressInfo).port;
  return {
    url: `http://${loopback}:${taken}/${site.address}/`,
    port: taken,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
