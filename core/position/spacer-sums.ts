/**
 * Which spacer stacks can be made from the pieces at hand?
 * Inputs: piecesMm, each > 0; limitMm >= 0, the highest stack wanted.
 * Answer: all different sums from 0 up to the limit, smallest first, mm; sums are taken to 0.01 mm.
 */
export function spacerSums(piecesMm: readonly number[], limitMm: number): readonly number[] {
  let sums = new Set<number>([0]);
  for (const piece of piecesMm) {
    const longer = new Set(sums);
    for (const sum of sums) {
      const next = Math.round((sum + piece) * 100) / 100;
      if (next <= limitMm) longer.add(next);
    }
    sums = longer;
  }
  return [...sums].sort((a, b) => a - b);
}
