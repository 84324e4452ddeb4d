/** How each placed part of a sheet is held: by tabs, or by an uncut onion skin. */
import { bounds, type Contour, element, placeVertices } from '../../geometry/index.js';
import { type PartShape, type PlacedPart, ringsOf } from '../../part/index.js';
import type { CutOperation } from '../types.js';
import { clearingRings, isHelix, roughed } from './cuts.js';
import { allowanceOf, riseBefore } from './lead.js';
import { liftStep } from './lifts.js';
import { ringOf } from './ring.js';
import { chooseTabs, type HeldPart, type Tab, type Tabbing } from './tabs.js';
import type { Holding, RoutedSheet, RouterData, RouterProblem, SheetMaterial } from './types.js';
import { type Swath, Waste } from './waste.js';

export interface Held {
  readonly tabs: readonly Tab[];
  readonly tabHeight: number;
  readonly holding: readonly Holding[];
  readonly problems: readonly RouterProblem[];
  /** Whether the outline of a placed part keeps its onion skin. */
  readonly leavesSkin: (operation: CutOperation) => boolean;
}

/** Tabs are a quarter of the thickness, at least and at most (mm), and no more than half: common practice, no source. */
const tabShare = 0.25;
const minTab = 1;
const maxTab = 3;

/** Height of tabs above the lower face, mm. */
export function tabHeightOf(material: SheetMaterial, data: RouterData): number {
  const { thickness } = material;
  return data.tabs.height ?? Math.min(maxTab, thickness / 2, Math.max(minTab, tabShare * thickness));
}

const keyOf = (part: string, copy: number): string => `${copy}:${part}`;

/** A placed part's nominal outlines and openings, with the edges that tabs keep off by their new numbers. */
function heldPart(part: PartShape, placed: PlacedPart): HeldPart {
  const edges = ringsOf(part).map((vertices, index) => {
    const count = vertices.length;
    const barred = new Set<number>();
    for (const { ring, from, to } of part.edges) {
      if (ring !== index) continue;
      // a mirrored ring is run the other way, so that edge i becomes edge n-2-i
      for (let i = from; i <= to; i += 1) barred.add(placed.mirrored ? (2 * count - 2 - i) % count : i);
    }
    return { vertices: placeVertices(vertices, placed), barred };
  });
  return { part: placed.part, copy: placed.copy, edges };
}

/** The path that parts the sheet along the edge; undefined where the operation leaves nothing loose. */
function pathOf(operation: CutOperation, radius: number): Contour | undefined {
  if (operation.operation === 'drill') return isHelix(operation, 2 * radius) ? undefined : operation.bore;
  return operation.operation === 'outline' || operation.operation === 'opening' ? operation.vertices : undefined;
}

/** What parts the sheet: outlines and openings cut through, roughed and finished, and large bored holes. */
function throughSwaths(operations: readonly CutOperation[], radius: number, allowance: number): Swath[] {
  return operations.flatMap((operation) => {
    const path = pathOf(operation, radius);
    if (path === undefined) return [];
    const cleared = operation.operation === 'outline' ? [] : clearingRings(path, 2 * radius);
    // roughing runs beside the finished edge and takes that much more: both together are one wider swath
    const between = roughed(path, allowance / 2);
    const edge = between === null ? { ring: ringOf(path), radius } : { ring: between, radius: radius + allowance / 2 };
    return [edge, ...cleared.map((ring) => ({ ring: ringOf(ring), radius }))];
  });
}

function isSmall(part: PartShape, below: number): boolean {
  const { minX, minY, maxX, maxY } = bounds(part.outline);
  return Math.max(maxX - minX, maxY - minY) < below;
}

/** Whether every edge of a part's outline mates or reflects, so that no tab may ever stand on it. */
function allBarred({ edges: [outline] }: HeldPart): boolean {
  return outline !== undefined && outline.vertices.every((_, i) => outline.barred.has(i));
}

/** Numbers of the copies of each part. */
function copiesOf(parts: readonly HeldPart[]): Map<string, number[]> {
  const copies = new Map<string, number[]>();
  for (const { part, copy } of parts) copies.set(part, [...(copies.get(part) ?? []), copy]);
  return copies;
}

/** One warning for all offcuts that come loose, as there may be many. */
function looseProblem(id: string, loose: Tabbing['loose']): RouterProblem[] {
  const [largest] = [...loose].sort((a, b) => b.area - a.area);
  if (largest === undefined) return [];
  const { x, y, area } = largest;
  const size = `${Math.round(area / 100)} cm² at ${Math.round(x)}, ${Math.round(y)} mm`;
  const what = loose.length === 1 ? `an offcut of ${size} comes` : `${loose.length} offcuts, the largest ${size}, come`;
  return [
    {
      code: 'router-loose',
      severity: 'warning',
      key: ['router', 'tabs'],
      message: `${id}: ${what} loose while the sheet is cut`,
      remedy: 'screw or tape them down',
    },
  ];
}

/** Tabs or onion skins as thick as the sheet. */
function heightProblems(id: string, material: SheetMaterial, data: RouterData, leavesSkin: boolean): RouterProblem[] {
  const { onionSkin } = data.tabs;
  const tabHeight = tabHeightOf(material, data);
  const problems: RouterProblem[] = [];
  if (tabHeight >= material.thickness)
    problems.push({
      code: 'router-no-tabs',
      severity: 'error',
      key: ['router', 'tabs', 'height'],
      message: `${id}: router.tabs.height of ${tabHeight} mm leaves nothing of ${material.thickness} mm to cut`,
      remedy: 'use less, or remove it',
    });
  if (leavesSkin && onionSkin >= material.thickness)
    problems.push({
      code: 'router-no-tabs',
      severity: 'error',
      key: ['router', 'tabs', 'onionSkin'],
      message: `${id}: router.tabs.onionSkin of ${onionSkin} mm leaves nothing of ${material.thickness} mm to cut`,
      remedy: 'use a thinner onion skin, or a larger process.web that makes room for tabs',
    });
  return problems;
}

/** Parts that are to have tabs and have no room for enough of them. */
function unheldProblems(id: string, unheld: Tabbing['unheld'], data: RouterData): RouterProblem[] {
  return [...copiesOf(unheld.map((one) => one.part))].map(([part, copies]) => {
    const found = Math.max(...unheld.filter((one) => one.part.part === part).map((one) => one.tabs));
    return {
      code: 'router-no-tabs',
      severity: 'error',
      key: ['router', 'tabs', 'without'],
      message: `${id}: no room for ${data.tabs.min} tabs on ${part} ${copies.join(', ')} (${found} found) on straight or gently curved edges that neither mate nor reflect`,
      remedy: `use a smaller router.tabs.width or a larger process.web, or let an onion skin of ${data.tabs.onionSkin} mm hold it, to be cut with a knife (router.tabs.without: onion-skin)`,
    };
  });
}

/**
 * Chooses how every part of the sheet is held: small parts by an onion skin if asked, the others by tabs, and those without
 * room for tabs by an onion skin, unless the design would rather have no file.
 * @param radius of the end mill
 */
export function hold(
  sheet: RoutedSheet,
  parts: ReadonlyMap<string, PartShape>,
  material: SheetMaterial,
  data: RouterData,
  radius: number,
): Held {
  const { cut, placed } = sheet;
  const { width, spacing, min, without, onionSkinBelow } = data.tabs;
  const pairs = placed.map((place) => {
    const part = parts.get(place.part);
    if (part === undefined) throw new RangeError(`the sheet places '${place.part}', which is not one of the parts`);
    return { key: keyOf(place.part, place.copy), part, held: heldPart(part, place) };
  });
  const faced = pairs.filter(({ held }) => allBarred(held));
  const onionSkins = new Set(
    [...pairs.filter(({ part }) => isSmall(part, onionSkinBelow)), ...faced].map(({ key }) => key),
  );
  const leavesSkin = ({ operation, part, copy }: CutOperation): boolean =>
    operation === 'outline' && onionSkins.has(keyOf(part, copy));
  const allowance = allowanceOf(data, cut.process);
  const rise = riseBefore({ left: allowance, toolRadius: radius });
  const drop = tabHeightOf(material, data) + data.overcut + rise + 3 * liftStep;
  const rules = { width, toolRadius: radius, spacing, min, drop };
  const choose = (): { readonly held: readonly HeldPart[]; readonly tabbing: Tabbing } => {
    const held = pairs.filter(({ key }) => !onionSkins.has(key)).map((pair) => pair.held);
    const through = cut.operations.filter((one) => one.depth === 'through' && !leavesSkin(one));
    const waste = new Waste(cut.width, cut.height, throughSwaths(through, radius, allowance));
    const skinned = pairs.filter(({ key }) => onionSkins.has(key)).map((pair) => pair.held);
    return { held, tabbing: chooseTabs(held, skinned, waste, rules) };
  };

  const problems: RouterProblem[] = [];
  const onionSkinProblem = (why: string, part: string, copies: readonly number[]): RouterProblem => ({
    code: 'router-onion-skin',
    severity: 'warning',
    key: ['router', 'tabs'],
    message: `${cut.id}: ${why} ${part} ${copies.join(', ')}, held by an onion skin of ${data.tabs.onionSkin} mm instead`,
    remedy: 'cut it with a knife',
  });
  const withoutTabs: HeldPart[] = [];
  let chosen = choose();
  // an onion skin holds what stands around it too, so the choice is made again until everything hangs
  while (without === 'onion-skin' && chosen.tabbing.unheld.length > 0) {
    for (const { part } of chosen.tabbing.unheld) {
      onionSkins.add(keyOf(part.part, part.copy));
      withoutTabs.push(part);
    }
    chosen = choose();
  }
  const facing = faced.map(({ held }) => held);
  for (const [part, copies] of copiesOf(facing)) problems.push(onionSkinProblem('no edge for tabs on', part, copies));
  for (const [part, copies] of copiesOf(withoutTabs))
    problems.push(onionSkinProblem('no room for tabs on', part, copies));
  problems.push(...heightProblems(cut.id, material, data, onionSkins.size > 0));
  const { tabs, counts, unheld, loose } = chosen.tabbing;
  problems.push(...unheldProblems(cut.id, unheld, data));
  const countOf = new Map(chosen.held.map((one, i) => [keyOf(one.part, one.copy), element(counts, i)]));
  return {
    tabs,
    tabHeight: tabHeightOf(material, data),
    holding: placed.map(({ part, copy }) => ({
      part,
      copy,
      onionSkin: onionSkins.has(keyOf(part, copy)),
      tabs: countOf.get(keyOf(part, copy)) ?? 0,
    })),
    problems: [...problems, ...looseProblem(cut.id, loose)],
    leavesSkin,
  };
}
