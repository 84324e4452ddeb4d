import { describe, expect, it } from 'vitest';
import { untimedLines } from '../../cli/sheet-table.js';
import { cutOf } from '../helpers/fixtures.js';

describe('the table of sheets', () => {
  it('says what a laser without stated speeds is needed for', async () => {
    // its sheets are for a router, its templates for a laser
    expect(untimedLines(await cutOf('press-house'))).toEqual([
      expect.stringMatching(/^The time of the laser for templates and gauges is not estimated: .* with its speeds\.$/),
    ]);
    expect(untimedLines(await cutOf('classroom'))).toEqual([
      expect.stringMatching(/^The time of the laser is not estimated/),
    ]);
  });
});
