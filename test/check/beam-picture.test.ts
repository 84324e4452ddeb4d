/** Pictures of sheets as a laser leaves them, drawn from the cut files and counted in pixels. */
import { Resvg } from '@resvg/resvg-js';
import { beforeAll, describe, expect, it } from 'vitest';
import { drawBeamCut } from '../../lib/check/index.js';
import { ringsOf } from '../../lib/part/index.js';
import type { Job } from '../../lib/pipeline/types.js';
import { cutOf } from '../helpers/fixtures.js';

const WIDE = 1500;
/** Of the design, mm. */
const KERF = 0.2;

const lasered = ({ sheets }: Job) => sheets.filter(({ cut }) => cut.process.kind === 'laser');

/** Share of the picture's pixels of about a colour. */
function shareOf(svg: string, [r, g, b]: readonly [number, number, number]): number {
  const { pixels, width, height } = new Resvg(svg, { fitTo: { mode: 'width', value: WIDE } }).render();
  let count = 0;
  for (let i = 0; i < pixels.length; i += 4)
    if (Math.abs(pixels[i]! - r) + Math.abs(pixels[i + 1]! - g) + Math.abs(pixels[i + 2]! - b) < 24) count += 1;
  return count / (width * height);
}

/** Area within a ring by the rule of Gauss over its chords, and of the segments between chord and arc. */
function areaOf(ring: readonly { x: number; y: number; bulge: number }[]): number {
  return Math.abs(
    ring.reduce((sum, a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const sweep = 4 * Math.atan(a.bulge);
      const radius = sweep === 0 ? 0 : Math.hypot(b.x - a.x, b.y - a.y) / (2 * Math.sin(sweep / 2));
      return sum + (a.x * b.y - b.x * a.y) / 2 + (radius ** 2 * (sweep - Math.sin(sweep))) / 2;
    }, 0),
  );
}

describe('what a laser leaves of a sheet', () => {
  let job: Job;
  beforeAll(async () => {
    job = await cutOf('table-top');
  });

  it('shows parts free and holes dark, each by its area', () => {
    for (const { file, nested } of lasered(job).filter((_, i) => i % 4 === 0)) {
      const svg = drawBeamCut(String(job.files.get(`${file}.svg`)), KERF).replace(/<path fill="none".*/, '');
      const sheet = nested.width * nested.height;
      const parts = nested.placed.map(({ part }) => job.parts.find(({ id }) => id === part)!);
      const [outlines, openings, holes] = [
        parts.reduce((sum, part) => sum + areaOf(part.outline), 0),
        parts.reduce(
          (sum, part) =>
            sum +
            ringsOf(part)
              .slice(1)
              .reduce((all, ring) => all + areaOf(ring), 0),
          0,
        ),
        parts.reduce(
          (sum, { holes: own }) => sum + own.reduce((all, { diameter }) => all + (Math.PI / 4) * diameter ** 2, 0),
          0,
        ),
      ];
      // lines a pixel or two wide go off the pale, at most a fortieth of the sheet
      const pale = shareOf(svg, [0xfd, 0xf6, 0xe6]);
      const whole = (outlines - openings - holes) / sheet;
      expect(pale, file).toBeLessThanOrEqual(whole + 0.002);
      expect(pale, file).toBeGreaterThan(whole - 0.025);
      const dark = shareOf(svg, [0x1f, 0x1a, 0x17]);
      expect(dark, file).toBeGreaterThan((openings + holes) / sheet);
      expect(dark, file).toBeLessThan((openings + holes) / sheet + 0.04);
    }
  });

  it('sees a part that is missing from the file', () => {
    const { file, nested } = lasered(job)[0]!;
    const text = String(job.files.get(`${file}.svg`));
    const without = text.replace(/<path d="[^"]*"[^>]*><title>rib[^<]*<\/title><\/path>/, '');
    const share = (one: string) => shareOf(drawBeamCut(one, KERF), [0xfd, 0xf6, 0xe6]);
    expect(without).not.toBe(text);
    const rib = job.parts.find(({ kind }) => kind === 'rib')!;
    const own = areaOf(rib.outline) - rib.holes.reduce((sum, { diameter }) => sum + (Math.PI / 4) * diameter ** 2, 0);
    const lost = ((share(text) - share(without)) * nested.width * nested.height) / own;
    // less the line round it
    expect(lost).toBeGreaterThan(0.85);
    expect(lost).toBeLessThan(1);
  });
});
