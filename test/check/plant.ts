/** Faults to be planted in good sheets: each changes what a machine would cut, at a random place. */
import { processOf } from '../../lib/check/nominal.js';
import { filesOf } from '../helpers/jobs.js';
import type { ReadBack, ReadBackPath } from '../../lib/check/drawn.js';
import {
  pick,
  isPath,
  isCut,
  cutPaths,
  withVertices,
  mapped,
  replaced,
  shiftBy,
  onePart,
  radiusOf,
  offsetTowards,
  lopsided,
  rewritten,
  type Plant,
} from './plant-edits.js';
import { markPlants } from './plant-marks.js';

export const plants: Readonly<Record<string, Plant>> = {
  ...markPlants,
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
    const design = { ...one.record.design, stock: [{ id: sheet.stock, material: '', keepOuts: [clamp] }] };
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
