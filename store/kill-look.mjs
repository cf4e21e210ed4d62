/**
 * Does everything hold that must hold after a kill? The folder opens at once for the next one; SQLite finds the file sound;
 * each history runs from 1 without a gap, each text in it follows on the one before, and it ends with the text of its
 * document; what can be taken back is taken back and put back again; every photo has the very bytes that its SHA-256
 * names; all that was said to be kept is there; and once the folder is closed nothing lies in it that is not its own.
 */
import { createHash } from "node:crypto";
import fs from "node:fs";
import path from "node:path";

/**
 * @typedef {{ seq: number, kind: string, id: string, revision: number, change: number, before: string | null, after: string }} Row
 * @typedef {{ change: number, what: string, words: string | null, takes_back: number | null }} Change
 * @typedef {{ photo: string, kind: string, id: string, caption: string, sha256: string, taken_away_at: string | null }} Photo
 * @typedef {{
 *   texts: ReadonlyMap<string, string>, histories: ReadonlyMap<string, readonly Row[]>, changes: ReadonlyMap<number, Change>,
 *   photos: ReadonlyMap<string, Photo>, versions: ReadonlySet<string> }} View
 * @typedef {{ what: string, holds: (view: View) => boolean }} Claim
 * @typedef {{ sort: "lost" | "damaged", what: string }} Problem
 */

/** A folder of records that is closed holds these; the log of SQLite may lie there where it could not be emptied. */
const ITS_OWN = ["workshop.sqlite", "workshop.sqlite-wal", "workshop.sqlite-shm", "workshop.lock", "copies"];
/** So long may it take at most before the next one has the folder, ms: a wait for a lock that nobody holds shows. */
const OPENS_WITHIN_MS = 10_000;

/**
 * @param {string} folder
 * @param {readonly Claim[]} claims
 * @param {{ archive?: boolean }} [also] archive: makes a copy of everything and reads it
 * @returns {Promise<{ view: View, problems: Problem[], openedMs: number }>}
 */
export async function lookAfterKill(folder, claims, also = {}) {
  const { openWorkshop } = await import("../store/dist/index.js");
  const { openConnection } = await import("../store/dist/sqlite-connection.js");
  /** @type {Problem[]} */
  const problems = [];
  const damaged = (/** @type {string} */ what) => problems.push({ sort: "damaged", what });
  const from = performance.now();
  const opened = await openWorkshop(folder);
  const openedMs = performance.now() - from;
  if (opened.kind === "refused") {
    damaged(`the next one cannot open the folder: ${JSON.stringify(opened.refusals).slice(0, 300)}`);
    return { view: NOTHING, problems, openedMs };
  }
  if (openedMs > OPENS_WITHIN_MS) damaged(`the next one waited ${Math.round(openedMs)} ms for the folder`);
  const { workshop } = opened;
  const file = path.join(folder, "workshop.sqlite");
  const read = (/** @type {string} */ sql) => {
    const connection = openConnection(file, 1000);
    try {
      return /** @type {any[]} */ (connection.rows(sql));
    } finally {
      connection.close();
    }
  };
  let view;
  try {
    const sound = JSON.stringify(read("PRAGMA integrity_check"));
    if (sound !== '[{"integrity_check":"ok"}]') damaged(`SQLite finds: ${sound.slice(0, 300)}`);
    if (read("PRAGMA foreign_key_check").length > 0) damaged("SQLite finds rows that belong to nothing");
    view = viewOf(read);
    for (const what of [...brokenHistories(view, read), ...brokenPhotos(read)]) damaged(what);
    for (const { what, holds } of claims)
      if (!holds(view)) problems.push({ sort: "lost", what: `${what}, said to be kept, is not there` });
    for (const what of await unusableUndo(workshop, view, () => viewOf(read))) damaged(what);
    if (also.archive === true) {
      const plan = await workshop.archive.preview({ archive: { bytes: await archiveOf(workshop) }, label: "copy.zip" });
      if (plan.kind !== "plan" || plan.documents.some((/** @type {any} */ d) => d.change !== "same"))
        damaged(`an export does not read back: ${JSON.stringify(plan).slice(0, 300)}`);
    }
  } finally {
    await workshop.close();
  }
  const left = fs.readdirSync(folder).filter((name) => !ITS_OWN.includes(name));
  const copies = path.join(folder, "copies");
  if (fs.existsSync(copies)) left.push(...fs.readdirSync(copies).filter((name) => !name.endsWith(".sqlite")));
  if (left.length > 0) damaged(`left in the folder for good: ${left.join(", ")}`);
  return { view, problems, openedMs };
}

/** @type {View} */
const NOTHING = {
  texts: new Map(),
  histories: new Map(),
  changes: new Map(),
  photos: new Map(),
  versions: new Set(),
};

/** @param {(sql: string) => any[]} read @returns {View} */
function viewOf(read) {
  const documents = read("SELECT kind, id, text FROM documents ORDER BY kind, id");
  /** @type {Map<string, Row[]>} */
  const histories = new Map();
  for (const row of read('SELECT seq, kind, id, revision, change, "before", "after" FROM history ORDER BY seq')) {
    const name = `${row.kind} ${row.id}`;
    const rows = histories.get(name) ?? [];
    rows.push(row);
    histories.set(name, rows);
  }
  return {
    texts: new Map(documents.map((d) => [`${d.kind} ${d.id}`, d.text])),
    histories,
    changes: new Map(read("SELECT change, what, words, takes_back FROM changes").map((c) => [c.change, c])),
    photos: new Map(
      read("SELECT photo, kind, id, caption, sha256, taken_away_at FROM photos").map((p) => [p.photo, p]),
    ),
    versions: new Set(read("SELECT build, name FROM versions").map((v) => `${v.build} ${v.name}`)),
  };
}

/** @param {View} view @param {(sql: string) => any[]} read */
function* brokenHistories(view, read) {
  const revisions = new Map(
    read("SELECT kind, id, revision FROM documents").map((d) => [`${d.kind} ${d.id}`, d.revision]),
  );
  for (const name of new Set([...view.texts.keys(), ...view.histories.keys()])) {
    const rows = view.histories.get(name) ?? [];
    if (rows.some((row, i) => row.revision !== i + 1) || rows.length !== revisions.get(name))
      yield `${name}: its history has a gap`;
    if (rows.some((row, i) => row.before !== (rows[i - 1]?.after ?? null)))
      yield `${name}: its history does not hang together`;
    if (rows.at(-1)?.after !== view.texts.get(name)) yield `${name}: its history does not end with its text`;
    if (rows.some((row) => !view.changes.has(row.change))) yield `${name}: a revision belongs to no change`;
  }
  const turned = [...view.changes.values()].map((c) => c.takes_back).filter((c) => c !== null);
  if (new Set(turned).size !== turned.length) yield "a change was taken back twice";
}

/** @param {(sql: string) => any[]} read */
function* brokenPhotos(read) {
  for (const { sha256, size_bytes, bytes } of read("SELECT sha256, size_bytes, bytes FROM pictures")) {
    const picture = Buffer.from(bytes);
    if (picture.length !== size_bytes || createHash("sha256").update(picture).digest("hex") !== sha256)
      yield `the picture ${sha256} has other bytes`;
  }
  const lonely = read("SELECT sha256 FROM pictures WHERE sha256 NOT IN (SELECT sha256 FROM photos)");
  if (lonely.length > 0) yield `${lonely.length} pictures without a photo`;
}

/** Takes the newest change back and puts it back: both must work, and all must stand as before. @param {any} workshop @param {View} view @param {() => View} again */
async function unusableUndo(workshop, view, again) {
  if (!view.texts.has("build quayside")) return [];
  const list = await workshop.buildHistory("quayside", { limit: 1 });
  if (list.kind === "refused") return [`the history of the build cannot be told: ${JSON.stringify(list.refusals)}`];
  if (list.undo === null) return [];
  for (const what of ["undo", "redo"]) {
    const turned = await workshop[what]("quayside");
    if (turned.kind !== "turned") return [`${what} is refused: ${JSON.stringify(turned).slice(0, 300)}`];
  }
  const now = again().texts;
  const moved = [...view.texts].filter(([name, text]) => now.get(name) !== text).map(([name]) => name);
  return moved.length === 0 ? [] : [`undo and redo leave another text: ${moved.join(", ")}`];
}

/** @param {any} workshop @returns {Promise<Uint8Array>} */
export async function archiveOf(workshop) {
  const chunks = [];
  for await (const chunk of (await workshop.archive.make()).stream) chunks.push(chunk);
  return new Uint8Array(Buffer.concat(chunks));
}
