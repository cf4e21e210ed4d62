/**
 * Which test files are being run, and for how long? Says so now and then, and ends a run in which one file never ends
 * (a loop without end cannot be stopped from inside the test).
 */
import path from "node:path";

const HEARTBEAT_MS = 8_000;
/** The slowest file takes a small part of this on two busy cores. */
const LONGEST_FILE_MS = Number(process.env.COLDSET_LONGEST_FILE_MS ?? 900_000);

export class RunningFiles {
  constructor() {
    /** @type {Map<string, number>} */
    this.since = new Map();
    this.spoken = Date.now();
    this.timer = setInterval(() => this.look(), 1_000);
    this.timer.unref();
  }

  look() {
    const now = Date.now();
    const rows = [...this.since].map(([file, start]) => ({
      file: path.relative(process.cwd(), file),
      ms: now - start,
    }));
    const endless = rows.filter(({ ms }) => ms > LONGEST_FILE_MS);
    if (endless.length > 0) {
      for (const { file, ms } of endless)
        process.stdout.write(`FAILED ${file} did not end in ${Math.round(ms / 1000)} s\n`);
      process.exit(1);
    }
    if (rows.length === 0 || now - this.spoken < HEARTBEAT_MS) return;
    this.spoken = now;
    process.stdout.write(`  running: ${rows.map(({ file, ms }) => `${file} ${Math.round(ms / 1000)} s`).join(", ")}\n`);
  }

  /** @param {{ moduleId: string }} module */
  onTestModuleQueued(module) {
    this.since.set(module.moduleId, Date.now());
  }

  /** @param {{ moduleId: string }} module */
  onTestModuleEnd(module) {
    this.since.delete(module.moduleId);
    this.spoken = Date.now();
  }

  onTestRunEnd() {
    clearInterval(this.timer);
  }
}

// The runner loads a reporter by its default export.
// biome-ignore lint/style/noDefaultExport: asked for by the runner
export default RunningFiles;
