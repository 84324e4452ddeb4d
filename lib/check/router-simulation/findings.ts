import { maxAlike } from '../limits.js';
import { filled, type MessageId, messages, type MessageValues, type RouterMessageId } from '../messages/index.js';
import type { ProofPoint } from '../types.js';
import type { RouterFinding, FindingCode } from './types.js';

function moreOf(id: MessageId, code: FindingCode, count: number): RouterFinding {
  const what = filled(messages['more-alike'].text, { count, kind: id });
  return { code, id: 'more-alike', file: '', what, message: what };
}

/** Collects findings; of many alike it reports the first ones and the number of the rest. */
export class Findings {
  readonly #reported: RouterFinding[] = [];
  readonly #counts = new Map<RouterMessageId, number>();

  add<Id extends RouterMessageId>(
    id: Id,
    file: string,
    values: MessageValues<Id>,
    where: { line?: number; place?: ProofPoint } = {},
  ): void {
    const count = (this.#counts.get(id) ?? 0) + 1;
    this.#counts.set(id, count);
    if (count > maxAlike) return;
    const { line, place } = where;
    const { code, text } = messages[id];
    const what = filled(text, values);
    const spot = place === undefined ? '' : `, at ${Number(place.x.toFixed(1))}, ${Number(place.y.toFixed(1))} mm`;
    this.#reported.push({
      code,
      id,
      file,
      ...where,
      what,
      message: `${file}${line === undefined ? '' : `:${line}`}: ${what}${spot}`,
    });
  }

  all(): RouterFinding[] {
    const more = [...this.#counts].flatMap(([id, count]): RouterFinding[] =>
      count > maxAlike ? [moreOf(id, messages[id].code, count - maxAlike)] : [],
    );
    return [...this.#reported, ...more];
  }
}
