import { Unreadable } from './drawn.js';
import { maxAlike } from './limits.js';
import { type FaultMessageId, filled, type MessageId, messages, type MessageValues } from './messages/index.js';
import type { Fault, FaultCode, ProofPoint } from './types.js';

/** A length for a message: mm, to a micrometre. */
export function mm(value: number): string {
  return `${Number(value.toFixed(3))} mm`;
}

/** A place for a message. */
function at({ x, y }: ProofPoint): string {
  return `at ${Number(x.toFixed(1))}, ${Number(y.toFixed(1))} mm`;
}

/** Collects the faults of one file or sheet; of many alike it reports the first ones and the number of the rest. */
export class FaultList {
  readonly #reported: Fault[] = [];
  readonly #counts = new Map<MessageId, number>();

  /** Reports a fault by its message of the catalogue. */
  add<Id extends FaultMessageId>(id: Id, file: string, values: MessageValues<Id>, place?: ProofPoint): void {
    const { code, text } = messages[id];
    this.take(code, id, file, filled(text, values), place);
  }

  /** Reports why a file cannot be read; throws every other error. */
  refuse(error: unknown, file: string): void {
    if (!(error instanceof Unreadable)) throw error;
    this.take('unreadable', error.id, file, error.message);
  }

  /** Reports a fault whose text is made already. */
  take(code: FaultCode, id: MessageId, file: string, text: string, place?: ProofPoint): void {
    const count = (this.#counts.get(id) ?? 0) + 1;
    this.#counts.set(id, count);
    if (count > maxAlike) return;
    const message = `${file}: ${text}${place === undefined ? '' : `, ${at(place)}`}`;
    this.#reported.push({
      code,
      id,
      file,
      message,
      ...(place === undefined ? {} : { place: { x: place.x, y: place.y } }),
    });
  }

  all(file: string): Fault[] {
    const more = [...this.#counts].flatMap(([id, count]): Fault[] => {
      if (count <= maxAlike) return [];
      const { code, text } = messages['more-alike'];
      return [
        { code, id: 'more-alike', file, message: `${file}: ${filled(text, { count: count - maxAlike, kind: id })}` },
      ];
    });
    return [...this.#reported, ...more];
  }
}
