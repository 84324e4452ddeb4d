/** Faults to be planted in good sheets: each changes what a machine would cut, at a random place. */
import type { ReadBack, ReadBackPath, ReadBackSheet } from '../../lib/check/drawn.js';
import { placePart, widthOfCut, processOf } from '../../lib/check/nominal.js';
import { lineOf } from '../../lib/check/ring.js';
import { offsetContour } from '../../lib/geometry/index.js';
import type { Vertex } from '../../lib/geometry/index.js';
import { filesOf, type OneSheet } from '../helpers/jobs.js';

type Files = Map<string, string>;
/** Gives the mutated files and what was done, or null when this sheet has nothing to mutate like this. */
export type Plant = (sheet: OneSheet, random: () => number) => { readonly files: Files; readonly what: string } | null;

const pick = <T>(items: readonly T[], random: () => number): T | undefined =>
  items[Math.floor(random() * items.length)];

const isPath = (entity: ReadBack): entity is ReadBackPath => entity.kind === 'path';
const isCut = (entity: ReadBack): boolean => entity.layer !== 'sheet-edge' && entity.layer !== 'scribe';
const cutPaths = ({ entities }: ReadBackSheet): ReadBackPath[] => entities.filter(isPath).filter(isCut);

const withVertices = (path: ReadBackPath, vertices: readonly Vertex[], closed = path.line.closed): ReadBackPath => ({
  ...path,
  line: lineOf(vertices, closed),
});

type Map2 = (point: { readonly x: number; readonly y: number }) => { x: number; y: number };

function mapped(entity: ReadBack, map: Map2, turn: 1 | -1 = 1, scale = 1): ReadBack {
  if (entity.kind === 'circle') return { ...entity, ...map(entity), diameter: scale * entity.diameter };
  return withVertices(
    entity,
    entity.line.vertices.map((vertex) => ({ ...map(vertex), bulge: turn * vertex.bulge })),
  );
}

/** The sheet with some entities replaced, or taken away. */
function replaced(one: OneSheet, change: (entity: ReadBack) => ReadBack | null): OneSheet {
  const entities = one.drawing.entities.flatMap((entity) => change(entity) ?? []);
  return { ...one, drawing: { ...one.drawing, entities } };
}

function shiftBy(length: number, random: () => number): Map2 {
  const angle = random() * 2 * Math.PI;
  return ({ x, y }) => ({ x: x + length * Math.cos(angle), y: y + length * Math.sin(angle) });
}

/** An outline and all that lies within its box. */
function onePart({ drawing }: OneSheet, random: () => number): Set<ReadBack> | null {
  const outline = pick(
    cutPaths(drawing).filter(({ layer }) => layer === 'outline'),
    random,
  );
  if (!outline) return null;
  const { minX, minY, maxX, maxY } = outline.line.box;
  const within = drawing.entities.filter((entity) => {
    const box =
      entity.kind === 'path' ? entity.line.box : { minX: entity.x, minY: entity.y, maxX: entity.x, maxY: entity.y };
    return (
      entity.layer !== 'sheet-edge' && box.minX >= minX && box.minY >= minY && box.maxX <= maxX && box.maxY <= maxY
    );
  });
  return new Set(within);
}

/** Half the width of the cut of the sheet, mm. */
function radiusOf({ record }: OneSheet): number {
  return widthOfCut(processOf(record, record.sheets[0]!)) / 2;
}

/** The tool's path offset towards the part by some multiple of half the cut. */
function offsetTowards(times: number): Plant {
  return (one, random) => {
    const radius = radiusOf(one);
    // at a beam of a few hundredths of a millimetre the error drowns in the tolerance
    if (times * radius < 0.03) return null;
    const path = pick(
      cutPaths(one.drawing).filter(({ layer }) => layer === 'outline' || layer === 'opening'),
      random,
    );
    const [ring] = path ? offsetContour(path.line.vertices, -times * radius) : [];
    if (!path || !ring) return null;
    const files = filesOf(replaced(one, (entity) => (entity === path ? withVertices(path, ring) : entity)));
    return { files, what: `a path of ${path.layer} offset by ${-times} radii of ${radius}` };
  };
}

/** How lopsided a ring is: greatest distance of its vertices from those of its mirror image left to right. */
function lopsided({ line }: ReadBackPath): number {
  const { minX, maxX } = line.box;
  return Math.max(
    ...line.vertices.map(({ x, y }) =>
      Math.min(...line.vertices.map((other) => Math.hypot(minX + maxX - x - other.x, y - other.y))),
    ),
  );
}

/** The files with a changed drawing in the DXF, in the SVG or in both. */
function drawnIn(
  one: OneSheet,
  other: OneSheet,
  random: () => number,
): { readonly files: Files; readonly where: string } {
  const where = pick(['DXF', 'SVG', 'DXF and SVG'], random)!;
  const [dxf, svg] = [where.startsWith('DXF') ? other : one, where.endsWith('SVG') ? other : one];
  return { files: filesOf(dxf, svg.drawing), where };
}

const isScribe = ({ layer }: ReadBack): boolean => layer === 'scribe';

/** Alters the text of one file of the sheet. */
function rewritten(files: Files, ending: string, change: (text: string) => string): Files {
  return new Map([...files].map(([name, text]) => [name, name.endsWith(ending) ? change(text) : text]));
}

export const plants: Readonly<Record<string, Plant>> = {
  'wrong scale': (one, random) => {
    const factor = random() < 0.5 ? 25.4 : 1 / 25.4;
    const scaled = replaced(one, (entity) =>
      mapped(entity, ({ x, y }) => ({ x: x * factor, y: y * factor }), 1, factor),
    );
    const { width, height } = one.drawing;
    const page = random() < 0.5 ? factor : 1;
    const drawing = { ...scaled.drawing, width: width * page, height: height * page };
    return { files: filesOf({ ...scaled, drawing }), what: `all lines times ${factor}, the page times ${page}` };
  },
  'wrong unit': (one, random) => {
    const files = filesOf(one);
    return random() < 0.5
      ? {
          files: rewritten(files, '.dxf', (text) => text.replace('$INSUNITS\n70\n4', '$INSUNITS\n70\n1')),
          what: 'inches in the DXF',
        }
      : { files: rewritten(files, '.svg', (text) => text.replaceAll('mm"', 'in"')), what: 'inches in the SVG' };
  },
  'compensation on the wrong side': offsetTowards(2),
  'compensation missing': offsetTowards(1),
  'mirrored part': (one, random) => {
    const part = onePart(one, random);
    const outline =
      part && [...part].find((entity): entity is ReadBackPath => isPath(entity) && entity.layer === 'outline');
    if (!part || !outline || lopsided(outline) < 0.1) return null;
    const { minX, maxX } = outline.line.box;
    const files = filesOf(
      replaced(one, (entity) =>
        part.has(entity) ? mapped(entity, ({ x, y }) => ({ x: minX + maxX - x, y }), -1) : entity,
      ),
    );
    return { files, what: `the part between x ${minX} and ${maxX} mirrored` };
  },
  'missing part': (one, random) => {
    const part = onePart(one, random);
    return (
      part && {
        files: filesOf(replaced(one, (entity) => (part.has(entity) ? null : entity))),
        what: 'a part taken away',
      }
    );
  },
  'part not placed': (one, random) => {
    const sheet = one.record.sheets[0]!;
    const left = Math.floor(random() * sheet.placed.length);
    const placed = sheet.placed.filter((_, i) => i !== left);
    return {
      files: filesOf({ ...one, record: { ...one.record, sheets: [{ ...sheet, placed }] } }),
      what: `placement ${left} left out`,
    };
  },
  'opened contour': (one, random) => {
    const path = pick(cutPaths(one.drawing), random);
    if (!path) return null;
    const opened = withVertices(path, path.line.vertices, false);
    return {
      files: filesOf(replaced(one, (entity) => (entity === path ? opened : entity))),
      what: `a path of ${path.layer} opened`,
    };
  },
  'moved part': (one, random) => {
    const part = onePart(one, random);
    if (!part) return null;
    const length = 0.1 + random() * 30;
    const shift = shiftBy(length, random);
    return {
      files: filesOf(replaced(one, (entity) => (part.has(entity) ? mapped(entity, shift) : entity))),
      what: `a part moved by ${length}`,
    };
  },
  'swapped tool': (one, random) => {
    const sheet = one.record.sheets[0]!;
    const process = processOf(one.record, sheet);
    const factor = random() < 0.5 ? 0.5 : 1.5;
    if (process.kind === 'hand' || radiusOf(one) < 0.06) return null;
    const other =
      process.kind === 'router'
        ? { ...process, toolDiameter: process.toolDiameter * factor }
        : { ...process, kerf: process.kerf * factor };
    return {
      files: filesOf({ ...one, record: { ...one.record, sheets: [{ ...sheet, process: other }] } }),
      what: `the cut's width times ${factor}`,
    };
  },
  'path shifted by 0.1 mm': (one, random) => {
    const path = pick(cutPaths(one.drawing), random);
    if (!path) return null;
    const shift = shiftBy(0.1, random);
    return {
      files: filesOf(replaced(one, (entity) => (entity === path ? mapped(path, shift) : entity))),
      what: `a path of ${path.layer} shifted`,
    };
  },
  'arc turned over': (one, random) => {
    const arcs = cutPaths(one.drawing).flatMap((path) =>
      path.line.edges.flatMap(({ sweep, radius }, i) => {
        // rise of the arc above its chord: what is not seen cannot be found
        const rise = radius * (1 - Math.cos(sweep / 2));
        return sweep !== 0 && rise > 0.03 ? [{ path, i }] : [];
      }),
    );
    const arc = pick(arcs, random);
    if (!arc) return null;
    const vertices = arc.path.line.vertices.map((vertex, i) =>
      i === arc.i ? { ...vertex, bulge: -vertex.bulge } : vertex,
    );
    const files = filesOf(replaced(one, (entity) => (entity === arc.path ? withVertices(arc.path, vertices) : entity)));
    return { files, what: `arc ${arc.i} of a path of ${arc.path.layer}` };
  },
  'drill 0.2 mm off': (one, random) => {
    const drills = one.drawing.entities.filter(({ layer }) => layer.startsWith('drill-'));
    const drill = pick(drills, random);
    if (!drill) return null;
    const shift = shiftBy(0.2, random);
    return {
      files: filesOf(replaced(one, (entity) => (entity === drill ? mapped(drill, shift) : entity))),
      what: `a ${drill.layer} moved`,
    };
  },
  'wrong drill': (one, random) => {
    const drill = pick(
      one.drawing.entities.filter(({ layer, kind }) => layer.startsWith('drill-') && kind === 'circle'),
      random,
    );
    if (drill?.kind !== 'circle') return null;
    const diameter = drill.diameter + 0.5;
    const other: ReadBack = { ...drill, diameter, layer: `drill-${Number(diameter.toFixed(3))}mm` };
    return {
      files: filesOf(replaced(one, (entity) => (entity === drill ? other : entity))),
      what: `${drill.layer} made ${other.layer}`,
    };
  },
  'truncated file': (one, random) => {
    const ending = pick(['.dxf', '.svg', 'job.json'], random)!;
    const share = random();
    // at least the last tag or bracket is lost, not the line break after it
    const files = rewritten(filesOf(one), ending, (text) => text.slice(0, Math.floor(share * (text.length - 4))));
    return { files, what: `${ending} cut at ${share}` };
  },
  'DXF and SVG disagree': (one, random) => {
    const entity = pick(one.drawing.entities, random);
    if (!entity) return null;
    const length = 0.01 + random();
    const shift = shiftBy(length, random);
    const away = random() < 0.3;
    const other = replaced(one, (each) => (each !== entity ? each : away ? null : mapped(each, shift)));
    return {
      files: filesOf(one, other.drawing),
      what: `in the SVG a line of ${entity.layer} is ${away ? 'missing' : `off by ${length}`}`,
    };
  },
  'line twice': (one, random) => {
    const entity = pick(one.drawing.entities.filter(isCut), random);
    if (!entity) return null;
    const entities = [...one.drawing.entities.slice(0, 1), entity, ...one.drawing.entities.slice(1)];
    return {
      files: filesOf({ ...one, drawing: { ...one.drawing, entities } }),
      what: `a line of ${entity.layer} stands twice`,
    };
  },
  'label moved': (one, random) => {
    const stroke = pick(one.drawing.entities.filter(isScribe), random);
    if (!stroke) return null;
    const length = 0.5 + 20 * random();
    const shift = shiftBy(length, random);
    const { files, where } = drawnIn(
      one,
      replaced(one, (each) => (each === stroke ? mapped(each, shift) : each)),
      random,
    );
    return { files, what: `a stroke moved by ${length} in ${where}` };
  },
  'label missing': (one, random) => {
    const stroke = pick(one.drawing.entities.filter(isScribe), random);
    if (!stroke) return null;
    const { files, where } = drawnIn(
      one,
      replaced(one, (each) => (each === stroke ? null : each)),
      random,
    );
    return { files, what: `a stroke left out in ${where}` };
  },
  'label of another part': (one, random) => {
    const labelled = one.record.parts.filter(({ labels }) => labels.length > 0);
    const [a, b] = [pick(labelled, random), pick(labelled, random)];
    const [mine, other] = [a?.labels[0], b?.labels[0]];
    if (!a || !b || !mine || !other || mine.text === other.text) return null;
    const changed = (part: typeof a) =>
      part === a ? { ...part, labels: [{ ...mine, text: other.text }, ...part.labels.slice(1)] } : part;
    const files = filesOf({ ...one, record: { ...one.record, parts: one.record.parts.map(changed) } });
    return { files, what: `"${mine.text}" stands for "${other.text}" on ${a.id}` };
  },
  'lettering cut last': (one, random) => {
    const stroke = pick(one.drawing.entities.filter(isScribe), random);
    if (!stroke) return null;
    const rest = one.drawing.entities.filter((entity) => entity !== stroke);
    const files = filesOf({ ...one, drawing: { ...one.drawing, entities: [...rest, stroke] } });
    return { files, what: 'a stroke of the lettering put last' };
  },
  'outline twice': (one, random) => {
    const outlines = one.drawing.entities.filter(({ layer }) => layer === 'outline');
    const outline = pick(outlines, random);
    if (!outline) return null;
    const { files, where } = drawnIn(
      one,
      { ...one, drawing: { ...one.drawing, entities: [...one.drawing.entities, outline] } },
      random,
    );
    return { files, what: `an outline stands twice in ${where}` };
  },
  'colour of another operation': (one, random) => {
    const { colours, entities } = one.drawing;
    const drawn = [...colours].filter(([layer]) => entities.some((entity) => entity.layer === layer));
    const [a, b] = [pick(drawn, random), pick(drawn, random)];
    if (!a || !b || a[1].join() === b[1].join()) return null;
    const swapped = new Map(colours).set(a[0], b[1]).set(b[0], a[1]);
    const { files, where } = drawnIn(one, { ...one, drawing: { ...one.drawing, colours: swapped } }, random);
    return { files, what: `the colours of ${a[0]} and ${b[0]} exchanged in ${where}` };
  },
  'parts crossing where no spacing is asked': (one, random) => {
    const sheet = one.record.sheets[0]!;
    const [first, second] = [pick(sheet.placed, random), pick(sheet.placed, random)];
    if (radiusOf(one) > 0 || !first || !second || first === second) return null;
    const boxOf = (place: typeof first) =>
      placePart(
        one.record.parts.find(({ id }) => id === place.part)!,
        place,
      ).box;
    const [still, moved] = [boxOf(first), boxOf(second)];
    // a corner of the one well within the box of the other: its middle may be an opening, so the part lies along it
    const by = { x: still.minX - moved.minX + random(), y: still.minY - moved.minY + random() };
    const within = (entity: ReadBack): boolean => {
      const box =
        entity.kind === 'path' ? entity.line.box : { minX: entity.x, minY: entity.y, maxX: entity.x, maxY: entity.y };
      const slack = 1e-3;
      return (
        entity.layer !== 'sheet-edge' &&
        box.minX >= moved.minX - slack &&
        box.minY >= moved.minY - slack &&
        box.maxX <= moved.maxX + slack &&
        box.maxY <= moved.maxY + slack
      );
    };
    const placed = sheet.placed.map((place) =>
      place === second ? { ...place, x: place.x + by.x, y: place.y + by.y } : place,
    );
    const process = { ...one.record.design.process, web: 0 };
    const other = replaced(one, (entity) =>
      within(entity) ? mapped(entity, ({ x, y }) => ({ x: x + by.x, y: y + by.y })) : entity,
    );
    const record = { ...one.record, design: { ...one.record.design, process }, sheets: [{ ...sheet, placed }] };
    return { files: filesOf({ ...other, record }), what: `${second.part} laid on ${first.part}` };
  },
  'unknown layer': (one, random) => {
    const entity = pick(one.drawing.entities, random);
    return entity
      ? {
          files: filesOf(replaced(one, (each) => (each === entity ? { ...each, layer: 'cut' } : each))),
          what: `${entity.layer} made cut`,
        }
      : null;
  },
  'outline cut first': (one) => {
    const { entities } = one.drawing;
    const hole = entities.findLast(({ layer }) => layer.startsWith('drill-') || layer === 'opening');
    if (!hole) return null;
    const rest = entities.filter((entity) => entity !== hole);
    return {
      files: filesOf({ ...one, drawing: { ...one.drawing, entities: [...rest, hole] } }),
      what: `a ${hole.layer} put last`,
    };
  },
  'part over the margin': (one) => {
    // the record and the drawings say the same, but the place is wrong
    const sheet = one.record.sheets[0]!;
    const by = sheet.margin + 1;
    const placed = sheet.placed.map((each) => ({ ...each, x: each.x - by }));
    const moved = replaced(one, (entity) =>
      entity.layer === 'sheet-edge' ? entity : mapped(entity, ({ x, y }) => ({ x: x - by, y })),
    );
    const record = { ...one.record, sheets: [{ ...sheet, placed }] };
    return { files: filesOf({ ...moved, record }), what: `all parts moved by ${by} towards the edge` };
  },
  'part on a keep-out': (one, random) => {
    const sheet = one.record.sheets[0]!;
    const outline = pick(
      cutPaths(one.drawing).filter(({ layer }) => layer === 'outline'),
      random,
    );
    const at = outline && pick(outline.line.vertices, random);
    if (!at) return null;
    const size = 0.5 + 20 * random();
    const clamp = [-1, 0, 1].map((i) => ({ x: at.x + i * size, y: at.y + (i === 0 ? size : -size) }));
    const design = { ...one.record.design, stock: [{ id: sheet.stock, keepOuts: [clamp] }] };
    return { files: filesOf({ ...one, record: { ...one.record, design } }), what: `a clamp of ${size} at the outline` };
  },
  'parts too close': (one, random) => {
    const sheet = one.record.sheets[0]!;
    if (sheet.placed.length < 2) return null;
    const { web } = one.record.design.process;
    const design = { process: { web: web + 1000 + random() } };
    return { files: filesOf({ ...one, record: { ...one.record, design } }), what: `a web of ${design.process.web}` };
  },
};
