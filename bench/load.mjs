/**
 * How long do many people at once wait for the workshop, and is anything of theirs lost? Starts the real server
 * (`coldset serve`) on a folder with the demo builds and copies of one of them, and users in a process of their own; the
 * same users then ask a bare server of the same library, which answers constant JSON of the same sizes. All of it shares
 * the cores of this machine. At the end the real server is killed, and what it had said to keep is looked for.
 *   npm run bench -- load --users 200 --seconds 20 --seed 1 --think 1000
 */
import { spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { parseAllDocuments } from "yaml";
import { nothingLost } from "./load/nothing-lost.mjs";

/** @typedef {import("./load/users.mjs").Told} Told */
/** @typedef {{ cpuSeconds: number, rssMb: number }} Usage */

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const COPIES = 20;
const COPIED = "quayside";
const LIMIT_MS = 200;
/** A server or the users say something by then, or they never will. */
const PATIENCE_MS = 120_000;

const { values } = parseArgs({
  args: process.argv.slice(2).filter((word) => word !== "--"),
  options: {
    users: { type: "string", default: "200" },
    seconds: { type: "string", default: "20" },
    seed: { type: "string", default: "1" },
    think: { type: "string", default: "1000" },
  },
});
const [users, seconds, seed] = [Number(values.users), Number(values.seconds), Number(values.seed)];
const thinkMs = Number(values.think);
if (![users, seconds, seed, thinkMs].every(Number.isInteger) || users < 1 || seconds < 1 || thinkMs < 1) {
  process.stderr.write("--users, --seconds and --think (ms) take whole numbers from 1, --seed a whole number.\n");
  process.exit(2);
}
const say = (/** @type {string} */ line) => process.stdout.write(`${line}\n`);
const busy = () => `load average ${(os.loadavg()[0] ?? 0).toFixed(1)} on ${os.cpus().length} cores`;

/**
 * A Node process that speaks with this one, and is waited for until it says the first thing.
 * @param {readonly string[]} argv @param {readonly string[]} [nodeOptions]
 */
async function start(argv, nodeOptions = []) {
  const child = spawn(process.execPath, [...nodeOptions, ...argv], { stdio: ["ignore", "pipe", "inherit", "ipc"] });
  let out = "";
  child.stdout?.on("data", (chunk) => {
    out += chunk;
  });
  const ended = new Promise((resolve) => child.once("close", resolve));
  /** @param {(message: any) => boolean} wanted @returns {Promise<any>} */
  const hears = (wanted) =>
    new Promise((resolve, reject) => {
      const late = setTimeout(() => reject(new Error(`${argv[0]} says nothing: ${out}`)), PATIENCE_MS + seconds * 1000);
      child.on("message", (message) => {
        if (!wanted(message)) return;
        clearTimeout(late);
        resolve(message);
      });
      child.once("exit", (code) => reject(new Error(`${argv[0]} ended with ${code}: ${out}`)));
    });
  return {
    hears,
    out: () => out,
    /** @param {any} message */
    tell: (message) => child.send(message),
    /** @returns {Promise<Usage>} */
    usage: async () => {
      const answer = hears((m) => m.what === "usage");
      child.send({ what: "usage" });
      return answer;
    },
    kill: async () => {
      child.kill("SIGKILL");
      await ended;
    },
  };
}

const here = (/** @type {string} */ name) => fileURLToPath(new URL(`./load/${name}`, import.meta.url));

/** The demo builds, and copies of one of them under names of their own. @param {string} folder */
async function fill(folder) {
  const { openWorkshop } = await import("../store/dist/index.js");
  const opened = await openWorkshop(folder);
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  const demo = path.join(ROOT, "demo");
  const texts = fs.readdirSync(demo).filter((name) => name.endsWith(".yaml"));
  for (const name of texts) await put(opened.workshop, fs.readFileSync(path.join(demo, name), "utf8"), name);
  for (let n = 1; n <= COPIES; n += 1) {
    const docs = parseAllDocuments(fs.readFileSync(path.join(demo, `${COPIED}.yaml`), "utf8"));
    for (const doc of docs) {
      doc.set("id", `${doc.get("id")}-${n}`);
      if (doc.get("kind") !== "build") continue;
      for (const kind of ["donor", "rider", "intent", "shop", "bin", "prices", "route"])
        if (doc.has(kind)) doc.set(kind, `${doc.get(kind)}-${n}`);
    }
    const text = docs.map((doc) => `---\n${doc.toString({ lineWidth: 0, directives: false }).replace(/^---\n/, "")}`);
    await put(opened.workshop, text.join(""), `${COPIED}-${n}.yaml`);
  }
  const builds = (await opened.workshop.listDocuments()).flatMap((/** @type {any} */ d) =>
    d.kind === "build" ? [d.id] : [],
  );
  await opened.workshop.close();
  return builds;
}

/** @param {any} workshop @param {string} text @param {string} label */
async function put(workshop, text, label) {
  const answer = await workshop.putText(text, label);
  if (answer.kind === "refused") throw new Error(`${label}: ${JSON.stringify(answer.refusals)}`);
}

/** @param {string} folder */
async function realServer(folder) {
  const main = new URL("../cli/dist/main.js", import.meta.url).href;
  const code = `import { main } from ${JSON.stringify(main)}; process.exitCode = await main(process.argv.slice(1));`;
  const usage = ["--import", new URL("./load/usage.mjs", import.meta.url).href];
  const argv = ["--input-type=module", "-e", code, "serve", "--port", "0", "--data", folder];
  const child = await start(argv, usage);
  const from = Date.now();
  for (;;) {
    const url = /http:\/\/127\.0\.0\.1:\d+\//.exec(child.out())?.[0];
    if (url !== undefined) return { child, url };
    if (Date.now() - from > PATIENCE_MS) throw new Error(`the server does not begin: ${child.out()}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/** @param {string} url @param {readonly string[]} builds @param {boolean} bare @returns {Promise<Told>} */
async function usersAt(url, builds, bare) {
  const child = await start([here("users.mjs")]);
  await child.hears((m) => m.what === "ready");
  const told = child.hears((m) => m.what === "told");
  child.tell({ url, builds, users, seconds, seed, thinkMs, bare });
  const answer = await told;
  await child.kill();
  return answer;
}

/** How long the answers of each kind are, so that the bare server gives as much. @param {string} url @param {string} build */
async function sizes(url, build) {
  const length = async (/** @type {string} */ place) => (await (await fetch(url + place)).arrayBuffer()).byteLength;
  const [first] = /** @type {any} */ (await (await fetch(`${url}api/workshop/${build}`)).json());
  return {
    open: await length(`api/workshop/${build}`),
    check: await length(`api/check/${build}`),
    builds: await length("api/builds"),
    history: await length(`api/history/${build}`),
    document: await length(`api/documents/${first.kind}/${first.id}`),
  };
}

const at = (/** @type {readonly number[]} */ sorted, /** @type {number} */ share) =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
const ms = (/** @type {number} */ value) => (value >= 100 ? value.toFixed(0) : value.toFixed(1)).padStart(8);

/** @param {string} name @param {Told} told @param {Usage} usage */
function print(name, told, usage) {
  const all = Object.values(told.times).flat();
  const line = (/** @type {string} */ what, /** @type {readonly number[]} */ times) => {
    const sorted = [...times].sort((a, b) => a - b);
    say(
      `  ${what.padEnd(22)} ${String(sorted.length).padStart(6)}   p50 ${ms(at(sorted, 0.5))}   p95 ${ms(at(sorted, 0.95))}   p99 ${ms(at(sorted, 0.99))}   max ${ms(at(sorted, 1))} ms`,
    );
    return at(sorted, 0.99);
  };
  say(`\n${name}: ${users} users thinking ${thinkMs} ms, ${seconds} s, seed ${seed}; ${busy()}`);
  line("while all arrive, 5 s", told.arriving);
  for (const [what, times] of Object.entries(told.times)) line(what, times);
  const p99 = line("all after that", all);
  const perRequest = (usage.cpuSeconds * 1000) / (all.length + told.arriving.length);
  say(
    `  listening ${told.listening}, heard ${told.heard} times; conflicts ${told.conflicts}; sent again ${told.again}`,
  );
  say(
    `  failures ${told.failures.length}${told.failures.length > 0 ? `: ${told.failures.slice(0, 5).join(" | ")}` : ""}`,
  );
  say(
    `  server: ${usage.cpuSeconds.toFixed(2)} s of CPU, ${perRequest.toFixed(2)} ms a request, ${usage.rssMb.toFixed(0)} MB`,
  );
  return { p99, perRequest };
}

const base = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-load-"));
try {
  const folder = path.join(base, "records");
  const builds = await fill(folder);
  say(`Node ${process.versions.node}, ${process.platform} ${process.arch}, ${busy()}; ${builds.length} builds`);
  const real = await realServer(folder);
  const answerSizes = await sizes(real.url, builds[0]);
  const before = await real.child.usage();
  const told = await usersAt(real.url, builds, false);
  const after = await real.child.usage();
  await real.child.kill();
  const ours = print("The workshop", told, { ...after, cpuSeconds: after.cpuSeconds - before.cpuSeconds });

  const bare = await start(
    [here("bare-server.mjs"), JSON.stringify(answerSizes)],
    ["--import", new URL("./load/usage.mjs", import.meta.url).href],
  );
  const { url } = await bare.hears((m) => m.what === "serving");
  const bareBefore = await bare.usage();
  const bareTold = await usersAt(url, builds, true);
  const bareAfter = await bare.usage();
  await bare.kill();
  const theirs = print("A bare server", bareTold, {
    ...bareAfter,
    cpuSeconds: bareAfter.cpuSeconds - bareBefore.cpuSeconds,
  });
  say(
    `\nLimit: p99 under ${LIMIT_MS} ms; ours ${ours.p99.toFixed(0)} ms, ${ours.p99 < LIMIT_MS ? "held" : "NOT held"}.`,
  );
  say(
    `Ratio to the bare server: p99 ${(ours.p99 / theirs.p99).toFixed(1)}, CPU a request ${(ours.perRequest / theirs.perRequest).toFixed(1)}.`,
  );

  const { problems, edits } = await nothingLost(folder, told.kept, told.turned);
  say(
    problems.length === 0
      ? `The server was killed. ${edits} edits had been said to be kept: each stands in the history once, each document ends with the last values, SQLite finds the file sound.`
      : problems.slice(0, 20).join("\n"),
  );
  process.exitCode = problems.length === 0 && told.failures.length === 0 ? 0 : 1;
} finally {
  fs.rmSync(base, { recursive: true, force: true });
}
