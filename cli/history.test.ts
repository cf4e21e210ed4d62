/** What does `coldset history` say and do, on records of its own? */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { openWorkshop } from "@coldset/store";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { main } from "./main.js";
import { testIo } from "./test-io.js";

const QUAYSIDE = fs.readFileSync(new URL("../demo/quayside.yaml", import.meta.url), "utf8");
let folder: string;

const inWorkshop = async <T>(work: (w: Awaited<ReturnType<typeof open>>) => Promise<T>): Promise<T> => {
  const workshop = await open();
  try {
    return await work(workshop);
  } finally {
    await workshop.close();
  }
};
async function open() {
  const opened = await openWorkshop(folder, { who: "the page" });
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  return opened.workshop;
}
const run = async (...argv: string[]) => {
  const io = testIo({ columns: 84 });
  const code = await main(["history", ...argv, "--data", folder], io);
  return { code, out: io.out(), err: io.err() };
};

beforeEach(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-cli-history-"));
  await inWorkshop(async (w) => {
    expect((await w.putText(QUAYSIDE, "quayside.yaml")).kind).toBe("put");
    expect((await w.edit("donor", "q1", ["measured", "top_tube_cc"], 551)).kind).toBe("edited");
  });
});
afterEach(() => fs.rmSync(folder, { recursive: true, force: true }));

describe("coldset history", () => {
  it("lists what was changed, newest first, with old and new", async () => {
    const { code, out, err } = await run();
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(
      /2 Changed: donor q1\n +\d{4}-\d\d-\d\d \d\d:\d\d, the page\n +donor q1\n +measured\.top_tube_cc: 537 → 551\n1 Put in: 8 documents, from quayside\.yaml/,
    );
    expect(out).toContain("Taken back next: change 2 (--undo).");
  });

  it("takes back and puts back, and refuses with 2 where there is nothing left", async () => {
    expect(await run("quayside", "--undo")).toMatchObject({
      code: 0,
      out: expect.stringContaining("measured.top_tube_cc: 551 → 537"),
    });
    expect(await run("quayside", "--undo")).toMatchObject({
      code: 2,
      err: expect.stringContaining("nothing to take back"),
    });
    expect(await run("quayside", "--redo")).toMatchObject({ code: 0, out: expect.stringContaining("537 → 551") });
    expect((await run("quayside", "--undo", "2")).code).toBe(0);
    expect((await run("quayside", "--undo", "2")).code).toBe(2);
    expect(await inWorkshop((w) => w.exportText("donor", "q1"))).toContain("top_tube_cc: 537");
  });

  it("names, compares and restores a version", async () => {
    expect(await run("quayside", "--name", "before welding")).toMatchObject({ code: 0 });
    await inWorkshop((w) => w.edit("donor", "q1", ["measured", "chainstay"], 441));
    expect((await run("quayside", "--difference", "before welding")).out).toContain("measured.chainstay: 442 → 441");
    expect((await run("quayside", "--difference", "now", "Before Welding")).out).toContain("441 → 442");
    const restored = await run("quayside", "--restore", "before welding");
    expect(restored).toMatchObject({ code: 0, out: expect.stringContaining("can be taken back") });
    expect((await run("quayside", "--restore", "before welding")).out).toContain("Nothing to restore");
    expect((await run()).out).toMatch(/NAMED VERSIONS[\s\S]*before welding +\d{4}-/);
  });

  it("gives one object with --json, for answers and refusals", async () => {
    const told = JSON.parse((await run("--json")).out) as { kind: string; changes: unknown[]; versions: unknown[] };
    expect([told.kind, told.changes.length, told.versions.length]).toEqual(["history", 2, 0]);
    const refused = await run("quayside", "--restore", "none", "--json");
    expect(refused.code).toBe(2);
    expect(JSON.parse(refused.out)).toMatchObject({ kind: "refused", refusals: [{ code: "no-such-version" }] });
  });

  it.each([
    [["quayside", "--undo", "--redo"], "one of them"],
    [["quayside", "--undo", "x"], "no number of a change"],
    [["quayside", "--before", "0"], "no number of a change"],
    [["quayside", "--difference", "a", "b", "c"], "two names at most"],
    [["nobody"], "There is no build nobody in this workshop. Builds here: quayside."],
    [["quaysyde", "--undo"], "Did you mean quayside?"],
  ])("refuses %j", async (argv, words) => {
    const { code, err } = await run(...argv);
    expect(code).toBe(2);
    expect(err.replace(/\s+/g, " ")).toContain(words);
  });

  it("names the builds there are, the nearest first", async () => {
    const one = QUAYSIDE.split("\n---\n")[0] ?? "";
    await inWorkshop((w) => w.putText(one.replace("id: quayside", "id: old-blue"), "a.yaml"));
    const { out } = await run("quayzide", "--json");
    expect(JSON.parse(out)).toMatchObject({ refusals: [{ code: "not-found", allowed: "quayside, old-blue" }] });
    expect(JSON.parse((await run("old-bleu", "--json")).out)).toMatchObject({
      refusals: [{ allowed: "old-blue, quayside" }],
    });
  });

  it("tells in words who holds the folder, and since when, to the minute", async () => {
    await inWorkshop(async (w) => {
      w.sayWhere("http://127.0.0.1:4330/");
      const { code, out, err } = await run("quayside", "--json");
      expect(code).toBe(2);
      const words = err.replace(/\s+/g, " ");
      expect(words).toMatch(
        new RegExp(
          `coldset serve \\(process ${process.pid}\\) holds it, since \\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d; its page is at`,
        ),
      );
      expect(words).toContain(
        "Go on there, or close it first (Ctrl-C where it runs), or name another folder with --data.",
      );
      expect(words).not.toMatch(/Given:|[{}]|\.\d{3}Z/);
      expect(JSON.parse(out)).toMatchObject({
        refusals: [{ given: { pid: process.pid, since: expect.stringMatching(/Z$/), url: "http://127.0.0.1:4330/" } }],
      });
    });
  });

  it("asks which build where there are several, and makes no workshop where none is", async () => {
    const second = (QUAYSIDE.split("\n---\n")[0] ?? "").replace("id: quayside", "id: second");
    await inWorkshop((w) => w.putText(second, "second.yaml"));
    expect(await run()).toMatchObject({ code: 2, err: expect.stringContaining("Say which build: quayside, second.") });
    const nowhere = path.join(folder, "nowhere");
    const io = testIo();
    expect(await main(["history", "--data", nowhere], io)).toBe(2);
    expect(io.err()).toContain("There is no workshop in");
    expect(fs.existsSync(nowhere)).toBe(false);
  });
});
