/** Changes of the same moment share one transaction; none is said to be kept before it, and none falls with another. */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { Kysely } from "kysely";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openWorkshop } from "./open-workshop.js";
import { openConnection, type SqliteConnection } from "./sqlite-connection.js";
import type { Tables } from "./tables.js";
import { type WriteTogether, writeTogether } from "./write-together.js";

let folder: string;
let connection: SqliteConnection;
let together: WriteTogether;
let commits = 0;
beforeEach(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-together-"));
  const opened = await openWorkshop(folder);
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  await opened.workshop.close();
  connection = openConnection(path.join(folder, "workshop.sqlite"), 1000);
  commits = 0;
  connection.onCommit(() => {
    commits += 1;
  });
  together = writeTogether(new Kysely<Tables>({ dialect: connection.dialect() }));
});
afterEach(() => {
  connection.close();
  fs.rmSync(folder, { recursive: true, force: true });
});

const names = () =>
  connection.rows("SELECT name FROM versions ORDER BY version").map((row) => Object.values(row as object)[0]);
const keep = (name: string) =>
  together.write(async (trx) => {
    await trx
      .insertInto("versions")
      .values({ build: "b", name, name_key: name, who: null, at: "2026-05-01T10:00:00.000Z" })
      .execute();
    return { name, kept: commits };
  });

describe("changes of the same moment", () => {
  it("are kept by one commit, in the order they came, and said to be kept after it", async () => {
    const all = ["a", "b", "c", "d"].map(async (name) => {
      const { kept } = await keep(name);
      return { before: kept, after: commits };
    });
    expect(await Promise.all(all)).toEqual(Array(4).fill({ before: 0, after: 1 }));
    expect(names()).toEqual(["a", "b", "c", "d"]);
  });

  it("are each kept or not, where one of them fails", async () => {
    const all = await Promise.allSettled(["a", "b", "a", "c"].map(keep));
    expect(all.map((one) => one.status)).toEqual(["fulfilled", "fulfilled", "rejected", "fulfilled"]);
    expect(names()).toEqual(["a", "b", "c"]);
  });

  it("go on after one that failed alone, and are all written when that is waited for", async () => {
    await keep("a");
    await expect(keep("a")).rejects.toThrow(/UNIQUE/);
    const last = keep("b");
    await together.written();
    expect(names()).toEqual(["a", "b"]);
    await last;
  });
});
