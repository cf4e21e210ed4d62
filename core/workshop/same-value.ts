/** Do two pieces of plain data say the same? The order of keys says nothing, the order of entries does. */

export type PlainRecord = Readonly<Record<string, unknown>>;

export const isPlainRecord = (v: unknown): v is PlainRecord => v !== null && typeof v === "object" && !Array.isArray(v);

/** Never what stands behind the data: a key named __proto__ is one like others. */
export const ownValue = (record: PlainRecord, key: string): unknown =>
  Object.hasOwn(record, key) ? record[key] : undefined;

export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((item, i) => sameValue(item, b[i]));
  if (!isPlainRecord(a) || !isPlainRecord(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && sameValue(a[key], b[key]))
  );
}

/** Keys by which an entry of a list is known, the first that fits. */
const NAMES = ["id", "name", "gate", "joint", "part"] as const;

/** What an entry of a list is called, if it says so itself: "q24". */
export function entryName(item: unknown): string | undefined {
  if (!isPlainRecord(item)) return undefined;
  for (const key of NAMES) {
    const name = item[key];
    if (typeof name === "string" || typeof name === "number") return String(name);
  }
  return undefined;
}
