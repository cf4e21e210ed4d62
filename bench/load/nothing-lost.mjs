/**
 * Is every edit that was said to be kept in the records, once, and do the documents end with the last values? Read from
 * the file itself after the server was killed. An edit must change its own place and nothing else.
 */
import path from "node:path";
import { isDeepStrictEqual } from "node:util";
import { parseDocument } from "yaml";

/** @typedef {{ kind: string, id: string, revision: number, path: string | null, before: string | null, after: string, what: string }} Row */

/**
 * @param {string} folder
 * @param {readonly import("./users.mjs").Kept[]} kept
 * @param {readonly import("./users.mjs").TurnedBack[]} turned
 */
export async function nothingLost(folder, kept, turned) {
  const { openConnection } = await import("../../store/dist/sqlite-connection.js");
  const connection = openConnection(path.join(folder, "workshop.sqlite"), 1000);
  /** @type {string[]} */
  const problems = [];
  try {
    const rows = /** @type {readonly Row[]} */ (
      connection.rows(
        "SELECT h.kind, h.id, h.revision, h.path, h.before, h.after, c.what FROM history h JOIN changes c ON c.change = h.change ORDER BY h.seq",
      )
    );
    const taken = /** @type {readonly { edit_id: string, kind: string, id: string, revision: number }[]} */ (
      connection.rows("SELECT edit_id, kind, id, revision FROM taken_edits")
    );
    const documents = /** @type {readonly { kind: string, id: string, revision: number, text: string }[]} */ (
      connection.rows("SELECT kind, id, revision, text FROM documents")
    );
    const idOf = new Map(taken.map((t) => [t.edit_id, t]));
    /** @type {Map<string, Row[]>} */
    const histories = new Map();
    for (const row of rows) {
      const key = `${row.kind} ${row.id}`;
      histories.set(key, [...(histories.get(key) ?? []), row]);
    }
    /** @type {Map<string, import("./users.mjs").Kept>} */
    const madeBy = new Map();
    for (const k of kept) {
      const made = `${k.kind} ${k.id} ${k.revision}`;
      const row = histories.get(`${k.kind} ${k.id}`)?.[k.revision - 1];
      const id = idOf.get(k.editId);
      if (row?.what !== "edit" || row.path !== JSON.stringify(k.path))
        problems.push(`${made} (${k.editId}) is not there`);
      if (madeBy.has(made)) problems.push(`${made} was said to two: ${madeBy.get(made)?.editId} and ${k.editId}`);
      if (id?.revision !== k.revision || id.kind !== k.kind || id.id !== k.id)
        problems.push(`${k.editId} is not noted as ${made}`);
      madeBy.set(made, k);
    }
    for (const { documents: written } of turned)
      for (const { kind, id, revision } of written)
        if (histories.get(`${kind} ${id}`)?.[revision - 1]?.what !== "undo")
          problems.push(`what was taken back is not there: ${kind} ${id} ${revision}`);
    for (const { kind, id, revision, text } of documents) {
      const history = histories.get(`${kind} ${id}`) ?? [];
      if (history.length !== revision || history.at(-1)?.after !== text)
        problems.push(`${kind} ${id}: its history does not end with its text`);
      /** The values as the edits made them, one after the other. @type {any} */
      let plain;
      for (const [i, row] of history.entries()) {
        if (row.revision !== i + 1 || row.before !== (history[i - 1]?.after ?? null))
          problems.push(`${kind} ${id} ${row.revision}: its history has a gap`);
        const now = parseDocument(row.after).toJS();
        const edit = madeBy.get(`${kind} ${id} ${row.revision}`);
        if (edit !== undefined) {
          let place = plain;
          for (const step of edit.path.slice(0, -1)) place = place[step];
          place[/** @type {string | number} */ (edit.path.at(-1))] = edit.value;
          if (!isDeepStrictEqual(plain, now)) problems.push(`${edit.editId} changed something else than its place`);
        }
        plain = now;
      }
    }
    const sound = JSON.stringify(connection.rows("PRAGMA integrity_check"));
    if (sound !== '[{"integrity_check":"ok"}]') problems.push(`SQLite finds: ${sound}`);
    if (connection.rows("PRAGMA foreign_key_check").length > 0)
      problems.push("SQLite finds rows that belong to nothing");
  } finally {
    connection.close();
  }
  return { problems, edits: kept.length };
}
