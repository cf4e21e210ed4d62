/**
 * Two people changed the same place. What is meant by both together? Where each changed another part of it (another
 * key, another row of a list) both changes hold; where they changed the same part to different things, a person chooses.
 */

export type ThreeWay = { readonly kind: "merged"; readonly value: unknown } | { readonly kind: "conflict" };

/** Keys by which a row of our documents is told from its neighbours, the first that it has. */
const ROW_KEYS = ["id", "gate", "joint", "op", "name", "on"] as const;
const CONFLICT: ThreeWay = { kind: "conflict" };
const merged = (value: unknown): ThreeWay => ({ kind: "merged", value });

/** Equal as data; a value that is not there is the same as none. The order of keys says nothing. */
export function same(a: unknown, b: unknown): boolean {
  return written(a) === written(b);
}

function written(value: unknown): string {
  return JSON.stringify(value ?? null, (_, v: unknown) =>
    isRecord(v) ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => (a < b ? -1 : 1))) : v,
  );
}

export function threeWay(before: unknown, mine: unknown, theirs: unknown): ThreeWay {
  if (same(mine, theirs) || same(before, mine)) return merged(theirs);
  if (same(before, theirs)) return merged(mine);
  if (isList(before ?? []) && isList(mine) && isList(theirs)) return mergedRows((before ?? []) as Rows, mine, theirs);
  if (isRecord(before ?? {}) && isRecord(mine) && isRecord(theirs))
    return mergedKeys((before ?? {}) as Fields, mine, theirs);
  return CONFLICT;
}

type Rows = readonly unknown[];
type Fields = Readonly<Record<string, unknown>>;
const isList = (v: unknown): v is Rows => Array.isArray(v);
const isRecord = (v: unknown): v is Fields => v !== null && typeof v === "object" && !Array.isArray(v);

function mergedKeys(before: Fields, mine: Fields, theirs: Fields): ThreeWay {
  const out: Record<string, unknown> = {};
  for (const key of new Set([...Object.keys(theirs), ...Object.keys(mine)])) {
    const one = threeWay(before[key], mine[key], theirs[key]);
    if (one.kind === "conflict") return CONFLICT;
    if (one.value !== undefined) out[key] = one.value;
  }
  return merged(out);
}

/** What a row is found again by: its name, or where it has none, all that it says. */
export function rowName(row: unknown): string {
  const key = isRecord(row) ? ROW_KEYS.find((k) => typeof row[k] === "string") : undefined;
  return key === undefined || !isRecord(row) ? written(row) : `${key}=${String(row[key])}`;
}

function mergedRows(before: Rows, mine: Rows, theirs: Rows): ThreeWay {
  const names = (rows: Rows) => rows.map(rowName);
  // Two rows of one name, or rows put in another order, cannot be told apart well enough to decide for anybody.
  for (const rows of [before, mine, theirs]) if (new Set(names(rows)).size !== rows.length) return CONFLICT;
  const byName = (rows: Rows) => new Map(rows.map((row) => [rowName(row), row]));
  const [old, my, their] = [byName(before), byName(mine), byName(theirs)];
  if (!sameOrder(names(before), names(mine)) || !sameOrder(names(before), names(theirs))) return CONFLICT;
  const out: unknown[] = [];
  for (const name of [...their.keys(), ...[...my.keys()].filter((n) => !their.has(n))]) {
    const one = threeWay(old.get(name), my.get(name), their.get(name));
    if (one.kind === "conflict") return CONFLICT;
    if (one.value !== undefined) out.push(one.value);
  }
  return merged(out);
}

/** The rows that both have stand in the same order. */
function sameOrder(a: readonly string[], b: readonly string[]): boolean {
  const inB = new Set(b);
  const inA = new Set(a);
  return a.filter((n) => inB.has(n)).join("\n") === b.filter((n) => inA.has(n)).join("\n");
}
