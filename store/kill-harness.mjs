/**
 * Is anything lost, half written or damaged when the program is killed in the middle of its work? Runs the real server and
 * the real command on one folder of records and kills them (SIGKILL). Every writer runs once unkilled and is timed; then
 * each kill comes 0 to 1.6 of that time into the work, drawn from a seed, so that some of the work has ended and some has
 * not. What must hold after each kill: kill-look.mjs, and for each command kill-commands.mjs.
 */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { chance } from "../scripts/chance.mjs";
import { runCommand, startServer } from "./kill-child.mjs";
import { COMMANDS } from "./kill-commands.mjs";
import { lookAfterKill } from "./kill-look.mjs";
import { background, REQUESTS } from "./kill-requests.mjs";

const MOST_OF_ITS_TIME = 1.6;
/** A copy of everything is made and read back after each such number of kills, and after the last. */
const COPY_EACH = 10;

/**
 * @typedef {import("./kill-look.mjs").Claim} Claim
 * @typedef {import("./kill-look.mjs").View} View
 * @typedef {{ door: "command" | "server", name: string, kills: number, acknowledged: number, caught: number, lost: number, damaged: number, workMs: number[] }} Line
 *   acknowledged: commands that ended before the kill, answers that came; caught: the others, killed in their work
 * @typedef {{ kills: number, killedMs: number[], slowestOpeningMs: number, lines: Map<string, Line>, problems: string[] }} Tally
 * @typedef {{ base: string, folder: string, draw: () => number, tally: Tally, claims: Claim[], judges: ((view: View) => readonly string[])[], n: number }} Run
 */

/** @typedef {{ door: "command", writer: import("./kill-commands.mjs").CommandWriter } | { door: "server", writer: import("./kill-requests.mjs").RequestWriter }} Task */

/** @type {readonly Task[]} */
export const TASKS = [
  ...COMMANDS.map((writer) => ({ door: /** @type {const} */ ("command"), writer })),
  ...REQUESTS.map((writer) => ({ door: /** @type {const} */ ("server"), writer })),
];

/**
 * @param {{ kills: number, seed: number, say?: (line: string) => void, enough?: () => boolean }} options `enough`: ends early
 * @returns {Promise<Tally>}
 */
export async function runKills({ kills, seed, say = () => {}, enough = () => false }) {
  const base = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-kills-"));
  const draw = chance(seed);
  /** @type {Tally} */
  const tally = { kills: 0, killedMs: [], slowestOpeningMs: 0, lines: new Map(), problems: [] };
  /** @type {Run} */
  const run = { base, folder: path.join(base, "records"), draw, tally, claims: [], judges: [], n: 0 };
  try {
    const quayside = fs.readFileSync(new URL("../demo/quayside.yaml", import.meta.url), "utf8");
    await inFolder(run.folder, (w) => w.putText(quayside, "quayside.yaml"));
    const tasks = shuffled(TASKS, draw).slice(0, kills);
    await timeRequests(run, tasks);
    for (const task of tasks) if (task.door === "command") await command(run, task, undefined);
    while (tally.kills < kills) {
      for (const task of shuffled(tasks, draw).slice(0, kills - tally.kills)) {
        if (enough()) return tally;
        const before = tally.problems.length;
        const ms = draw() * MOST_OF_ITS_TIME * usual(lineOf(run, task).workMs);
        await (task.door === "command" ? command(run, task, ms) : requests(run, task, ms));
        tally.kills += 1;
        for (const what of tally.problems.slice(before)) say(`kill ${tally.kills}: ${what}`);
        if (tally.kills % 20 === 0)
          say(`${tally.kills} kills, ${run.claims.length} things said to be kept, ${tally.problems.length} faults`);
      }
    }
  } finally {
    fs.rmSync(base, { recursive: true, force: true });
  }
  return tally;
}

/** The middle one of the last five times. @param {readonly number[]} times */
const usual = (times) => [...times.slice(-5)].sort((a, b) => a - b)[Math.floor(Math.min(times.length, 5) / 2)] ?? 0;

/** @template T @param {readonly T[]} list @param {() => number} draw @returns {T[]} */
const shuffled = (list, draw) =>
  list
    .map((one) => ({ one, at: draw() }))
    .sort((a, b) => a.at - b.at)
    .map(({ one }) => one);

/** @param {Run} run @param {{ door: "command" | "server", writer: { name: string } }} task @returns {Line} */
function lineOf({ tally }, { door, writer: { name } }) {
  const key = `${door} ${name}`;
  const line = tally.lines.get(key) ?? {
    door,
    name,
    kills: 0,
    acknowledged: 0,
    caught: 0,
    lost: 0,
    damaged: 0,
    workMs: [],
  };
  tally.lines.set(key, line);
  return line;
}

/** @param {string} folder @param {(w: any) => Promise<any>} work */
async function inFolder(folder, work) {
  const { openWorkshop } = await import("../store/dist/index.js");
  const opened = await openWorkshop(folder);
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  try {
    return await work(opened.workshop);
  } finally {
    await opened.workshop.close();
  }
}

/**
 * This process opens the records only after the process that was killed, never before it in the same folder: the driver lets
 * go of a closed file when its memory is cleared away, some time later, and would then reach into the work of the other one.
 * @param {Run} run @param {string} to
 */
function moveTo(run, to) {
  fs.mkdirSync(to, { mode: 0o700 });
  for (const name of ["workshop.sqlite", "workshop.sqlite-wal"])
    if (fs.existsSync(path.join(run.folder, name))) fs.copyFileSync(path.join(run.folder, name), path.join(to, name));
  fs.rmSync(run.folder, { recursive: true });
  run.folder = to;
}

/** @param {Run} run @param {Line} line @param {"lost" | "damaged"} sort @param {string} what */
function found({ tally }, line, sort, what) {
  line[sort] += 1;
  tally.problems.push(`${line.door}, ${line.name}: ${sort}: ${what}`);
}

/** @param {Run} run @param {Line} line @param {string} folder @param {readonly Claim[]} claims */
async function look(run, line, folder, claims) {
  const archive = run.tally.kills % COPY_EACH === COPY_EACH - 1;
  const { view, problems, openedMs } = await lookAfterKill(folder, claims, { archive });
  run.tally.slowestOpeningMs = Math.max(run.tally.slowestOpeningMs, openedMs);
  for (const { sort, what } of problems) found(run, line, sort, what);
  return view;
}

/** @param {Run} run @param {Extract<Task, { door: "command" }>} task @param {number | undefined} afterMs undefined: it may end, and is timed */
async function command(run, task, afterMs) {
  const line = lineOf(run, task);
  run.n += 1;
  const { base, folder, draw, n } = run;
  const target = path.join(base, `records-${n}`);
  const work = await task.writer.prepare({ base, folder, target, draw, n, inFolder });
  moveTo(run, target);
  const ended = await runCommand(work, afterMs);
  if (ended.failed) found(run, line, "damaged", `coldset ${work.argv.join(" ")}: ${ended.err || ended.out}`);
  if (ended.done) line.workMs.push(ended.workMs);
  if (afterMs !== undefined) {
    run.tally.killedMs.push(ended.workMs);
    line.kills += 1;
    line[ended.done ? "acknowledged" : "caught"] += 1;
  }
  // Who reads the whole answer has been told, even where the process had not ended yet.
  const said = ended.done || ended.told !== undefined ? work.said(ended.told) : [];
  if (work.folder === target) run.claims.push(...said);
  // Only timed: what it claims is looked for after the next kill.
  if (afterMs === undefined) return;
  const view = await look(run, line, work.folder, work.folder === target ? run.claims : said);
  const { wrong } = await work.judge(view, ended.done);
  for (const what of wrong) found(run, line, "damaged", what);
  if (work.folder !== target) fs.rmSync(work.folder, { recursive: true, force: true });
}

/**
 * The way to the server: counts what was answered and what was not.
 * @param {Run} run @param {string | undefined} url @param {() => boolean} over @param {boolean} counts
 */
function pageOf(run, url, over, counts) {
  /** @type {Map<string, number>} */
  const known = new Map();
  /** @type {import("./kill-requests.mjs").Ask} */
  const ask = async (writer, at, { method = "POST", type = "application/json", body }, claims) => {
    const line = lineOf(run, { door: "server", writer: { name: writer } });
    let response;
    let answer;
    try {
      const bytes = type === "application/json" ? JSON.stringify(body) : /** @type {BodyInit} */ (body);
      const headers = { "content-type": type };
      response = await fetch(`${url}${at.slice(1)}`, {
        method,
        ...(body === undefined ? {} : { headers, body: bytes }),
      });
      answer = /** @type {any} */ (await response.json());
    } catch (cause) {
      // The connection broke with the server: this was never said to be kept.
      if (counts) line.caught += 1;
      throw cause;
    }
    if (typeof answer.revision === "number") known.set(at, answer.revision);
    if (response.ok) {
      if (counts) line.acknowledged += 1;
      run.claims.push(...claims(answer));
      return answer;
    }
    // Somebody else was quicker: this was not kept, and was said so.
    if (response.status === 409) return undefined;
    if (!over())
      found(
        run,
        line,
        "damaged",
        `${at} was answered with ${response.status}: ${JSON.stringify(answer).slice(0, 200)}`,
      );
    return undefined;
  };
  return () => {
    run.n += 1;
    const judge = (/** @type {(view: View) => readonly string[]} */ j) => run.judges.push(j);
    return { ask, known, judge, n: String(run.n), number: run.n };
  };
}

/** Times every request once, on one server that is killed at the end. @param {Run} run @param {readonly Task[]} tasks */
async function timeRequests(run, tasks) {
  moveTo(run, path.join(run.base, "records-0"));
  const { child, url } = await startServer(run.folder);
  const page = pageOf(run, url, () => false, false);
  for (const task of tasks) {
    if (task.door !== "server") continue;
    const { ready, write } = task.writer;
    const prepared = await ready?.(page());
    const from = performance.now();
    await write(page(), prepared);
    lineOf(run, task).workMs.push(performance.now() - from);
  }
  await child.kill();
}

/** @param {Run} run @param {Extract<Task, { door: "server" }>} task @param {number} afterMs */
async function requests(run, task, afterMs) {
  const line = lineOf(run, task);
  run.n += 1;
  moveTo(run, path.join(run.base, `records-${run.n}`));
  const { child, url } = await startServer(run.folder);
  if (url === undefined) {
    found(run, line, "damaged", `the server does not start: ${child.seen.err}`);
    await child.kill();
    return;
  }
  let over = false;
  const page = pageOf(run, url, () => over, true);
  const { ready, write, alone } = task.writer;
  const until = async (/** @type {() => Promise<unknown>} */ again) => {
    try {
      while (!over) await again();
    } catch (cause) {
      // Once it is killed nothing more is answered; before, that would be a fault.
      if (!over) found(run, line, "damaged", `the server broke off: ${cause} ${child.seen.err}`);
    }
  };
  // The first request of a server is slow, and none of those that are timed was the first.
  await fetch(`${url}api/documents`).then((response) => response.text());
  let prepared = await ready?.(page());
  const others = alone === true ? [] : [0, 1].map((who) => until(() => background(page(), who)));
  let first = true;
  const mine = until(async () => {
    if (!first) prepared = await ready?.(page());
    first = false;
    const from = performance.now();
    await write(page(), prepared);
    line.workMs.push(performance.now() - from);
  });
  const from = performance.now();
  await pause(afterMs);
  run.tally.killedMs.push(performance.now() - from);
  over = true;
  await child.kill();
  await Promise.all([mine, ...others]);
  line.kills += 1;
  const view = await look(run, line, run.folder, run.claims);
  for (const judge of run.judges.splice(0)) for (const what of judge(view)) found(run, line, "damaged", what);
}
