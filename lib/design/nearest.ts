/** Levenshtein's edit distance, by the two-row method of Wagner and Fischer (J. ACM 21, 1974). */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}

/** The known word that a slip of the pen has made `word` of: a third of its letters may differ, and one at least. */
export const slippedFrom = (word: string, known: readonly string[]): string | null =>
  nearestWord(word, known, Math.max(1, Math.floor(word.length / 3)));

/**
 * The known word nearest to `word`, or null when none is near.
 * @param changes letters that may differ; left out: half of them
 */
export function nearestWord(
  word: string,
  known: readonly string[],
  changes = Math.max(2, Math.ceil(Math.min(64, word.length) / 2)),
): string | null {
  const asked = word.slice(0, 64).toLowerCase();
  let best: string | null = null;
  let min = changes + 1;
  for (const candidate of known) {
    const distance = editDistance(asked, candidate.toLowerCase());
    if (distance < min) {
      min = distance;
      best = candidate;
    }
  }
  return best;
}
