/**
 * The least bill of small stock problems by trying everything: boxes with whole sides on sheets with whole sides, laid
 * square. Where a packing exists, one exists with all corners on whole numbers, so the search is complete
 * (Christofides and Whitlock, Operations Research 25, 1977, from memory: normal patterns).
 */

export interface WholeBox {
  readonly width: number;
  readonly height: number;
}

export interface WholeSheet extends WholeBox {
  readonly price: number;
  readonly count: number;
}

/** Whether the boxes, by index, find room on sheets of these sizes, the rest of each sheet wasted. */
function packs(boxes: readonly WholeBox[], sheets: readonly WholeBox[], turn: boolean): boolean {
  const [sheet] = sheets;
  if (sheet === undefined) return boxes.length === 0;
  const rest = sheets.slice(1);
  const others = rest.reduce((sum, { width, height }) => sum + width * height, 0);
  const taken = Array.from({ length: sheet.height }, () => new Array<boolean>(sheet.width).fill(false));
  const left = new Set(boxes.keys());
  const areaLeft = (): number => [...left].reduce((sum, i) => sum + boxes[i]!.width * boxes[i]!.height, 0);
  const free = (x: number, y: number, width: number, height: number): boolean => {
    if (x + width > sheet.width || y + height > sheet.height) return false;
    for (let v = y; v < y + height; v++) for (let u = x; u < x + width; u++) if (taken[v]![u]) return false;
    return true;
  };
  const mark = (x: number, y: number, width: number, height: number, to: boolean): void => {
    for (let v = y; v < y + height; v++) for (let u = x; u < x + width; u++) taken[v]![u] = to;
  };
  // cell by cell: a box has its lower left corner there, or the cell is waste
  const from = (cell: number, free0: number): boolean => {
    let at = cell;
    let open = free0;
    while (at < sheet.width * sheet.height && taken[Math.floor(at / sheet.width)]![at % sheet.width]) at++;
    if (left.size === 0) return true;
    if (open + others < areaLeft()) return false;
    if (at >= sheet.width * sheet.height)
      return packs(
        [...left].map((i) => boxes[i]!),
        rest,
        turn,
      );
    const [x, y] = [at % sheet.width, Math.floor(at / sheet.width)];
    const tried = new Set<string>();
    for (const i of [...left]) {
      const { width, height } = boxes[i]!;
      for (const [w, h] of turn
        ? ([
            [width, height],
            [height, width],
          ] as const)
        : ([[width, height]] as const)) {
        if (tried.has(`${w} ${h}`)) continue;
        tried.add(`${w} ${h}`);
        if (!free(x, y, w, h)) continue;
        left.delete(i);
        mark(x, y, w, h, true);
        if (from(at + 1, open - w * h)) return true;
        mark(x, y, w, h, false);
        left.add(i);
      }
    }
    open -= 1;
    taken[y]![x] = true;
    const found = from(at + 1, open);
    taken[y]![x] = false;
    return found;
  };
  return from(0, sheet.width * sheet.height);
}

/** The least that boxes can cost on stock; null when no choice of it takes them all. */
export function minCost(boxes: readonly WholeBox[], stock: readonly WholeSheet[], turn: boolean): number | null {
  const area = boxes.reduce((sum, { width, height }) => sum + width * height, 0);
  const bills: { readonly sheets: WholeBox[]; readonly price: number }[] = [];
  const choose = (kind: number, sheets: WholeBox[], price: number): void => {
    const item = stock[kind];
    if (item === undefined) {
      if (sheets.reduce((sum, { width, height }) => sum + width * height, 0) >= area) bills.push({ sheets, price });
      return;
    }
    for (let n = 0; n <= Math.min(item.count, boxes.length); n++)
      choose(kind + 1, [...sheets, ...Array.from({ length: n }, () => item)], price + n * item.price);
  };
  choose(0, [], 0);
  bills.sort((a, b) => a.price - b.price);
  return bills.find(({ sheets }) => packs(boxes, sheets, turn))?.price ?? null;
}
