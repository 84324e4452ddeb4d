/** The part itself as it is drawn at scale: lines, holes, edges of their own demand, grain, centre lines. */
import {
  bounds,
  type Bounds,
  cyclic,
  edgeArc,
  element,
  type Point,
  tangentOnEdge,
  type Vertex,
} from '../../geometry/index.js';
import type { Part } from '../../part/index.js';
import { arrowHead, entity, ringAt, straight } from './entity.js';
import { textWidth } from './font.js';
import { type Crowd, freePlace } from './free-place.js';
import { LETTERS } from './rails.js';
import type { Entity, LineKind, Stroke } from './types.js';
import type { View } from './view.js';

/** From the part's measures to paper. */
export interface OnPaper {
  readonly factor: number;
  readonly dx: number;
  readonly dy: number;
}

export const placed = ({ factor, dx, dy }: OnPaper, { x, y }: Point): Point => ({
  x: x * factor + dx,
  y: y * factor + dy,
});

const drawn = (paper: OnPaper, line: LineKind, closed: boolean, vertices: readonly Vertex[]): Stroke => ({
  line,
  closed,
  vertices: vertices.map((vertex) => ({ ...placed(paper, vertex), bulge: vertex.bulge })),
});

/** A line that marks an edge stands so far off it, mm on paper. */
const BESIDE = 1;
/** Shorter edges have none. */
const MIN_EDGE = 1;
/** A hole is drawn with at least this radius, mm on paper: its place counts, its size stands in the table. */
const MIN_RADIUS = 0.35;
/** Centre lines reach so far beyond what they are the middle of (ISO 128-2: a little). */
const BEYOND = 2.5;

const crossAt = ({ x, y }: Point, arm: number): Stroke[] => [
  straight('thin', { x: x - arm, y }, { x: x + arm, y }),
  straight('thin', { x, y: y - arm }, { x, y: y + arm }),
];

function holes({ holes: all }: View, paper: OnPaper): Entity[] {
  const shown = all.map((hole) => {
    const at = placed(paper, hole);
    const radius = Math.max(MIN_RADIUS, (hole.diameter / 2) * paper.factor);
    const line: LineKind = hole.from === 'back' && hole.depth !== 'through' ? 'hidden' : 'thin';
    const head =
      hole.countersink === undefined
        ? []
        : [ringAt(hole.from === 'front' ? 'thin' : 'hidden', at, (hole.countersink / 2) * paper.factor)];
    return {
      outer: [ringAt(line === 'thin' ? 'outline' : line, at, radius), ...head],
      cross: crossAt(at, radius + 0.8),
    };
  });
  return shown.length === 0
    ? []
    : [
        entity('outline', { strokes: shown.flatMap(({ outer }) => outer) }),
        entity('centre-line', { strokes: shown.flatMap(({ cross }) => cross) }),
      ];
}

/** Holes into the edges, seen through the face. */
function edgeHoles({ edgeHoles: all }: View, paper: OnPaper): Entity[] {
  const strokes = all.flatMap(({ x, y, direction, diameter, length }): Stroke[] => {
    const [cos, sin] = [Math.cos(direction), Math.sin(direction)];
    const at = (along: number, across: number): Point =>
      placed(paper, { x: x + along * cos - across * sin, y: y + along * sin + across * cos });
    const half = diameter / 2;
    return [straight('hidden', at(0, half), at(length, half), at(length, -half), at(0, -half))];
  });
  return strokes.length === 0 ? [] : [entity('hidden', { strokes })];
}

/** A line beside each run of edges that carries the mirror or seats against a part. */
function edgeMarks(part: Part, view: View, paper: OnPaper): Entity[] {
  const strokes: Stroke[] = [];
  for (const { ring, from, to, role } of part.edges) {
    const vertices = element(view.rings, ring).map((v): Vertex => ({ ...placed(paper, v), bulge: v.bulge }));
    let run: Vertex[] = [];
    for (let i = from; i <= to; i++) {
      const [a, b] = [cyclic(vertices, i), cyclic(vertices, i + 1)];
      if (Math.hypot(b.x - a.x, b.y - a.y) < MIN_EDGE) continue;
      const edge = edgeArc(a, b);
      // waste lies to the right of every ring
      const off = (point: Point, t: number): Point => {
        const { x, y } = tangentOnEdge(edge, t);
        return { x: point.x + y * BESIDE, y: point.y - x * BESIDE };
      };
      const [start, end] = [off(a, 0), off(b, 1)];
      const last = run.at(-1);
      // a smooth run is one line, so that its dashes go on
      const goesOn = last !== undefined && Math.hypot(last.x - start.x, last.y - start.y) < 0.05;
      run = [...(goesOn ? run.slice(0, -1) : []), { ...start, bulge: a.bulge }, { ...end, bulge: 0 }];
      if (goesOn) strokes.pop();
      strokes.push({ line: role, closed: false, vertices: run });
    }
  }
  return strokes.length === 0 ? [] : [entity('edge-mark', { strokes })];
}

function centreLines(view: View, paper: OnPaper, box: Bounds): Entity[] {
  const middle = placed(paper, { x: 0, y: 0 });
  const level = straight('centre', { x: box.minX - BEYOND, y: middle.y }, { x: box.maxX + BEYOND, y: middle.y });
  if (view.symmetric) return [entity('centre-line', { strokes: [level] })];
  if (!view.polar || middle.x < box.minX + 1 || middle.x > box.maxX - 1) return [];
  if (middle.y < box.minY + 1) return [];
  const plumb = straight('centre', { x: middle.x, y: box.minY - BEYOND }, { x: middle.x, y: box.maxY + BEYOND });
  return [entity('centre-line', { strokes: [level, plumb] })];
}

/** The part at its place on paper. */
export function pictureOf(part: Part, view: View, paper: OnPaper): Entity[] {
  const box = boxOnPaper(view, paper);
  const marks = view.lines.map(({ vertices, closed, face }) =>
    drawn(paper, face === 'front' ? 'mark' : 'hidden', closed, vertices),
  );
  return [
    entity('outline', { strokes: view.rings.map((one) => drawn(paper, 'outline', true, one)) }),
    ...(marks.length > 0 ? [entity('mark', { strokes: marks })] : []),
    ...holes(view, paper),
    ...edgeHoles(view, paper),
    ...edgeMarks(part, view, paper),
    ...centreLines(view, paper, box),
  ];
}

export function boxOnPaper(view: View, { factor, dx, dy }: OnPaper): Bounds {
  const { minX, minY, maxX, maxY } = bounds(element(view.rings, 0));
  return { minX: minX * factor + dx, minY: minY * factor + dy, maxX: maxX * factor + dx, maxY: maxY * factor + dy };
}

const GRAIN = 'grain';
const ARROW = 22;

/** A double arrow along the grain with its name, where it has room on the part or beside it. */
export function grainArrow(part: Part, box: Bounds, crowd: Crowd): Entity[] {
  if (part.grain === 'any') return [];
  const upright = part.grain === 'across';
  const across = LETTERS + 2.5;
  const [width, height] = upright ? [across, ARROW] : [ARROW, across];
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const found = freePlace(middle, { width, height }, false, crowd);
  if (found === null) return [];
  const { x, y } = found.corner;
  const at = (along: number, off: number): Point =>
    upright ? { x: x + across - off, y: y + along } : { x: x + along, y: y + off };
  const turn = upright ? Math.PI / 2 : 0;
  return [
    entity('grain-arrow', {
      strokes: [straight('thin', at(1, 0.7), at(ARROW - 1, 0.7))],
      solids: [arrowHead(at(0, 0.7), turn + Math.PI), arrowHead(at(ARROW, 0.7), turn)],
      words: [
        {
          text: GRAIN,
          at: at((ARROW - textWidth(GRAIN, LETTERS)) / 2, 1.9),
          height: LETTERS,
          anchor: 'start',
          turnDeg: upright ? 90 : 0,
          states: [],
        },
      ],
    }),
  ];
}
