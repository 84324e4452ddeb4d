import type { Fault, FaultCode, Place } from './types.js';
import { mostAlike } from './limits.js';

/** A length for a message: mm, to a micrometre. */
export function mm(value: number): string {
  return `${Number(value.toFixed(3))} mm`;
}

/** A place for a message. */
export function at({ x, y }: Place): string {
  return `at ${Number(x.toFixed(1))}, ${Number(y.toFixed(1))} mm`;
}

/** Collects the faults of one file or sheet; of many alike it tells the first ones and the number of the rest. */
export class FaultList {
  readonly #told: Fault[] = [];
  readonly #counts = new Map<FaultCode, number>();

  add(code: FaultCode, file: string, message: string, place?: Place): void {
    const count = (this.#counts.get(code) ?? 0) + 1;
    this.#counts.set(code, count);
    if (count > mostAlike) return;
    const told = `${file}: ${message}${place === undefined ? '' : `, ${at(place)}`}`;
    this.#told.push({
      code,
      file,
      message: told,
      ...(place === undefined ? {} : { place: { x: place.x, y: place.y } }),
    });
  }

  all(file: string): Fault[] {
    const more = [...this.#counts].flatMap(([code, count]): Fault[] =>
      count > mostAlike
        ? [{ code, file, message: `${file}: ${count - mostAlike} more faults of the kind "${code}"` }]
        : [],
    );
    return [...this.#told, ...more];
  }
}
