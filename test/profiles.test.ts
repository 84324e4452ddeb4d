/** The dishes that are no shallow paraboloid, from the design file to the proof of the files. */
import { beforeAll, describe, expect, it } from 'vitest';
import { edgesOfPath, type Path, pointOnEdge, tangentOnEdge } from '../lib/geometry/index.js';
import { verify } from '../lib/check/index.js';
import { buildJob } from '../lib/pipeline.js';
import type { Job } from '../lib/pipeline/types.js';
import { dayRays, designOf, fixtureText } from './helpers/fixtures.js';
import { textsOf } from './helpers/jobs.js';
import { deepText, spreadText } from './helpers/other-dishes.js';
import { randomNester } from './helpers/random-nester.js';
import { readDesign } from '../lib/design/index.js';

/** Places along the curve of a gauge's lower edge, with the direction there. */
function curveOf(job: Job, id: string): { x: number; y: number; slope: number }[] {
  const gauge = job.aids.find((aid) => aid.id === id)!;
  const run = gauge.edges.find(({ role }) => role === 'optical')!;
  const path: Path = gauge.outline.slice(run.from, run.to + 2);
  return edgesOfPath(path).flatMap((edge) =>
    [0.1, 0.5, 0.9].map((share) => {
      const tangent = tangentOnEdge(edge, share);
      return { ...pointOnEdge(edge, share), slope: tangent.y / tangent.x };
    }),
  );
}

describe.each([
  ['spread', spreadText],
  ['deep', deepText],
])('the %s dish', (name, text) => {
  let job: Job;
  let files: Map<string, string>;
  beforeAll(async () => {
    // no bed, so that the gauges stay whole
    job = await buildJob(designOf(text.replace(', bed: 900 x 600', '')), new Map(), randomNester(1), dayRays);
    files = textsOf(job);
  });

  it('gets every part onto sheets and every aid a file, without an error', () => {
    expect(job.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    for (const { id, quantity } of job.parts)
      expect(job.sheets.flatMap(({ nested }) => nested.placed.filter(({ part }) => part === id))).toHaveLength(
        quantity,
      );
    for (const aid of [
      'template',
      'gauge-rib',
      'gauge-seam',
      'gauge-panel',
      'focal-stick',
      'focal-stick-foot',
      'rim-spacer-1',
      'rim-spacer-2',
      'jig-hub',
    ])
      expect(job.aidSheets.flatMap(({ nested }) => nested.placed.map(({ part }) => part))).toContain(aid);
  });

  it('proves right when its files are read back', () => {
    expect(verify(files).faults.map(({ message }) => message)).toEqual([]);
  });

  it('has a forecast that puts the light on the vessel, and a book with its values', () => {
    expect(job.forecast!.vessel!.intercept.value).toBeGreaterThan(0.9);
    const book = files.get('book.html')!;
    expect(book.includes(name === 'spread' ? 'Height of the lit disc' : 'Focal length')).toBe(true);
    expect(book.includes(name === 'spread' ? '550 mm' : '180 mm')).toBe(true);
    const page = book.replace(/<script[\s\S]*?<\/script>/g, '');
    expect(/.{0,40}(?:NaN|Infinity|undefined).{0,40}/.exec(page)?.[0]).toBeUndefined();
  });

  it('has a gauge for the panels’ middle that sends the light where it shall go (law of reflection)', () => {
    const { profile, baseHeight, apertureRadius } = job.dish;
    const to = (x: number) =>
      name === 'spread' ? (x * Math.sqrt(130 ** 2 - (750 * Math.sin(Math.PI / 24)) ** 2)) / 750 : 0;
    const places = curveOf(job, 'gauge-panel');
    expect(Math.max(...places.map(({ x }) => x))).toBeGreaterThan(0.97 * apertureRadius);
    for (const { x, y, slope } of places) {
      // the line from the mirror to where the ray is to go leans by twice the slope
      const rise = profile.focusHeight - (y - baseHeight);
      const turn = 2 * Math.atan(slope);
      const misses = (x - to(x)) * Math.cos(turn) - rise * Math.sin(turn);
      // arcs within 0.01 mm of the curve lean by a few tenths of a milliradian
      expect(Math.abs(misses)).toBeLessThan(1.2);
    }
  });

  it('has ribs as high at the rim as the gauge says, less the facing', () => {
    const { rimEndHeight, baseHeight, depth, facingThickness, rimSlopeAngle } = job.dish;
    expect(rimEndHeight).toBeLessThan(baseHeight + depth);
    expect(rimEndHeight).toBeGreaterThan(baseHeight + depth - (facingThickness + 6) / Math.cos(rimSlopeAngle) - 6);
  });
});

describe('a design that a profile cannot serve', () => {
  const messages = (text: string) => {
    const reading = readDesign(text);
    return reading.problems.map(({ code, place }) => `${code} ${place?.path.join('.') ?? ''}`);
  };

  it.each([
    ['no vessel', spreadText.replace(/^vessel:.*\nload:.*\n/m, ''), 'profile dish.profile'],
    ['panels wider than the vessel', spreadText.replace('ribs: 24', 'ribs: 16'), 'profile dish.ribs'],
    [
      'a disc half as wide as the dish',
      spreadText.replace('profile: spread', 'profile: spread\n  spreadRadius: 400'),
      'profile dish.spreadRadius',
    ],
    [
      'a rim steeper than 70°',
      fixtureText('press-house').replace('focalLength: 550', 'focalLength: 136'),
      'focal-length dish.focalLength',
    ],
  ])('is refused at the key: %s', (_, text, expected) => {
    expect(messages(text)).toContain(expected);
  });

  it('is taken without a vessel where the radius is stated', () => {
    const text = spreadText
      .replace(/^vessel:.*\nload:.*\n/m, '')
      .replace('profile: spread', 'profile: spread\n  spreadRadius: 80');
    expect(designOf(text).dish.spreadRadius).toBe(80);
  });
});
