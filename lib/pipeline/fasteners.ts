/** Fasteners as the record lists them. */
import type { Assembly } from '../assembly/index.js';
import type { JobRecord } from '../output/index.js';

/** The fasteners, what is alike in one entry. */
export function recordFasteners({ fasteners }: Pick<Assembly, 'fasteners'>): JobRecord['fasteners'] {
  const lines = new Map<string, JobRecord['fasteners'][number]>();
  for (const { joint, item } of fasteners) {
    const { kind, size, diameter, length } = item;
    const key = [joint, kind, size, length].join(' ');
    lines.set(key, { joint, item: kind, size, diameter, length, count: (lines.get(key)?.count ?? 0) + 1 });
  }
  return [...lines.values()];
}
