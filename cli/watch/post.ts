/** What the page asks to be done: JSON of its own origin, with the token that stands in the page alone. */
import type { IncomingMessage } from 'node:http';
import { createHash, timingSafeEqual } from 'node:crypto';

/** An edit is a line; a file of keys is 64 KB at most (bytes). */
const largestBody = 96 * 1024;

/** Compares without giving away by the time it takes how much is right. */
export const sameText = (a: string, b: string): boolean => {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(a), digest(b));
};

/** Why a request is not taken. */
export interface Barred {
  readonly kind: 'barred';
  readonly status: number;
  readonly why: string;
}

const bar = (status: number, why: string): Barred => ({ kind: 'barred', status, why });

/** Held against a request before a byte of it is read. */
export function barred({ headers }: IncomingMessage, token: string): Barred | null {
  const { host = '', origin } = headers;
  if (origin !== `http://${host}`) return bar(403, 'only the page itself may send requests');
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin') return bar(403, 'only the page itself may send requests');
  const given = headers['x-dishwright-token'];
  if (typeof given !== 'string' || !sameText(given, token)) return bar(403, 'the token is missing');
  if (!/^application\/json(?:;|$)/.test(headers['content-type'] ?? '')) return bar(415, 'JSON is required');
  if (Number(headers['content-length'] ?? 0) > largestBody) return bar(413, 'too large');
  return null;
}

/** The JSON object of a request, or why there is none. */
export function bodyOf(request: IncomingMessage): Promise<{ readonly kind: 'body'; readonly body: object } | Barred> {
  return new Promise((resolve) => {
    let length = 0;
    const pieces: Buffer[] = [];
    request.on('data', (piece: Buffer) => {
      length += piece.length;
      if (length <= largestBody) pieces.push(piece);
      else resolve(bar(413, 'too large'));
    });
    request.on('error', () => resolve(bar(400, 'the request was broken off')));
    request.on('end', () => {
      try {
        const value: unknown = JSON.parse(Buffer.concat(pieces).toString('utf8'));
        const isObject = typeof value === 'object' && value !== null && !Array.isArray(value);
        resolve(isObject ? { kind: 'body', body: value } : bar(400, 'an object is required'));
      } catch {
        resolve(bar(400, 'this is not JSON'));
      }
    });
  });
}
