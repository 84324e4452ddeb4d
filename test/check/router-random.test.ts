/** Random jobs, written and simulated: no finding in any. */
import { describe, expect, it } from 'vitest';
import {
  circle,
  type Contour,
  contourFromPoints,
  rectangle,
  regularPolygon,
  reversed,
} from '../../lib/geometry/index.js';
import { type Hole, type Part, throughHole } from '../../lib/part/index.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';
import { routerData, routerProcess, shop, type ShopJob, shopPart } from '../helpers/router-sheets.js';

const seeds = jobSeeds('router-random', 1, byDay(8, 200));

/** Numbers from 0 to 1 (mulberry32, from memory). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function outlineOf(kind: number, size: number): Contour {
  if (kind === 0) return rectangle(0, 0, size, size * 0.7);
  if (kind === 1) return circle({ x: size / 2, y: size / 2 }, size / 2);
  if (kind === 2) return regularPolygon({ x: size / 2, y: size / 2 }, size / 2, 6);
  if (kind === 3)
    return contourFromPoints([
      { x: 0, y: 0 },
      { x: size, y: 0 },
      { x: size, y: size / 2 },
      { x: size / 2, y: size / 2 },
      { x: size / 2, y: size },
      { x: 0, y: size },
    ]);
  return [
    { x: 0, y: 0, bulge: 0.1 },
    { x: size, y: 0, bulge: 0 },
    { x: size, y: size * 0.6, bulge: -0.08 },
    { x: 0, y: size * 0.6, bulge: 0 },
  ];
}

function partOf(id: string, size: number, tool: number, thickness: number, next: () => number): Part {
  const at = (x: number, y: number) => ({ x: size * x, y: size * y });
  const openings: Contour[] = [];
  if (next() < 0.5) openings.push(reversed(circle(at(0.28, 0.3), tool * (0.8 + next() * 2))));
  else if (next() < 0.6) {
    const side = tool * (1.2 + 2 * next());
    const { x, y } = at(0.2, 0.2);
    openings.push(reversed(rectangle(x, y, x + side, y + side)));
  }
  const holes: Hole[] = [];
  if (next() < 0.6) holes.push({ ...throughHole(at(0.6, 0.15), 4), depth: next() < 0.5 ? 'through' : thickness / 2 });
  if (next() < 0.5) holes.push({ ...throughHole(at(0.75, 0.15), 4), countersink: Math.min(8, 1.8 * thickness) });
  if (next() < 0.6)
    holes.push({
      ...throughHole(at(0.62, 0.4), tool * (1.15 + next() * 1.5)),
      depth: next() < 0.7 ? 'through' : thickness / 3,
    });
  return shopPart(id, outlineOf(Math.floor(next() * 5), size), { openings, holes });
}

function jobOf(seed: number): ShopJob {
  const next = random(seed);
  const tool = [3, 6, 6.35, 8][Math.floor(next() * 4)]!;
  // the longest cut of a bit is taken as 4 diameters
  const thickness = Math.round(10 * (3 + next() * Math.min(9, 4 * tool - 4))) / 10;
  const web = 3 + 6 * next();
  const size = 130 + 90 * next();
  const count = 3 + Math.floor(next() * 4);
  const parts = Array.from({ length: count }, (_, i) => partOf(`p${i}`, size, tool, thickness, next));
  // the widest part stands out by less than a fifth
  const cell = 1.2 * size + 2 * tool + web;
  const placed = parts.map(({ id }, i) => {
    const rotationDeg = [0, 90, 180, 270][Math.floor(next() * 4)]!;
    const mirrored = next() < 0.4;
    const corner = { x: 20 + tool + cell * (i % 3), y: 20 + tool + cell * Math.floor(i / 3) };
    // a part turned or mirrored about its origin is put back into its cell
    const turn = (rotationDeg * Math.PI) / 180;
    const middle = { x: ((mirrored ? -1 : 1) * size) / 2, y: size / 2 };
    const x = corner.x + 0.6 * size - (middle.x * Math.cos(turn) - middle.y * Math.sin(turn));
    const y = corner.y + 0.6 * size - (middle.x * Math.sin(turn) + middle.y * Math.cos(turn));
    return { part: id, copy: 1, x, y, rotationDeg, mirrored };
  });
  const base = routerData();
  return {
    parts,
    placed,
    width: 40 + 2 * tool + 3 * cell,
    height: 40 + 2 * tool + Math.ceil(count / 3) * cell,
    thickness,
    kind: next() < 0.5 ? 'plywood' : 'mdf',
    process: routerProcess({ toolDiameter: tool, web, drills: [4] }),
    data: routerData({
      direction: next() < 0.5 ? 'climb' : 'conventional',
      files: next() < 0.3 ? 'each-tool' : 'one',
      rampAngleDeg: 1 + 14 * next(),
      finishing: 0.1 + 0.5 * next(),
      passDepth: 0.4 + 0.6 * next(),
      overcut: 0.5 * next(),
      tabs: { ...base.tabs, width: 4 + 4 * next(), onionSkinBelow: next() < 0.15 ? 300 : 0 },
    }),
  };
}

describe('random jobs', () => {
  it.each(seeds)('job %i is proven', (seed) => {
    const job = shop(jobOf(seed));
    expect(job.plan.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(job.files.size).toBeGreaterThan(0);
    const { findings, worstEdge } = job.simulate();
    expect(findings.map(({ message }) => message)).toEqual([]);
    expect(worstEdge).toBeLessThan(0.05);
  });
});
