/** How does a test get a running workshop? It starts the real command on a free port, with a data folder of its own. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ROOT } from "../scripts/setup.mjs";

const ADDRESS = /https?:\/\/(?:127\.0\.0\.1|localhost|\[::1\]):\d+[^\s]*/;
const START_MS = 90_000;
const CLOSE_MS = 10_000;

export interface Served {
  /** As the command printed it, e.g. "http://127.0.0.1:4812/". */
  readonly address: string;
  readonly dataFolder: string;
  /** Everything printed so far, both streams. */
  readonly output: () => string;
  /** Ctrl-C. Gives the exit code, and removes the data folder if the test did not name it. */
  readonly stop: () => Promise<number | null>;
}

export interface ServeOptions {
  /** An existing data folder to serve; it is left alone afterwards. */
  readonly dataFolder?: string;
  /** More arguments after `serve --data ... --port 0`. */
  readonly args?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
}

/** Starts `coldset serve` and waits until it prints its address. */
export async function serveWorkshop(options: ServeOptions = {}): Promise<Served> {
  const dataFolder = options.dataFolder ?? mkdtempSync(join(tmpdir(), "coldset-e2e-"));
  const command = join(ROOT, "cli", "bin", "coldset.mjs");
  const child = spawn(
    process.execPath,
    [command, "serve", "--data", dataFolder, "--port", "0", ...(options.args ?? [])],
    { cwd: ROOT, env: { ...process.env, ...options.env }, stdio: ["ignore", "pipe", "pipe"] },
  );
  let output = "";
  const keep = (chunk: Buffer) => {
    output += chunk.toString("utf8");
  };
  child.stdout.on("data", keep);
  child.stderr.on("data", keep);
  const stop = async () => {
    const code = await interrupt(child);
    if (options.dataFolder === undefined) rmSync(dataFolder, { recursive: true, force: true });
    return code;
  };
  const until = Date.now() + START_MS;
  for (;;) {
    const address = output.match(ADDRESS)?.[0];
    if (address !== undefined) return { address, dataFolder, output: () => output, stop };
    if (child.exitCode !== null || Date.now() > until) {
      await stop();
      throw new Error(`coldset serve printed no address (exit ${child.exitCode}):\n${output}`);
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

async function interrupt(child: ChildProcess): Promise<number | null> {
  if (child.exitCode !== null || child.signalCode !== null) return child.exitCode;
  const ended = new Promise<number | null>((resolve) => child.once("exit", (code) => resolve(code)));
  child.kill("SIGINT");
  const hard = setTimeout(() => child.kill("SIGKILL"), CLOSE_MS);
  try {
    return await ended;
  } finally {
    clearTimeout(hard);
  }
}
