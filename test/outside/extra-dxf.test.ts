import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { measures, parts } from '../parts/extra-drawings.js';

/**
 * Draws an entity of each kind with ezdxf and prints the drawings, with length and area as ezdxf's own points of the
 * curve have them.
 */
const script = `
import io, json, math
import ezdxf
from ezdxf import units
def closed(space, points, degree=3, weights=None):
    entity = space.add_spline()
    points = [(x, y, 0) for x, y in points]
    if weights:
        entity.set_closed_rational(points, weights, degree)
    else:
        entity.set_closed(points, degree)
# points on the curve itself: ezdxf's paths hold circles as Beziers, which are 0.03 per cent off
def along(entity):
    kind = entity.dxftype()
    if kind == "LINE":
        return [entity.dxf.start, entity.dxf.end]
    if kind == "SPLINE":
        return entity.construction_tool().approximate(20000)
    return list(entity.flattening(0.0002))
def drawing(draw, unit=units.MM):
    doc = ezdxf.new("R2010")
    doc.units = unit
    space = doc.modelspace()
    draw(space)
    out = io.StringIO()
    doc.write(out)
    points = []
    for entity in space:
        pieces = entity.virtual_entities() if "POLYLINE" in entity.dxftype() else [entity]
        points.extend([(p.x, p.y) for p in along(piece)] for piece in pieces)
    text = out.getvalue()
    return {"text": text, "points": points}
spline = [(0, 0), (60, -20), (110, 30), (80, 90), (20, 100), (-30, 60)]
wavy = [(100 + (30 if k % 2 else 50) * math.cos(k * math.pi / 6), (30 if k % 2 else 50) * math.sin(k * math.pi / 6)) for k in range(12)]
print(json.dumps({
    "polyline with bulges": drawing(lambda s: s.add_lwpolyline([(0, 0, 0.3), (90, 0, -0.4), (90, 60, 1.4), (0, 60, 0)], format="xyb", close=True)),
    "old polyline": drawing(lambda s: s.add_polyline2d([(0, 0, 0.3), (90, 0, -0.4), (90, 60, 0)], format="xyb", close=True)),
    "circle": drawing(lambda s: s.add_circle((10, 20), 33)),
    "circle in inches": drawing(lambda s: s.add_circle((1, 2), 3), units.IN),
    "ellipse": drawing(lambda s: s.add_ellipse((10, 20), (70, 30), 0.4)),
    "flat ellipse": drawing(lambda s: s.add_ellipse((10, 20), (300, -30), 0.05)),
    "spline, closed": drawing(lambda s: closed(s, spline)),
    "spline, closed, of degree 2": drawing(lambda s: closed(s, wavy, 2)),
    "spline, weighted": drawing(lambda s: closed(s, spline, 3, [1, 2, 1, 3, 1, 0.5])),
    "spline, back to its start": drawing(lambda s: s.add_spline_control_frame(spline + [(0, 0)])),
    "arcs and lines": drawing(lambda s: (s.add_arc((60, 20), 20, 270, 90), s.add_line((0, 0), (60, 0)), s.add_arc((0, 20), 20, 90, 270), s.add_line((60, 40), (0, 40)))),
    "ellipse arc and a line": drawing(lambda s: (s.add_ellipse((0, 0), (50, 0), 0.5, 0, math.pi), s.add_line((-50, 0), (50, 0)))),
}))
`;

interface Drawn {
  readonly text: string;
  readonly points: readonly (readonly (readonly [number, number])[])[];
}

const drawings = JSON.parse(
  execFileSync('/usr/bin/python3', ['-c', script], { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 }),
) as Record<string, Drawn>;

/** Length and enclosed area of runs of points that join to a ring, each run in its own sense. */
function ofPoints(runs: Drawn['points']): { length: number; area: number } {
  const rest = runs.map((run) => [...run]);
  const ring = rest.shift() ?? [];
  while (rest.length > 0) {
    const [x, y] = ring.at(-1)!;
    const near = (p: readonly [number, number] | undefined) => p !== undefined && Math.hypot(p[0] - x, p[1] - y) < 1e-6;
    const next = rest.findIndex((run) => near(run[0]) || near(run.at(-1)));
    if (next < 0) throw new Error('the runs of points do not join');
    const [run = []] = rest.splice(next, 1);
    ring.push(...(near(run[0]) ? run : run.reverse()).slice(1));
  }
  let [length, area] = [0, 0];
  ring.forEach(([x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    length += Math.hypot(u - x, v - y);
    area += (x * v - u * y) / 2;
  });
  return { length, area: Math.abs(area) };
}

describe.each(Object.entries(drawings))('%s by ezdxf', (name, { text, points }) => {
  it('comes in as long and as large as ezdxf has it', () => {
    const made = parts(text);
    expect(made).toHaveLength(1);
    const mm = name.includes('inches') ? 25.4 : 1;
    const expected = ofPoints(points);
    const { area, length } = measures(made[0]!);
    // ezdxf's chords stay within 0.0002, our arcs within 0.01 mm of the curve
    expect(Math.abs(area - expected.area * mm ** 2)).toBeLessThan(0.0105 * mm * expected.length * mm);
    expect(Math.abs(length / (expected.length * mm) - 1)).toBeLessThan(1e-4);
    expect(made[0]!.fitDeviation).toBeLessThanOrEqual(0.01);
  });
});
