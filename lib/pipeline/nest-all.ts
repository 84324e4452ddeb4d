/** The requests of a job nested one after the other. */
import type { Layout } from '../nest/index.js';
import type { NestRequest } from './nesting-request.js';
import type { Nester } from './types.js';

const piecesOf = ({ parts }: NestRequest): number => parts.reduce((sum, { quantity }) => sum + quantity, 0);

/**
 * Layouts of requests, in their order. The nester is given the share of each, by its pieces, of all that is still to be
 * done, so that it can keep to a time for the whole.
 * @param again how many more times as much will be nested after these, on other stock
 */
export async function nestAll(requests: readonly NestRequest[], nester: Nester, again = 0): Promise<Layout[]> {
  const layouts: Layout[] = [];
  let left = (1 + again) * requests.reduce((sum, request) => sum + piecesOf(request), 0);
  for (const request of requests) {
    const pieces = piecesOf(request);
    layouts.push(await nester(request.parts, request.stock, request.options, left > 0 ? pieces / left : 1));
    left -= pieces;
  }
  return layouts;
}
