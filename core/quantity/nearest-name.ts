/**
 * Which known name did the writer most likely mean?
 * Counts the single-letter slips (left out, put in, changed, swapped with its neighbour) between two names, capitals
 * and the signs - _ and space counting as the same. Gives undefined where nothing is near: more than half of the
 * longer name (or the `share` given) would have to change, and no name holds all words of
 * the given one. The first of equals wins. Names over 64 signs are not compared.
 */
export function nearestName(given: string, known: readonly string[], share = 0.5): string | undefined {
  if (given.length > 64 || given.trim() === "") return undefined;
  const from = plain(given);
  let best: { name: string; slips: number } | undefined;
  for (const name of known) {
    if (name.length > 64) continue;
    const slips = slipsBetween(from, plain(name));
    if (slips > share * Math.max(given.length, name.length)) continue;
    if (best === undefined || slips < best.slips) best = { name, slips };
  }
  return best?.name ?? known.find((name) => holdsAllWords(plain(name), from));
}

/** "stack" is near to "lower_stack_mm": each word of the given name, of three letters at least, stands in the other. */
function holdsAllWords(name: string, given: string): boolean {
  const words = name.split("_");
  return given.split("_").every((w) => w.length >= 3 && words.includes(w));
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[-_\s]+/g, "_");
}

/** How many single-letter slips lie between two words? Restricted Damerau-Levenshtein distance. */
export function slipsBetween(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min((above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (above[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, (before[j - 2] ?? 0) + 1);
      }
      row.push(least);
    }
    before = above;
    above = row;
  }
  return above[b.length] ?? 0;
}
