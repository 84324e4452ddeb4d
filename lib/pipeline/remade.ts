/**
 * A record made again from the design in it, as far as it does not depend on where parts lie: neither nest nor tool paths
 * nor light nor book are made anew, which would take as long as `cut` does.
 */
import type { Design } from '../design/index.js';
import { type Process, type RouterLimits, settledLimits, toolsAt } from '../machining/index.js';
import { type JobRecord, recordPart } from '../output/index.js';
import { prepare } from '../pipeline.js';
import { plannedCoupons, preparedCoupons } from './coupon.js';
import { recordFasteners } from './fasteners.js';
import { routerData } from './problems.js';
import type { Prepared } from './types.js';

/** What is taken of a record, as JSON. */
interface Recorded {
  readonly design: Design;
  readonly coupon?: true;
  readonly parts: readonly { readonly id: string; readonly material: string }[];
  readonly sheets: readonly {
    readonly file: string;
    readonly stock: string;
    readonly router?: { readonly limits: { readonly tools: readonly { readonly number: number }[] } };
  }[];
}

export interface RemadeRecord {
  readonly parts: JobRecord['parts'];
  readonly fasteners: JobRecord['fasteners'];
  /** By the sheet's file. */
  readonly limits: Readonly<Record<string, Omit<RouterLimits, 'holding' | 'tabs' | 'keepOuts'>>>;
  readonly problems: readonly { readonly code: string; readonly message: string }[];
}

/** The design's parts; of a coupon those of the materials that are on its sheets. */
function preparedFor({ design, coupon, parts }: Recorded): Prepared {
  // outlines of the user's own are not in the folder
  const prepared = prepare({ ...design, extra: [] });
  if (coupon === undefined) return prepared;
  return preparedCoupons(prepared, plannedCoupons(prepared, [...new Set(parts.map(({ material }) => material))]));
}

function processFor({ requests }: Prepared, stock: string): Process | null {
  return requests.find((request) => request.stock.some(({ id }) => id === stock))?.process ?? null;
}

function limitsOf(recorded: Recorded, prepared: Prepared): RemadeRecord['limits'] {
  const { design } = prepared;
  const data = routerData(design);
  return Object.fromEntries(
    recorded.sheets.flatMap(({ file, stock, router }) => {
      const material = design.materials[design.stock.find(({ id }) => id === stock)?.material ?? ''];
      const process = processFor(prepared, stock);
      if (router === undefined || material === undefined || process === null) return [];
      const known = toolsAt(process, data);
      const tools = router.limits.tools.flatMap(({ number }) => known.find((tool) => tool.number === number) ?? []);
      const sheet = { kind: material.kind, thickness: material.thickest };
      return [[file, settledLimits(tools, sheet, data, process)] as const];
    }),
  );
}

/**
 * Parts, fasteners, limits of tool paths and warnings that follow from the design of a record.
 * @param record as JSON
 * @throws Error for a design of which nothing can be made
 */
export function remadeRecord(record: unknown): RemadeRecord {
  // the proof has read it before; what is wrong beyond that ends in an error
  const recorded = record as Recorded;
  const prepared = preparedFor(recorded);
  const { parts, aids, assembly, problems } = prepared;
  return {
    parts: [...parts, ...aids].map(recordPart),
    fasteners: recordFasteners(assembly),
    limits: limitsOf(recorded, prepared),
    problems: problems.map(({ code, message }) => ({ code, message })),
  };
}
