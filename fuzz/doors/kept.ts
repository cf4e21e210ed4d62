/** What does the page make of anything that lies in the browser's storage? It starts, sends only what is an entry, loses none. */
import fc from "fast-check";
import { entryShelf, type NewEntry } from "../../web/state/entry-shelf.js";
import { type Keep, keptJson } from "../../web/state/kept.js";
import { SaveQueue } from "../../web/state/save-queue.js";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { oddText } from "../inputs/odd-text.js";

interface KeptInput {
  /** Name and text as they lie there. */
  readonly lying: readonly (readonly [string, string])[];
  /** Names that the storage will not write from now on: 0 all, 1 none, else each n-th. */
  readonly full: number;
}

/** As the shelf makes them, around the moment of the test. */
const ownKey = fc
  .tuple(fc.integer({ min: -5, max: 5 }), fc.nat(30))
  .map(([ms, n]) => `0${1_800_000_000_000 + ms * 15_000}-${String(n).padStart(7, "0")}-w`);
const key = fc.oneof(ownKey, fc.constantFrom("", "0", "__proto__", "NaN-1-w", "zzz"), oddText);
const step = fc.oneof<fc.Arbitrary<unknown>[]>(
  fc.constantFrom<unknown>("measured", "chainstay", 0, 3, "__proto__", "constructor"),
  fc.jsonValue({ maxDepth: 1 }),
);
const entry = fc.record(
  {
    key: fc.oneof(fc.constant("own"), key),
    editId: fc.oneof(fc.string({ maxLength: 12 }), fc.jsonValue({ maxDepth: 1 })),
    build: fc.constantFrom<unknown>("quayside", "", 1, null),
    kind: fc.constantFrom<unknown>("donor", "build", "bin", "__proto__", 1),
    id: fc.constantFrom<unknown>("q1", "quayside", "../..", "", null),
    path: fc.oneof<fc.Arbitrary<unknown>[]>(
      fc.array(step, { maxLength: 4 }),
      fc.constantFrom<unknown>([], "measured", null, [[]], {}),
    ),
    value: fc.jsonValue({ maxDepth: 2 }),
    before: fc.jsonValue({ maxDepth: 1 }),
    rows: fc.jsonValue({ maxDepth: 2 }),
    words: fc.oneof(oddText, fc.constant(1)),
    changedAt: fc.oneof(fc.nat(2_000_000_000), fc.constantFrom<unknown>(-1, 1e308, null, "1")),
    triedOn: fc.constantFrom<unknown>(1, 0, -1, null, "x", 1e308),
    refused: fc.constantFrom<unknown>(["because"], [], "no", null, [1]),
  },
  { requiredKeys: ["key", "path"] },
);
const whole = fc.record({
  key: fc.constant("own"),
  editId: fc.string({ minLength: 1, maxLength: 12 }),
  build: fc.constant("quayside"),
  kind: fc.constant("donor"),
  id: fc.constant("q1"),
  path: fc.oneof(
    { weight: 4, arbitrary: fc.constant<readonly unknown[]>(["measured", "chainstay"]) },
    { weight: 1, arbitrary: fc.array(step, { minLength: 1, maxLength: 4 }) },
  ),
  value: fc.jsonValue({ maxDepth: 2 }),
  before: fc.oneof(
    { weight: 4, arbitrary: fc.constant<unknown>(442) },
    { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 1 }) },
  ),
  words: oddText,
  changedAt: fc.nat(2_000_000_000),
});
const lying = fc
  .tuple(
    fc.oneof({ weight: 4, arbitrary: ownKey }, { weight: 1, arbitrary: key }),
    fc.oneof(
      { weight: 6, arbitrary: whole.map((e) => ({ e })) },
      { weight: 3, arbitrary: entry.map((e) => ({ e })) },
      { weight: 1, arbitrary: oddText.map((text) => ({ text })) },
      { weight: 1, arbitrary: fc.json({ maxDepth: 3 }).map((text) => ({ text })) },
    ),
  )
  .map(([name, what]): readonly [string, string] => [
    `entry.${name}`,
    "text" in what ? what.text : JSON.stringify(what.e.key === "own" ? { ...what.e, key: name } : what.e),
  ]);
const inputs: fc.Arbitrary<KeptInput> = fc.record({
  lying: fc.array(lying, { maxLength: 6 }),
  full: fc.constantFrom(1, 1, 1, 0, 2, 3),
});

async function put({ lying: rows, full }: KeptInput): Promise<Went> {
  const store = new Map(rows);
  const before = new Map(rows);
  let writes = 0;
  const keep: Keep = {
    get: (name) => store.get(name),
    set: (name, value) => {
      writes += 1;
      if (value === undefined) store.delete(name);
      else if (full === 0 || (full > 1 && writes % full === 0)) return false;
      else store.set(name, value);
      return true;
    },
    names: (prefix) => [...store.keys()].filter((n) => n.startsWith(prefix)),
  };
  for (const name of store.keys()) keptJson(keep, name, (v): v is object => v !== null && typeof v === "object", {});
  let clock = 1_800_000_000_000;
  let serial = 0;
  const shelf = entryShelf(
    keep,
    () => clock,
    () => "w1",
  );
  const sent: unknown[] = [];
  const soon: (() => void)[] = [];
  const queue = new SaveQueue({
    shelf,
    workshop: () => "w",
    send: async (e, revision) => {
      sent.push([e.kind, e.id, e.path]);
      mustHold(
        typeof e.kind === "string" && typeof e.id === "string" && typeof e.editId === "string",
        () => "no entry was sent",
      );
      mustHold(
        Array.isArray(e.path) && e.path.every((s) => typeof s === "string" || typeof s === "number"),
        () => `sent to ${JSON.stringify(e.path)}`,
      );
      mustHold(Number.isInteger(revision), () => `sent on revision ${revision}`);
      return { kind: "unreachable" };
    },
    load: async () => ({ kind: "unreachable" }) as never,
    known: async (kind, id) =>
      kind === "donor" ? { kind, id, revision: 3, plain: { id, measured: { chainstay: 442 } } } : undefined,
    learned: async () => {},
    alone: (run) => run(),
    changed: () => {},
    later: (run) => void soon.push(run),
    clock: () => clock,
    freshId: () => `e${++serial}`,
  });
  const read = queue.now.waiting.length + queue.now.notSaved.length;
  const fresh: NewEntry = {
    build: "quayside",
    kind: "donor",
    id: "q1",
    path: ["measured", "chainstay"],
    value: 441.5,
    before: 442,
    words: "chainstay",
  };
  queue.add(fresh);
  const own = [...queue.now.waiting].at(-1);
  mustHold(own?.value === 441.5, () => "the entry just made is not the last one");
  mustHold(
    queue.now.waiting.length + queue.now.notSaved.length === read + 1,
    () => "an entry is missing after another was added",
  );
  clock += 60_000;
  for (let turn = 0; turn < 3; turn++) {
    for (const run of soon.splice(0)) run();
    await new Promise<void>((resolve) => setImmediate(resolve));
  }
  // The records never answered: all that waited still waits, but what the records already say, or a later entry replaces.
  const again = [...queue.now.waiting, ...queue.now.notSaved];
  mustHold(
    again.some((e) => e.editId === own.editId && e.value === 441.5),
    () => "the entry just made is gone",
  );
  for (const [name, text] of before)
    mustHold(store.has(name) || mayGo(text), () => `${name} was taken out of the storage`);
  const other = entryShelf(
    keep,
    () => clock,
    () => "w2",
  );
  const key2 = other.freshKey();
  mustHold(
    other.all().every((e) => e.key < key2),
    () => `the fresh key ${key2} does not sort last`,
  );
  return sent.length > 0 && read > 0 ? accepted("entries lay there") : refusedAs("nothing to send lay there");
}

/** Nothing where nothing stands, or the place of the entry just made. */
function mayGo(text: string): boolean {
  const e = JSON.parse(text) as { readonly kind?: unknown; readonly value?: unknown; readonly path?: unknown };
  return e.kind === "donor" && (e.value === null || JSON.stringify(e.path) === '["measured","chainstay"]');
}

export const kept: Door<KeptInput> = {
  name: "kept",
  holds: "whatever lies in the browser's storage, the page starts, sends only entries, and loses none",
  inputs,
  put,
};
