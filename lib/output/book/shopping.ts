/** The shopping list: stock with quantities, weights and cost, then what is bought by the piece. */
import type { Design } from '../../design/index.js';
import { bounds, element } from '../../geometry/index.js';
import type { Part, PartKind } from '../../part/index.js';
import { hasBattens } from './batten-steps.js';
import { beadLength, hardwareOf } from './hardware.js';
import { markup, type Markup } from '../markup.js';
import type { BookInput, BookSheet } from './input.js';
import { type Block, block } from './leaves.js';
import type { Measures } from './measures.js';
import type { Paper } from './paper.js';
import { partArea } from './sheet-picture.js';
import { list } from './step.js';
import { woodGlueArea } from './wood-glue.js';

interface StockLine {
  readonly item: string;
  readonly quantity: string;
  readonly weightKg: number;
  readonly cost: number;
}

/** kg of `area` mm² of a material. */
function weightOf(design: Design, material: string, area: number): number {
  const found = design.materials[material];
  return found ? area * found.thickness * 1e-9 * found.densityKgPerM3 : 0;
}

/** Weight of all copies of the parts, kg. */
export function partsWeight(design: Design, parts: readonly Part[]): number {
  return parts.reduce((sum, part) => sum + part.quantity * weightOf(design, part.material, partArea(part)), 0);
}

function stockLines(design: Design, sheets: readonly BookSheet[], measures: Measures): StockLine[] {
  return design.stock.flatMap((item): StockLine[] => {
    const used = sheets.filter((sheet) => sheet.stock === item.id);
    if (used.length === 0) return [];
    const name = design.materials[item.material]?.description ?? item.material;
    if (item.rollWidth !== undefined) {
      const length = used.reduce((sum, sheet) => sum + sheet.usedLength, 0);
      return [
        {
          item: `${name}, roll ${measures.length(item.rollWidth)} wide`,
          quantity: measures.length(length),
          weightKg: weightOf(design, item.material, length * item.rollWidth),
          cost: (item.price * length) / 1000,
        },
      ];
    }
    const { width, height } = element(used, 0);
    const kind = item.outline ? 'offcut' : 'sheet';
    return [
      {
        item: `${name}, ${kind} ${measures.length(width)} x ${measures.length(height)}`,
        quantity: `${used.length}`,
        weightKg: weightOf(
          design,
          item.material,
          used.reduce((sum, sheet) => sum + sheet.width * sheet.height, 0),
        ),
        cost: item.price * used.length,
      },
    ];
  });
}

/** Price of all stock; null while nothing is nested, or where the design names no prices. */
export function stockCost({ design, sheets }: BookInput, measures: Measures): number | null {
  const total = stockLines(design, sheets ?? [], measures).reduce((sum, line) => sum + line.cost, 0);
  return total > 0 ? total : null;
}

/** The stock as a table with its total; a note in its place while nothing is nested yet. */
function stockTable(input: BookInput, measures: Measures): Markup {
  if (input.sheets === null) return markup`<p>The sheets are being nested; quantities follow.</p>`;
  const lines = stockLines(input.design, input.sheets, measures);
  const total = lines.reduce((sum, line) => sum + line.cost, 0);
  const weight = lines.reduce((sum, line) => sum + line.weightKg, 0);
  const priced = total > 0;
  const row = ({ item, quantity, weightKg, cost }: StockLine) =>
    markup`<tr><th scope="row">${item}</th><td>${quantity}</td><td>${measures.weight(weightKg)}</td>${priced ? markup`<td>${cost.toFixed(2)}</td>` : null}</tr>`;
  return markup`<div class="scroll" tabindex="0" role="region" aria-label="Table of the stock"><table class="stock"><caption>Stock to buy${priced ? ', cost in your currency at the prices of the design' : ' (the design names no prices)'}</caption>
<thead><tr><th scope="col">material</th><th scope="col">quantity</th><th scope="col">weight</th>${priced ? markup`<th scope="col">cost</th>` : null}</tr></thead>
<tbody>${lines.map(row)}</tbody>
<tfoot><tr><th scope="row">together</th><td></td><td>${measures.weight(weight)}</td>${priced ? markup`<td data-total="${total.toFixed(2)}">${total.toFixed(2)}</td>` : null}</tr></tfoot></table></div>`;
}

/** What the templates, gauges and jigs are cut from, by material; they are not among the sheets of the dish. */
function aidStock({ design, aids }: BookInput, measures: Measures): string[] {
  const byMaterial = new Map<string, Part[]>();
  for (const aid of aids) byMaterial.set(aid.material, [...(byMaterial.get(aid.material) ?? []), aid]);
  return [...byMaterial].map(([material, made]) => {
    const boxes = made.map((aid) => bounds(aid.outline));
    const longest = Math.max(...boxes.map(({ minX, maxX }) => maxX - minX));
    const area = boxes.reduce((sum, { minX, maxX, minY, maxY }) => sum + (maxX - minX) * (maxY - minY), 0);
    const name = design.materials[material]?.description ?? material;
    return `${name} for ${made.length} templates, gauges and jigs: ${measures.area(area)}, the longest ${measures.length(Math.ceil(longest))}; offcuts may do.`;
  });
}

/** What holds the ribs by wood glue where there are no cleats. */
const gluedRibs: Readonly<Partial<Record<Design['rib']['joint'], string>>> = {
  'tab-slot': 'the tabs of the ribs in their slots',
  housing: 'the ribs in the grooves of board and hub',
};

/** More than is needed, for rounding and cutting: common practice, no source. */
const spare = 1.1;

/** What the cover is sewn from, and how. */
function coverLine({ cover }: BookInput, { length, run }: Measures): string {
  const { radius, hem, clothWidth, lengths, cord, slit } = cover;
  const cloth = lengths.reduce((sum, one) => sum + one, 0);
  const pieces = lengths.length === 1 ? '' : ` in lengths of ${list(lengths.map(length))} sewn side by side`;
  return `Cover: a disc ${length(2 * radius)} across from ${run(spare * cloth)} of cloth ${length(clothWidth)} wide${pieces}, closely woven, light, no film; ${length(hem)} of its edge turned over for ${run(spare * cord)} of cord; six loops along its upper third${slit ? '; slit to the middle for the vessel, with ties and a flap a hand wide behind' : ''}.`;
}

export function shoppingBlocks(input: BookInput, measures: Measures, { width }: Paper): Block[] {
  const { design, dish, parts } = input;
  const hardware = hardwareOf(input);
  const bought = [...hardware, ...(input.stand?.bought ?? [])];
  const row = ({ item, count, use }: (typeof bought)[number]) =>
    markup`<tr><th scope="row">${measures.words(item)}</th><td>${count}</td><td class="words">${use}</td></tr>`;
  const glued = (kinds: readonly PartKind[]) =>
    parts.filter(({ kind }) => kinds.includes(kind)).reduce((sum, part) => sum + part.quantity * partArea(part), 0);
  const mirrorArea = glued(['reflector']);
  const woodGlue = woodGlueArea(input);
  const wood = 2 * glued(['rib', 'hub', 'cleat', 'board', 'splice', 'batten']) + glued(['panel']);
  const aidLines = aidStock(input, measures);
  const pieces = markup`<div class="scroll" tabindex="0" role="region" aria-label="Table of screws and bolts"><table class="hardware"><caption>By the piece</caption>
<thead><tr><th scope="col">item</th><th scope="col">number</th><th scope="col" class="words">for</th></tr></thead><tbody>${bought.map(row)}</tbody></table></div>`;
  const rest = markup`<ul>
<li>Wood glue for ${measures.area(woodGlue)}: the layers of the hub, ${gluedRibs[design.rib.joint] ?? 'the cleats'}${parts.some(({ kind }) => kind === 'splice') ? ', the splice plates' : ''}.</li>
${hasBattens(input) ? null : markup`<li>Gap-filling glue for ${measures.run(beadLength(input))} of seam between ribs and panels; the gap is a wedge, ${measures.length(dish.glueWedge)} at its widest.</li>`}
${mirrorArea > 0 ? markup`<li>Contact glue or tape for ${measures.area(mirrorArea)} of mirror.</li>` : null}
${design.reflector.tape > 0 ? markup`<li>Reflecting tape ${measures.length(design.reflector.tape)} wide for ${measures.run(beadLength(input) / 2)} of seam.</li>` : null}
<li>Varnish or paint for outdoors for ${measures.area(wood)} of wood, edges first: they drink most, and swollen ribs are another curve.</li>
${aidLines.map((line) => markup`<li>${line}</li>`)}
<li>${coverLine(input, measures)}</li>
<li>Dark eye protection made for bright radiant sources.</li>
</ul>
<p>The finished wood and mirror weigh about <strong data-weight-kg="${partsWeight(design, parts).toFixed(3)}">${measures.weight(partsWeight(design, parts))}</strong>, without screws, glue${input.stand === null ? ', stand' : ''} and vessel. Densities are those of the design.</p>`;
  return [block(stockTable(input, measures), width), block(pieces, width), block(rest, width)];
}
