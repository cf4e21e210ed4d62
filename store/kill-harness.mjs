/**
 * Is anything lost, half written or damaged when the program is killed in the middle of its work? Runs the real server and
 * the real command on one folder of records, kills them (SIGKILL) at moments drawn from a seed, and looks after each kill:
 * every edit that was said to be kept is there word for word; every history runs from 1 without a gap and ends with the text
 * of its document; an import is there whole or not at all; SQLite finds the file sound; an export that stands under its name
 * is whole, and a new one can be made and read. Works on the built program.
 */
import { spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const QUAYSIDE = path.join(ROOT, "demo", "quayside.yaml");
const MOST_MS = 300;

/**
 * @typedef {{ kind: string, id: string, revision: number, text: string }} Kept
 * @typedef {{ kills: number, edits: number, imports: number, exports: number, commands: number, workMs: number[], problems: string[] }} Tally
 */

/** Numbers from 0 to 1 that a seed decides (mulberry32). @param {number} seed */
function chance(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/**
 * @param {{ kills: number, seed: number, say?: (line: string) => void }} options
 * @returns {Promise<Tally>}
 */
export async function runKills({ kills, seed, say = () => {} }) {
  const { openWorkshop } = await import("../store/dist/index.js");
  const base = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-kills-"));
  const folder = path.join(base, "records");
  const draw = chance(seed);
  /** @type {Tally} */
  const tally = { kills: 0, edits: 0, imports: 0, exports: 0, commands: 0, workMs: [], problems: [] };
  try {
    const archives = [await archiveWith(openWorkshop, base, 1), await archiveWith(openWorkshop, base, 2)];
    await inFolder(openWorkshop, folder, (w) => w.putText(fs.readFileSync(QUAYSIDE, "utf8"), "quayside.yaml"));
    let before = await lookAt(openWorkshop, folder, tally);
    while (tally.kills < kills) {
      // Half of them the server, the rest the command line.
      const turn = draw();
      const after = draw() * MOST_MS;
      const archive = archives[tally.kills % 2] ?? archives[0];
      if (turn < 0.5) await killServer(folder, after, tally, draw);
      else if (turn < 0.7) before = await killImport(openWorkshop, folder, archive, after, before, tally);
      else if (turn < 0.85) await killExport(openWorkshop, base, folder, after, tally);
      else await killHistory(folder, after, tally, draw);
      if (turn < 0.5 || turn >= 0.7) before = await lookAt(openWorkshop, folder, tally);
      tally.kills += 1;
      if (tally.problems.length > 0) say(`kill ${tally.kills}: ${tally.problems.at(-1)}`);
      else if (tally.kills % 10 === 0) say(`${tally.kills} kills, ${tally.edits} edits said to be kept, none lost`);
    }
  } finally {
    fs.rmSync(base, { recursive: true, force: true });
  }
  return tally;
}

/** Edits that the server has said it keeps, over all kills of one run. @type {WeakMap<Tally, Kept[]>} */
const SAID = new WeakMap();

/** @param {any} openWorkshop @param {string} folder @param {(w: any) => Promise<any>} work */
async function inFolder(openWorkshop, folder, work) {
  const opened = await openWorkshop(folder);
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  try {
    return await work(opened.workshop);
  } finally {
    await opened.workshop.close();
  }
}

/** An archive that changes two documents at once. @param {any} openWorkshop @param {string} base @param {number} n */
async function archiveWith(openWorkshop, base, n) {
  const file = path.join(base, `other-${n}.zip`);
  const texts = await inFolder(openWorkshop, path.join(base, `other-${n}`), async (w) => {
    await w.putText(fs.readFileSync(QUAYSIDE, "utf8"), "quayside.yaml");
    await w.edit("donor", "q1", ["price"], 500 + n);
    await w.edit("build", "quayside", ["title"], `From elsewhere ${n}`);
    fs.writeFileSync(file, await drained((await w.archive.make()).stream));
    return [await w.exportText("donor", "q1"), await w.exportText("build", "quayside")];
  });
  return { file, texts };
}

/** @param {AsyncIterable<Uint8Array>} stream */
async function drained(stream) {
  const chunks = [];
  for await (const chunk of stream) chunks.push(chunk);
  return Buffer.concat(chunks);
}

/**
 * Everything that must hold whatever happened. Gives the two texts that an import changes.
 * @param {any} openWorkshop @param {string} folder @param {Tally} tally
 */
async function lookAt(openWorkshop, folder, tally) {
  const all = SAID.get(tally) ?? [];
  return inFolder(openWorkshop, folder, async (w) => {
    const wrong = (/** @type {string} */ what) => tally.problems.push(what);
    const histories = new Map();
    for (const { kind, id, revision, text } of await w.allDocuments()) {
      const history = await w.history(kind, id);
      histories.set(`${kind} ${id}`, history);
      const gapless = history.every((/** @type {any} */ h, /** @type {number} */ i) => h.revision === i + 1);
      if (!gapless || history.length !== revision) wrong(`${kind} ${id}: its history has a gap`);
      if (history.at(-1)?.after !== text) wrong(`${kind} ${id}: its history does not end with its text`);
    }
    for (const { kind, id, revision, text } of all) {
      const line = histories.get(`${kind} ${id}`)?.[revision - 1];
      if (line?.after !== text) wrong(`${kind} ${id}: revision ${revision}, said to be kept, is not there`);
    }
    const bytes = new Uint8Array(await drained((await w.archive.make()).stream));
    const plan = await w.archive.preview({ archive: { bytes }, label: "copy.zip" });
    if (plan.kind !== "plan" || plan.documents.some((/** @type {any} */ d) => d.change !== "same"))
      wrong(`an export does not read back: ${JSON.stringify(plan).slice(0, 300)}`);
    const texts = [await w.exportText("donor", "q1"), await w.exportText("build", "quayside")];
    const { openConnection } = await import("../store/dist/sqlite-connection.js");
    const connection = openConnection(path.join(folder, "workshop.sqlite"), 1000);
    const sound = JSON.stringify(connection.rows("PRAGMA integrity_check"));
    if (sound !== '[{"integrity_check":"ok"}]') wrong(`SQLite finds: ${sound}`);
    if (connection.rows("PRAGMA foreign_key_check").length > 0) wrong("SQLite finds rows that belong to nothing");
    connection.close();
    return texts;
  });
}

/** @param {readonly string[]} argv */
function start(argv) {
  const code = `import { main } from ${JSON.stringify(new URL("../cli/dist/main.js", import.meta.url).href)}; process.exitCode = await main(process.argv.slice(1));`;
  const child = spawn(process.execPath, ["--input-type=module", "-e", code, ...argv], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  const seen = { out: "", err: "" };
  child.stdout.on("data", (chunk) => {
    seen.out += chunk;
  });
  child.stderr.on("data", (chunk) => {
    seen.err += chunk;
  });
  const ended = new Promise((resolve) => child.once("close", resolve));
  return {
    pid: child.pid,
    seen,
    exit: () => child.exitCode,
    kill: async () => {
      child.kill("SIGKILL");
      await ended;
    },
  };
}

/** Until it says so, or has ended. @param {ReturnType<typeof start>} child @param {() => boolean} ready */
async function until(child, ready) {
  const from = Date.now();
  while (!ready()) {
    if (child.exit() !== null) return false;
    if (Date.now() - from > 120_000) throw new Error(`it does not begin: ${child.seen.out} ${child.seen.err}`);
    await pause(2);
  }
  return true;
}

/** @param {string} folder @param {number} after @param {Tally} tally @param {() => number} draw */
async function killServer(folder, after, tally, draw) {
  const child = start(["serve", "--port", "0", "--data", folder]);
  const url = () => /http:\/\/127\.0\.0\.1:\d+\//.exec(child.seen.out)?.[0];
  if (!(await until(child, () => url() !== undefined))) {
    tally.problems.push(`the server did not start: ${child.seen.err}`);
    return;
  }
  /** @type {Kept[]} */
  const kept = [];
  let over = false;
  const client = async (
    /** @type {string} */ kind,
    /** @type {string} */ id,
    /** @type {readonly string[]} */ place,
    /** @type {(n: number) => unknown} */ value,
  ) => {
    let revision = 1;
    for (let n = Math.floor(draw() * 1000); !over; n += 1) {
      try {
        const response = await fetch(`${url()}api/documents/${kind}/${id}/edits`, {
          method: "POST",
          headers: { "content-type": "application/json" },
          body: JSON.stringify({ path: place, value: value(n), revision }),
        });
        const body = /** @type {any} */ (await response.json());
        if (response.ok && body.kind === "edited") kept.push({ kind, id, revision: body.revision, text: body.text });
        // The other client was quicker: this edit was not kept, the next one is made on what stands now.
        else if (response.status !== 409 && !over)
          tally.problems.push(`an edit was answered with ${response.status}: ${JSON.stringify(body).slice(0, 200)}`);
        revision = body.revision ?? revision;
      } catch {
        // The connection broke with the server: this edit was never said to be kept.
        return;
      }
    }
  };
  const clients = [
    client("donor", "q1", ["measured", "chainstay"], (n) => 430 + (n % 40)),
    client("donor", "q1", ["price"], (n) => n % 200),
    client("build", "quayside", ["title"], (n) => `Old hybrid, state ${n}`),
  ];
  // The first request is slow while everything is compiled; the work is under way with the first edit that was kept.
  await until(child, () => kept.length > 0);
  const from = performance.now();
  await pause(after);
  tally.workMs.push(performance.now() - from);
  await child.kill();
  over = true;
  await Promise.all(clients);
  tally.edits += kept.length;
  const all = SAID.get(tally) ?? [];
  all.push(...kept);
  SAID.set(tally, all);
}

/** The moment at which this process holds the folder: its work begins. @param {string} folder @param {ReturnType<typeof start>} child */
function holds(folder, child) {
  try {
    return JSON.parse(fs.readFileSync(path.join(folder, "workshop.holder.json"), "utf8")).pid === child.pid;
  } catch {
    return false;
  }
}

/** @param {string} folder @param {readonly string[]} argv @param {number} after @param {Tally} tally */
async function killCommand(folder, argv, after, tally) {
  const child = start([...argv, "--data", folder]);
  if (await until(child, () => holds(folder, child))) {
    const from = performance.now();
    await pause(after);
    tally.workMs.push(performance.now() - from);
  }
  const done = child.exit() === 0;
  if (child.exit() !== null && !done) tally.problems.push(`coldset ${argv.join(" ")}: ${child.seen.err}`);
  await child.kill();
  return { done, child };
}

/** @param {any} openWorkshop @param {string} folder @param {any} archive @param {number} after @param {any} before @param {Tally} tally */
async function killImport(openWorkshop, folder, archive, after, before, tally) {
  const { done } = await killCommand(folder, ["import", archive.file, "--take-theirs", "--yes"], after, tally);
  const texts = await lookAt(openWorkshop, folder, tally);
  const now = JSON.stringify(texts);
  const whole = now === JSON.stringify(archive.texts);
  if (!whole && now !== JSON.stringify(before)) tally.problems.push("half of an import came in");
  if (done && !whole) tally.problems.push("an import was said to be done and is not there");
  if (whole) tally.imports += 1;
  return texts;
}

/** @param {any} openWorkshop @param {string} base @param {string} folder @param {number} after @param {Tally} tally */
async function killExport(openWorkshop, base, folder, after, tally) {
  const file = path.join(base, "out.zip");
  const { done } = await killCommand(folder, ["export", "-o", file], after, tally);
  if (!fs.existsSync(file)) {
    if (done) tally.problems.push("an export was said to be done and is not there");
    return;
  }
  const plan = await inFolder(openWorkshop, folder, (w) => w.archive.preview({ archive: { file }, label: "out.zip" }));
  if (plan.kind !== "plan")
    tally.problems.push(`half an export stands under its name: ${JSON.stringify(plan).slice(0, 200)}`);
  tally.exports += 1;
}

/** @param {string} folder @param {number} after @param {Tally} tally @param {() => number} draw */
async function killHistory(folder, after, tally, draw) {
  const what = draw() < 0.5 ? ["--name", `state ${tally.kills}`] : [];
  const { done } = await killCommand(folder, ["history", "quayside", ...what], after, tally);
  if (done) tally.commands += 1;
}
