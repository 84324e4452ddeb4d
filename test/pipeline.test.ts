import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { proveFolder } from '../lib/check/index.js';
import { type Job } from '../lib/index.js';
import { cutOf, fixtureNames, jobOf } from './helpers/fixtures.js';

/** Area of a ring by the shoelace formula, arcs as circular segments: (r²/2)(θ − sin θ). */
function area(ring: readonly { x: number; y: number; bulge: number }[]): number {
  return ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length];
    if (!b) return sum;
    const chord = (a.x * b.y - b.x * a.y) / 2;
    if (a.bulge === 0) return sum + chord;
    const sweep = 4 * Math.atan(a.bulge);
    const radius = Math.hypot(b.x - a.x, b.y - a.y) / (2 * Math.sin(Math.abs(sweep) / 2));
    return sum + chord + (radius ** 2 / 2) * (sweep - Math.sin(sweep));
  }, 0);
}

describe.each(fixtureNames)('%s', (name) => {
  let job: Job;
  beforeAll(async () => {
    // one nested as `cut` does, the others at random
    job = await (name === 'press-house' ? jobOf(name) : cutOf(name));
  });

  it('gets every part onto sheets, without an error', () => {
    expect(job.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    for (const part of job.parts) {
      const copies = job.sheets.flatMap(({ nested }) => nested.placed.filter((placed) => placed.part === part.id));
      expect(copies.map(({ copy }) => copy).sort((a, b) => a - b)).toEqual(
        Array.from({ length: part.quantity }, (_, i) => i + 1),
      );
    }
  });

  it.runIf(name === 'press-house')('needs no more sheets of each stock than area allows plus one', () => {
    for (const stock of job.design.stock) {
      if (!stock.size) continue;
      const own = job.sheets.filter(({ nested }) => nested.stock === stock.id);
      const needed = job.parts
        .filter(({ material }) => material === stock.material)
        .reduce((sum, part) => sum + part.quantity * area(part.outline), 0);
      const usable = (stock.size.width - 2 * stock.margin) * (stock.size.height - 2 * stock.margin);
      expect(own.length).toBeLessThanOrEqual(Math.ceil(needed / usable) + 1);
    }
  });

  it('proves right when its files are read back', () => {
    const proof = proveFolder(job.files);
    expect(proof.faults.map(({ message }) => message)).toEqual([]);
    for (const sheet of proof.sheets) {
      expect(sheet.worstInward?.mm ?? 0).toBeLessThan(0.02);
      expect(sheet.worstOutward?.mm ?? 0).toBeLessThan(0.02);
    }
  });

  it('says which program made the record', () => {
    const manifest = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
      version: string;
    };
    const record = JSON.parse(String(job.files.get('job.json'))) as { version: string; units: string };
    expect(record).toMatchObject({ version: manifest.version, units: 'mm' });
  });
});
