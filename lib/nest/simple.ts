/** A first valid nest: largest parts first, each at the place nearest to the sheet's left edge that is free. */
import { Clipper, EndType, FillRule, JoinType, type PathD, type PathsD } from 'clipper2-ts';
import type { Polygon } from '../geometry/index.js';
import type { Layout, NestedSheet, NestOptions, NestPart, NestStock, PlacedPart, Unplaced } from './types.js';

const places = 5;
const slack = 0.03;

interface Shape { readonly part: string; readonly rotationDeg: number; readonly outline: PathD; readonly grown: PathD; readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number; readonly key: string }

function turned(outline: Polygon, deg: number): PathD {
  const k = ((deg % 360) + 360) % 360;
  const [c, s] = k === 0 ? [1, 0] : k === 90 ? [0, 1] : k === 180 ? [-1, 0] : k === 270 ? [0, -1] : [Math.cos((k * Math.PI) / 180), Math.sin((k * Math.PI) / 180)];
  return outline.map(({ x, y }) => ({ x: x * c! - y * s!, y: x * s! + y * c! }));
}

function shapesOf(part: NestPart, spacing: number): Shape[] {
  const rotations = part.rotations === 'any' ? [0, 90, 180, 270] : part.rotations;
  return rotations.map((rotationDeg) => {
    const outline = turned(part.outline, rotationDeg);
    const xs = outline.map((p) => p.x), ys = outline.map((p) => p.y);
    const grown = Clipper.inflatePathsD([outline], spacing / 2 + slack, JoinType.Round, EndType.Polygon, 2, places, 0.025)[0] ?? outline;
    return { part: part.id, rotationDeg, outline, grown: grown, minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys), key: `${part.id}@${rotationDeg}` };
  });
}

const cache = new Map<string, PathsD>();
function noFit(fixed: Shape, moving: Shape, memo: Map<string, PathsD>): PathsD {
  const key = `${fixed.key}|${moving.key}`;
  const known = memo.get(key);
  if (known) return known;
  const negative = moving.grown.map(({ x, y }) => ({ x: -x, y: -y }));
  const sum = Clipper.minkowskiSumD(negative, fixed.grown, true);
  const solid = Clipper.unionD(sum, [], FillRule.NonZero, places).filter((ring) => Clipper.areaD(ring) > 0);
  memo.set(key, solid);
  return solid;
}
void cache;

export function nest(parts: readonly NestPart[], stock: readonly NestStock[], options: NestOptions): Layout {
  const sheets: NestedSheet[] = [];
  const unplaced: Unplaced[] = [];
  let cost = 0;
  const memo = new Map<string, PathsD>();
  for (const group of new Set(parts.map((p) => p.group))) {
    const own = parts.filter((p) => p.group === group);
    const items = stock.filter((s) => s.group === group);
    const todo = own.flatMap((part) => { const shapes = shapesOf(part, options.spacing); return Array.from({ length: part.quantity }, (_, i) => ({ part, shapes, copy: i + 1 })); })
      .sort((a, b) => Math.abs(Clipper.areaD(b.shapes[0]!.outline)) - Math.abs(Clipper.areaD(a.shapes[0]!.outline)) || a.copy - b.copy);
    let rest = todo;
    const left = new Map(items.map((s) => [s.id, s.count]));
    const bad = new Set<string>();
    while (rest.length > 0) {
      const item = items.find((s) => (left.get(s.id) ?? 0) > 0);
      if (!item || item.shape.kind === 'offcut') break;
      left.set(item.id, (left.get(item.id) ?? 0) - 1);
      const width = item.shape.kind === 'sheet' ? item.shape.width : item.shape.maxLength;
      const height = item.shape.height;
      const placed: (PlacedPart & { shape: Shape })[] = [];
      const next: typeof rest = [];
      for (const piece of rest) {
        let best: { x: number; y: number; shape: Shape } | null = null;
        for (const shape of piece.shapes) {
          const x0 = item.margin - shape.minX, y0 = item.margin - shape.minY, x1 = width - item.margin - shape.maxX, y1 = height - item.margin - shape.maxY;
          if (x1 < x0 - 1e-9 || y1 < y0 - 1e-9) continue;
          const free: PathsD = [[{ x: x0, y: y0 }, { x: Math.max(x1, x0 + 1e-4), y: y0 }, { x: Math.max(x1, x0 + 1e-4), y: Math.max(y1, y0 + 1e-4) }, { x: x0, y: Math.max(y1, y0 + 1e-4) }]];
          const taken = placed.flatMap((p) => noFit(p.shape, shape, memo).map((ring) => ring.map(({ x, y }) => ({ x: x + p.x, y: y + p.y }))));
          const room = Clipper.differenceD(free, taken, FillRule.NonZero, places);
          for (const ring of room) for (const p of ring) {
            const x = Math.min(p.x, Math.max(x1, x0)), y = Math.min(p.y, Math.max(y1, y0));
            if (!best || x + shape.maxX < best.x + best.shape.maxX - 1e-6 || (Math.abs(x + shape.maxX - best.x - best.shape.maxX) <= 1e-6 && y < best.y)) best = { x, y, shape };
          }
        }
        if (best) placed.push({ part: piece.part.id, copy: piece.copy, x: best.x, y: best.y, rotationDeg: best.shape.rotationDeg, mirrored: false, shape: best.shape });
        else next.push(piece);
      }
      if (placed.length === 0) { for (const p of next) bad.add(p.part.id); break; }
      const used = Math.max(...placed.map((p) => p.x + p.shape.maxX)) + item.margin;
      const roll = item.shape.kind === 'roll';
      cost += roll ? (item.price * used) / 1000 : item.price;
      sheets.push({ stock: item.id, width: roll ? used : width, height, usedLength: used, offcut: !roll && width - used > 100 ? { x: used, y: 0, width: width - used, height } : null, placed: placed.map(({ shape: _, ...p }) => p) });
      rest = next;
    }
    for (const part of own) {
      const copies = rest.filter((r) => r.part === part).length;
      if (copies > 0) unplaced.push({ part: part.id, copies, reason: items.length === 0 ? 'no-stock-for-group' : bad.has(part.id) ? 'larger-than-stock' : 'stock-used-up', leastSheet: null });
    }
  }
  return { sheets, unplaced, cost };
}
