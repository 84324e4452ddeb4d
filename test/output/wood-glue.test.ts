/** Wood glue of the shopping list, against the sizes of the joints by plain arithmetic. */
import { describe, expect, it } from 'vitest';
import { bounds, signedArea } from '../../lib/geometry/index.js';
import type { BookInput } from '../../lib/output/book/input.js';
import { woodGlueArea } from '../../lib/output/book/wood-glue.js';
import { prepare } from '../../lib/pipeline.js';
import { designOf, fixtureText } from '../helpers/fixtures.js';
import { routedText } from '../helpers/routed-joints.js';

const inputOf = (text: string) => prepare(designOf(text)) as unknown as BookInput;
const area = ({ outline }: BookInput['parts'][number]): number => {
  const { minX, maxX, minY, maxY } = bounds(outline);
  return (maxX - minX) * (maxY - minY);
};

describe('wood glue', () => {
  it('counts the walls of every slot for a tab', () => {
    const input = inputOf(fixtureText('classroom'));
    const { design, parts, dish } = input;
    const rib = parts.find(({ kind }) => kind === 'rib')!;
    // tabs stand below the base: their lengths are what the outline runs at its lowest
    const low = Math.min(...rib.outline.map(({ y }) => y));
    const tabs = rib.outline.filter(({ y }, i) => y === low && rib.outline[(i + 1) % rib.outline.length]!.y === low);
    const lengths = tabs.map((v) => rib.outline[(rib.outline.indexOf(v) + 1) % rib.outline.length]!.x - v.x);
    const { fit } = design.rib;
    const slot = lengths.reduce((sum, length) => sum + 2 * (length + fit + dish.ribThickness + fit) * 3, 0);
    const board = parts.find(({ kind }) => kind === 'board')!;
    const without = woodGlueArea({
      ...input,
      parts: parts.map((one) => (one === board ? { ...one, openings: [] } : one)),
    });
    expect(lengths.length).toBeGreaterThan(1);
    expect(woodGlueArea(input) - without).toBeCloseTo(16 * slot, 3);
  });

  it('counts walls and floor of every groove, and the grooves of the hub', () => {
    const input = inputOf(routedText('joint: housing'));
    const { parts, dish, design } = input;
    const board = parts.find(({ kind }) => kind === 'board')!;
    const width = dish.ribThickness + design.rib.fit;
    const grooves = board.pockets.reduce((sum, { ring, depth }) => {
      // two straight sides between half circles
      const xs = ring.map(({ x, y }) => Math.hypot(x, y));
      const length =
        Math.sqrt(Math.max(...xs) ** 2 - (width / 2) ** 2) - Math.sqrt(Math.min(...xs) ** 2 - (width / 2) ** 2);
      return sum + (2 * length + Math.PI * width) * depth + length * width + (Math.PI / 4) * width ** 2;
    }, 0);
    const without = woodGlueArea({
      ...input,
      parts: parts.map((one) => (one === board ? { ...one, pockets: [] } : one)),
    });
    expect(board.pockets).toHaveLength(dish.layout.ribs.length);
    expect((woodGlueArea(input) - without) / grooves).toBeCloseTo(1, 4);
    const hub = parts.find(({ kind }) => kind === 'hub')!;
    const face = signedArea(hub.outline) - hub.holes.reduce((sum, one) => sum + (Math.PI / 4) * one.diameter ** 2, 0);
    const walls = woodGlueArea({ ...input, parts: [hub] }) / hub.quantity - face;
    // each groove from its bottom, where the rib ends, to the rim of the hub: two walls and the bottom
    // that of rib 1 opens along x
    const mouth = Math.max(...hub.outline.map(({ x, y }) => (Math.abs(y) < width ? x : 0)));
    const groove = 2 * (mouth - dish.innerRadius) + width;
    expect(walls / (dish.layout.ribs.length * groove * hub.thickness)).toBeGreaterThan(0.95);
    expect(walls / (dish.layout.ribs.length * groove * hub.thickness)).toBeLessThan(1.05);
  });

  it('counts both faces of a cleat that is glued: on the board and to its rib', () => {
    const input = inputOf(fixtureText('table-top'));
    const cleat = input.parts.find(({ kind }) => kind === 'cleat')!;
    const { minX, maxX } = bounds(cleat.outline);
    expect(woodGlueArea({ ...input, parts: [{ ...cleat, holes: [] }] })).toBeCloseTo(
      cleat.quantity * (area(cleat) + (maxX - minX) * cleat.thickness),
      6,
    );
  });
});
