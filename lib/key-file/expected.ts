/** What a file must read as after one key of it was changed: plain values, without any text. */
import type { KeySteps } from './stated.js';

type Keys = Readonly<Record<string, unknown>>;

const isKeys = (value: unknown): value is Keys => typeof value === 'object' && value !== null && !Array.isArray(value);

function setIn(raw: unknown, [step, ...rest]: KeySteps, value: unknown): unknown {
  if (step === undefined) return value;
  if (typeof step === 'number') {
    const list: readonly unknown[] = Array.isArray(raw) ? raw : [];
    const next = setIn(list[step], rest, value);
    return step < list.length ? list.map((one, i) => (i === step ? next : one)) : [...list, next];
  }
  const keys = isKeys(raw) ? raw : {};
  return { ...keys, [step]: setIn(keys[step], rest, value) };
}

function removeIn(raw: unknown, [step, ...rest]: KeySteps): unknown {
  if (step === undefined) return undefined;
  if (Array.isArray(raw)) {
    const list: readonly unknown[] = raw;
    const left = list.flatMap((one, i) => {
      if (i !== step) return [one];
      const inner = removeIn(one, rest);
      return inner === undefined ? [] : [inner];
    });
    return left.length === 0 ? undefined : left;
  }
  if (!isKeys(raw)) return raw;
  const left = Object.entries(raw).flatMap(([key, one]) => {
    if (key !== step) return [[key, one] as const];
    const inner = removeIn(one, rest);
    return inner === undefined ? [] : [[key, inner] as const];
  });
  return left.length === 0 ? undefined : Object.fromEntries(left);
}

/** @param value undefined takes the key out, with the sections that are left without any */
export const expectedOf = (raw: unknown, path: KeySteps, value: unknown): unknown =>
  value === undefined ? removeIn(raw, path) : setIn(raw, path, value);
