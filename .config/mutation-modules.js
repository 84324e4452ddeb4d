/** For each module of lib: the tests that have to notice a bug in it, and the score in per cent that it must reach. */
const own = (module, min, ...others) => [module, { tests: [`test/${module}`, ...others], min }];

export const modules = Object.fromEntries([
  own('units', 95),
  own('geometry', 95, 'test/properties/geometry.test.ts'),
  own('dish', 95),
  own('machining', 95),
  own('check', 95),
  own('design', 85),
  own('diagnostic', 85, 'test/design'),
  own('hardware', 85, 'test/assembly'),
  own('assembly', 85),
  ['part', { tests: ['test/sheet-marks.test.ts', 'test/parts', 'test/assembly'], min: 85 }],
  own('optics', 85),
  own('parts', 85),
  own('nest', 85),
  own('output', 85),
  own('pipeline', 85, 'test/pipeline.test.ts', 'test/output', 'test/check'),
]);
