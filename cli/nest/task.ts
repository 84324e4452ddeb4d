/** What a nesting thread is given and what it reports. */
import type { Layout, NestPart, NestStock } from '../../lib/index.js';

export interface NestTask {
  readonly parts: readonly NestPart[];
  readonly stock: readonly NestStock[];
  readonly spacing: number;
  readonly seed: number;
  readonly effort: number;
  /** Time at which the run began (ms of the clock) and its length (s), where time is the limit. */
  readonly limit: { readonly begun: number; readonly seconds: number } | null;
  /** First number: other than 0 asks to stop. */
  readonly stop: Int32Array;
  /** Shares of the work done, one place a thread, and the place of this one. */
  readonly shares: Float64Array;
  readonly place: number;
}

export interface Message {
  readonly done: boolean;
  readonly layout: Layout;
}
