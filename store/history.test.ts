/** Can every change be taken back and put back, by itself and after a restart, and is nothing ever lost? */
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { differenceWords } from "@coldset/core/workshop";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openConnection } from "./sqlite-connection.js";
import { historyWorkshop, textsOf } from "./test-history.js";
import type { StoreRefused } from "./workshop.js";

const B = "quayside";
let w: Awaited<ReturnType<typeof historyWorkshop>>;
beforeEach(async () => {
  w = await historyWorkshop();
});
afterEach(() => w.end());

function ok<T extends { readonly kind: string }>(answer: T): Exclude<T, StoreRefused> {
  if (answer.kind === "refused") throw new Error(JSON.stringify(answer));
  return answer as Exclude<T, StoreRefused>;
}
const codes = (answer: { readonly kind: string } | StoreRefused) =>
  "refusals" in answer ? answer.refusals.map((r) => r.code) : [];
const edit = async (place: string, value: unknown, kind = "donor", id = "q1") =>
  ok(await w.now().edit(kind, id, place.split("."), value));
const told = async () => ok(await w.now().buildHistory(B));
const text = (kind = "donor", id = "q1") => w.now().exportText(kind, id);

describe("taking back and putting back", () => {
  it("goes back change by change to the letter, over a restart, and forward again", async () => {
    const stands = [await textsOf(w.now())];
    await edit("measured.top_tube_cc", 551);
    stands.push(await textsOf(w.now()));
    await edit("load_kg", "9 kg", "rider", "r1");
    stands.push(await textsOf(w.now()));
    await edit("chosen.stem", "q12", "build", B);
    stands.push(await textsOf(w.now()));
    for (const back of [2, 1, 0]) {
      await w.reopen();
      expect((await w.now().undo(B)).kind).toBe("turned");
      expect(await textsOf(w.now())).toEqual(stands[back]);
    }
    expect(codes(await w.now().undo(B))).toEqual(["nothing-to-take-back"]);
    for (const on of [1, 2, 3]) {
      await w.reopen();
      expect((await w.now().redo(B)).kind).toBe("turned");
      expect(await textsOf(w.now())).toEqual(stands[on]);
    }
    expect(codes(await w.now().redo(B))).toEqual(["nothing-to-put-back"]);
    // Each step is a row of its own: three edits, three undos, three redos, after the one putting in.
    expect((await told()).changes.map((c) => c.what)).toEqual([
      ...Array(3).fill("redo"),
      ...Array(3).fill("undo"),
      ...Array(3).fill("edit"),
      "put",
    ]);
  });

  it("says what it did, and about which change", async () => {
    await edit("measured.top_tube_cc", 551);
    const [edited] = (await told()).changes;
    const undone = ok(await w.now().undo(B));
    if (undone.kind !== "turned") throw new Error(undone.kind);
    expect(undone.of).toBe(edited?.change);
    expect(undone.documents.map((d) => [d.kind, d.id, ...differenceWords(d.difference)])).toEqual([
      ["donor", "q1", "measured.top_tube_cc: 551 → 537"],
    ]);
    const history = await told();
    expect(history).toMatchObject({ undo: null, redo: edited?.change, newest: undone.change });
    expect(history.changes).toMatchObject([
      { what: "undo", of: edited?.change, who: "the page", canTakeBack: false },
      { what: "edit", of: null, state: "taken-back", canTakeBack: false },
      { what: "put", words: "quayside.yaml", state: "stands", canTakeBack: false },
    ]);
  });

  it("puts nothing back once something new was entered", async () => {
    await edit("measured.top_tube_cc", 551);
    await w.now().undo(B);
    await edit("measured.chainstay", 441);
    expect(codes(await w.now().redo(B))).toEqual(["nothing-to-put-back"]);
    expect((await told()).redo).toBeNull();
  });

  it("takes an earlier change back by itself: later ones and comments stay", async () => {
    await edit("measured.top_tube_cc", 551);
    const first = (await told()).newest;
    await edit("measured.chainstay", 441);
    await edit("tube.chainstay_wall", 1.1);
    expect((await w.now().undo(B, { change: first })).kind).toBe("turned");
    const now = (await text()) ?? "";
    expect(now).toContain("top_tube_cc: 537");
    expect(now).toContain("chainstay: 441");
    expect(now).toContain("chainstay_wall: 1.1 # caliper cannot reach it");
    expect((await w.now().redo(B)).kind).toBe("turned");
    expect(await text()).toContain("top_tube_cc: 551");
  });

  it("takes a whole text that was put in back as a whole", async () => {
    const before = (await text()) ?? "";
    const put = before
      .replace("chainstay: 442", "chainstay: 443 # again")
      .replace("wheelbase: 1052", "wheelbase: 1054");
    ok(await w.now().putText(put, "donor.yaml"));
    await w.now().undo(B);
    expect(await text()).toBe(before);
    await w.now().redo(B);
    expect(await text()).toBe(put);
  });

  it("refuses in words, and changes nothing, what was written over since or is gone", async () => {
    await edit("measured.top_tube_cc", 551);
    const first = (await told()).newest;
    await edit("measured.top_tube_cc", 549);
    const over = await w.now().undo(B, { change: first });
    expect(over.kind === "refused" && over.refusals[0]).toMatchObject({
      code: "changed-since",
      at: "donor q1, measured.top_tube_cc",
      message: expect.stringContaining("it is 549 now, and that change had made it 551"),
    });
    await edit("consider.stem", ["q13"], "build", B);
    const second = (await told()).newest;
    ok(await w.now().edit("build", B, ["consider"], undefined));
    expect(codes(await w.now().undo(B, { change: second }))).toEqual(["place-gone"]);
    const rows = (await w.now().history("donor", "q1")).length;
    expect(codes(await w.now().undo(B, { change: 9999 }))).toEqual(["no-such-change"]);
    await w.now().undo(B);
    expect(codes(await w.now().undo(B, { change: second + 1 }))).toEqual(["already-taken-back"]);
    expect(await w.now().history("donor", "q1")).toHaveLength(rows);
    expect(codes(await w.now().undo("nobody"))).toEqual(["not-found"]);
  });

  it("takes a change of several documents back whole or not at all", async () => {
    ok(await w.now().nameVersion(B, "start"));
    await edit("measured.top_tube_cc", 551);
    await edit("chosen.stem", "q12", "build", B);
    ok(await w.now().restoreVersion(B, "start"));
    const restore = (await told()).newest;
    await edit("measured.top_tube_cc", 549);
    const before = await textsOf(w.now());
    expect(codes(await w.now().undo(B, { change: restore }))).toEqual(["changed-since"]);
    expect(await textsOf(w.now())).toEqual(before);
    await w.now().undo(B);
    expect((await w.now().undo(B, { change: restore })).kind).toBe("turned");
    expect(await text("build", B)).toContain("stem: q12");
    expect(await text()).toContain("top_tube_cc: 551");
  });

  it("does nothing where somebody was faster than the person had seen", async () => {
    await edit("measured.top_tube_cc", 551);
    const seen = (await told()).newest;
    await edit("measured.chainstay", 441);
    expect(await w.now().undo(B, { seen })).toEqual({ kind: "moved-on", newest: seen + 1 });
    expect(await text()).toContain("chainstay: 441");
  });

  it("lets two at the same moment each take back another change, and never one twice", async () => {
    await edit("measured.top_tube_cc", 551);
    await edit("measured.chainstay", 441);
    const both = await Promise.all([w.now().undo(B), w.now().undo(B), w.now().undo(B)]);
    expect(both.map((r) => r.kind).sort()).toEqual(["refused", "turned", "turned"]);
    expect(await text()).toBe((await w.now().history("donor", "q1"))[0]?.after);
  });

  it("keeps an old value that the page puts back as an undo, over all that was saved while typing", async () => {
    const before = await text();
    await edit("measured.top_tube_cc", 550);
    await edit("measured.top_tube_cc", 551);
    const back = await w.now().edit("donor", "q1", ["measured", "top_tube_cc"], 537, 3, undefined, true);
    expect(back).toEqual({ kind: "edited", revision: 5, text: before });
    const history = await told();
    expect(history.changes.map((c) => c.what)).toEqual(["undo", "undo", "edit", "edit", "put"]);
    expect(history.undo).toBeNull();
    await w.now().redo(B);
    await w.now().redo(B);
    expect(await text()).toContain("top_tube_cc: 551");
  });

  it("keeps it as an edit where another value stood there before", async () => {
    await edit("measured.top_tube_cc", 551);
    ok(await w.now().edit("donor", "q1", ["measured", "top_tube_cc"], 540, 2, undefined, true));
    expect((await told()).changes.map((c) => c.what)).toEqual(["edit", "edit", "put"]);
  });

  it("leaves what was put in for the first time where it is", async () => {
    ok(await w.now().putText("kind: route\nversion: 1\nid: lane\nsections: [{km: 1, grade: 2}]\n", "lane.yaml"));
    await edit("route", "lane", "build", B);
    await w.now().undo(B);
    expect(codes(await w.now().undo(B))).toEqual(["nothing-to-take-back"]);
    expect(await text("route", "lane")).toContain("id: lane");
  });
});

describe("the history of a build", () => {
  it("is told newest first, a page at a time, and only of the build's own documents", async () => {
    ok(await w.now().putText("kind: route\nversion: 1\nid: lane\nsections: [{km: 1, grade: 2}]\n", "lane.yaml"));
    for (let mm = 430; mm < 441; mm += 1) await edit("measured.chainstay", mm);
    const seen: string[] = [];
    let before: number | undefined;
    for (;;) {
      const page = ok(await w.now().buildHistory(B, { limit: 4, ...(before === undefined ? {} : { before }) }));
      expect(page.changes.length).toBeLessThanOrEqual(4);
      seen.push(...page.changes.map((c) => c.documents.map((d) => differenceWords(d.difference).join()).join()));
      if (page.older === null) break;
      before = page.older;
    }
    expect(seen).toHaveLength(12);
    expect(seen[0]).toBe("measured.chainstay: 439 → 440");
    expect(seen[10]).toBe("measured.chainstay: 442 → 430");
    expect(codes(await w.now().buildHistory("none"))).toEqual(["not-found"]);
  });
});

describe("named versions", () => {
  it("are compared, restored as a new change, and that is taken back", async () => {
    ok(await w.now().nameVersion(B, "  before   welding "));
    const then = await textsOf(w.now());
    await edit("measured.top_tube_cc", 551);
    await edit("chosen.stem", "q12", "build", B);
    const later = await textsOf(w.now());
    ok(await w.now().nameVersion(B, "Later"));
    await w.reopen();
    const list = ok(await w.now().versions(B));
    expect(list.versions.map((v) => [v.name, v.documents.length])).toEqual([
      ["Later", 8],
      ["before welding", 8],
    ]);
    const difference = ok(await w.now().versionDifference(B, "Before Welding", "now"));
    expect(difference.documents.map((d) => [d.kind, d.id, ...differenceWords(d.difference)])).toEqual([
      ["build", B, "chosen.stem: q13 → q12"],
      ["donor", "q1", "measured.top_tube_cc: 537 → 551"],
    ]);
    expect(ok(await w.now().versionDifference(B, "later", "now")).documents).toEqual([]);
    expect(await w.now().restoreVersion(B, "before welding", difference.newest - 1)).toEqual({
      kind: "moved-on",
      newest: difference.newest,
    });
    const restored = ok(await w.now().restoreVersion(B, "before welding", difference.newest));
    expect(restored.kind === "restored" && restored.documents.map((d) => d.kind)).toEqual(["build", "donor"]);
    expect(await textsOf(w.now())).toEqual(then);
    expect(await w.now().restoreVersion(B, "before welding")).toEqual({
      kind: "restored",
      change: null,
      documents: [],
    });
    await w.now().undo(B);
    expect(await textsOf(w.now())).toEqual(later);
    await w.now().redo(B);
    expect(await textsOf(w.now())).toEqual(then);
  });

  it.each(["", "   ", "now", " NOW", "a\u202eb", "a\0b", "x".repeat(81)])("are not named %j", async (name) => {
    expect(codes(await w.now().nameVersion(B, name))).toEqual(["bad-version-name"]);
  });

  it("have names of their own, whatever the capitals, and are refused where there is none", async () => {
    ok(await w.now().nameVersion(B, "Dry fit"));
    expect(codes(await w.now().nameVersion(B, "dry  FIT"))).toEqual(["version-name-taken"]);
    expect(codes(await w.now().restoreVersion(B, "wet fit"))).toEqual(["no-such-version"]);
    expect(codes(await w.now().versionDifference(B, "wet fit", "dry fit"))).toEqual(["no-such-version"]);
    expect(codes(await w.now().nameVersion("none", "a"))).toEqual(["not-found"]);
  });

  it("restores one document to a revision, as a change, and tells of a conflict", async () => {
    const first = await text();
    await edit("measured.top_tube_cc", 551);
    expect((await w.now().restoreDocument("donor", "q1", 1, 1)).kind).toBe("conflict");
    expect((await w.now().restoreDocument("donor", "q1", 1, 2)).kind).toBe("restored");
    expect(await text()).toBe(first);
    expect((await w.now().getDocument("donor", "q1"))?.revision).toBe(3);
    expect(codes(await w.now().restoreDocument("donor", "q1", 9))).toEqual(["no-such-revision"]);
    expect(codes(await w.now().restoreDocument("donor", "q9", 1))).toEqual(["not-found"]);
    await w.now().undo(B);
    expect(await text()).toContain("top_tube_cc: 551");
  });
});

describe("records of version 1", () => {
  it("keep every row, know what each was, and their edits can be taken back", async () => {
    await w.end();
    w = await historyWorkshop(undefined);
    await w.now().close();
    const kept = fileURLToPath(new URL("./migrations/kept/records-version-1.sqlite", import.meta.url));
    const file = path.join(w.folder, "workshop.sqlite");
    fs.copyFileSync(kept, file);
    const old = openConnection(file, 100);
    const before = old.rows("SELECT seq, kind, id, revision, path, before, after, at FROM history ORDER BY seq");
    expect(old.pragmaNumber("user_version")).toBe(1);
    old.close();
    await w.reopen();
    const now = openConnection(file, 100);
    expect(now.rows("SELECT seq, kind, id, revision, path, before, after, at FROM history ORDER BY seq")).toEqual(
      before,
    );
    // As they were made: eight documents in one text, two edits of the donor, one of the build, the donor put in anew.
    expect(now.rows("SELECT what, COUNT(*) AS n FROM history JOIN changes USING (change) GROUP BY change")).toEqual([
      { what: "put", n: 8 },
      { what: "edit", n: 1 },
      { what: "edit", n: 1 },
      { what: "edit", n: 1 },
      { what: "put", n: 1 },
    ]);
    expect(() => now.exec("UPDATE history SET after = ''")).toThrow(/only added/);
    expect(() => now.exec("DELETE FROM changes")).toThrow(/only added/);
    expect(now.rows("PRAGMA foreign_key_check")).toEqual([]);
    now.close();
    expect(await text()).toContain("wheelbase: 1054");
    for (let n = 0; n < 4; n += 1) expect((await w.now().undo(B)).kind).toBe("turned");
    expect((await textsOf(w.now()))["donor q1"]).toBe((await w.now().history("donor", "q1"))[0]?.after);
    expect(codes(await w.now().undo(B))).toEqual(["nothing-to-take-back"]);
  });
});
