/** Export and import as a person uses them: real files, real folders, real refusals. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { openWorkshop } from "@coldset/store";
import { afterEach, describe, expect, it } from "vitest";
import { processIo } from "./io.js";
import { main } from "./main.js";
import { type TestIo, testIo } from "./test-io.js";

const QUAYSIDE = fileURLToPath(new URL("../demo/quayside.yaml", import.meta.url));
const folders: string[] = [];
const newFolder = () => {
  const folder = mkdtempSync(path.join(tmpdir(), "coldset-keeping-"));
  folders.push(folder);
  return folder;
};
/** The streams of the test, the disk of the machine. */
const onDisk = (): TestIo => ({ ...testIo(), replaceFileFrom: processIo().replaceFileFrom });
const run = async (...argv: string[]) => {
  const io = onDisk();
  const code = await main(argv, io);
  return { code, out: io.out(), err: io.err() };
};
const workshopIn = async (edit?: number) => {
  const data = path.join(newFolder(), "records");
  await run("import", QUAYSIDE, "--data", data, "--yes");
  if (edit !== undefined) {
    const opened = await openWorkshop(data);
    if (opened.kind === "refused") throw new Error("refused");
    await opened.workshop.edit("donor", "q1", ["price"], edit);
    await opened.workshop.close();
  }
  return data;
};
const donorIn = async (data: string) => {
  const opened = await openWorkshop(data);
  if (opened.kind === "refused") throw new Error("refused");
  const text = await opened.workshop.exportText("donor", "q1");
  await opened.workshop.close();
  return text;
};

afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

describe("coldset export and import", () => {
  it("move a workshop: export, look, take in", async () => {
    const [from, to] = [await workshopIn(45), path.join(newFolder(), "records")];
    const file = path.join(newFolder(), "w.zip");
    const exported = await run("export", "--data", from, "-o", file);
    expect([exported.code, exported.err]).toEqual([0, ""]);
    expect(exported.out).toContain("8 documents with their history");
    const look = await run("import", file, "--data", to);
    expect(look.code).toBe(0);
    expect(look.out.replace(/\s+/g, " ")).toContain(
      "Nothing was changed. New here: bin harbour-bin, build quayside, donor q1",
    );
    expect(existsSync(to)).toBe(false);
    const taken = await run("import", file, "--data", to, "--yes");
    expect([taken.code, taken.err]).toEqual([0, ""]);
    expect(await donorIn(to)).toBe(await donorIn(from));
    expect((await run("export", "--data", to, "-o", path.join(newFolder(), "again.zip"))).code).toBe(0);
  });

  it("name what differs, and wait for a choice", async () => {
    const [mine, theirs] = [await workshopIn(12), await workshopIn(45)];
    const file = path.join(newFolder(), "w.zip");
    await run("export", "--data", theirs, "-o", file);
    const before = await donorIn(mine);
    const look = await run("import", file, "--data", mine);
    expect(look.out).toContain("price: 12 → 45");
    expect(look.out.replace(/\s+/g, " ")).toContain("--keep-mine, --take-theirs, or --as-new SUFFIX");
    const waits = await run("import", file, "--data", mine, "--yes", "--json");
    expect(waits.code).toBe(2);
    expect((JSON.parse(waits.out) as { refusals: { code: string }[] }).refusals.map((r) => r.code)).toEqual([
      "import-differs",
    ]);
    expect(await donorIn(mine)).toBe(before);
    expect((await run("import", file, "--data", mine, "--yes", "--choose", "donor/q1=take-theirs")).code).toBe(0);
    expect(await donorIn(mine)).toContain("price: 45");
    expect((await run("import", file, "--data", mine, "--keep-mine", "--take-theirs")).code).toBe(2);
    expect((await run("import", file, "--data", mine, "--choose", "donor")).code).toBe(2);
  });

  it("bring a table of parts into a bin", async () => {
    const data = await workshopIn();
    const file = path.join(newFolder(), "parts.csv");
    writeFileSync(file, "id;kind;condition;cost;od;length\nnew1;post;B;12,5;27.2;35 cm\n");
    const look = await run("import", file, "--into", "harbour-bin", "--data", data);
    expect(look.code).toBe(0);
    expect(look.out).toContain("new1");
    expect((await run("import", file, "--into", "harbour-bin", "--data", data, "--yes")).code).toBe(0);
    const opened = await openWorkshop(data);
    if (opened.kind === "refused") throw new Error("refused");
    expect(await opened.workshop.exportText("bin", "harbour-bin")).toContain("id: new1");
    await opened.workshop.close();
    writeFileSync(file, "id;kind;condition;cost\nnew2;pots;B;a lot\n");
    const bad = await run("import", file, "--into", "harbour-bin", "--data", data);
    expect(bad.code).toBe(2);
    expect(bad.err.replace(/\s+/g, " ")).toContain("row 2, column kind");
  });

  it("call a table by its own name, and leave the bin the name of its file", async () => {
    const data = await workshopIn();
    const file = path.join(newFolder(), "parts.csv");
    writeFileSync(file, "id,kind,condition,od\nnew1,post,B,27.2\n");
    const look = await run("import", file, "--into", "harbour-bin", "--data", data);
    expect(look.out).toContain("What parts.csv would bring.");
    const taken = await run("import", file, "--into", "harbour-bin", "--data", data, "--yes");
    expect(taken.out).toContain("parts.csv was taken in.");
    const opened = await openWorkshop(data);
    if (opened.kind === "refused") throw new Error("refused");
    expect((await opened.workshop.getDocument("bin", "harbour-bin"))?.label).toBe("quayside.yaml");
    await opened.workshop.close();
    // What happened is told by the table's name too.
    expect((await run("history", "quayside", "--data", data)).out).toContain("parts.csv");
  });

  it("say that a bin is made where none has that name, and which there are", async () => {
    const data = await workshopIn();
    const file = path.join(newFolder(), "parts.csv");
    writeFileSync(file, "id,kind,condition,od\nnew1,post,B,27.2\n");
    const look = await run("import", file, "--into", "harbor-bin", "--data", data);
    expect(look.code).toBe(0);
    expect(look.out.replace(/\s+/g, " ")).toContain(
      "There is no bin harbor-bin here yet: it would be made, with these parts in it. Bins here: harbour-bin.",
    );
    expect((await run("import", file, "--into", "harbour-bin", "--data", data)).out).not.toContain("There is no bin");
  });

  it.each([
    ["parts.csv", "id,kind,condition\nnew1,post,B\n"],
    ["parts.txt", "kind;id;cost\npost;new1;12,5\n"],
    ["parts.CSV", "\uFEFFname\tkind\n"],
  ])("ask for the bin where a table comes without one: %s", async (name, text) => {
    const data = await workshopIn();
    const file = path.join(newFolder(), name);
    writeFileSync(file, text);
    const { code, out, err } = await run("import", file, "--data", data, "--json");
    expect(code).toBe(2);
    expect((JSON.parse(out) as { refusals: { code: string }[] }).refusals.map((r) => r.code)).toEqual(["no-bin-named"]);
    expect(err.replace(/\s+/g, " ")).toContain(
      "Name the bin that the parts go into with --into. Bins here: harbour-bin.",
    );
  });

  it("say of a missing file what can be given", async () => {
    const { err } = await run("import", path.join(newFolder(), "nope.csv"), "--data", await workshopIn());
    for (const words of [
      "an archive that coldset export made",
      "a document file (YAML or JSON)",
      "with --into BIN, a table",
    ])
      expect(err.replace(/\s+/g, " ")).toContain(words);
  });

  it("take in the table that the page on keeping shows, every column of it", async () => {
    const page = readFileSync(fileURLToPath(new URL("../docs/methods/keeping.md", import.meta.url)), "utf8");
    const table = /```csv\n([\s\S]*?)```/.exec(page)?.[1] ?? "";
    const file = path.join(newFolder(), "parts.csv");
    writeFileSync(file, table);
    const data = await workshopIn();
    expect(await run("import", file, "--into", "harbour-bin", "--data", data, "--yes")).toMatchObject({
      code: 0,
      err: "",
    });
    const opened = await openWorkshop(data);
    if (opened.kind === "refused") throw new Error("refused");
    const bin = (await opened.workshop.exportText("bin", "harbour-bin")) ?? "";
    await opened.workshop.close();
    expect(bin.slice(bin.indexOf("id: p61"))).toBe(
      "id: p61, kind: post, condition: B, mass: 280 g, cost: 12.5, qty: 1, delivery_days: 3, note: found; one scratch, lies: shelf 2, ports: { od: 27.2, length: 35 cm, setback: 20 } }\n  - { id: c62, kind: cassette, condition: A, cost: 18, ports: { cogs: [ 11, 13, 15, 18 ] } }\n",
    );
  });

  it("refuse what is no archive, a place among the records, and a folder that is not there", async () => {
    const data = await workshopIn();
    const folder = newFolder();
    const broken = path.join(folder, "broken.zip");
    writeFileSync(broken, "PK\u0003\u0004 nothing");
    expect((await run("import", broken, "--data", data)).code).toBe(2);
    expect((await run("import", path.join(folder, "missing.zip"), "--data", data)).code).toBe(2);
    expect((await run("export", "--data", data)).code).toBe(2);
    expect((await run("export", "--data", data, "-o", path.join(data, "w.zip"))).code).toBe(2);
    expect((await run("export", "--data", data, "-o", path.join(folder, "nowhere", "w.zip"))).code).toBe(2);
    expect((await run("export", "--data", folder, "-o", path.join(folder, "w.zip"))).code).toBe(2);
    expect((await run("export", "--build", "nowhere", "--data", data, "-o", path.join(folder, "w.zip"))).code).toBe(2);
    expect(readdirSync(folder)).toEqual(["broken.zip"]);
  });
});

describe("a file written piece by piece", () => {
  const pieces = async function* (fail?: string) {
    yield new Uint8Array([1, 2]);
    if (fail !== undefined) throw Object.assign(new Error("no space left on device"), { code: fail });
    yield new Uint8Array([3]);
  };

  it("is there whole, or the old one still stands", async () => {
    const file = path.join(newFolder(), "a.zip");
    const { replaceFileFrom } = processIo();
    expect(await replaceFileFrom(file, pieces())).toBe(3);
    expect([...readFileSync(file)]).toEqual([1, 2, 3]);
    await expect(replaceFileFrom(file, pieces("ENOSPC"))).rejects.toThrow(/no space/);
    expect([...readFileSync(file)]).toEqual([1, 2, 3]);
    expect(readdirSync(path.dirname(file))).toEqual(["a.zip"]);
  });

  it("clears away what a killed process had begun, and only that", async () => {
    const folder = newFolder();
    const file = path.join(folder, "a.zip");
    // No process has this number: it is above the largest that Linux gives (2^22, proc(5) pid_max).
    for (const name of ["a.zip.99999999.part", `a.zip.${process.ppid}.part`, "b.zip.99999999.part", "a.zip.part"])
      writeFileSync(path.join(folder, name), "half");
    await processIo().replaceFileFrom(file, pieces());
    expect(readdirSync(folder).sort()).toEqual(
      ["a.zip", `a.zip.${process.ppid}.part`, "a.zip.part", "b.zip.99999999.part"].sort(),
    );
  });
});
