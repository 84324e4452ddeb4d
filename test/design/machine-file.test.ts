/** The machine in a file of its own. */
import { describe, expect, it } from 'vitest';
import { machineFileOf, readDesign } from '../../lib/design/index.js';
import { smallDish } from '../faults/small-dish.js';

const named = smallDish('job', 'machine: workshop/my-router.yaml');
const text = (machine: string) => readDesign(named, 'dish.yaml', { kind: 'text', text: machine });

describe('a design that names the file of its machine', () => {
  it('is known by it, and no other text is', () => {
    expect(machineFileOf(named)).toBe('workshop/my-router.yaml');
    for (const other of [smallDish('job'), smallDish('job', 'machine: { spinUp: 5 }'), '', ': [', '- a\n- b'])
      expect(machineFileOf(other)).toBeNull();
  });

  it('has what the file states, in its own unit, and every default', () => {
    const reading = text('units: in\ntoolChange: by-hand\nchangeHeight: 3\nparking: [1, 2]\n');
    if (reading.kind === 'refused') throw new Error(reading.problems.map(({ message }) => message).join());
    const { machine } = reading.design;
    expect([machine.toolChange, machine.parking]).toEqual(['by-hand', { x: 25.4, y: 50.8 }]);
    expect(machine.changeHeight).toBeCloseTo(76.2, 9);
    expect(machine.end).toBe('M2');
    // what is found later is placed in the machine's file as well
    const later = reading.locate({
      code: 'machine-place',
      severity: 'error',
      message: 'too low',
      place: { path: ['machine', 'changeHeight'] },
    });
    expect(later.place).toMatchObject({ file: 'workshop/my-router.yaml', line: 3 });
  });

  it.each([
    ['an unknown mode', 'spinUp: 5\npathMode: fast\n', 2, 'pathMode is "fast"'],
    ['an unknown key', '\n\ntoolchange: none\n', 3, 'unknown key "toolchange"'],
    ['a value out of range', 'decimals: 9', 1, 'decimals is 9'],
    ['no YAML', 'spinUp: [', 1, 'the bracket [ is not closed'],
    ['nothing', '', 1, 'empty'],
  ])('is refused for %s with the line of that file', (_, machine, line, message) => {
    const reading = text(machine);
    expect(reading.kind).toBe('refused');
    expect(reading.problems[0]?.message).toContain(message);
    expect(reading.problems[0]?.place).toMatchObject({ file: 'workshop/my-router.yaml', line });
  });

  it('is refused at its own key where the file is not there', () => {
    const missing = readDesign(named, 'dish.yaml');
    const line = named.split('\n').findIndex((one) => one.startsWith('machine:')) + 1;
    expect(missing.kind).toBe('refused');
    expect(missing.problems[0]?.place).toMatchObject({ file: 'dish.yaml', line });
  });
});
