/** Does set-up do what is needed, once, and say so when it cannot? On small stand-in checkouts with a stand-in compiler. */
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { hostname, tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, describe, expect, it, vi } from "vitest";
import { ensureReady, installedByHand, nodeTooOld, ROOT, SetupFailure, takeLock } from "./setup.mjs";

const made: string[] = [];
afterEach(() => {
  vi.unstubAllEnvs();
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** The stand-in compiler takes a moment, counts its runs and writes what the real one would. */
const COMPILER = `
const fs = require("node:fs");
fs.appendFileSync("compiled.log", "run\\n");
setTimeout(() => {
  fs.mkdirSync("cli/dist", { recursive: true });
  fs.writeFileSync("cli/dist/main.js", "");
}, 700);
`;

function checkout(files: Readonly<Record<string, string>> = {}): string {
  const root = mkdtempSync(join(tmpdir(), "setup-"));
  made.push(root);
  const all: Record<string, string> = {
    "package.json": '{ "name": "small", "version": "1.0.0" }',
    "package-lock.json": '{ "name": "small", "version": "1.0.0", "lockfileVersion": 3, "packages": {} }',
    "node_modules/.package-lock.json": '{ "packages": {} }',
    "node_modules/typescript/bin/tsc": COMPILER,
    "cli/main.ts": "export {};\n",
    "drawing/fonts/a.ttf": "font",
    ...files,
  };
  for (const [file, text] of Object.entries(all)) {
    mkdirSync(dirname(join(root, file)), { recursive: true });
    writeFileSync(join(root, file), text);
  }
  return root;
}

const runs = (root: string) => readFileSync(join(root, "compiled.log"), "utf8").trim().split("\n").length;

function recorder() {
  const lines: string[] = [];
  return { lines, out: { write: (text: string) => lines.push(text) } };
}

describe("set-up", () => {
  it("names the Node it needs", () => {
    expect(nodeTooOld("18.20.1")).toContain("Node 20 or newer");
    expect(nodeTooOld("20.0.0")).toBeUndefined();
    expect(nodeTooOld("24.1.0")).toBeUndefined();
  });

  it("builds once, then has nothing to do and nothing to say", async () => {
    const root = checkout();
    expect(await ensureReady({ root, quiet: true })).toEqual({ installed: false, built: true, problems: [] });
    const { lines, out } = recorder();
    expect(await ensureReady({ root, out })).toEqual({ installed: false, built: false, problems: [] });
    expect(lines).toEqual([]);
    expect(runs(root)).toBe(1);
    expect(readFileSync(join(root, "drawing/dist/fonts/a.ttf"), "utf8")).toBe("font");
  });

  it("builds again after a source changed, not after a test changed", async () => {
    const root = checkout();
    await ensureReady({ root, quiet: true });
    writeFileSync(join(root, "cli/main.test.ts"), "export {};\n");
    expect((await ensureReady({ root, quiet: true })).built).toBe(false);
    writeFileSync(join(root, "cli/main.ts"), "export const changed = 1;\n");
    expect((await ensureReady({ root, quiet: true })).built).toBe(true);
    rmSync(join(root, "cli/dist"), { recursive: true });
    expect((await ensureReady({ root, quiet: true })).built).toBe(true);
  });

  it("shows the compiler's words and fails where nothing was written", async () => {
    const root = checkout({ "node_modules/typescript/bin/tsc": 'console.log("line 3: wrong"); process.exit(1);' });
    const { lines, out } = recorder();
    await expect(ensureReady({ root, out })).rejects.toThrow(SetupFailure);
    expect(lines.join("")).toContain("line 3: wrong");
    expect(existsSync(join(root, ".setup", "lock"))).toBe(false);
    expect(existsSync(join(root, ".setup", "build"))).toBe(false);
  });

  it("says that the page is broken, lets the commands run, and builds again next time", async () => {
    const vite = 'console.log("no such file: main.tsx"); process.exit(1);';
    const root = checkout({ "web/index.html": "<title>x</title>", "node_modules/vite/bin/vite.js": vite });
    const { lines, out } = recorder();
    expect(await ensureReady({ root, out })).toEqual({ installed: false, built: true, problems: ["page"] });
    expect(lines.join("")).toContain("no such file: main.tsx");
    expect((await ensureReady({ root, quiet: true })).built).toBe(true);
  });

  it("says what to do where the libraries cannot be fetched", async () => {
    const lock = {
      name: "small",
      version: "1.0.0",
      lockfileVersion: 3,
      packages: {
        "": { name: "small", version: "1.0.0", dependencies: { yaml: "2.9.1" } },
        "node_modules/yaml": { version: "2.9.1" },
      },
    };
    const root = checkout({
      "package.json": '{ "name": "small", "version": "1.0.0", "dependencies": { "yaml": "2.9.1" } }',
      "package-lock.json": JSON.stringify(lock),
    });
    vi.stubEnv("npm_config_offline", "true");
    vi.stubEnv("npm_config_cache", join(root, "empty-cache"));
    await expect(ensureReady({ root, quiet: true })).rejects.toThrow(/could not be installed.*network/s);
    expect(existsSync(join(root, ".setup", "lock"))).toBe(false);
  });

  it("takes an install made by hand as it is, but not one of another version", () => {
    const lock = (version: string) => JSON.stringify({ packages: { "": {}, "node_modules/yaml": { version } } });
    const present = { "node_modules/.package-lock.json": lock("2.9.1"), "node_modules/yaml/package.json": "{}" };
    expect(installedByHand(checkout({ ...present, "package-lock.json": lock("2.9.1") }))).toBe(true);
    expect(installedByHand(checkout({ ...present, "package-lock.json": lock("2.9.2") }))).toBe(false);
    const gone = { "node_modules/.package-lock.json": lock("2.9.1"), "package-lock.json": lock("2.9.1") };
    expect(installedByHand(checkout(gone))).toBe(false);
  });
});

describe("two starts at once", () => {
  it("do the work once, and both are ready", async () => {
    const root = checkout();
    const program = `import(${JSON.stringify(pathToFileURL(join(ROOT, "scripts", "setup.mjs")).href)})
      .then((setup) => setup.ensureReady({ root: ${JSON.stringify(root)}, out: process.stdout }))
      .then((done) => console.log(JSON.stringify(done)));`;
    const one = () =>
      new Promise<{ code: number | null; text: string }>((resolve) => {
        const child = spawn(process.execPath, ["-e", program]);
        let text = "";
        child.stdout.on("data", (chunk: Buffer) => {
          text += chunk.toString();
        });
        child.once("close", (code) => resolve({ code, text }));
      });
    const both = await Promise.all([one(), one(), one()]);
    expect(both.map(({ code }) => code)).toEqual([0, 0, 0]);
    expect(both.filter(({ text }) => text.includes('"built":true'))).toHaveLength(1);
    expect(runs(root)).toBe(1);
    expect(existsSync(join(root, ".setup", "lock"))).toBe(false);
  });

  it("a lock held by a living process stands", () => {
    const root = checkout();
    const first = takeLock(root);
    expect(takeLock(root)).toEqual({ heldBy: process.pid });
    if (!("release" in first)) throw new Error("the first lock was not given");
    first.release();
    expect(takeLock(root)).toHaveProperty("release");
  });

  it("a lock left by a process that is gone is taken over", async () => {
    const ended = spawn(process.execPath, ["-e", ""]);
    await new Promise((resolve) => ended.once("close", resolve));
    const root = checkout({ ".setup/lock": JSON.stringify({ pid: ended.pid, host: hostname(), token: "x" }) });
    expect(takeLock(root)).toHaveProperty("release");
  });

  it("a lock of another machine, or half a lock, is taken over once nobody touches it", () => {
    for (const text of [JSON.stringify({ pid: 1, host: "elsewhere.invalid", token: "x" }), '{"pi']) {
      const root = checkout({ ".setup/lock": text });
      expect(takeLock(root)).toHaveProperty("heldBy");
      const longAgo = new Date(Date.now() - 10 * 60_000);
      utimesSync(join(root, ".setup", "lock"), longAgo, longAgo);
      expect(takeLock(root)).toHaveProperty("release");
    }
  });
});
