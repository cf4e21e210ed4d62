/**
 * Which commands write, and what must stand after each was killed? Each makes ready what it needs, gives the command line,
 * what its answer claims, and how the state after the kill is judged: its work is there whole, or nothing of it is.
 * Made ready is `folder`; the command works in `target`, a copy of it (see kill-harness.mjs).
 */
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { readArchive } from "./kill-archive.mjs";
import { changeClaims, judgeMarks, markClaims, otherText, QUAYSIDE, versionClaim } from "./kill-claims.mjs";
import { archiveOf } from "./kill-look.mjs";
import { photoOf } from "./kill-photo.mjs";

const KEPT = fileURLToPath(new URL("./migrations/kept", import.meta.url));

/**
 * @typedef {import("./kill-look.mjs").View} View
 * @typedef {import("./kill-look.mjs").Claim} Claim
 * @typedef {{ base: string, folder: string, target: string, n: number, draw: () => number, inFolder: (folder: string, work: (w: any) => Promise<any>) => Promise<any> }} Ground
 * @typedef {import("./kill-claims.mjs").Judged} Judged
 * @typedef {import("./kill-claims.mjs").Marks} Marks
 * @typedef {{
 *   argv: readonly string[], folder: string, holds: string | undefined,
 *   said: (told: any) => readonly Claim[],
 *   judge: (view: View, done: boolean) => Judged | Promise<Judged> }} Prepared
 * @typedef {{ name: string, prepare: (ground: Ground) => Promise<Prepared> }} CommandWriter
 */

/** @type {readonly CommandWriter[]} */
export const COMMANDS = [
  { name: "history --undo", prepare: (g) => turn(g, "undo") },
  { name: "history --redo", prepare: (g) => turn(g, "redo") },
  { name: "history --restore", prepare: restore },
  { name: "history --name", prepare: nameVersion },
  { name: "import of an archive", prepare: importArchive },
  { name: "import of a document", prepare: importDocument },
  { name: "import of a table", prepare: importTable },
  { name: "import, new folder", prepare: importIntoNew },
  { name: "export", prepare: exportAll },
  { name: "new", prepare: newFile },
  { name: "older records", prepare: olderRecords },
];

/** @param {Ground} g @param {"undo" | "redo"} what @returns {Promise<Prepared>} */
async function turn({ folder, target, n, inFolder }, what) {
  const title = `Old hybrid, before ${what} ${n}`;
  await inFolder(folder, async (w) => {
    await w.edit("build", "quayside", ["title"], title);
    if (what === "redo") await w.undo("quayside");
  });
  return {
    argv: ["history", "quayside", `--${what}`, "--data", target],
    folder: target,
    holds: target,
    said: (told) => changeClaims(told, what),
    judge: (view, done) => {
      const stands = view.texts.get("build quayside")?.includes(title) === true;
      const there = what === "redo" ? stands : !stands;
      return { there, wrong: done && !there ? [`${what} was said to be done and the text is as before`] : [] };
    },
  };
}

/** @param {Ground} g @returns {Promise<Prepared>} */
async function restore({ folder, target, n, inFolder }) {
  const name = `before ${n}`;
  const names = ["build quayside", "donor q1"];
  const texts = async (/** @type {any} */ w) => [
    await w.exportText("build", "quayside"),
    await w.exportText("donor", "q1"),
  ];
  const [then, now] = await inFolder(folder, async (w) => {
    await w.nameVersion("quayside", name);
    const before = await texts(w);
    await w.edit("build", "quayside", ["title"], `Old hybrid, after version ${n}`);
    await w.edit("donor", "q1", ["price"], 2000 + n);
    return [before, await texts(w)];
  });
  return {
    argv: ["history", "quayside", "--restore", name, "--data", target],
    folder: target,
    holds: target,
    said: (told) => changeClaims(told, "restore"),
    judge: (view, done) => {
      const are = JSON.stringify(names.map((d) => view.texts.get(d)));
      const there = are === JSON.stringify(then);
      if (!there && are !== JSON.stringify(now)) return { there, wrong: ["half of a restore is there"] };
      return { there, wrong: done && !there ? ["a restore was said to be done and is not there"] : [] };
    },
  };
}

/** @param {Ground} g @returns {Promise<Prepared>} */
async function nameVersion({ target, n }) {
  const claim = versionClaim(`state ${n}`);
  return {
    argv: ["history", "quayside", "--name", `state ${n}`, "--data", target],
    folder: target,
    holds: target,
    said: () => [claim],
    judge: (view) => ({ there: claim.holds(view), wrong: [] }),
  };
}

/** @param {Prepared["argv"]} argv @param {string} folder @param {Marks} marks @param {string} what @returns {Prepared} */
const whole = (argv, folder, marks, what) => ({
  argv: [...argv, "--yes", "--data", folder],
  folder,
  holds: folder,
  said: () => markClaims(marks),
  judge: (view) => judgeMarks(view, marks, what),
});

/** An archive from elsewhere changes two documents and brings a photo. @param {Ground} g @returns {Promise<Prepared>} */
async function importArchive({ base, target, n, inFolder }) {
  const file = path.join(base, "other.zip");
  const elsewhere = path.join(base, `other-${n}`);
  const { bytes, sha256 } = photoOf(100_000);
  await inFolder(elsewhere, async (w) => {
    await w.putText(fs.readFileSync(QUAYSIDE, "utf8"), "quayside.yaml");
    await w.edit("donor", "q1", ["price"], 50_000 + n);
    await w.edit("build", "quayside", ["title"], `From elsewhere ${n}.`);
    await w.photos.add({ kind: "donor", id: "q1", place: null, caption: `From elsewhere ${n}.`, bytes });
    fs.writeFileSync(file, await archiveOf(w));
  });
  fs.rmSync(elsewhere, { recursive: true });
  /** @type {Marks} */
  const marks = [
    ["donor q1", `price: ${50_000 + n}\n`],
    ["build quayside", `From elsewhere ${n}.`],
  ];
  const photo = {
    what: `the photo of archive ${n}`,
    holds: (/** @type {View} */ view) => [...view.photos.values()].some((p) => p.sha256 === sha256),
  };
  const plain = whole(["import", file, "--take-theirs"], target, marks, "an archive");
  return {
    ...plain,
    said: (told) => [...plain.said(told), photo],
    judge: async (view, done) => {
      const judged = await plain.judge(view, done);
      const split = photo.holds(view) !== judged.there;
      return {
        there: judged.there,
        wrong: split ? [...judged.wrong, "documents and photo of an archive came apart"] : judged.wrong,
      };
    },
  };
}

/** @param {Ground} g @returns {Promise<Prepared>} */
async function importDocument({ base, target, n }) {
  const file = path.join(base, "other.yaml");
  const { text, marks } = otherText(`From a file ${n}`, 60_000 + n);
  fs.writeFileSync(file, text);
  return whole(["import", file, "--take-theirs"], target, marks, "a document file");
}

/** @param {Ground} g @returns {Promise<Prepared>} */
async function importTable({ base, target, n }) {
  const file = path.join(base, "parts.csv");
  const ids = [1, 2, 3, 4].map((i) => `kill${n}-${i}`);
  fs.writeFileSync(file, ["id,kind,condition", ...ids.map((id) => `${id},post,B`), ""].join("\n"));
  const marks = ids.map((id) => /** @type {const} */ (["bin harbour-bin", id]));
  return whole(["import", file, "--into", "harbour-bin", "--take-theirs"], target, marks, "a table");
}

/** The very first start: folder and database are made, and a file comes in. @param {Ground} g @returns {Promise<Prepared>} */
async function importIntoNew({ base, n }) {
  const folder = path.join(base, `new-${n}`);
  const { text, marks } = otherText(`First of all ${n}`, 70_000 + n);
  const file = path.join(base, "first.yaml");
  fs.writeFileSync(file, text);
  return whole(["import", file], folder, marks, "a first import");
}

/** Under its name stands the old archive or a new one. @param {Ground} g @returns {Promise<Prepared>} */
async function exportAll({ base, folder, target, draw, inFolder }) {
  const out = path.join(base, "out");
  const file = path.join(out, "workshop.zip");
  fs.mkdirSync(out, { recursive: true });
  if (draw() < 0.5) fs.rmSync(file, { force: true });
  const older = fs.existsSync(file) ? fs.readFileSync(file) : undefined;
  const texts = new Map(
    await inFolder(folder, async (w) =>
      (await w.allDocuments()).map((/** @type {any} */ d) => [`${d.kind} ${d.id}`, d.text]),
    ),
  );
  return {
    argv: ["export", "-o", file, "--data", target],
    folder: target,
    holds: target,
    said: () => [],
    judge: async (_view, done) => {
      const left = fs.readdirSync(out).filter((name) => name !== "workshop.zip");
      const strange = left.filter((name) => !/^workshop\.zip\.\d+\.part$/.test(name));
      const wrong = strange.map((name) => `an export leaves ${name}`);
      // What an export that was killed left beside its name, the next one to that name clears away.
      if (done && left.length > 0) wrong.push(`an export that ended leaves ${left.join(", ")}`);
      const bytes = fs.existsSync(file) ? fs.readFileSync(file) : undefined;
      const same = bytes === undefined ? older === undefined : older?.equals(bytes) === true;
      if (same)
        return { there: false, wrong: done ? [...wrong, "an export was said to be done and is not there"] : wrong };
      if (bytes === undefined) return { there: false, wrong: [...wrong, "an export took the older archive away"] };
      const archive = await readArchive(file);
      if (archive.wrong !== undefined) wrong.push(`half an export stands under its name: ${archive.wrong}`);
      else if ([...texts].some(([name, text]) => archive.texts.get(name) !== text))
        wrong.push("an export holds other texts");
      return { there: true, wrong };
    },
  };
}

/** @param {Ground} g @returns {Promise<Prepared>} */
async function newFile({ base, n, target }) {
  const out = path.join(base, "files");
  fs.mkdirSync(out, { recursive: true });
  const file = path.join(out, `${n}.yaml`);
  const { newBuild } = await import("@coldset/core/workshop");
  const made = newBuild({ entries: { name: "Old blue" } });
  if (made.kind === "refused") throw new Error(JSON.stringify(made));
  return {
    argv: ["new", "Old blue", "-o", file],
    folder: target,
    holds: undefined,
    said: () => [],
    judge: (_view, done) => {
      const wrong = fs
        .readdirSync(out)
        .filter((name) => !/^\d+\.yaml(\.\d+\.part)?$/.test(name))
        .map((name) => `new leaves ${name}`);
      const there = fs.existsSync(file);
      if (there && fs.readFileSync(file, "utf8") !== made.text) wrong.push("half a new file stands under its name");
      if (done && !there) wrong.push("a new file was said to be written and is not there");
      return { there, wrong };
    },
  };
}

/** Records of an older form are copied and brought forward. @param {Ground} g @returns {Promise<Prepared>} */
async function olderRecords({ base, n, draw }) {
  const { openConnection } = await import("../store/dist/sqlite-connection.js");
  const target = path.join(base, `old-${n}`);
  const here = path.join(base, `kept-${n}`);
  const kept = fs
    .readdirSync(KEPT)
    .filter((name) => name.endsWith(".sqlite"))
    .sort();
  const from = path.join(KEPT, kept[Math.floor(draw() * kept.length)] ?? "");
  for (const folder of [target, here]) {
    fs.mkdirSync(folder, { mode: 0o700 });
    fs.copyFileSync(from, path.join(folder, "workshop.sqlite"));
  }
  const rows = (/** @type {string} */ file) => {
    const connection = openConnection(file, 1000);
    try {
      return JSON.stringify(
        connection.rows('SELECT kind, id, revision, "before", "after", at FROM history ORDER BY seq'),
      );
    } finally {
      connection.close();
    }
  };
  const before = rows(path.join(here, "workshop.sqlite"));
  return {
    argv: ["history", "quayside", "--data", target],
    folder: target,
    holds: target,
    said: () => [],
    judge: () => {
      const copies = path.join(target, "copies");
      const files = fs.existsSync(copies) ? fs.readdirSync(copies).filter((f) => f.endsWith(".sqlite")) : [];
      const wrong = files.filter((f) => rows(path.join(copies, f)) !== before).map((f) => `the copy ${f} differs`);
      if (files.length === 0) wrong.push("records were brought forward without a copy");
      const after = JSON.parse(rows(path.join(target, "workshop.sqlite")));
      // Looking after the kill takes the newest change back and puts it back: two more rows at the end.
      if (!JSON.stringify(after).startsWith(before.slice(0, -1))) wrong.push("older records have another history");
      return { there: files.length === 1, wrong };
    },
  };
}
