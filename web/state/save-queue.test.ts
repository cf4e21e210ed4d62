import { describe, expect, it } from "vitest";
import type { EditCall, SaveAnswer, StoredPlain } from "./api.js";
import type { Keep } from "./kept.js";
import { type Entry, type QueueState, SaveQueue } from "./save-queue.js";

const entry = (path: string, value: unknown, rest: Partial<Entry> = {}): Entry => ({
  kind: "donor",
  id: "q1",
  path: ["measured", path],
  value,
  before: 1,
  base: 1,
  words: path,
  ...rest,
});

function memory(): Keep & { readonly all: Map<string, string> } {
  const all = new Map<string, string>();
  return {
    all,
    get: (name) => all.get(name),
    set: (name, value) => void (value === undefined ? all.delete(name) : all.set(name, value)),
  };
}

/** A queue against a pretended server; time passes only when `run` is called. */
function bench(
  answers: (edit: EditCall) => SaveAnswer,
  docs: () => readonly StoredPlain[] = () => [],
  keep = memory(),
) {
  const sent: EditCall[] = [];
  const due: (() => void)[] = [];
  const states: QueueState[] = [];
  const taken: (readonly StoredPlain[])[] = [];
  const queue = new SaveQueue("waiting", {
    send: async (edit) => {
      sent.push(edit);
      return answers(edit);
    },
    reload: async () => docs(),
    others: (found) => void taken.push(found),
    changed: (state) => void states.push(state),
    later: (run) => void due.push(run),
    keep,
  });
  const run = async () => {
    for (const go of due.splice(0)) go();
    for (let i = 0; i < 20; i += 1) await Promise.resolve();
  };
  return { queue, sent, run, states, taken, keep };
}

const saved = (edit: EditCall): SaveAnswer => ({ kind: "saved", revision: edit.revision + 1 });

describe("save queue", () => {
  it("sends in order, each on the revision that the one before made", async () => {
    const b = bench(saved);
    b.queue.add(entry("chainstay", 441));
    b.queue.add(entry("wheelbase", 1050));
    await b.run();
    expect(b.sent.map((s) => [s.path.at(-1), s.value, s.revision])).toEqual([
      ["chainstay", 441, 1],
      ["wheelbase", 1050, 2],
    ]);
    expect(b.queue.now.waiting).toEqual([]);
    expect(b.keep.all.size).toBe(0);
  });

  it("sends one figure once, however many keystrokes it took", async () => {
    const b = bench(saved);
    b.queue.add(entry("chainstay", 44, { before: 442 }));
    b.queue.add(entry("chainstay", 441, { before: 44 }));
    await b.run();
    expect(b.sent.map((s) => s.value)).toEqual([441]);
  });

  it("keeps what waits in the browser while the server is gone, and sends it later", async () => {
    let there = false;
    const b = bench((edit) => (there ? saved(edit) : { kind: "unreachable" }));
    b.queue.add(entry("chainstay", 441));
    await b.run();
    expect(b.queue.now.trouble?.kind).toBe("unreachable");
    expect(b.keep.get("waiting")).toContain("441");
    const after = bench(saved, () => [], b.keep);
    expect(after.queue.now.waiting).toHaveLength(1);
    there = true;
    await b.run();
    expect(b.queue.now.waiting).toEqual([]);
    expect(b.queue.now.trouble).toBeUndefined();
  });

  it("keeps the text of an entry that the records refuse, and goes on with the next", async () => {
    const b = bench((edit) => (edit.value === 441 ? { kind: "refused", messages: ["no"] } : saved(edit)));
    b.queue.add(entry("chainstay", 441));
    b.queue.add(entry("wheelbase", 1050));
    await b.run();
    expect(b.queue.now.notSaved.map((n) => n.entry.value)).toEqual([441]);
    expect(b.queue.now.lastSaved?.value).toBe(1050);
  });

  const doc = (chainstay: number, revision: number): StoredPlain => ({
    kind: "donor",
    id: "q1",
    revision,
    plain: { measured: { chainstay } },
  });

  it("takes another person's change of another place over, and saves its own on top", async () => {
    const b = bench(
      (edit) => (edit.revision < 4 ? { kind: "conflict" } : saved(edit)),
      () => [doc(442, 4)],
    );
    b.queue.add(entry("chainstay", 441, { before: 442 }));
    await b.run();
    expect(b.taken).toHaveLength(1);
    expect(b.queue.now.waiting).toEqual([]);
  });

  it("lets a person choose where two values stand in one place", async () => {
    const answer = (edit: EditCall): SaveAnswer => (edit.revision < 4 ? { kind: "conflict" } : saved(edit));
    const b = bench(answer, () => [doc(443, 4)]);
    b.queue.add(entry("chainstay", 441, { before: 442 }));
    await b.run();
    expect(b.queue.now.trouble).toMatchObject({ kind: "conflict", theirs: 443 });
    const sentSoFar = b.sent.length;
    b.queue.start();
    await b.run();
    expect(b.sent.length).toBe(sentSoFar);
    b.queue.settle(true);
    await b.run();
    expect(b.sent.at(-1)).toMatchObject({ value: 441, revision: 4 });
    expect(b.queue.now.waiting).toEqual([]);

    const c = bench(answer, () => [doc(443, 4)]);
    c.queue.add(entry("chainstay", 441, { before: 442 }));
    await c.run();
    c.queue.settle(false);
    await c.run();
    expect(c.queue.now.waiting).toEqual([]);
    expect(c.sent).toHaveLength(1);
  });

  it("asks nobody where the answer to a save was lost on the way", async () => {
    const b = bench(
      () => ({ kind: "conflict" }),
      () => [doc(441, 2)],
    );
    b.queue.add(entry("chainstay", 441, { before: 442 }));
    await b.run();
    expect(b.queue.now.waiting).toEqual([]);
    expect(b.queue.now.trouble).toBeUndefined();
  });
});
