/**
 * How does a build stand as this device last saw it? Kept in the browser's database, so that a build that was opened
 * here opens without the server. Each document is kept once, however many builds need it.
 */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { BuildLine, StoredPlain } from "./api.js";

interface Records extends DBSchema {
  /** By kind and id. */
  documents: { key: string; value: StoredPlain };
  /** By the build's id: the keys of the documents it needs. */
  builds: { key: string; value: { readonly id: string; readonly documents: readonly string[] } };
  /** The list of the first page, under one key. */
  lists: { key: string; value: readonly BuildLine[] };
}

const NAME = "coldset";
const VERSION = 1;
const BUILDS = "builds";
const keyOf = (d: { readonly kind: string; readonly id: string }) => `${d.kind}/${d.id}`;

let opening: Promise<IDBPDatabase<Records> | undefined> | undefined;

function database(): Promise<IDBPDatabase<Records> | undefined> {
  opening ??= openDB<Records>(NAME, VERSION, {
    upgrade: (db) => {
      db.createObjectStore("documents");
      db.createObjectStore("builds");
      db.createObjectStore("lists");
    },
    terminated: () => {
      opening = undefined;
    },
  }).catch(() => undefined);
  return opening;
}

/** Gives undefined where the browser has no database for us, or no room: the page then needs its server, as before. */
async function tried<T>(work: (db: IDBPDatabase<Records>) => Promise<T>): Promise<T | undefined> {
  const db = await database();
  if (db === undefined) return undefined;
  try {
    return await work(db);
  } catch {
    // Full, or closed by the browser. What the records have stays there; only the copy is missing.
    return undefined;
  }
}

/** As just read from the server. */
export async function keepBuild(buildId: string, docs: readonly StoredPlain[]): Promise<void> {
  await tried(async (db) => {
    const work = db.transaction(["documents", "builds"], "readwrite");
    for (const doc of docs) void work.objectStore("documents").put(doc, keyOf(doc));
    void work.objectStore("builds").put({ id: buildId, documents: docs.map(keyOf) }, buildId);
    await work.done;
  });
}

export async function keptBuild(buildId: string): Promise<readonly StoredPlain[] | undefined> {
  return tried(async (db) => {
    const work = db.transaction(["documents", "builds"]);
    const build = await work.objectStore("builds").get(buildId);
    if (build === undefined) return undefined;
    const docs = await Promise.all(build.documents.map((key) => work.objectStore("documents").get(key)));
    // Half a build would be reckoned as if the rest had not been measured.
    return docs.every((d) => d !== undefined) ? docs : undefined;
  });
}

export async function keepDocument(doc: StoredPlain): Promise<void> {
  await tried((db) => db.put("documents", doc, keyOf(doc)));
}

export async function keptDocument(kind: string, id: string): Promise<StoredPlain | undefined> {
  return tried((db) => db.get("documents", keyOf({ kind, id })));
}

/** Another workshop answers at this address now: what was kept is not of it. */
export async function forgetDocuments(): Promise<void> {
  await tried(async (db) => {
    const work = db.transaction(["documents", "builds", "lists"], "readwrite");
    for (const store of ["documents", "builds", "lists"] as const) void work.objectStore(store).clear();
    await work.done;
  });
}

export async function keepBuildList(list: readonly BuildLine[]): Promise<void> {
  await tried((db) => db.put("lists", list, BUILDS));
}

export async function keptBuildList(): Promise<readonly BuildLine[] | undefined> {
  return tried((db) => db.get("lists", BUILDS));
}
