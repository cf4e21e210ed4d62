/**
 * What do the doors of the workshop do with inputs that nobody expects?
 *   node bench/run.mjs fuzz -- --door NAME|all --count 100000 --seed S
 *   node bench/run.mjs fuzz -- --door NAME --seed S --show INDEX     prints that one input
 *   --workers 2                                                     each door in two processes, each with a range of inputs
 * Builds one bundle of the sources, starts processes for each door, one door after the other, and prints for each how many
 * inputs were accepted and refused, the slowest, the work of the processor, and every failure with its number and its input.
 */
import { spawn } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import readline from "node:readline";
import { parseArgs } from "node:util";
import { build } from "vite";
import { ROOT } from "../scripts/setup.mjs";

/**
 * @typedef {{ index: number, why: string, input: string, like?: string }} Failure
 * @typedef {{ inputs: number, accepted: number, refused: number, cpuMs: number, slowestMs: number, slowestIndex: number,
 *   ways: [string, number][], failures: Failure[] }} Report
 */

const { values } = parseArgs({
  args: process.argv.slice(2).filter((word) => word !== "--"),
  options: {
    door: { type: "string", default: "all" },
    count: { type: "string", default: "100000" },
    seed: { type: "string", default: "1" },
    show: { type: "string" },
    workers: { type: "string", default: "1" },
    ways: { type: "boolean", default: false },
  },
});
/** Silence for so long means that not even the watchdog could speak any more. */
const SILENT_MS = 300_000;

const outDir = path.join(ROOT, ".setup", `fuzz-${process.pid}`);
process.once("exit", () => fs.rmSync(outDir, { recursive: true, force: true }));
await build({
  root: ROOT,
  configFile: false,
  logLevel: "error",
  resolve: { conditions: ["source", "module", "import", "default"] },
  ssr: {
    resolve: { conditions: ["source", "module", "import", "default"] },
    // The printer finds its fonts beside its own built file; the database's driver is a binary.
    external: ["@coldset/drawing", "libsql"],
    // A library of one package alone lies in that package's folder, where a bundle does not look.
    noExternal: true,
  },
  build: { ssr: path.join(ROOT, "fuzz", "child.ts"), outDir, emptyOutDir: true, target: "node20", minify: false },
});
const program = path.join(outDir, "child.js");

/** @type {Set<import("node:child_process").ChildProcess>} */
const running = new Set();

/**
 * @param {string[]} args
 * @param {(line: string) => void} [onLine]
 * @returns {Promise<{ code: number | null, said: string }>}
 */
function run(args, onLine) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["--stack-size=900", program, ...args], {
      cwd: ROOT,
      stdio: ["ignore", "pipe", "pipe"],
    });
    running.add(child);
    let said = "";
    let quiet = setTimeout(() => child.kill("SIGKILL"), SILENT_MS);
    child.stderr.on("data", (chunk) => {
      said = (said + chunk).slice(-4000);
    });
    readline.createInterface({ input: child.stdout }).on("line", (line) => {
      clearTimeout(quiet);
      quiet = setTimeout(() => child.kill("SIGKILL"), SILENT_MS);
      onLine?.(line);
    });
    child.once("error", reject);
    child.once("close", (code) => {
      clearTimeout(quiet);
      running.delete(child);
      resolve({ code, said });
    });
  });
}

/** @type {string[]} */
let names = [];
await run([""], (line) => {
  names = JSON.parse(line).doors;
});
const wanted = values.door === "all" ? names : values.door.split(",");
const unknown = wanted.filter((name) => !names.includes(name));
if (unknown.length > 0) {
  process.stderr.write(`No door ${unknown.join(", ")}; there are ${names.join(", ")}.\n`);
  process.exit(2);
}

if (values.show !== undefined) {
  await run([wanted[0] ?? "", "0", values.seed, values.show, "show"], (line) => process.stdout.write(`${line}\n`));
  process.exit(0);
}

let failed = 0;
/** Prints what is known of the door that is under way. */
let tell = () => {};
for (const word of /** @type {const} */ (["SIGINT", "SIGTERM"])) {
  process.once(word, () => {
    tell();
    process.stdout.write("Stopped before the end.\n");
    for (const child of running) child.kill("SIGKILL");
    process.exit(1);
  });
}
for (const door of wanted) {
  const began = Date.now();
  /** @type {Report[]} */
  const done = [];
  /** What each process told last. @type {Map<number, Report>} */
  const last = new Map();
  /** @type {Failure[]} */
  const hangs = [];
  tell = () => {
    failed += report(door, began, [...done, ...last.values()], hangs);
  };
  await Promise.all(rangesOf(Number(values.count), Number(values.workers)).map(range));
  tell();

  /** @param {[from: number, to: number]} inputs */
  async function range([first, to]) {
    for (let from = first; from < to; ) {
      const { code, said } = await run([door, String(to), values.seed, String(from)], (line) => {
        last.set(first, JSON.parse(line));
      });
      const ended = last.get(first);
      if (ended !== undefined) done.push(ended);
      last.delete(first);
      if (code === 0) return;
      const hung = /HANG door .* input (\d+)/.exec(said);
      const at = hung ? Number(hung[1]) : from + (ended?.inputs ?? 0);
      hangs.push({
        index: at,
        why: hung ? "no answer within a minute" : `the process ended with ${code}: ${said}`,
        input: "",
      });
      if (hangs.length > 5) return;
      from = at + 1;
    }
  }
}
process.exitCode = failed === 0 ? 0 : 1;

/**
 * The inputs in as many ranges as there are workers, each of whole batches of a hundred.
 * @param {number} count
 * @param {number} workers
 * @returns {[from: number, to: number][]}
 */
function rangesOf(count, workers) {
  const each = Math.max(100, Math.ceil(count / Math.max(1, workers) / 100) * 100);
  /** @type {[number, number][]} */
  const ranges = [];
  for (let from = 0; from < count; from += each) ranges.push([from, Math.min(count, from + each)]);
  return ranges;
}

/**
 * @param {string} door
 * @param {number} began
 * @param {Report[]} done
 * @param {Failure[]} hangs
 * @returns {number} how many failed
 */
function report(door, began, done, hangs) {
  /** @param {"inputs" | "accepted" | "refused" | "cpuMs"} key */
  const sum = (key) => done.reduce((total, report) => total + report[key], 0);
  const failures = [...done.flatMap((report) => report.failures), ...hangs];
  const slowest = done.reduce((a, b) => (b.slowestMs > a.slowestMs ? b : a), { slowestMs: 0, slowestIndex: -1 });
  const share = sum("inputs") === 0 ? 0 : Math.round((100 * sum("accepted")) / sum("inputs"));
  process.stdout.write(
    `${door.padEnd(12)} seed ${values.seed}  ${sum("inputs")} inputs  ${sum("accepted")} accepted (${share} %)  ${sum("refused")} refused  slowest ${slowest.slowestMs.toFixed(0)} ms (input ${slowest.slowestIndex})  ${failures.length} failures  ${(sum("cpuMs") / Math.max(1, sum("inputs"))).toFixed(1)} ms of processor each  ${Math.round((Date.now() - began) / 1000)} s\n`,
  );
  if (values.ways) {
    /** @type {Map<string, number>} */
    const ways = new Map();
    for (const report of done) for (const [way, n] of report.ways) ways.set(way, (ways.get(way) ?? 0) + n);
    for (const [way, n] of [...ways].sort((a, b) => b[1] - a[1]))
      process.stdout.write(`    ${String(n).padStart(7)} ${way}\n`);
  }
  /** @type {Map<string, Failure[]>} */
  const kinds = new Map();
  for (const failure of failures) {
    const like = failure.like ?? failure.why.slice(0, 30);
    kinds.set(like, [...(kinds.get(like) ?? []), failure]);
  }
  for (const [first, ...others] of kinds.values()) {
    if (first === undefined) continue;
    process.stdout.write(`  FAILED input ${first.index}: ${first.why}\n    ${first.input.slice(0, 2000)}\n`);
    if (others.length > 0) process.stdout.write(`    and so did ${others.map((f) => f.index).join(", ")}\n`);
  }
  return failures.length;
}
