import { mostAlike } from '../limits.js';
import type { Place } from '../types.js';
import type { Finding, FindingCode } from './types.js';

function moreOf(code: FindingCode, count: number): Finding {
  const what = `${count} more findings of the kind "${code}"`;
  return { code, file: '', what, message: what };
}

/** Collects findings; of many alike it tells the first ones and the number of the rest. */
export class Findings {
  readonly #told: Finding[] = [];
  readonly #counts = new Map<FindingCode, number>();

  add(code: FindingCode, file: string, message: string, where: { line?: number; place?: Place } = {}): void {
    const count = (this.#counts.get(code) ?? 0) + 1;
    this.#counts.set(code, count);
    if (count > mostAlike) return;
    const { line, place } = where;
    const spot = place === undefined ? '' : `, at ${Number(place.x.toFixed(1))}, ${Number(place.y.toFixed(1))} mm`;
    this.#told.push({
      code,
      file,
      ...where,
      what: message,
      message: `${file}${line === undefined ? '' : `:${line}`}: ${message}${spot}`,
    });
  }

  all(): Finding[] {
    const more = [...this.#counts].flatMap(([code, count]): Finding[] =>
      count > mostAlike ? [moreOf(code, count - mostAlike)] : [],
    );
    return [...this.#told, ...more];
  }
}
