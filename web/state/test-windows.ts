/**
 * For tests: windows of one browser with one shelf and one lock, and a pretended server that keeps what it is sent, knows
 * each edit once, and may be gone or lose an answer. Time passes only when told.
 */
import { type EditPath, withValue } from "@coldset/core/workshop";
import type { Loaded, SaveAnswer, StoredPlain } from "./api.js";
import { type Entry, type EntryShelf, entryShelf } from "./entry-shelf.js";
import type { Keep } from "./kept.js";
import { rowsOf, samePlace, valueAt } from "./place.js";
import { SaveQueue } from "./save-queue.js";

export function memoryKeep(): Keep & { readonly all: Map<string, string>; room: number } {
  const all = new Map<string, string>();
  return {
    all,
    room: Number.POSITIVE_INFINITY,
    get: (name) => all.get(name),
    set(name, value) {
      if (value === undefined) all.delete(name);
      else if (!all.has(name) && all.size >= this.room) return false;
      else all.set(name, value);
      return true;
    },
    names: (prefix) => [...all.keys()].filter((name) => name.startsWith(prefix)),
  };
}

export interface Applied {
  readonly editId: string;
  readonly key: string;
  readonly doc: string;
  readonly path: EditPath;
  readonly over: unknown;
  readonly value: unknown;
  readonly before: unknown;
}

export type Line = "well" | "gone" | "loses answers";

export class PretendedServer {
  readonly docs = new Map<string, StoredPlain>();
  readonly taken = new Map<string, number>();
  readonly applied: Applied[] = [];
  /** Every value that ever stood at a place, as "doc path value". */
  readonly stood = new Set<string>();
  /** Ids of all edits that arrived, each as often as it did. */
  readonly came: string[] = [];
  line: Line = "well";
  /** Told of each document that was written. */
  wrote: (doc: string) => void = () => undefined;
  refuses: (entry: Entry) => readonly string[] | undefined = () => undefined;

  constructor(docs: readonly StoredPlain[]) {
    for (const doc of docs) this.docs.set(`${doc.kind}/${doc.id}`, doc);
  }

  at(doc: string, path: EditPath): unknown {
    return valueAt(this.docs.get(doc)?.plain, path);
  }

  everStood(doc: string, path: EditPath, value: unknown): boolean {
    return this.stood.has(JSON.stringify([doc, path, value]));
  }

  /** Somebody else, who has no queue. */
  write(doc: string, path: EditPath, value: unknown): void {
    const now = this.docs.get(doc);
    if (now === undefined) throw new Error(`no ${doc}`);
    this.stood.add(JSON.stringify([doc, path, valueAt(now.plain, path)]));
    this.stood.add(JSON.stringify([doc, path, value]));
    this.docs.set(doc, { ...now, revision: now.revision + 1, plain: withValue(now.plain, path, value) });
    this.wrote(doc);
  }

  async send(entry: Entry, revision: number): Promise<SaveAnswer> {
    if (this.line === "gone") return { kind: "unreachable" };
    const answer = this.take(entry, revision);
    return this.line === "loses answers" ? { kind: "unreachable" } : answer;
  }

  private take(entry: Entry, revision: number): SaveAnswer {
    const doc = `${entry.kind}/${entry.id}`;
    this.came.push(entry.editId);
    const before = this.taken.get(entry.editId);
    if (before !== undefined) return { kind: "saved", revision: before, repeated: true };
    const now = this.docs.get(doc);
    if (now === undefined) return { kind: "refused", messages: ["not there"] };
    if (now.revision !== revision) return { kind: "conflict" };
    const messages = this.refuses(entry);
    if (messages !== undefined) return { kind: "refused", messages };
    const { editId, key, path, value, before: seen } = entry;
    this.applied.push({ editId, key, doc, path, over: valueAt(now.plain, path), value, before: seen });
    this.write(doc, path, value);
    this.taken.set(editId, revision + 1);
    return { kind: "saved", revision: revision + 1 };
  }

  async loadBuild(_build: string): Promise<readonly StoredPlain[]> {
    return [...this.docs.values()];
  }

  async load(kind: string, id: string): Promise<Loaded<StoredPlain>> {
    if (this.line !== "well") return { kind: "unreachable" };
    const doc = this.docs.get(`${kind}/${id}`);
    return doc === undefined ? { kind: "missing" } : { kind: "loaded", value: doc };
  }
}

export class PretendedBrowser {
  now = 1_000_000;
  readonly keep = memoryKeep();
  /** The workshop that answers, as this browser knows it. */
  workshop: string | undefined;
  private due: { readonly at: number; readonly run: () => void }[] = [];
  private lock: Promise<unknown> = Promise.resolve();
  private ids = 0;

  constructor(readonly server: PretendedServer) {}

  readonly freshId = () => `id-${String(++this.ids).padStart(6, "0")}`;
  readonly later = (run: () => void, ms: number) => void this.due.push({ at: this.now + ms, run });
  readonly alone = (run: () => Promise<void>): Promise<void> => {
    const mine = this.lock.then(run);
    this.lock = mine.catch(() => undefined);
    return mine;
  };

  window(): PretendedWindow {
    return new PretendedWindow(this);
  }

  async pass(ms: number): Promise<void> {
    const until = this.now + ms;
    for (;;) {
      await settled();
      this.due.sort((a, b) => a.at - b.at);
      const [next] = this.due;
      if (next === undefined || next.at > until) break;
      this.due.shift();
      this.now = Math.max(this.now, next.at);
      next.run();
    }
    this.now = until;
    await settled();
  }
}

/** Everything that is under way and waits for no time has gone on. */
async function settled(): Promise<void> {
  for (let i = 0; i < 60; i += 1) await Promise.resolve();
}

export class PretendedWindow {
  readonly base = new Map<string, StoredPlain>();
  readonly shelf: EntryShelf;
  readonly queue: SaveQueue;
  closed = false;

  constructor(private readonly browser: PretendedBrowser) {
    const { server } = browser;
    this.shelf = entryShelf(
      browser.keep,
      () => browser.now,
      () => browser.freshId(),
    );
    this.queue = new SaveQueue({
      shelf: this.shelf,
      workshop: () => browser.workshop,
      send: (entry, revision) => server.send(entry, revision),
      load: (kind, id) => server.load(kind, id),
      known: async (kind, id) => this.base.get(`${kind}/${id}`),
      learned: async (doc) => void this.base.set(`${doc.kind}/${doc.id}`, doc),
      alone: browser.alone,
      changed: () => undefined,
      later: (run, ms) => browser.later(() => (this.closed ? undefined : run()), ms),
      clock: () => browser.now,
      freshId: browser.freshId,
    });
  }

  /** As the page shows the place: what waits is laid over what the records had when last looked at. */
  shows(doc: string, path: EditPath): unknown {
    let plain = this.base.get(doc)?.plain;
    for (const e of this.queue.now.waiting) {
      const place = `${e.kind}/${e.id}` === doc ? samePlace(plain, e.path, e.rows) : undefined;
      if (place !== undefined) plain = withValue(plain, place, e.value);
    }
    return valueAt(plain, path);
  }

  look(): void {
    for (const [key, doc] of this.browser.server.docs) this.base.set(key, doc);
    this.queue.standing([...this.base.values()]);
  }

  edit(doc: string, path: EditPath, value: unknown, words = path.join(".")): void {
    const [kind = "", id = ""] = doc.split("/");
    const rows = rowsOf(this.base.get(doc)?.plain, path);
    const before = this.shows(doc, path);
    this.queue.add({ build: "b", kind, id, path, value, before, words, ...(rows.length === 0 ? {} : { rows }) });
  }
}
