/** Some kills in the middle of the work; `npm run bench -- kills --count 200` makes more of them. */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { readArchive } from "./kill-archive.mjs";
import { runKills } from "./kill-harness.mjs";
import { lookAfterKill } from "./kill-look.mjs";
import { openWorkshop } from "./open-workshop.js";
import { openConnection } from "./sqlite-connection.js";

const base = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-kill-test-"));
const here = (name: string) => fileURLToPath(new URL(name, import.meta.url));
afterAll(() => fs.rmSync(base, { recursive: true, force: true }));

const KILLS = 6;

it("loses nothing and leaves nothing half done when it is killed", async () => {
  const tally = await runKills({ kills: KILLS, seed: 20_261_129 });
  expect(tally.problems).toEqual([]);
  expect(tally.kills).toBe(KILLS);
  const lines = [...tally.lines.values()];
  const sum = (what: "kills" | "acknowledged" | "caught") => lines.reduce((n, line) => n + line[what], 0);
  expect(sum("kills")).toBe(KILLS);
  // Both doors were tried, and some of the work had ended before the kill and some had not.
  expect(new Set(lines.filter((line) => line.kills > 0).map((line) => line.door)).size).toBe(2);
  expect(sum("acknowledged")).toBeGreaterThan(0);
  expect(sum("caught")).toBeGreaterThan(0);
}, 480_000);

it("clears away what a copy that was killed had left, before older records are brought forward", async () => {
  const folder = path.join(base, "older");
  const copies = path.join(folder, "copies");
  fs.mkdirSync(copies, { recursive: true, mode: 0o700 });
  fs.copyFileSync(here("./migrations/kept/records-version-1.sqlite"), path.join(folder, "workshop.sqlite"));
  const mine = ["records-version-1-2026-05-01.sqlite", "my notes.part"];
  for (const name of [...mine, "records-version-1-2026-05-02.sqlite.4194305.part"])
    fs.writeFileSync(path.join(copies, name), "half");
  const opened = await openWorkshop(folder, { now: () => new Date("2026-05-03T08:00:00Z") });
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  await opened.workshop.close();
  expect(fs.readdirSync(copies).sort()).toEqual([...mine, "records-version-1-2026-05-03.sqlite"].sort());
});

describe("the look after a kill", () => {
  const withRecords = async (name: string, spoil: (file: string) => void) => {
    const [made, folder] = [path.join(base, `${name}-made`), path.join(base, name)];
    const opened = await openWorkshop(made);
    if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
    await opened.workshop.putText(fs.readFileSync(here("../demo/quayside.yaml"), "utf8"), "quayside.yaml");
    await opened.workshop.edit("donor", "q1", ["price"], 31);
    await opened.workshop.close();
    fs.mkdirSync(folder, { mode: 0o700 });
    fs.copyFileSync(path.join(made, "workshop.sqlite"), path.join(folder, "workshop.sqlite"));
    spoil(path.join(folder, "workshop.sqlite"));
    return folder;
  };
  const changed = (sql: string) => (file: string) => {
    const connection = openConnection(file, 100);
    connection.exec(sql);
    connection.close();
  };

  it("finds nothing where nothing is wrong, and an edit that is not there", async () => {
    const folder = await withRecords("sound", () => {});
    const there = {
      what: "the price",
      holds: (v: { texts: ReadonlyMap<string, string> }) => /price: 31/.test(v.texts.get("donor q1") ?? ""),
    };
    expect((await lookAfterKill(folder, [there], { archive: true })).problems).toEqual([]);
    const other = { what: "another price", holds: () => false };
    expect((await lookAfterKill(folder, [there, other])).problems).toEqual([
      { sort: "lost", what: "another price, said to be kept, is not there" },
    ]);
  });

  it("finds a text that its history does not end with", async () => {
    const folder = await withRecords("other", changed("UPDATE documents SET text = text || '# more' WHERE id = 'q1'"));
    const { problems } = await lookAfterKill(folder, []);
    expect(problems.map((p) => p.what)).toContain("donor q1: its history does not end with its text");
  });

  it("finds a file that lost its end, and a half archive", async () => {
    const folder = await withRecords("short", (file) => fs.truncateSync(file, fs.statSync(file).size - 8192));
    expect((await lookAfterKill(folder, [])).problems[0]?.sort).toBe("damaged");
    const opened = await openWorkshop(path.join(base, "sound"));
    if (opened.kind === "refused") throw new Error("refused");
    const made = await opened.workshop.archive.make();
    if (made.kind === "refused") throw new Error("refused");
    const chunks: Uint8Array[] = [];
    for await (const chunk of made.stream) chunks.push(chunk as Uint8Array);
    await opened.workshop.close();
    const [whole, half] = [path.join(base, "whole.zip"), path.join(base, "half.zip")];
    const bytes = Buffer.concat(chunks);
    fs.writeFileSync(whole, bytes);
    fs.writeFileSync(half, bytes.subarray(0, bytes.length / 2));
    expect((await readArchive(whole)).wrong).toBeUndefined();
    expect((await readArchive(half)).wrong).toMatch(/no whole zip/);
  });
});
