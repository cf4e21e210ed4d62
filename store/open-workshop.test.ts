import { type ChildProcess, spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { Kysely } from "kysely";
import { afterEach, describe, expect, it } from "vitest";
import { beginChange } from "./begin-change.js";
import { APPLICATION_ID, databaseHeader } from "./database-header.js";
import { lockFolder } from "./folder-lock.js";
import { migrate } from "./migrate.js";
import { ALL_MIGRATIONS, NEWEST_VERSION } from "./migrations/all-migrations.js";
import { openWorkshop } from "./open-workshop.js";
import { openConnection } from "./sqlite-connection.js";
import type { Tables } from "./tables.js";
import { jpegWith } from "./test-pictures.js";
import type { Workshop } from "./workshop.js";
import { writeDocument } from "./write-document.js";

const QUAYSIDE = fs.readFileSync(new URL("../demo/quayside.yaml", import.meta.url), "utf8");
const CHILD = fileURLToPath(new URL("./test-child.mjs", import.meta.url));

const leftovers: string[] = [];
const opened: Workshop[] = [];
const children: ChildProcess[] = [];
const newFolder = () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-open-"));
  leftovers.push(folder);
  return folder;
};
const openIn = async (folder: string) => {
  const result = await openWorkshop(folder);
  if (result.kind === "refused") throw new Error(JSON.stringify(result.refusals));
  opened.push(result.workshop);
  return result.workshop;
};
const refusalOf = async (folder: string) => {
  const result = await openWorkshop(folder);
  if (result.kind === "open") {
    opened.push(result.workshop);
    throw new Error("it was opened");
  }
  return result.refusals[0];
};
/** Every file of a folder with its bytes. */
const bytesOf = (folder: string) =>
  Object.fromEntries(
    fs
      .readdirSync(folder)
      .sort()
      .map((name) => [name, fs.readFileSync(path.join(folder, name)).toString("base64")]),
  );
/** A second process that has opened the folder. */
const startChild = async (task: "hold" | "write", folder: string) => {
  const child = spawn(process.execPath, [CHILD, task, folder], { stdio: ["ignore", "pipe", "pipe"] });
  children.push(child);
  const seen = { lines: [] as string[], errors: "" };
  let rest = "";
  child.stdout.on("data", (chunk: Buffer) => {
    const parts = (rest + chunk.toString()).split("\n");
    rest = parts.pop() ?? "";
    seen.lines.push(...parts);
  });
  child.stderr.on("data", (chunk: Buffer) => {
    seen.errors += chunk.toString();
  });
  const gone = new Promise<void>((resolve) => {
    child.once("close", () => resolve());
  });
  const until = async (count: number) => {
    while (seen.lines.length < count) {
      if (child.exitCode !== null) throw new Error(`the child ended: ${seen.lines.join()} ${seen.errors}`);
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  };
  await until(1);
  expect(seen.lines[0]).toBe("open");
  const kill = async () => {
    child.kill("SIGKILL");
    await gone;
  };
  return { pid: child.pid, lines: seen.lines, until, kill };
};

afterEach(async () => {
  for (const workshop of opened.splice(0)) await workshop.close();
  for (const child of children.splice(0)) child.kill("SIGKILL");
  for (const folder of leftovers.splice(0)) fs.rmSync(folder, { recursive: true, force: true });
});

describe("opening", () => {
  it.runIf(fs.existsSync("/proc/self"))(
    "refuses a place where no folder can be made, and does not go round for ever",
    async () => {
      const result = await openWorkshop("/proc/nowhere/data");
      expect(result.kind).toBe("refused");
    },
  );

  it("makes the folder, and a database that says whose it is", async () => {
    const folder = path.join(newFolder(), "a", "Fahrräder & Öl");
    await openIn(folder);
    expect(databaseHeader(path.join(folder, "workshop.sqlite"))).toEqual({
      kind: "database",
      applicationId: APPLICATION_ID,
      userVersion: NEWEST_VERSION,
    });
  });

  it("writes every change through to the disk before it says so", async () => {
    const folder = newFolder();
    await openIn(folder);
    const connection = openConnection(path.join(folder, "workshop.sqlite"), 100);
    expect(connection.rows("PRAGMA journal_mode")).toEqual([{ journal_mode: "wal" }]);
    // 2 is FULL (SQLite, "Pragma statements").
    expect(connection.pragmaNumber("synchronous")).toBe(2);
    expect(connection.pragmaNumber("foreign_keys")).toBe(1);
    expect(connection.pragmaNumber("busy_timeout")).toBe(100);
    connection.close();
  });

  it.each([
    ["a text", (file: string) => fs.writeFileSync(file, "Notes about the red bicycle.\n".repeat(300))],
    ["a short file", (file: string) => fs.writeFileSync(file, "SQLite format 3\0")],
    [
      "a database of another program",
      (file: string) => {
        const other = openConnection(file, 100);
        other.exec("CREATE TABLE stamps (name TEXT); INSERT INTO stamps VALUES ('blue'); PRAGMA application_id = 77;");
        other.close();
      },
    ],
    [
      "a database without a mark",
      (file: string) => {
        const other = openConnection(file, 100);
        other.exec("CREATE TABLE documents (name TEXT); PRAGMA user_version = 1");
        other.close();
      },
    ],
  ])("refuses %s and leaves every byte of the folder as it was", async (_what, make) => {
    const folder = newFolder();
    make(path.join(folder, "workshop.sqlite"));
    const before = bytesOf(folder);
    expect((await refusalOf(folder))?.code).toBe("store-foreign");
    expect(bytesOf(folder)).toEqual(before);
  });

  it("refuses the records of a newer program and leaves every byte of the folder as it was", async () => {
    const folder = newFolder();
    const file = path.join(folder, "workshop.sqlite");
    const newer = openConnection(file, 100);
    const later = { version: NEWEST_VERSION + 1, sql: "CREATE TABLE tomorrow (name TEXT) STRICT" };
    expect(migrate(newer, file, [...ALL_MIGRATIONS, later])).toBeUndefined();
    newer.close();
    const before = bytesOf(folder);
    const refusal = await refusalOf(folder);
    expect(refusal?.code).toBe("store-newer");
    expect(refusal?.given).toBe(NEWEST_VERSION + 1);
    expect(bytesOf(folder)).toEqual(before);
  });

  it("refuses a database whose pages are damaged, with words for it", async () => {
    const folder = newFolder();
    await (await openIn(folder)).close();
    const file = path.join(folder, "workshop.sqlite");
    const bytes = fs.readFileSync(file);
    fs.writeFileSync(file, bytes.fill(0xa5, 100, 4096));
    expect((await refusalOf(folder))?.code).toBe("store-damaged");
  });

  it("brings an older database forward and keeps what is in it", async () => {
    const folder = newFolder();
    const workshop = await openIn(folder);
    await workshop.putText(QUAYSIDE, "quayside.yaml");
    await workshop.close();
    const file = path.join(folder, "workshop.sqlite");
    const connection = openConnection(file, 100);
    const steps = [
      ...ALL_MIGRATIONS,
      { version: NEWEST_VERSION + 1, sql: "ALTER TABLE documents ADD COLUMN note TEXT" },
    ];
    expect(migrate(connection, file, steps)).toBeUndefined();
    expect(connection.pragmaNumber("user_version")).toBe(NEWEST_VERSION + 1);
    // The file itself says so too, not only the log beside it: an older program looks at the file alone.
    expect(databaseHeader(file)).toMatchObject({ userVersion: NEWEST_VERSION + 1 });
    expect(connection.rows("SELECT count(*) AS n FROM documents WHERE note IS NULL")).toEqual([{ n: 8 }]);
    connection.close();
  });

  it("does a step whole or not at all", () => {
    const file = path.join(newFolder(), "workshop.sqlite");
    const connection = openConnection(file, 100);
    const broken = { version: 2, sql: "CREATE TABLE half (name TEXT) STRICT; CREATE NONSENSE" };
    expect(() => migrate(connection, file, [...ALL_MIGRATIONS.slice(0, 1), broken])).toThrow();
    expect(connection.pragmaNumber("user_version")).toBe(1);
    expect(connection.rows("SELECT name FROM sqlite_master WHERE name = 'half'")).toEqual([]);
    connection.close();
  });

  it("only adds to the history, even for other programs", async () => {
    const folder = newFolder();
    const workshop = await openIn(folder);
    await workshop.putText(QUAYSIDE, "quayside.yaml");
    const other = openConnection(path.join(folder, "workshop.sqlite"), 100);
    expect(() => other.exec("UPDATE history SET after = ''")).toThrow(/only added/);
    expect(() => other.exec("DELETE FROM history")).toThrow(/only added/);
    other.close();
  });
});

describe("folders that cannot be used", () => {
  /** As an ordinary user: root may write anywhere. */
  const asOrdinaryUser = async <T>(work: () => Promise<T>): Promise<T> => {
    if (process.getuid?.() !== 0) return work();
    process.seteuid?.(65_534);
    try {
      return await work();
    } finally {
      process.seteuid?.(0);
    }
  };

  it.skipIf(process.platform === "win32")("refuses a folder that may not be written, and a folder in it", async () => {
    const folder = newFolder();
    fs.chmodSync(folder, 0o555);
    const refusal = await asOrdinaryUser(() => refusalOf(folder));
    expect(refusal?.code).toBe("store-no-access");
    expect(refusal?.message).toContain(folder);
    expect((await asOrdinaryUser(() => refusalOf(path.join(folder, "inside"))))?.code).toBe("store-no-access");
    expect(fs.readdirSync(folder)).toEqual([]);
    fs.chmodSync(folder, 0o755);
  });

  it.skipIf(process.platform === "win32")("refuses a database that may only be read", async () => {
    const folder = newFolder();
    await (await openIn(folder)).close();
    // The ordinary user's own folder, and nobody else's: a folder that all may write is refused for that.
    if (process.getuid?.() === 0) fs.chownSync(folder, 65_534, 65_534);
    fs.chmodSync(folder, 0o700);
    fs.chmodSync(path.join(folder, "workshop.sqlite"), 0o444);
    expect((await asOrdinaryUser(() => refusalOf(folder)))?.code).toBe("store-no-access");
  });

  it("refuses a file where the folder should be", async () => {
    const file = path.join(newFolder(), "notes.txt");
    fs.writeFileSync(file, "notes");
    expect((await refusalOf(file))?.code).toBe("store-no-folder");
    expect((await refusalOf(path.join(file, "deeper")))?.code).toBe("store-no-folder");
    expect(fs.readFileSync(file, "utf8")).toBe("notes");
  });
});

describe("one process at a time", () => {
  it("tells a second opener who holds the folder, in this process too, and lets it in afterwards", async () => {
    const folder = newFolder();
    const first = await openIn(folder);
    const refusal = await refusalOf(folder);
    expect(refusal?.code).toBe("store-in-use");
    expect(refusal?.message).toMatch(
      new RegExp(
        `another coldset \\(process ${process.pid}\\) holds it, since \\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d\\. Close`,
      ),
    );
    await first.close();
    await first.close();
    expect((await openIn(folder)).folder).toBe(folder);
  });

  it("names the other process, and heals by itself when that was killed", async () => {
    const folder = newFolder();
    const child = await startChild("hold", folder);
    const refusal = await refusalOf(folder);
    expect(refusal?.code).toBe("store-in-use");
    expect(refusal?.given).toMatchObject({ pid: child.pid });
    await child.kill();
    expect(fs.readdirSync(folder)).toContain("workshop.holder.json");
    await openIn(folder);
  });

  it("says where the holder answers and how to go on", async () => {
    const folder = newFolder();
    const first = await openIn(folder);
    first.sayWhere("http://127.0.0.1:4330/");
    const refusal = await refusalOf(folder);
    expect(refusal?.given).toMatchObject({ pid: process.pid, url: "http://127.0.0.1:4330/" });
    expect(refusal?.message).toContain(
      "its page is at http://127.0.0.1:4330/. Go on there, or close it first (Ctrl-C where it runs)",
    );
    expect(refusal?.message).toContain("--data");
  });

  it("does not send anybody elsewhere, whatever stands in the note", async () => {
    const folder = newFolder();
    await openIn(folder);
    const note = path.join(folder, "workshop.holder.json");
    for (const url of ["http://elsewhere.example/", "file:///etc", "http://127.0.0.1:4330/@elsewhere.example"]) {
      fs.writeFileSync(note, JSON.stringify({ pid: process.pid, since: "2026-01-01T00:00:00.000Z", url }));
      expect((await refusalOf(folder))?.message).not.toContain(url);
    }
  });

  it("does not name a process that is gone, in the moment before the new holder writes its note", async () => {
    const folder = newFolder();
    await openIn(folder);
    const child = await startChild("hold", newFolder());
    await child.kill();
    const note = path.join(folder, "workshop.holder.json");
    fs.writeFileSync(note, JSON.stringify({ pid: child.pid, since: "2026-01-01T00:00:00.000Z" }));
    const refusal = await refusalOf(folder);
    expect(refusal?.code).toBe("store-in-use");
    expect(refusal?.given).toBeNull();
    expect(refusal?.message).toContain("another process");
  });

  it.each(["", "{", '{"pid":1,"since":"2026-01-01T00:00:00.000Z"}', JSON.stringify({ pid: process.pid, since: "x" })])(
    "is not stopped by a note that somebody left: %j",
    async (note) => {
      const folder = newFolder();
      fs.writeFileSync(path.join(folder, "workshop.holder.json"), note);
      await openIn(folder);
    },
  );

  it("lets go of the lock where the opening is refused afterwards", async () => {
    const folder = newFolder();
    await (await openIn(folder)).close();
    const file = path.join(folder, "workshop.sqlite");
    fs.writeFileSync(file, fs.readFileSync(file).fill(0xa5, 100, 4096));
    await refusalOf(folder);
    const lock = await lockFolder(folder, () => new Date());
    expect(lock.kind).toBe("held");
    if (lock.kind === "held") lock.release();
  });
});

describe("a change", () => {
  it("keeps other writers out from its start, before it has written anything", async () => {
    const file = path.join(newFolder(), "workshop.sqlite");
    const connection = openConnection(file, 100);
    expect(migrate(connection, file)).toBeUndefined();
    const db = new Kysely<Tables>({ dialect: connection.dialect() });
    const other = openConnection(file, 10);
    await db.transaction().execute(async (trx) => {
      expect(await trx.selectFrom("documents").selectAll().execute()).toEqual([]);
      expect(() => other.exec("BEGIN IMMEDIATE")).toThrow(/locked/);
    });
    other.exec("BEGIN IMMEDIATE");
    other.exec("ROLLBACK");
    other.close();
    await db.destroy();
  });

  it("is refused, with words for it, where another program does not stop writing", async () => {
    const folder = newFolder();
    const workshop = await openIn(folder);
    await workshop.putText(QUAYSIDE, "quayside.yaml");
    const other = openConnection(path.join(folder, "workshop.sqlite"), 10);
    other.exec("BEGIN IMMEDIATE");
    const edit = await workshop.edit("donor", "q1", ["measured", "chainstay"], 441);
    other.exec("ROLLBACK");
    other.close();
    expect(edit.kind === "refused" && edit.refusals[0]?.code).toBe("store-busy");
    expect((await workshop.edit("donor", "q1", ["measured", "chainstay"], 441)).kind).toBe("edited");
  });
});

describe("a disk that was full", () => {
  it("takes the change once there is room, in the same process", async () => {
    const file = path.join(newFolder(), "workshop.sqlite");
    const connection = openConnection(file, 100);
    expect(migrate(connection, file)).toBeUndefined();
    const db = new Kysely<Tables>({ dialect: connection.dialect() });
    const text = { kind: "route", id: "r", label: "r.yaml", path: null, after: "x".repeat(200_000), at: "now" };
    const write = () =>
      db.transaction().execute(async (trx) => {
        const change = await beginChange(trx, { what: "put" }, { who: null, at: "now" });
        return writeDocument(trx, undefined, { ...text, change });
      });
    connection.rows("PRAGMA max_page_count = 45");
    await expect(write()).rejects.toThrow(/full/);
    expect(await db.selectFrom("documents").selectAll().execute()).toEqual([]);
    connection.rows("PRAGMA max_page_count = 100000");
    expect(await write()).toBe(1);
    expect(connection.rows("PRAGMA wal_checkpoint(TRUNCATE)")).toEqual([{ busy: 0, log: 0, checkpointed: 0 }]);
    await db.destroy();
  });
});

describe("a disk that is full", () => {
  it("refuses an import and a photo with words for it, and keeps what was there", async () => {
    const folder = newFolder();
    const first = await openIn(folder);
    await first.putText(QUAYSIDE, "quayside.yaml");
    const before = await first.allDocuments();
    await first.close();
    const pages = fs.statSync(path.join(folder, "workshop.sqlite")).size / 4096;
    const result = await openWorkshop(folder, { mostPages: pages + 2 });
    if (result.kind === "refused") throw new Error(JSON.stringify(result.refusals));
    const { workshop } = result;
    opened.push(workshop);
    const text = QUAYSIDE.replace(/^id: (\S+)/gm, "id: $1x");
    const taken = await workshop.archive.take({ text, label: "more.yaml" });
    expect(taken.kind === "refused" && taken.refusals[0]?.code).toBe("store-full");
    const photo = { kind: "donor", id: "q1", place: null, caption: "", bytes: jpegWith("x".repeat(60_000)) };
    const kept = await workshop.photos.add(photo);
    expect(kept.kind === "refused" && kept.refusals[0]?.code).toBe("store-full");
    expect(await workshop.allDocuments()).toEqual(before);
    expect(await workshop.photos.of("donor", "q1")).toEqual([]);
  });
});

describe("killed while writing", () => {
  it("loses no edit that was said to be kept", async () => {
    const folder = newFolder();
    const workshop = await openIn(folder);
    await workshop.putText(QUAYSIDE, "quayside.yaml");
    await workshop.close();
    let revision = 1;
    for (const edits of [1, 9, 30]) {
      const child = await startChild("write", folder);
      await child.until(1 + edits);
      await child.kill();
      const said = child.lines.slice(1).map((line) => line.split(" ").map(Number));
      expect(said.length).toBeGreaterThanOrEqual(edits);
      const after = await openIn(folder);
      const history = await after.history("donor", "q1");
      for (const [made, chainstay] of said) {
        const entry = history.find((h) => h.revision === made);
        expect(entry?.after).toContain(`chainstay: ${chainstay}`);
      }
      const last = said.at(-1)?.[0] ?? 0;
      const now = await after.getDocument("donor", "q1");
      // One edit more may have been kept without its word having come through.
      expect([last, last + 1]).toContain(now?.revision);
      expect(now?.text).toBe(history.at(-1)?.after);
      expect(history.map((h) => h.revision)).toEqual(history.map((_, i) => i + 1));
      expect(last).toBeGreaterThan(revision);
      revision = last;
      await after.close();
      const connection = openConnection(path.join(folder, "workshop.sqlite"), 100);
      expect(connection.rows("PRAGMA integrity_check")).toEqual([{ integrity_check: "ok" }]);
      connection.close();
    }
  }, 120_000);
});
