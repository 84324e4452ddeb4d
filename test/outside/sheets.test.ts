/** Sheets of random jobs in the eyes of other programs: ezdxf, an XML parser, two renderers of SVG, and shapely. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import type { Browser } from 'playwright-core';
import { SaxesParser } from 'saxes';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ProofEdge, pointAlong } from '../../lib/check/edge.js';
import { verify } from '../../lib/check/index.js';
import { widthOfCut, placePart, processOf } from '../../lib/check/nominal.js';
import type { Line } from '../../lib/check/ring.js';
import { seedFrom } from '../helpers/seeds.js';
import { launch } from '../helpers/browser.js';
import { makeRandom, type OneSheet, singleSheets } from '../helpers/jobs.js';

const firstSeed = seedFrom(500);
const jobs = 6;

const texts: { name: string; text: string }[] = [];
const sheets: OneSheet[] = [];
let folder = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'sheets-'));
  for (let seed = firstSeed, made = 0; made < jobs; seed += 1) {
    const job = await makeRandom(seed);
    if (job.kind === 'refused') continue;
    made += 1;
    expect(verify(job.files).faults.slice(0, 3), `seed ${seed}`).toEqual([]);
    for (const [name, text] of job.files)
      if (/\.(?:dxf|svg)$/.test(name)) texts.push({ name: `${seed}-${name.replaceAll('/', '-')}`, text });
    sheets.push(...singleSheets(job.files));
  }
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function python(script: string, ...args: string[]): unknown {
  const out = execFileSync('/usr/bin/python3', ['-c', script, ...args], { encoding: 'utf8', maxBuffer: 1 << 28 });
  return JSON.parse(out);
}

describe('every DXF', () => {
  it('passes the audit of ezdxf without a fix', () => {
    const files = texts.filter(({ name }) => name.endsWith('.dxf'));
    for (const { name, text } of files) writeFileSync(join(folder, name), text);
    const script = `
import json, sys
import ezdxf
faults = []
for name in sys.argv[1:]:
    doc = ezdxf.readfile(name)
    audit = doc.audit()
    faults += [f'{name}: {error.message}' for error in audit.errors + audit.fixes]
    if doc.units != ezdxf.units.MM:
        faults.append(f'{name}: not in mm')
print(json.dumps(faults))
`;
    expect(files.length).toBeGreaterThan(jobs);
    expect(python(script, ...files.map(({ name }) => join(folder, name)))).toEqual([]);
  });
});

/** Bits of the pixels that are drawn upon: more than half covered. */
interface Picture {
  readonly width: number;
  readonly height: number;
  readonly drawn: Uint8Array;
}

/** Share of the pixels drawn in one picture that have none drawn within a pixel in the other. */
function unlike(one: Picture, other: Picture): number {
  let count = 0;
  let lost = 0;
  for (let y = 0; y < one.height; y += 1)
    for (let x = 0; x < one.width; x += 1) {
      if (one.drawn[y * one.width + x] === 0) continue;
      count += 1;
      let found = false;
      for (let dy = -1; dy <= 1; dy += 1)
        for (let dx = -1; dx <= 1; dx += 1) if (other.drawn[(y + dy) * other.width + x + dx] === 1) found = true;
      if (!found) lost += 1;
    }
  expect(count).toBeGreaterThan(1000);
  return lost / count;
}

function opaque(pixels: Uint8Array, width: number, height: number): Picture {
  return {
    width,
    height,
    drawn: Uint8Array.from({ length: width * height }, (_, i) => (pixels[4 * i + 3]! > 127 ? 1 : 0)),
  };
}

describe('every SVG', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    await browser.close();
  });

  it('is well-formed to expat and to saxes', () => {
    const files = texts.filter(({ name }) => name.endsWith('.svg'));
    for (const { name, text } of files) {
      writeFileSync(join(folder, name), text);
      const parser = new SaxesParser({ xmlns: true });
      parser.on('error', (error) => expect.fail(`${name}: ${error.message}`));
      parser.write(text).close();
    }
    const script = `
import json, sys
from xml.etree import ElementTree
print(json.dumps([ElementTree.parse(name).getroot().tag for name in sys.argv[1:]]))
`;
    const roots = python(script, ...files.map(({ name }) => join(folder, name))) as string[];
    expect(new Set(roots)).toEqual(new Set(['{http://www.w3.org/2000/svg}svg']));
  });

  it('shows its lines in Chromium on a screen 800 pixels wide, whatever its size', async () => {
    const page = await browser.newPage();
    const chosen = texts.filter(({ name }) => name.includes('-sheets-') && name.endsWith('.svg'));
    for (const { name, text } of chosen) {
      const narrowest = await page.evaluate<number>(`(async () => {
        document.body.innerHTML = ${JSON.stringify(text.replace(/<\?xml[^>]*>/, ''))};
        const svg = document.querySelector('svg');
        const scale = 800 / svg.viewBox.baseVal.width;
        svg.setAttribute('width', 800);
        svg.setAttribute('height', svg.viewBox.baseVal.height * scale);
        const shapes = [...svg.querySelectorAll('path, circle')];
        // what a line is wide on the screen
        return Math.min(...shapes.map((shape) => {
          const { strokeWidth, vectorEffect } = getComputedStyle(shape);
          return parseFloat(strokeWidth) * (vectorEffect === 'non-scaling-stroke' ? 1 : scale);
        }));
      })()`);
      // half a pixel of a dark colour is seen as a grey line
      expect(narrowest, name).toBeGreaterThanOrEqual(0.5);
    }
    await page.close();
  });

  it('looks alike in Chromium and in resvg, to within a pixel of a millimetre', async () => {
    const page = await browser.newPage();
    const chosen = texts
      .filter(({ name }) => name.includes('-sheets-') && name.endsWith('.svg'))
      .filter((_, i) => i % 3 === 0);
    for (const { name, text } of chosen) {
      // lines wide enough to be seen, and a pixel a millimetre; corners round, as the spike that a wide line has beyond a
      // sharp corner is no place of the line, and its tip is where two programs cover a pixel differently
      const wide = text
        .replace(/stroke-width="[\d.]+"/, 'stroke-width="2" stroke-linejoin="round"')
        .replaceAll(' vector-effect="non-scaling-stroke"', '')
        .replace(/(width|height)="([\d.]+)mm"/g, '$1="$2"');
      const theirs = new Resvg(wide).render();
      const ours = opaque(theirs.pixels, theirs.width, theirs.height);
      const encoded = await page.evaluate<string>(`(async () => {
        const image = new Image();
        image.src = 'data:image/svg+xml;base64,${Buffer.from(wide).toString('base64')}';
        await image.decode();
        const context = new OffscreenCanvas(${theirs.width}, ${theirs.height}).getContext('2d');
        context.drawImage(image, 0, 0);
        const { data } = context.getImageData(0, 0, ${theirs.width}, ${theirs.height});
        let bits = '';
        for (let i = 3; i < data.length; i += 4) bits += data[i] > 127 ? '1' : '0';
        return bits;
      })()`);
      const drawn = Uint8Array.from(encoded, (bit) => (bit === '1' ? 1 : 0));
      const other: Picture = { width: theirs.width, height: theirs.height, drawn };
      expect(unlike(ours, other), name).toBe(0);
      expect(unlike(other, ours), name).toBe(0);
    }
    await page.close();
  });
});

/** Straight edges that keep within 0.5 µm of the arcs. */
function flat(edges: readonly ProofEdge[], closed: boolean): [number, number][] {
  const points = edges.flatMap((edge) => {
    const steps = edge.sweep === 0 ? 1 : Math.max(2, Math.ceil(Math.abs(edge.sweep) / Math.sqrt(0.004 / edge.radius)));
    return Array.from({ length: steps }, (_, i) => pointAlong(edge, i / steps));
  });
  const last = edges.at(-1);
  if (!closed && last) points.push({ x: last.bx, y: last.by });
  return points.map(({ x, y }) => [x, y]);
}

/** What the drawings cut out of a sheet, as shapely computes it, against the parts as they should be. */
const sweepScript = `
import json, sys
from shapely.geometry import LinearRing, Polygon, box
from shapely.ops import unary_union
faults = []
worst = 0.0
for sheet in json.load(open(sys.argv[1])):
    r = sheet['radius']
    rings = [LinearRing(path) for path in sheet['paths']]
    for part in sheet['parts']:
        nominal = Polygon(part['outline'], part['openings'])
        around = box(*nominal.buffer(2 * r + 1).bounds)
        near = [ring for ring in rings if box(*ring.bounds).intersects(around)]
        if r > 0:
            swept = unary_union([ring.buffer(r, 256) for ring in near])
            left = nominal.buffer(r + 0.5).difference(swept)
            # cut away: what of the part the tool goes over
            over = nominal.intersection(swept)
        else:
            # by hand the line is the edge: what is left is what the rings enclose
            polygons = [Polygon(ring) for ring in near if Polygon(ring).within(Polygon(part['outline']).buffer(0.5))]
            polygons.sort(key=lambda p: -p.area)
            left = polygons[0]
            for hole in polygons[1:]:
                left = left.difference(hole)
            over = nominal.difference(left)
        pieces = [p for p in getattr(left, 'geoms', [left]) if p.intersects(nominal.representative_point().buffer(0.01)) or p.intersection(nominal).area > 0.5 * nominal.area]
        # an inside corner keeps the tool's radius: the part grown and shrunk again
        most = nominal.buffer(r, 256).buffer(-r, 256) if r > 0 else nominal
        for tolerance in (0.001, 0.005, 0.01, 0.02, 1.0):
            inward = not over.buffer(-tolerance / 2).is_empty
            outward = any(not p.difference(most.buffer(tolerance)).is_empty for p in pieces)
            if not inward and not outward:
                break
        worst = max(worst, tolerance)
        if tolerance > 0.02 or not pieces:
            faults.append(f"{sheet['name']}: {part['name']} is off by more than 0.02 mm")
print(json.dumps({'faults': faults, 'worst': worst}))
`;

describe('shapely', () => {
  it('finds every part cut within 0.02 mm', () => {
    const input = sheets.flatMap(({ record, drawing }) => {
      const sheet = record.sheets[0]!;
      const parts = new Map(record.parts.map((part) => [part.id, part]));
      const ring = ({ edges }: Line) => flat(edges, true);
      const nominals = sheet.placed.map((placement) => placePart(parts.get(placement.part)!, placement));
      const paths = drawing.entities.flatMap((entity) =>
        entity.kind === 'path' && (entity.layer === 'outline' || entity.layer === 'opening') ? [ring(entity.line)] : [],
      );
      return [
        {
          name: sheet.file,
          radius: widthOfCut(processOf(record, sheet)) / 2,
          paths,
          parts: nominals.map(({ part, copy, outlines, openings }) => ({
            name: `${part} ${copy}`,
            outline: ring(outlines[0]!),
            openings: openings.map(ring),
          })),
        },
      ];
    });
    const judge = (judged: typeof input) => {
      const file = join(folder, 'sweep.json');
      writeFileSync(file, JSON.stringify(judged));
      return python(sweepScript, file) as { faults: string[]; worst: number };
    };
    const { faults, worst } = judge(input);
    console.info(`${input.length} sheets, shapely finds them within ${worst} mm`);
    expect(faults).toEqual([]);
    expect(input.length).toBeGreaterThan(jobs);
    // and is not blind: paths 0.1 mm aside are found
    const shifted = input.slice(0, 3).map((sheet) => ({
      ...sheet,
      paths: sheet.paths.map((path) => path.map(([x, y]): [number, number] => [x + 0.1, y])),
    }));
    expect(judge(shifted).faults.length).toBeGreaterThan(2);
  });
});
