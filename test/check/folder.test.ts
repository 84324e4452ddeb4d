/** Faults planted in a folder and in its record, each of which the proof has to name. */
import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkIntegrity } from '../../lib/check/integrity.js';
import { parseRecord } from '../../lib/check/job-reader.js';
import { checkRecord } from '../../lib/check/record.js';
import { type FolderFiles, proveFolder } from '../../lib/check/index.js';
import { jobOf } from '../helpers/fixtures.js';

type Files = ReadonlyMap<string, string | Uint8Array>;

const messagesOf = (files: FolderFiles): string[] => {
  const text = String(files.get('job.json'));
  const record = parseRecord(text);
  return [...checkRecord(record), ...checkIntegrity(files, text, record)].map(({ message }) => message);
};

/** Node's own SHA-256, which the hashes of the record have to agree with. */
const sha256 = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex');

describe('a written folder', () => {
  let written: Files;
  beforeAll(async () => {
    written = (await jobOf('press-house')).files;
  });

  const changed = (name: string, change: (text: string) => string): Files => {
    const before = written.get(name);
    if (typeof before !== 'string') throw new Error(`${name} is no text of the folder`);
    const after = change(before);
    expect(after, `nothing planted in ${name}`).not.toBe(before);
    return new Map([...written, [name, after]]);
  };
  /** The record changed by somebody who knows how to close it again. */
  const resealed = (change: (record: Record<string, never>) => void): Files => {
    const record = JSON.parse(String(written.get('job.json'))) as Record<string, never>;
    change(record);
    const open = JSON.stringify({ ...record, recordHash: '0'.repeat(64) }, null, 1);
    return new Map([...written, ['job.json', open.replace('0'.repeat(64), sha256(open))]]);
  };

  it('proves, and lists every file with its SHA-256', () => {
    expect(proveFolder(written).faults).toEqual([]);
    const { files } = JSON.parse(String(written.get('job.json'))) as { files: { name: string; sha256: string }[] };
    expect(Object.fromEntries(files.map((file) => [file.name, file.sha256]))).toEqual(
      Object.fromEntries(
        [...written].flatMap(([name, content]) => (name === 'job.json' ? [] : [[name, sha256(content)]])),
      ),
    );
  });

  it('proves when it is closed again unchanged', () => {
    expect(messagesOf(resealed(() => undefined))).toEqual([]);
  });

  describe.each([
    [
      'cut-list.csv',
      'a value',
      (text: string) => text.replace(/\d(?=\D*$)/, (digit) => String((Number(digit) + 1) % 10)),
    ],
    [
      'marking-out.csv',
      'a value',
      (text: string) => text.replace(/\d(?=\D*$)/, (digit) => String((Number(digit) + 1) % 10)),
    ],
    ['book.html', 'cautions removed', (text: string) => text.replace(/burn skin/gi, 'please')],
    ['book.html', 'a script put in', (text: string) => text.replace('</body>', '<script>alert(1)</script></body>')],
  ])('%s with %s', (name, _, change) => {
    it('is found', () => {
      expect(
        messagesOf(changed(name, change)).filter((message) => message.startsWith(`${name}: it has been changed`)),
      ).toHaveLength(1);
    });
  });

  const prints = (): string[] => [...written.keys()].filter((name) => name.endsWith('.pdf'));

  it('is found at fault when a print was scaled, cut short, swapped or taken away', () => {
    const [one = '', two = ''] = prints();
    const bytes = written.get(one) as Uint8Array;
    const flipped = Uint8Array.from(bytes, (byte, i) => (i === bytes.length >> 1 ? byte ^ 1 : byte));
    expect(messagesOf(new Map([...written, [one, flipped]]))).toEqual([
      `${one}: it has been changed since it was written: same size, different content`,
    ]);
    expect(messagesOf(new Map([...written, [one, bytes.slice(0, -100)]]))).toEqual([
      `${one}: it has been changed since it was written: ${bytes.length - 100} bytes, not ${bytes.length}`,
    ]);
    const swapped = messagesOf(new Map([...written, [one, written.get(two) ?? ''], [two, bytes]]));
    expect(swapped.map((message) => message.split(':')[0]).sort()).toEqual([one, two].sort());
    const without = new Map(written);
    without.delete(one);
    expect(messagesOf(without)).toEqual([`${one}: the file is missing`]);
  });

  it.each(['sheets/birch12-sheet-9.ngc', 'sheets/old.nc', 'other.dxf', 'templates/rib.pdf', 'notes.json'])(
    'is found at fault when %s stands in it, which does not belong to this job',
    (name) => {
      expect(messagesOf(new Map([...written, [name, 'G0 X1']]))).toContain(
        `${name}: the record does not name this file: it belongs to another job; do not cut from it`,
      );
    },
  );

  it('says once that a sheet is missing, and is not proven', () => {
    const without = new Map(written);
    const name = [...written.keys()].find((file) => file.endsWith('.dxf')) ?? '';
    without.delete(name);
    const proof = proveFolder(without);
    expect(proof.faults.map(({ message }) => message)).toEqual([`${name}: the file is missing`]);
    expect(proof.ok).toBe(false);
  });

  it.each([
    ['a warning', (text: string) => text.replace(/("severity": ")warning"/, '$1note"')],
    [
      'a watt',
      (text: string) =>
        text.replace(/("powerW": )(\d)/i, (_, key: string, digit: string) => `${key}${(Number(digit) % 9) + 1}`),
    ],
    ['the list of files', (text: string) => text.replace(/"files": \[/, '"none": [')],
    ['its own hash', (text: string) => text.replace(/"recordHash": "../, '"recordHash": "zz')],
  ])('is found at fault when %s of its record is changed', (_, change) => {
    expect(messagesOf(changed('job.json', change)).filter((message) => message.startsWith('job.json: it'))).not.toEqual(
      [],
    );
  });

  interface Loose {
    [key: string]: Loose;
  }
  const set = (path: string, value: (before: number) => unknown) => (record: Record<string, never>) => {
    const keys = path.split('.');
    const last = keys.pop() ?? '';
    let at = record as unknown as Loose;
    for (const key of keys) at = at[key] as Loose;
    (at as Record<string, unknown>)[last] = value(at[last] as unknown as number);
  };

  it.each([
    [
      'dish.profile.focusHeight',
      (mm: number) => mm + 1,
      'the dish has a focal length of 551 mm, but 550 mm in the design',
    ],
    [
      'design.dish.focalLength',
      (mm: number) => mm + 1,
      'the dish has a focal length of 550 mm, but 551 mm in the design',
    ],
    ['design.dish.aperture', (mm: number) => mm + 2, 'the dish has a radius of 750 mm, but 751 mm in the design'],
    ['design.dish.baseHeight', (mm: number) => mm + 1, 'the dish has a base height of 60 mm, but 61 mm in the design'],
    ['dish.depth', (mm: number) => mm + 1, 'the dish has a depth of 256.682 mm, but 255.682 mm in the design'],
    ['design.dish.ribs', (count: number) => count - 1, 'the number of ribs of the dish is 24, but 23 in the design'],
    ['dish.ribThickness', (mm: number) => mm - 0.4, 'the ribs have a thickness of 11.6 mm, but 12 mm in the design'],
    ['parts.1.thickness', (mm: number) => mm + 0.5, 'part "hub" has a thickness of 12.5 mm, but 12 mm in the design'],
    ['parts.0.quantity', (count: number) => count + 1, 'the number of ribs to be made is 25, but 24 in the design'],
    [
      'sheets.0.router.limits.overcut',
      (mm: number) => mm + 1,
      'sheets/birch12-sheet-1: the overcut is 1.3 mm, but 0.3 mm in the design',
    ],
    [
      'sheets.0.router.limits.thickness',
      (mm: number) => mm + 1,
      'sheets/birch12-sheet-1: the material has a thickness of 13 mm, but 12 mm in the design',
    ],
    [
      'sheets.0.router.limits.markDepth',
      (mm: number) => mm + 1,
      'sheets/birch12-sheet-1: the depth of marks is 1.3 mm, but 0.3 mm in the design',
    ],
    ['sheets.0.margin', (mm: number) => mm - 5, 'sheets/birch12-sheet-1: the margin is 5 mm, but 10 mm in the design'],
    [
      'sheets.0.width',
      (mm: number) => mm + 10,
      'sheets/birch12-sheet-1: the sheet has a width of 2450 mm, but 2440 mm in the design',
    ],
    ['process.toolDiameter', (mm: number) => mm + 0.35, 'the tool has a diameter of 6.35 mm, but 6 mm in the design'],
    [
      'sheets.0.router.limits.machine.spinUp',
      (seconds: number) => seconds - 2,
      'sheets/birch12-sheet-1: machine.spinUp differs from the design',
    ],
    ['process.kind', () => 'laser', 'sheets/birch12-sheet-1 is cut by laser, but by router in the design'],
    ['seed', (seed: number) => seed + 1, 'the seed of the nest is 2, but 1 in the design'],
    [
      'offcuts',
      () => [{ sheet: 'sheets/birch12-sheet-1', x: 2000, y: 0, width: 500, height: 1220 }],
      'the offcut of sheets/birch12-sheet-1 reaches beyond the sheet',
    ],
    [
      'offcuts',
      () => [{ sheet: 'sheets/none', x: 0, y: 0, width: 500, height: 1220 }],
      'an offcut is listed for sheets/none, which is not a sheet',
    ],
    ['design.dish', () => 1, /design\.dish: .*expected object/],
  ] as const)('is found at fault when %s does not follow from the design', (path, value, message) => {
    const found = messagesOf(resealed(set(path, value)));
    expect(found).toContainEqual(
      typeof message === 'string' ? `job.json: ${message}` : (expect.stringMatching(message) as string),
    );
  });
});
