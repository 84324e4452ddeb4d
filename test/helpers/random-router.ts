/** Random sheets for the router, over the whole range of settings that a design may ask for. */
import {
  circle,
  type Contour,
  contourFromPoints,
  rectangle,
  regularPolygon,
  reversed,
} from '../../lib/geometry/index.js';
import { type Hole, lineMark, type Part, textMark, throughHole } from '../../lib/part/index.js';
import type { RouterData, RouterMachine } from '../../lib/machining/index.js';
import { smallDish } from '../faults/small-dish.js';
import { randomOf } from './random-nester.js';
import { machineData, routerData, routerProcess, type ShopJob, shopPart } from './router-sheets.js';

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

const corner = (at: { readonly x: number; readonly y: number }) => ({ ...at, bulge: 0 });

function partOf(id: string, size: number, tool: number, thickness: number, next: () => number): Part {
  const at = (x: number, y: number) => ({ x: size * x, y: size * y });
  const openings: Contour[] = [];
  if (next() < 0.5) openings.push(reversed(circle(at(0.28, 0.3), Math.min(0.12 * size, tool * (0.8 + next() * 2)))));
  else if (next() < 0.6) {
    const side = Math.min(0.25 * size, tool * (1.2 + 2 * next()));
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
  const marks = [textMark('P {n}', at(0.45, 0.3), 6), lineMark([at(0.5, 0.25), at(0.7, 0.25)].map(corner))];
  return shopPart(id, outlineOf(Math.floor(next() * 5), size), { openings, holes, marks });
}

/** A machine of any kind. */
function randomMachine(min: number, max: number, next: () => number): RouterMachine {
  const between = (low: number, high: number): number => Math.round(low + next() * (high - low));
  const chance = (share: number): boolean => next() < share;
  const pick = <T>(...some: readonly T[]): T => some[Math.floor(next() * some.length)]!;
  const programUnits = pick('mm', 'mm', 'in');
  return machineData({
    programUnits,
    ...(chance(0.5) ? { decimals: programUnits === 'in' ? pick(5, 6) : pick(3, 4, 5, 6) } : {}),
    arcs: pick('arcs', 'arcs', 'lines'),
    lineTolerance: pick(0.002, 0.01, 0.015),
    lineNumbers: pick(0, 0, 1, 10, 1000),
    commentLength: pick(48, 60, 96, 250),
    commentCharacters: pick('ascii', 'capitals'),
    toolChange: pick('automatic', 'by-hand', 'none'),
    lengthOffsets: chance(0.5),
    changeAt: { x: between(0, 300), y: between(0, 300) },
    changeHeight: between(61, 120),
    pathMode: pick('exact', 'exact-stop', 'continuous'),
    pathTolerance: pick(0.005, 0.02, 0.05),
    maxFeed: { x: between(300, 20_000), y: between(300, 20_000), z: between(chance(0.1) ? 100 : 2000, 8000) },
    spindle: { min, max },
    spinUp: between(0, 20),
    coolant: pick('off', 'off', 'mist', 'flood'),
    ...(chance(0.3) ? { parking: { x: between(0, 500), y: between(0, 500) } } : {}),
    ...(chance(0.2) ? { area: { width: between(300, 3000), height: between(300, 2000) } } : {}),
    end: pick('M2', 'M30'),
    acceleration: pick(60, 500, 3000),
  });
}

/** Settings between the limits of the design file; those that no machine could have are drawn seldom. */
function settings(tool: number, thickness: number, next: () => number): RouterData {
  const between = (min: number, max: number): number => Math.round(1000 * (min + next() * (max - min))) / 1000;
  const chance = (share: number): boolean => next() < share;
  const pick = <T>(...some: readonly T[]): T => some[Math.floor(next() * some.length)]!;
  const base = routerData();
  const whole = (low: number, high: number): number => Math.floor(between(low, high));
  const min = whole(3000, 12_000);
  const max = whole(min, 30_000);
  return {
    ...base,
    machine: randomMachine(min, max, next),
    direction: pick('climb', 'conventional'),
    safeHeight: chance(0.2) ? between(0.5, 3) : between(3, 60),
    hopHeight: chance(0.3) ? between(1, 2) : between(2, 30),
    rampAngleDeg: chance(0.3) ? between(0.5, 2) : between(2, 45),
    finishing: chance(0.2) ? between(0.1, 3) : between(0.1, Math.max(0.1, Math.min(3, tool / 4))),
    passDepth: chance(0.2) ? between(1, 4) : between(0.2, 1),
    overcut: chance(0.2) ? between(0, 4) : between(0, 0.6),
    markDepth: between(0.05, 1),
    plungeFeed: between(50, 2000),
    ...(chance(0.3) ? { chipLoad: between(0.01, 0.5) } : {}),
    spindle: { speed: whole(min, max), ...(chance(0.3) ? { drillSpeed: whole(min, max) } : {}) },
    tabs: {
      ...base.tabs,
      without: chance(0.7) ? 'onion-skin' : 'stop',
      width: chance(0.2) ? between(0.5, 30) : between(3, 9),
      ...(chance(0.4) ? { height: between(0.2, 0.9 * thickness) } : {}),
      spacing: between(60, 900),
      min: 1 + Math.floor(next() * 4),
      onionSkinBelow: chance(0.15) ? 300 : 0,
      onionSkin: between(0.1, 1.5),
    },
  };
}

/** A sheet of three to six parts with openings, holes of all kinds, turned and mirrored, and settings of all kinds. */
export function randomRouterJob(seed: number): ShopJob {
  const next = randomOf(seed);
  const tool = [1.5, 3, 6, 6.35, 8, 12.7][Math.floor(next() * 6)]!;
  // the longest cut of a bit is taken as 4 diameters
  const thickness = Math.round(10 * (2 + next() * Math.min(23, 4 * tool - 4))) / 10;
  const web = next() < 0.25 ? 0 : 9 * next();
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
  return {
    parts,
    placed,
    width: 40 + 2 * tool + 3 * cell,
    height: 40 + 2 * tool + Math.ceil(count / 3) * cell,
    thickness,
    kind: next() < 0.5 ? 'plywood' : 'mdf',
    process: routerProcess({ toolDiameter: tool, web, drills: [4], relief: next() < 0.8 ? 'dogbone' : 'none' }),
    data: settings(tool, thickness, next),
  };
}

/** A small dish for the router as a design file, with settings of all kinds. */
export function randomRouterDesign(seed: number): string {
  const next = randomOf(seed);
  const tool = [2, 3, 4, 6, 6.35][Math.floor(next() * 5)]!;
  const thickness = Math.round(10 * (4 + next() * 8)) / 10;
  const web = next() < 0.3 ? 0 : Math.round(80 * next()) / 10;
  const process = { kind: 'router', toolDiameter: tool, web, margin: 4 + Math.round(80 * next()) / 10 };
  const drillBits = [1, 1.2, 1.5, 1.8, 2, 2.5, 2.8, 3, 3.5, 4, 5, 6];
  const { machine, ...router } = settings(tool, thickness, next);
  const { changeAt, parking, area } = machine;
  const described = {
    ...machine,
    changeAt: [changeAt.x, changeAt.y],
    ...(parking === undefined ? {} : { parking: [parking.x, parking.y] }),
    ...(area === undefined ? {} : { area: `${area.width} x ${area.height}` }),
  };
  return smallDish(`Router ${seed}`, `router: ${JSON.stringify(router)}\nmachine: ${JSON.stringify(described)}`)
    .replace('process: { kind: hand }', `process: ${JSON.stringify({ ...process, drillBits })}`)
    .replace('kind: plywood, thickness: 6', `kind: ${next() < 0.5 ? 'plywood' : 'mdf'}, thickness: ${thickness}`)
    .replace('kind: card, thickness: 0.5', 'kind: card, thickness: 0.5, cut: hand')
    .replace('ribs: 8', `ribs: ${6 + Math.floor(next() * 5)}`);
}
