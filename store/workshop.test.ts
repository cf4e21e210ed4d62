import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { type OpenOptions, openWorkshop } from "./open-workshop.js";
import type { Workshop } from "./workshop.js";

const QUAYSIDE = fs.readFileSync(new URL("../demo/quayside.yaml", import.meta.url), "utf8");
const NOON = new Date("2026-03-01T12:00:00.000Z");

const leftovers: string[] = [];
const opened: Workshop[] = [];
const newFolder = () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-store-"));
  leftovers.push(folder);
  return folder;
};
const openIn = async (folder: string, options: OpenOptions = { now: () => NOON }) => {
  const result = await openWorkshop(folder, options);
  if (result.kind === "refused") throw new Error(JSON.stringify(result.refusals));
  opened.push(result.workshop);
  return result.workshop;
};
const withQuayside = async () => {
  const workshop = await openIn(newFolder());
  expect((await workshop.putText(QUAYSIDE, "quayside.yaml")).kind).toBe("put");
  return workshop;
};
afterEach(async () => {
  for (const workshop of opened.splice(0)) await workshop.close();
  for (const folder of leftovers.splice(0)) fs.rmSync(folder, { recursive: true, force: true });
});

describe("putting in and giving back", () => {
  it("keeps all documents of a text and gives each back byte for byte", async () => {
    const workshop = await openIn(newFolder());
    const put = await workshop.putText(QUAYSIDE, "quayside.yaml");
    if (put.kind === "refused") throw new Error(JSON.stringify(put.refusals));
    expect(put.documents.map((d) => [d.revision, d.change])).toEqual(Array(8).fill([1, "new"]));
    const texts: string[] = [];
    for (const { kind, id } of put.documents) texts.push((await workshop.exportText(kind, id)) ?? "missing");
    expect(texts.join("")).toBe(QUAYSIDE);
    const list = await workshop.listDocuments();
    expect(list).toHaveLength(8);
    expect(list[0]).toEqual({
      kind: "bin",
      id: "harbour-bin",
      label: "quayside.yaml",
      revision: 1,
      updatedAt: NOON.toISOString(),
    });
  });

  it("is there again after closing and opening", async () => {
    const folder = newFolder();
    const first = await openIn(folder);
    await first.putText(QUAYSIDE, "quayside.yaml");
    await first.edit("donor", "q1", ["measured", "top_tube_cc"], "55,1 cm");
    await first.close();
    const again = await openIn(folder);
    expect((await again.getDocument("donor", "q1"))?.text).toContain("top_tube_cc: 55,1 cm");
    expect(await again.history("donor", "q1")).toHaveLength(2);
  });

  it("gives documents that were there a new revision, and leaves those alone that are word for word the same", async () => {
    const workshop = await withQuayside();
    const put = await workshop.putText(QUAYSIDE.replace("chainstay: 442", "chainstay: 443"), "again.yaml");
    if (put.kind === "refused") throw new Error(JSON.stringify(put.refusals));
    expect(put.documents.filter((d) => d.change === "changed")).toEqual([
      { kind: "donor", id: "q1", revision: 2, change: "changed" },
    ]);
    expect(put.documents.filter((d) => d.change === "same")).toHaveLength(7);
    const [, second] = await workshop.history("donor", "q1");
    expect(second?.path).toBeNull();
    expect(second?.before).toContain("chainstay: 442");
    expect(second?.after).toContain("chainstay: 443");
  });

  it("takes in all documents of a text or none", async () => {
    const workshop = await openIn(newFolder());
    const put = await workshop.putText(QUAYSIDE.replace("kind: shop", "kind: shopp"), "q.yaml");
    expect(put.kind === "refused" && put.refusals.map((r) => r.code)).toEqual(["unknown-kind"]);
    expect(await workshop.listDocuments()).toEqual([]);
  });

  it("refuses text that it could not give back: NUL, half a pair, a directive that reaches into the next document", async () => {
    const workshop = await openIn(newFolder());
    const route = (id: string, km = "1") => `kind: route\nversion: 1\nid: ${id}\nsections: [{km: ${km}, grade: 0}]\n`;
    const codes = async (text: string) => {
      const put = await workshop.putText(text, "x.yaml");
      return put.kind === "refused" ? put.refusals.map((r) => r.code) : [];
    };
    expect(await codes(`${route("a")}# \0\n`)).toEqual(["not-plain-text"]);
    expect(await codes(`${route("a")}# \uD800\n`)).toEqual(["not-plain-text"]);
    // yes is true in YAML 1.1 and a word in YAML 1.2; the first document's version line reaches into the second.
    const rider = "kind: rider\nversion: 1\nid: b\nname: x\nnovice: yes\n";
    expect(await codes(`%YAML 1.1\n---\n${route("a")}---\n${rider}`)).toEqual(["leans-on-another"]);
    expect(await workshop.putText(route("a"), "a\nb").then((p) => p.kind)).toBe("refused");
    expect(await workshop.listDocuments()).toEqual([]);
  });
});

describe("editing", () => {
  it("changes one line, keeps the comments, and counts the revision up", async () => {
    const workshop = await withQuayside();
    const before = (await workshop.exportText("donor", "q1")) ?? "";
    const edited = await workshop.edit("donor", "q1", ["measured", "top_tube_cc"], "55,1 cm", 1);
    if (edited.kind !== "edited") throw new Error(JSON.stringify(edited));
    expect(edited.revision).toBe(2);
    expect(edited.text).toContain("# caliper cannot reach it");
    const lines = before.split("\n");
    expect(edited.text.split("\n").filter((line, i) => line !== lines[i])).toEqual([
      expect.stringContaining("top_tube_cc: 55,1 cm"),
    ]);
    expect(await workshop.exportText("donor", "q1")).toBe(edited.text);
    expect(await workshop.history("donor", "q1")).toEqual([
      { revision: 1, path: null, before: null, after: before, at: NOON.toISOString() },
      { revision: 2, path: ["measured", "top_tube_cc"], before, after: edited.text, at: NOON.toISOString() },
    ]);
  });

  it("tells of a conflict and changes nothing where somebody was faster", async () => {
    const workshop = await withQuayside();
    const first = await workshop.edit("donor", "q1", ["measured", "chainstay"], 441, 1);
    const second = await workshop.edit("donor", "q1", ["measured", "chainstay"], 444, 1);
    expect(second).toEqual({ ...first, kind: "conflict" });
    expect(await workshop.history("donor", "q1")).toHaveLength(2);
  });

  it("lets one of many edits at the same moment through, the others meet the conflict", async () => {
    const workshop = await withQuayside();
    const results = await Promise.all(
      [430, 431, 432, 433, 434].map((mm) => workshop.edit("donor", "q1", ["measured", "chainstay"], mm, 1)),
    );
    expect(results.map((r) => r.kind).sort()).toEqual(["conflict", "conflict", "conflict", "conflict", "edited"]);
    expect((await workshop.getDocument("donor", "q1"))?.revision).toBe(2);
  });

  it.each([
    [["measured", "top_tube_cc"], "apples"],
    [["measured", "no_such"], 5],
    [["measured", "chainstay", "deeper"], 5],
    [["__proto__", "polluted"], 5],
    [[], 5],
    [["id"], "q2"],
    [["kind"], "rider"],
    [["version"], 2],
    [["id"], undefined],
    [["frame", "title"], "\0"],
  ])("refuses %j = %j and changes nothing", async (place, value) => {
    const workshop = await withQuayside();
    const before = await workshop.getDocument("donor", "q1");
    const result = await workshop.edit("donor", "q1", place, value);
    expect(result.kind).toBe("refused");
    expect(await workshop.getDocument("donor", "q1")).toEqual(before);
    expect(await workshop.history("donor", "q1")).toHaveLength(1);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it("says that a document is not there", async () => {
    const workshop = await openIn(newFolder());
    const result = await workshop.edit("donor", "q1", ["measured", "chainstay"], 441);
    expect(result.kind === "refused" && result.refusals.map((r) => r.code)).toEqual(["not-found"]);
    expect(await workshop.getDocument("donor", "q1")).toBeUndefined();
    expect(await workshop.exportText("donor", "q1")).toBeUndefined();
    expect(await workshop.history("donor", "q1")).toEqual([]);
  });

  it("binds every value: SQL in an id, a label or a text is only text", async () => {
    const workshop = await withQuayside();
    const hostile = "q1'; DROP TABLE documents; --";
    expect(await workshop.getDocument("donor", hostile)).toBeUndefined();
    expect(await workshop.getDocument("donor' OR '1'='1", "q1")).toBeUndefined();
    expect((await workshop.edit("donor", hostile, ["measured", "chainstay"], 441)).kind).toBe("refused");
    expect(await workshop.history(hostile, hostile)).toEqual([]);
    const text = `kind: route\nversion: 1\nid: r\nsections: [{km: 1, grade: 0}] # '); DROP TABLE history; -- " \\ %s ?1\n`;
    expect((await workshop.putText(text, hostile)).kind).toBe("put");
    expect(await workshop.exportText("route", "r")).toBe(text);
    expect((await workshop.getDocument("route", "r"))?.label).toBe(hostile);
    expect(await workshop.listDocuments()).toHaveLength(9);
  });
});

describe("a disk that is full", () => {
  it("refuses what does not fit, keeps what was there, and goes on", async () => {
    const folder = newFolder();
    const workshop = await openIn(folder, { now: () => NOON, mostPages: 60 });
    const note = (n: number) =>
      `kind: route\nversion: 1\nid: r${n}\nsections: [{km: 1, grade: 0}] # ${"x".repeat(20_000)}\n`;
    const kinds: string[] = [];
    for (let n = 0; n < 6; n += 1) {
      const put = await workshop.putText(note(n), "r.yaml");
      kinds.push(put.kind === "refused" ? (put.refusals[0]?.code ?? "") : put.kind);
    }
    expect(kinds[0]).toBe("put");
    expect(kinds.at(-1)).toBe("store-full");
    const kept = kinds.filter((k) => k === "put").length;
    expect(await workshop.listDocuments()).toHaveLength(kept);
    expect(await workshop.exportText("route", "r0")).toBe(note(0));
  });
});
