/** Heads of tool paths: whatever of them is changed by hand is found, however the machine has its comments written. */
import { describe, expect, it } from 'vitest';
import { proveFolder } from '../../lib/check/index.js';
import type { RouterMachine } from '../../lib/machining/index.js';
import { machineData } from '../helpers/router-sheets.js';
import { type Files, jobFor, laserJob, sheetFile, smallJob } from '../helpers/small-job.js';

const idsOf = (files: Files): string[] => proveFolder(files).faults.map(({ id }) => id);

/** The comments before the first words of a file. */
const headOf = (text: string): string[] => {
  const lines = text.split('\n').slice(1);
  return lines.slice(
    0,
    lines.findIndex((line) => !line.startsWith('(')),
  );
};

/** The job with one comment of the head of a file taken away, for each of them. */
function* beheaded(files: Files): Generator<{ readonly line: string; readonly ids: readonly string[] }> {
  const name = [...files.keys()].find((one) => one.endsWith('.ngc')) ?? '';
  const text = files.get(name) ?? '';
  for (const line of headOf(text)) {
    const changed = new Map(files).set(name, text.replace(`${line}\n`, ''));
    yield { line, ids: idsOf(changed).filter((id) => id.startsWith('head-')) };
  }
}

const machines: readonly (readonly [string, Partial<RouterMachine>])[] = [
  ['in inches, capitals and short lines', { programUnits: 'in', commentCharacters: 'capitals', commentLength: 48 }],
  ['with tools changed by hand', { toolChange: 'by-hand' }],
  ['with one tool a file', { toolChange: 'none', commentLength: 250 }],
];

describe('the head of a tool path', () => {
  it.each(machines)('%s is as the record has it', (_, changes) => {
    expect(idsOf(jobFor(machineData(changes)))).toEqual([]);
  });

  it.each([
    ['as it is', smallJob()],
    ['of a laser', laserJob()],
  ] as const)('%s lacks no comment unseen', (_, files) => {
    const heads = [...beheaded(files)];
    expect(heads.length).toBeGreaterThan(10);
    // how much a tool cuts and how long a file takes may be told in several comments; of a laser without speeds, nothing
    const unseen = heads.filter(({ ids }) => ids.length === 0).map(({ line }) => line);
    expect(unseen.filter((line) => !/^\(NOTE: The beam cuts/.test(line))).toEqual([]);
  });

  it.each([
    ['the job', '- test -', '- best -'],
    ['the sheet', `sheet ${sheetFile})`, 'sheet ply-2)'],
    ['the material', '(plywood, ', '(MDF, '],
    ['the thickness', ' x 6 mm)', ' x 9 mm)'],
    ['the unit', 'Millimetres.', 'Inches.'],
    ['the travel height', 'Travel at 10 mm', 'Travel at 30 mm'],
    ['the time', /About \d+ minutes/, 'About 90 minutes'],
    ['a caution', 'no gloves', 'gloves'],
    ['the order of its sentences', /(\(CAUTION: Dry[^)]*\)\n\([^)]*\)\n)(\(CAUTION: Check[^)]*\)\n)/, '$2$1'],
  ])('with %s changed is found', (_, from, to) => {
    const files = smallJob();
    const name = `${sheetFile}.ngc`;
    const text = files.get(name)!;
    const changed = text.replace(from, to);
    expect(changed).not.toBe(text);
    expect(idsOf(files.set(name, changed)).some((id) => id.startsWith('head-'))).toBe(true);
  });
});
