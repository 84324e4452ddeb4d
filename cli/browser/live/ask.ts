/** Asks the command to do something: with the token of this page, which no other page has. */
import type { DraftLine } from '../../watch/shown.js';

export interface Answer {
  readonly kind?: 'done' | 'conflict' | 'refused';
  readonly message?: string;
  readonly remedy?: string;
  readonly merged?: boolean;
  /** Of the file as it was written. */
  readonly revision?: string;
  readonly theirs?: string | null;
}

/** What is wrong and how to fix it, in one sentence. */
export const sentence = ({ message = '', remedy }: Pick<Answer, 'message' | 'remedy'>): string =>
  remedy === undefined ? message : `${message}; ${remedy}`;

const token = document.body.dataset['token'] ?? '';

const post = (name: string, body: object): Promise<Response> =>
  fetch(name, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', 'X-Dishwright-Token': token },
    body: JSON.stringify(body),
  });

/** @returns what came of it; a refusal in words where the command is gone */
export async function ask(name: string, body: object = {}): Promise<Answer> {
  try {
    const response = await post(name, body);
    const type = response.headers.get('content-type') ?? '';
    if (type.startsWith('application/json')) return (await response.json()) as Answer;
    return { kind: 'refused', message: (await response.text()).trim(), remedy: 'reload the page' };
  } catch {
    return { kind: 'refused', message: 'the command has ended', remedy: 'start it again' };
  }
}

/** Asks what an edit would come to; `take` is given each step. */
export async function askDraft(
  edits: readonly { readonly path: readonly (string | number)[]; readonly value: string }[],
  take: (line: DraftLine) => void,
): Promise<void> {
  const response = await post('draft', { edits });
  const reader = response.body?.getReader();
  if (!response.ok || !reader) return;
  const decoder = new TextDecoder();
  let pending = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    const lines = (pending + decoder.decode(value, { stream: true })).split('\n');
    pending = lines.pop() ?? '';
    for (const line of lines) take(JSON.parse(line) as DraftLine);
  }
}
