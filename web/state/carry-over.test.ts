import { describe, expect, it } from "vitest";
import { carryOver } from "./carry-over.js";
import { entryShelf } from "./entry-shelf.js";
import { memoryKeep, PretendedBrowser, PretendedServer } from "./test-windows.js";

const clock = () => 1_000_000;
const old = (id: string, name: string, value: unknown) => ({
  kind: "donor",
  id,
  path: ["measured", name],
  value,
  before: 1,
  base: 3,
  words: name,
});
/** As the page before this one left them: one list for each build, under "coldset.waiting." and its id. */
function left() {
  const keep = memoryKeep();
  keep.set("waiting.quayside", JSON.stringify([old("q1", "chainstay", 441), old("q1", "wheelbase", 1051)]));
  keep.set("waiting.canalside", JSON.stringify([old("c1", "head_tube", 147)]));
  return keep;
}
const shelfOf = (keep: ReturnType<typeof memoryKeep>, name = "aaaaaa") => entryShelf(keep, clock, () => name);

describe("entries that an older page left waiting", () => {
  it("are on the shelf after the update, in order, and the old lists are gone", () => {
    const keep = left();
    carryOver(keep, shelfOf(keep), { clock });
    const all = shelfOf(keep).all();
    expect(all.map((e) => [e.build, e.id, e.path.at(-1), e.value, e.before])).toEqual([
      ["canalside", "c1", "head_tube", 147, 1],
      ["quayside", "q1", "chainstay", 441, 1],
      ["quayside", "q1", "wheelbase", 1051, 1],
    ]);
    for (const e of all) expect(e.editId).toMatch(/^[A-Za-z0-9_-]{8,64}$/);
    expect(keep.names("waiting.")).toEqual([]);
  });

  it("come once: a second start, and a start that was cut off half way, add nothing twice", () => {
    const keep = left();
    const before = new Map(keep.all);
    carryOver(keep, shelfOf(keep), { clock });
    const ids = shelfOf(keep)
      .all()
      .map((e) => e.editId);
    carryOver(keep, shelfOf(keep, "bbbbbb"), { clock });
    // As if the window had been closed before it took the old lists out.
    for (const [name, text] of before) keep.set(name, text);
    carryOver(keep, shelfOf(keep, "cccccc"), { clock });
    expect(
      shelfOf(keep)
        .all()
        .map((e) => e.editId),
    ).toEqual(ids);
    expect(keep.names("waiting.")).toEqual([]);
  });

  it("stay where they are while the browser has no room for them, and where they cannot be read", () => {
    const keep = left();
    keep.set("waiting.half", '[{"kind": "donor", "id"');
    keep.set("waiting.other", '{"kind": "donor"}');
    keep.room = 5;
    carryOver(keep, shelfOf(keep), { clock });
    expect([...keep.names("waiting.")].sort()).toEqual(["waiting.half", "waiting.other", "waiting.quayside"]);
    expect(shelfOf(keep).all()).toHaveLength(1);
    keep.room = Number.POSITIVE_INFINITY;
    carryOver(keep, shelfOf(keep), { clock });
    expect(shelfOf(keep).all()).toHaveLength(3);
    expect([...keep.names("waiting.")].sort()).toEqual(["waiting.half", "waiting.other"]);
  });

  it("go out like any other entry, and what somebody wrote meanwhile is a choice", async () => {
    const server = new PretendedServer([
      { kind: "donor", id: "q1", revision: 5, plain: { measured: { chainstay: 1, wheelbase: 2 } } },
      { kind: "donor", id: "c1", revision: 1, plain: { measured: { head_tube: 1 } } },
    ]);
    const browser = new PretendedBrowser(server);
    for (const [name, text] of left().all) browser.keep.set(name, text);
    carryOver(
      browser.keep,
      entryShelf(browser.keep, () => browser.now, browser.freshId),
      { clock: () => browser.now },
    );
    const window = browser.window();
    window.queue.start();
    await browser.pass(5000);
    expect(server.applied.map((a) => [a.path.at(-1), a.value])).toEqual([
      ["head_tube", 147],
      ["chainstay", 441],
    ]);
    expect(window.queue.now.conflicts.map((c) => [c.mine, c.theirs])).toEqual([[1051, 2]]);
  });
});
