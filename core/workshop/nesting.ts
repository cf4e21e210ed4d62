/**
 * Is a text, or what was read from it, nested more deeply than a document of ours can be? The text is asked before the
 * parser recurses, the data after it, for aliases can nest what the text does not. Both are linear in their input.
 */

/** Deepest nesting that the bare text can mean: flow brackets (strings not regarded), or blanks and dashes that lead a line. */
export function mostNesting(text: string): number {
  let depth = 0;
  let most = 0;
  let leading = 0;
  let atStart = true;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 0x5b || c === 0x7b) most = Math.max(most, ++depth);
    else if (c === 0x5d || c === 0x7d) depth = Math.max(0, depth - 1);
    if (c === 0x0a) {
      atStart = true;
      leading = 0;
    } else if (atStart && (c === 0x20 || c === 0x09 || c === 0x2d || c === 0x3f)) most = Math.max(most, ++leading);
    else atStart = false;
  }
  return most;
}

/** Deeper than the limit, or holding itself through an alias. Each value on the path is met once, so a loop is seen. */
export function nestedTooDeeply(value: unknown, limit: number, path: Set<unknown> = new Set()): boolean {
  if (value === null || typeof value !== "object") return false;
  if (path.size >= limit || path.has(value)) return true;
  path.add(value);
  const deep = Object.values(value).some((child) => nestedTooDeeply(child, limit, path));
  path.delete(value);
  return deep;
}
