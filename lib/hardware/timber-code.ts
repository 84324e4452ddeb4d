/**
 * Least distances of fasteners by EN 1995-1-1:2004, in shanks, from memory: 8.3.1.3 (edges of plywood) and table 8.2
 * (between nails along the grain, and to an unloaded edge), by 8.7.1 (5) also for screws of up to 6 mm; table 8.6 for
 * screws that are pulled along their axis. The code counts on joints that carry by their fasteners alone.
 */

/** How the hole is made. */
export type Boring = 'predrilled' | 'driven';

/** Of an unloaded edge or end of plywood, whatever the hole. */
const plywoodEdge = 3;
/** Of an unloaded edge in wood of up to 420 kg/m³ into which a nail is driven without a hole. */
const drivenEdge = 5;
/** Between two in a row along the grain: (4 + |cos α|)·d in predrilled holes, (5 + 5·|cos α|)·d in thin nails driven. */
const predrilledRow = 5;
const drivenRow = 10;

/** How a fastener is loaded: across its axis, or pulled along it. */
export type CodeLoad = 'across' | 'along';

/** Of screws that are pulled, a2,CG to an edge and a1 between two along the grain. */
const pulledEdge = 4;
const pulledRow = 7;

/**
 * Least distance of an axis from an edge or end, shanks.
 * @param edgewise driven into the edge of a sheet, as into wood
 */
export function codeEdge(boring: Boring, edgewise: boolean, load: CodeLoad): number {
  if (load === 'along' && boring === 'predrilled' && edgewise) return pulledEdge;
  return boring === 'driven' && edgewise ? drivenEdge : plywoodEdge;
}

/** Least distance between two of one row, shanks. */
export function codeSpacing(boring: Boring, load: CodeLoad): number {
  if (load === 'along' && boring === 'predrilled') return pulledRow;
  return boring === 'driven' ? drivenRow : predrilledRow;
}
