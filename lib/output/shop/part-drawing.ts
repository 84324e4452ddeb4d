/** The drawing of one part. */
import { bounds, type Bounds, element } from '../../geometry/index.js';
import type { Part } from '../../part/index.js';
import { describe } from './describe.js';
import type { Label } from './described.js';
import { entity, frameAt, movedBy, plainWords, straight } from './entity.js';
import { descentOf, textWidth } from './font.js';
import { boxOf, type Crowd, freePlace, grown, placeOn, segmentsOf } from './free-place.js';
import { MARGINS, type Paper } from './paper.js';
import { boxOnPaper, grainArrow, type OnPaper, pictureOf, placed } from './picture.js';
import { type PagePlan, type PlacedBlock, planPage, type PictureSize, tablePages } from './plan.js';
import type { Printing } from './printing.js';
import { LETTERS, railEntities, railLength, railReach, type Rails, railsOn, sides } from './rails.js';
import { type Title, TITLE_WIDTH, titleBlock, titleHeight } from './title-block.js';
import type { Entity, ShopDrawing, ShopPage } from './types.js';
import { type View, viewOf } from './view.js';

export interface PartToDraw {
  readonly part: Part;
  readonly paper: Paper;
  readonly printing: Printing;
  /** The title block of a page, which needs to know the scale. */
  readonly title: (scale: string, page: number, pages: number) => Title;
}

/** Left free beside the part where no dimensions stand, for labels and lines beside its edges. */
const ASIDE = 11;
/** And beyond the dimensions. */
const BEYOND = 3;

/** What stands beside the part on a side, mm. */
const reachOn = (rails: Rails, side: keyof Rails): number => Math.max(ASIDE, railReach(rails[side]) + BEYOND);

function sizeOf(view: View, rails: Rails): PictureSize {
  const box = bounds(element(view.rings, 0));
  const length = (a: keyof Rails, b: keyof Rails): number =>
    Math.max(railLength(rails[a]), railLength(rails[b])) - ASIDE;
  return {
    width: box.maxX - box.minX,
    height: box.maxY - box.minY,
    level: reachOn(rails, 'left') + reachOn(rails, 'right'),
    upright: reachOn(rails, 'bottom') + reachOn(rails, 'top'),
    minWidth: length('bottom', 'top'),
    minHeight: length('left', 'right'),
  };
}

/** The part in the middle of its area, its dimensions beside it. */
function onPaper(view: View, rails: Rails, { area, scale }: PagePlan): OnPaper {
  const box = bounds(element(view.rings, 0));
  const { factor } = scale;
  const freeX = area.width - reachOn(rails, 'left') - reachOn(rails, 'right') - (box.maxX - box.minX) * factor;
  const freeY = area.height - reachOn(rails, 'bottom') - reachOn(rails, 'top') - (box.maxY - box.minY) * factor;
  return {
    factor,
    dx: area.x + reachOn(rails, 'left') + freeX / 2 - box.minX * factor,
    dy: area.y + reachOn(rails, 'bottom') + freeY / 2 - box.minY * factor,
  };
}

/** A letter further from its place than this helps nobody: what it names is found by its measures, mm. */
const CLOSE_BY = 30;

/** Those first that stand on their place, then those close to it. */
const order = ({ leader, onIt }: Label): number => (onIt ? 0 : leader ? 2 : 1);

/**
 * Puts the labels where they are free.
 * @throws RangeError where one finds no place
 */
function labelled(labels: readonly Label[], paper: OnPaper, before: readonly Entity[], within: Bounds): Entity[] {
  const dimensions = segmentsOf(before.filter(({ kind }) => kind === 'dimension'));
  const all = [...segmentsOf(before)];
  const boxes = before.flatMap(({ words }) => words.map((one) => grown(boxOf(one), 0.3)));
  const found: Entity[] = [];
  for (const label of [...labels].sort((a, b) => order(a) - order(b))) {
    const size = { width: textWidth(label.text, LETTERS), height: LETTERS + descentOf(LETTERS) };
    const crowd: Crowd = { segments: all, boxes, dimensions, within };
    const at = placed(paper, label.at);
    const place =
      (label.onIt ? placeOn(at, size, crowd) : null) ??
      freePlace(at, size, label.leader, crowd, label.states.length === 0 ? CLOSE_BY : undefined);
    if (place === null && label.states.length === 0) continue;
    if (place === null) throw new RangeError(`no place on the drawing for ${label.text}`);
    const corner = { x: place.corner.x, y: place.corner.y + descentOf(LETTERS) };
    const words = plainWords(label.text, corner, LETTERS, label.states);
    const one = entity(label.states.length > 0 ? 'dimension' : place.leader ? 'leader' : 'label', {
      strokes: place.leader ? [straight('thin', place.leader.a, place.leader.b)] : [],
      words: [words],
    });
    if (place.leader) {
      all.push(place.leader);
      dimensions.push(place.leader);
    }
    boxes.push(grown(boxOf(words), 0.3));
    found.push(one);
  }
  return found;
}

/** Frame, title block and tables of a page. */
export function sheetEntities(page: PagePlan['page'], blocks: readonly PlacedBlock[], title: Title): Entity[] {
  const { left, other } = MARGINS;
  const inner = { width: page.width - left - other, height: page.height - 2 * other };
  const width = page.width < page.height ? inner.width : TITLE_WIDTH;
  return [
    entity('frame', { strokes: [frameAt('frame', { x: left, y: other }, inner.width, inner.height)] }),
    titleBlock(title, page.width - other - width, other, width),
    ...blocks.map(({ build, x, y }) => movedBy(build(), x, y)),
  ];
}

function viewEntities(part: Part, view: View, labels: readonly Label[], rails: Rails, plan: PagePlan): Entity[] {
  const paper = onPaper(view, rails, plan);
  const box = boxOnPaper(view, paper);
  const frame = {
    place: (point: { x: number; y: number }) => placed(paper, point),
    box,
    origin: placed(paper, { x: 0, y: 0 }),
  };
  const picture = [...pictureOf(part, view, paper), ...sides.flatMap((side) => railEntities(rails[side], side, frame))];
  const { area } = plan;
  const within = { minX: area.x, minY: area.y, maxX: area.x + area.width, maxY: area.y + area.height };
  const texts = labelled(labels, paper, picture, within);
  const all = [...picture, ...texts];
  const crowd: Crowd = {
    segments: segmentsOf(all),
    boxes: all.flatMap(({ words }) => words.map(boxOf)),
    dimensions: [],
    within,
  };
  return [...all, ...grainArrow(part, box, crowd)];
}

/**
 * The drawing of a part, with a page of its tables where they do not go beside it.
 * @throws RangeError where no page takes it
 */
export function drawnPart({ part, paper, printing, title }: PartToDraw): ShopDrawing {
  const view = viewOf(part);
  const { rings, features, pins, scribed, rails: values, labels, tables, notes } = describe(part, view, printing);
  const rails = railsOn(values, element(view.rings, 0));
  const height = titleHeight(title('1:1', 1, 1));
  const plan = planPage(paper, { size: sizeOf(view, rails), tables, notes, titleHeight: height });
  const more = tablePages(paper, plan.rest, height);
  const count = 1 + more.length;
  const first: ShopPage = {
    ...plan.page,
    entities: [
      ...sheetEntities(plan.page, plan.blocks, title(plan.scale.name, 1, count)),
      ...viewEntities(part, view, labels, rails, plan),
    ],
  };
  return {
    id: part.id,
    title: part.name,
    scale: plan.scale.name,
    pages: [
      first,
      ...more.map(({ page, blocks }, i) => ({
        ...page,
        entities: sheetEntities(page, blocks, title(plan.scale.name, i + 2, count)),
      })),
    ],
    sketch: {
      rings,
      features,
      edgeHoles: view.edgeHoles.map((_, i) => i),
      pins,
      scribed,
      turnDeg: view.turnDeg,
      datum: view.datum,
    },
  };
}
