/** What a machine at hand makes of holes. Millimetres. */

/** Whether a process makes a hole of that diameter: a router mills what is wider than its bit, and drills the rest. */
export function holeIsMade(
  {
    kind,
    toolDiameter,
    drillBits,
  }: { readonly kind: string; readonly toolDiameter: number; readonly drillBits: readonly number[] },
  diameter: number,
): boolean {
  if (kind !== 'router' || diameter >= toolDiameter) return true;
  return drillBits.some((bit) => Math.abs(bit - diameter) < 1e-6);
}
