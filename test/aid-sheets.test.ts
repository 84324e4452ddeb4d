/** Sheets for templates, gauges and jigs, and the prints of what is cut by hand. */
import { describe, expect, it } from 'vitest';
import { bounds, placeVertices } from '../lib/geometry/index.js';
import { prepare } from '../lib/pipeline.js';
import { aidSheets } from '../lib/pipeline/aids.js';
import { printedParts } from '../lib/pipeline/prints.js';
import { allFixtureNames, designOf, fixture, fixtureText } from './helpers/fixtures.js';

/** Sheets by what the template's material is cut from: bed or stock. The demo's eleven aids do not fit one bed. */
const sheetCounts = {
  'press-house': 2,
  'table-top': 1,
  'hand-cut-inch': 1,
  classroom: 1,
  'village-bakery': 1,
  porch: 1,
  'cider-yard': 1,
} as const;

describe.each(allFixtureNames)('the aids of %s', (name) => {
  const { design, aids } = prepare(fixture(name));
  const sheets = aidSheets(design, aids);

  it('are all on sheets, each piece once', () => {
    expect(sheets).toHaveLength(sheetCounts[name]);
    const placed = sheets.flatMap(({ nested }) => nested.placed.map(({ part, copy }) => `${part} ${copy}`));
    const pieces = aids.flatMap(({ id, quantity }) => Array.from({ length: quantity }, (_, i) => `${id} ${i + 1}`));
    expect([...placed].sort()).toEqual([...pieces].sort());
  });

  it('lie within bed or stock and its margin', () => {
    for (const { nested, cut } of sheets) {
      const { bed } = design.template;
      if (bed) expect(nested).toMatchObject(bed);
      for (const at of nested.placed) {
        const aid = aids.find(({ id }) => id === at.part);
        const box = bounds(placeVertices(aid?.outline ?? [], at));
        expect(Math.min(box.minX, box.minY)).toBeGreaterThanOrEqual(cut.margin - 1e-6);
        expect(box.maxX).toBeLessThanOrEqual(nested.width - cut.margin + 1e-6);
        expect(box.maxY).toBeLessThanOrEqual(nested.height - cut.margin + 1e-6);
      }
    }
  });
});

it('an aid that is larger than the bed gets a sheet of its own size', () => {
  // the jig for the board of the demo is 485 mm long, the templates are split for the bed
  const { design, aids } = prepare(designOf(fixtureText('press-house').replace('bed: 900 x 600', 'bed: 400 x 300')));
  const sheets = aidSheets(design, aids);
  const own = sheets.filter(({ nested }) => nested.width !== 400);
  expect(own.flatMap(({ nested }) => nested.placed.map(({ part }) => part))).toContain('jig-board');
  expect(new Set(sheets.map(({ file }) => file)).size).toBe(sheets.length);
});

describe('prints of parts', () => {
  it.each([
    ['press-house', ['reflector']],
    ['hand-cut-inch', ['hub', 'board', 'panel', 'reflector']],
    ['classroom', ['reflector']],
    ['village-bakery', ['hub', 'board-1', 'board-2', 'board-3', 'board-4', 'splice', 'panel', 'reflector']],
  ] as const)('of %s are those of hub, board, panels and strips that are cut by hand', (name, ids) => {
    expect(printedParts(prepare(fixture(name))).map(({ id }) => id)).toEqual(ids);
  });

  it('are on A4, and on Letter in an inch design', () => {
    expect(fixture('press-house').print.paper).toBe('a4');
    expect(fixture('hand-cut-inch').print.paper).toBe('letter');
  });
});
