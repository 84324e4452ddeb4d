import { describe, expect, it } from 'vitest';
import { readDesign } from '../lib/design/index.js';
import { diagnosticText } from '../lib/diagnostic/index.js';
import { nest } from '../lib/nest/index.js';
import { countedStock, nestPrepared, prepare, stockProblems } from '../lib/index.js';
import { changed } from './helpers/changed.js';
import { designOf } from './helpers/fixtures.js';

const ribStock = 'birch12, size: 2440 x 1220';

function problemsWith(from: string | RegExp, to: string) {
  const text = changed('press-house', from, to);
  const reading = readDesign(text, 'own.yaml');
  if (reading.kind === 'refused') throw new Error(reading.problems.map(diagnosticText).join('\n'));
  return stockProblems(prepare(reading.design)).map(reading.locate);
}

/** The sheet that a diagnostic advises, as numbers in mm. */
function advised(text: string): { readonly width: number; readonly height: number } {
  const [, width, height] = /a sheet of ([\d.]+) mm x ([\d.]+) mm would be large enough/.exec(text) ?? [];
  return { width: Number(width), height: Number(height) };
}

describe('stock that is too little', () => {
  it('is not found where there is enough', () => {
    expect(stockProblems(prepare(designOf(changed('press-house', 'name: Press', 'name: A press'))))).toEqual([]);
  });

  it('is found without nesting where a material has none, with every part that needs it, at the material', () => {
    const [problem, ...more] = problemsWith(/\n.*birch12, size.*/, '');
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ code: 'no-stock-for-group', place: { line: 12 } });
    expect(problem?.message).toContain('24 x rib (rib), 4 x hub layer (hub)');
  });

  it('is found where a part is larger than all its sheets, at that stock', () => {
    const [problem] = problemsWith(ribStock, 'birch12, size: 700 x 200');
    expect(problem).toMatchObject({ code: 'larger-than-stock', place: { line: 19 } });
  });

  it('is found by area where its count is far too small, at the count', () => {
    const [problem] = problemsWith(ribStock, 'birch12, size: 800 x 300, count: 2');
    expect(problem).toMatchObject({ code: 'stock-used-up', value: 2, place: { path: ['stock', 0, 'count'] } });
  });

  it('is found by the nest where its count is a little too small', async () => {
    const counted = countedStock(prepare(designOf(changed('press-house', ribStock, `${ribStock}, count: 1`))));
    expect(counted.requests.flatMap(({ parts }) => parts.map(({ group }) => group))).toEqual(['birch12', 'birch12']);
    const quick = {
      ...counted,
      requests: counted.requests.map((one) => ({ ...one, options: { ...one.options, effort: 0 } })),
    };
    expect((await nestPrepared(quick)).problems.map(({ code }) => code)).toContain('stock-used-up');
  });

  it('is found where an offcut crosses itself', () => {
    const bow = 'birch12, outline: [[0, 0], [2000, 1000], [2000, 0], [0, 900]]';
    expect(problemsWith(ribStock, bow)).toMatchObject([
      { code: 'stock-outline', place: { path: ['stock', 0, 'outline'], line: 19 } },
    ]);
  });
});

describe('the sheet that would do', () => {
  const ribsOn = (width: number, height: number) => {
    const design = designOf(changed('press-house', ribStock, `birch12, size: ${width} x ${height}`));
    const [request] = prepare(design).requests;
    if (!request) throw new Error('nothing to nest');
    const parts = request.parts.filter(({ group }) => group === 'birch12');
    return nest(parts, request.stock, { ...request.options, effort: 0 }).unplaced;
  };

  it.each([
    ['without any stock', /\n.*birch12, size.*/, ''],
    ['for parts larger than their sheets', ribStock, 'birch12, size: 700 x 200'],
  ])('does, and one 2 mm smaller does not: %s', (_, from, to) => {
    const { width, height } = advised(diagnosticText(problemsWith(from, to)[0]!));
    expect(ribsOn(width, height)).toEqual([]);
    expect(ribsOn(width - 2, height)).not.toEqual([]);
    expect(ribsOn(width, height - 2)).not.toEqual([]);
  });
});
