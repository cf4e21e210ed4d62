/** Are old records brought forward word for word, with a copy of how they were, and left alone where that cannot be? */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, it } from "vitest";
import { databaseHeader } from "./database-header.js";
import { NEWEST_VERSION } from "./migrations/all-migrations.js";
import { openWorkshop } from "./open-workshop.js";
import { openConnection } from "./sqlite-connection.js";

const KEPT = fileURLToPath(new URL("./migrations/kept", import.meta.url));
const KEPT_FILES = fs.readdirSync(KEPT).filter((name) => name.endsWith(".sqlite"));
const folders: string[] = [];
const DAY = "2026-05-01";
const now = () => new Date(`${DAY}T08:00:00Z`);

const folderWith = (bytes: Uint8Array) => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-kept-"));
  folders.push(folder);
  fs.writeFileSync(path.join(folder, "workshop.sqlite"), bytes);
  return folder;
};
/** What stood in the tables of version 1, which every later version still has. */
const recordsIn = (file: string) => {
  const connection = openConnection(file, 100);
  const rows = {
    documents: connection.rows("SELECT kind, id, label, text, revision, updated_at FROM documents ORDER BY kind, id"),
    history: connection.rows("SELECT seq, kind, id, revision, path, before, after, at FROM history ORDER BY seq"),
  };
  connection.close();
  return rows;
};
const everything = (folder: string) =>
  Object.fromEntries(
    fs
      .readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => path.join(entry.parentPath, entry.name))
      .sort()
      .map((file) => [path.relative(folder, file), fs.readFileSync(file).toString("base64")]),
  );
const refusalOf = async (folder: string) => {
  const opened = await openWorkshop(folder, { now });
  if (opened.kind === "open") {
    await opened.workshop.close();
    throw new Error("it was opened");
  }
  return opened.refusals[0];
};

afterEach(() => {
  for (const folder of folders.splice(0)) fs.rmSync(folder, { recursive: true, force: true });
});

describe("records of an older program", () => {
  it("are kept here, one file a version", () => {
    const older = Array.from({ length: NEWEST_VERSION - 1 }, (_, i) => `records-version-${i + 1}.sqlite`);
    expect(KEPT_FILES).toEqual(expect.arrayContaining(older));
    for (const name of KEPT_FILES) {
      const version = Number(/^records-version-(\d+)\.sqlite$/.exec(name)?.[1]);
      expect(databaseHeader(path.join(KEPT, name))).toMatchObject({ kind: "database", userVersion: version });
    }
  });

  it.each(KEPT_FILES)("%s comes to the newest form word for word, and a copy of how it was stays", async (name) => {
    const folder = folderWith(fs.readFileSync(path.join(KEPT, name)));
    const file = path.join(folder, "workshop.sqlite");
    const before = recordsIn(file);
    expect(before.documents.length).toBeGreaterThan(0);
    expect(before.history.length).toBeGreaterThan(before.documents.length);
    const { userVersion } = databaseHeader(file) as { userVersion: number };
    const opened = await openWorkshop(folder, { now });
    if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
    const { workshop, copy } = opened;
    const documents = await workshop.allDocuments();
    expect(documents.map((d) => d.text)).toEqual(before.documents.map((row) => (row as { text: string }).text));
    expect((await workshop.edit("donor", "q1", ["price"], 99)).kind).toBe("edited");
    const archive = await workshop.archive.make();
    expect(archive.kind).toBe("archive");
    if (archive.kind === "archive") for await (const _ of archive.stream);
    await workshop.close();
    const after = recordsIn(file);
    expect(after.history.slice(0, before.history.length)).toEqual(before.history);
    expect(databaseHeader(file)).toMatchObject({ userVersion: NEWEST_VERSION });
    if (userVersion === NEWEST_VERSION) {
      expect(copy).toBeUndefined();
      return;
    }
    expect(copy).toBe(path.join(folder, "copies", `records-version-${userVersion}-${DAY}.sqlite`));
    expect(recordsIn(copy ?? "")).toEqual(before);
    expect(databaseHeader(copy ?? "")).toMatchObject({ userVersion });
    // The copy is the way back: put in the place of the records it opens again.
    const again = folderWith(fs.readFileSync(copy ?? ""));
    const reopened = await openWorkshop(again, { now });
    expect(reopened.kind).toBe("open");
    if (reopened.kind === "open") await reopened.workshop.close();
  });

  const old = fs.readFileSync(path.join(KEPT, "records-version-1.sqlite"));

  it("are left as they are where no copy can be made", async () => {
    const folder = folderWith(old);
    fs.writeFileSync(path.join(folder, "copies"), "a file where the copies would go");
    const before = everything(folder);
    const refusal = await refusalOf(folder);
    expect(refusal?.code).toBe("store-no-copy");
    expect(refusal?.message).toContain(path.join(folder, "copies"));
    expect(refusal?.message).toContain("Nothing was brought forward.");
    const after = everything(folder);
    expect(after["workshop.sqlite"]).toBe(before["workshop.sqlite"]);
    expect(after.copies).toBe(before.copies);
  });

  it("get a second copy of the same day under another name", async () => {
    const folder = folderWith(old);
    for (const name of [`records-version-1-${DAY}.sqlite`, `records-version-1-${DAY}-2.sqlite`]) {
      fs.writeFileSync(path.join(folder, "workshop.sqlite"), old);
      const opened = await openWorkshop(folder, { now });
      if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
      expect(opened.copy).toBe(path.join(folder, "copies", name));
      await opened.workshop.close();
    }
    expect(fs.readdirSync(path.join(folder, "copies"))).toHaveLength(2);
  });

  it.each([
    ["cut in the middle", old.subarray(0, Math.floor(old.length / 2))],
    ["cut behind its first page", old.subarray(0, 4096)],
    ["overwritten in its first page", Buffer.from(old).fill(0xa5, 100, 4096)],
    ["overwritten in the middle", Buffer.from(old).fill(0xa5, 4096 * 2, 4096 * 9)],
  ])("are refused and not touched when %s", async (_what, bytes) => {
    const folder = folderWith(bytes);
    const before = everything(folder)["workshop.sqlite"];
    const refusal = await refusalOf(folder);
    expect(["store-damaged", "store-no-copy"]).toContain(refusal?.code);
    expect(refusal?.message).toContain("damaged");
    expect(everything(folder)["workshop.sqlite"]).toBe(before);
    expect(fs.readdirSync(folder).filter((name) => name.endsWith(".part"))).toEqual([]);
  });
});
