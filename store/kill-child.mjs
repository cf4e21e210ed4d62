/**
 * How is the real program started, waited for, and killed? The command line as a process of its own on the built program;
 * its work begins when it holds the folder of the records, or, where it needs none, when it is started.
 */
import { spawn } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";

/** @param {readonly string[]} argv */
export function start(argv) {
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
    ended,
    exit: () => child.exitCode,
    kill: async () => {
      child.kill("SIGKILL");
      await ended;
    },
  };
}

/** Until it says so, or has ended. @param {ReturnType<typeof start>} child @param {() => boolean} ready */
export async function until(child, ready) {
  const from = Date.now();
  while (!ready()) {
    if (child.exit() !== null) return false;
    if (Date.now() - from > 120_000) throw new Error(`it does not begin: ${child.seen.out} ${child.seen.err}`);
    await pause(2);
  }
  return true;
}

/**
 * Runs a command and kills it so long after its work began; without a time it may end. It has said that it did its work
 * where it ended well, or where its whole answer had come before the kill.
 * @param {{ argv: readonly string[], holds: string | undefined }} what `holds`: the folder of the records that it works in
 * @param {number | undefined} afterMs
 */
export async function runCommand({ argv, holds }, afterMs) {
  const from = performance.now();
  const child = start([...argv, "--json"]);
  if (holds !== undefined) await until(child, () => isHeldBy(holds, child.pid));
  // What a process does before its work begins is always the same: it is started, and reads the program.
  const begun = performance.now();
  if (afterMs === undefined) await child.ended;
  else await Promise.race([pause(afterMs), child.ended]);
  const workMs = performance.now() - begun;
  await child.kill();
  const code = child.exit();
  const told = jsonOf(child.seen.out);
  return {
    done: code === 0,
    failed: code !== null && code !== 0,
    told,
    workMs,
    allMs: performance.now() - from,
    ...child.seen,
  };
}

/** @param {string} folder @param {number | undefined} pid */
function isHeldBy(folder, pid) {
  try {
    return JSON.parse(fs.readFileSync(path.join(folder, "workshop.holder.json"), "utf8")).pid === pid;
  } catch {
    return false;
  }
}

/** @param {string} text @returns {any} undefined where it is not whole */
function jsonOf(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Starts the server and waits for its address. @param {string} folder */
export async function startServer(folder) {
  const child = start(["serve", "--port", "0", "--data", folder]);
  const url = () => /http:\/\/127\.0\.0\.1:\d+\//.exec(child.seen.out)?.[0];
  await until(child, () => url() !== undefined);
  return { child, url: url() };
}
