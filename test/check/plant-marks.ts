/** Faults of what is drawn apart from cuts, and of order and place: labels, colours, lines twice, parts that cross. */
import { placePart } from '../../lib/check/nominal.js';
import { filesOf } from '../helpers/jobs.js';
import type { ReadBack } from '../../lib/check/drawn.js';
import { pick, mapped, replaced, shiftBy, radiusOf, drawnIn, isScribe, type Plant } from './plant-edits.js';

export const markPlants: Readonly<Record<string, Plant>> = {
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
};
