/**
 * Is this checkout ready to run? If not, install the libraries and build, then say so.
 * Plain Node without any library, since it runs before there are any. Calling it again when nothing changed costs a few
 * milliseconds. Two starts at the same time do the work once: the second waits for the first.
 */
import { spawn } from "node:child_process";
import { createHash, randomUUID } from "node:crypto";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

export const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "..");

/** The oldest Node that all libraries run on. */
const OLDEST_NODE = 20;
/** A line at least this often while something runs, so that nobody wonders whether it hangs. */
const HEARTBEAT_MS = 5_000;
/** A lock that its owner has not touched for this long belongs to a machine that went away. */
const LOCK_STALE_MS = 120_000;
/** Folders that end up in a build. web is built by its bundler, the others by the compiler. */
const BUILT_FOLDERS = ["core", "drawing", "store", "server", "cli", "web"];
/** Files beside the sources that the built code reads by their place; they are copied into dist. */
const ASSET = /\.(ttf|otf|woff2|typ|svg|sql|yaml|yml|css|json)$/;
const NOT_ASSET = /^(package(-lock)?|tsconfig.*)\.json$/;
const SKIPPED_FOLDERS = new Set(["node_modules", "dist", ".setup", "coverage"]);

/** Why set-up could not finish, in words for the person at the keyboard. */
export class SetupFailure extends Error {}

/** @typedef {{ write(text: string): unknown }} Out */

/** @param {string} file */
function readIfThere(file) {
  try {
    return fs.readFileSync(file, "utf8");
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === "ENOENT") return undefined;
    throw error;
  }
}

/** @param {string} version the running Node, as "20.11.1" */
export function nodeTooOld(version) {
  const major = Number.parseInt(version, 10);
  return major >= OLDEST_NODE
    ? undefined
    : `Coldset needs Node ${OLDEST_NODE} or newer. This is Node ${version}. Install a newer Node, then start again.`;
}

// --- what is installed -------------------------------------------------------------------------------------------

/**
 * A hash of everything that decides what belongs into node_modules.
 * @param {string} root
 */
export function installKey(root) {
  const hash = createHash("sha256");
  const manifest = readIfThere(path.join(root, "package.json"));
  if (manifest === undefined) throw new SetupFailure(`There is no package.json in ${root}.`);
  const folders = ["", ...(JSON.parse(manifest).workspaces ?? [])];
  for (const folder of folders) {
    const text = readIfThere(path.join(root, folder, "package.json"));
    if (text === undefined) continue;
    const { name, bin, workspaces, dependencies, devDependencies, optionalDependencies } = JSON.parse(text);
    hash.update(JSON.stringify([folder, name, bin, workspaces, dependencies, devDependencies, optionalDependencies]));
  }
  hash.update(readIfThere(path.join(root, "package-lock.json")) ?? "");
  return hash.digest("hex");
}

/** What an installed tree is bound to besides the lockfile. */
function machineKey() {
  return `${process.platform} ${process.arch} abi${process.versions.modules}`;
}

/** @param {string} root */
function installStampFile(root) {
  return path.join(root, "node_modules", ".coldset-install.json");
}

/**
 * Does node_modules already hold what the lockfile asks for, because someone ran npm by hand?
 * npm writes its own list last, so a half-finished install does not pass.
 * @param {string} root
 */
export function installedByHand(root) {
  const wanted = readIfThere(path.join(root, "package-lock.json"));
  const present = readIfThere(path.join(root, "node_modules", ".package-lock.json"));
  if (wanted === undefined || present === undefined) return false;
  const have = JSON.parse(present).packages ?? {};
  for (const [place, entry] of Object.entries(JSON.parse(wanted).packages ?? {})) {
    if (!place.includes("node_modules/") || entry.link) continue;
    const found = have[place];
    if (found === undefined) {
      if (entry.optional || entry.devOptional) continue;
      return false;
    }
    if (found.version !== entry.version || !fs.existsSync(path.join(root, place))) return false;
  }
  return true;
}

/** @param {string} root */
function installIsCurrent(root) {
  const text = readIfThere(installStampFile(root));
  const stamp = text === undefined ? undefined : JSON.parse(text);
  const key = installKey(root);
  if (stamp?.key === key && stamp.machine === machineKey()) return true;
  if (stamp !== undefined && stamp.machine !== machineKey()) return false;
  if (!installedByHand(root)) return false;
  writeInstallStamp(root, key);
  return true;
}

/**
 * @param {string} root
 * @param {string} key
 */
function writeInstallStamp(root, key) {
  writeWhole(installStampFile(root), JSON.stringify({ key, machine: machineKey() }));
}

/**
 * A file that is either complete or not there.
 * @param {string} file
 * @param {string} text
 */
function writeWhole(file, text) {
  const beside = `${file}.${randomUUID()}`;
  fs.writeFileSync(beside, text);
  fs.renameSync(beside, file);
}

// --- what is built -----------------------------------------------------------------------------------------------

/**
 * All files that a build reads, as paths relative to the root.
 * @param {string} root
 */
export function buildInputs(root) {
  /** @type {string[]} */
  const files = [];
  /** @param {string} folder */
  const walk = (folder) => {
    for (const entry of fs.readdirSync(path.join(root, folder), { withFileTypes: true })) {
      const place = `${folder}/${entry.name}`;
      if (entry.isDirectory()) {
        if (!SKIPPED_FOLDERS.has(entry.name)) walk(place);
      } else if (!/\.test\.tsx?$/.test(entry.name)) files.push(place);
    }
  };
  for (const folder of BUILT_FOLDERS) if (fs.existsSync(path.join(root, folder))) walk(folder);
  return [...files.sort(), "tsconfig.base.json", "tsconfig.json", "scripts/setup.mjs"];
}

/** @param {string} root */
export function buildKey(root) {
  const hash = createHash("sha256").update(installKey(root));
  for (const file of buildInputs(root)) {
    const stat = fs.statSync(path.join(root, file), { throwIfNoEntry: false });
    if (stat) hash.update(`${file}\0${stat.size}\0${stat.mtimeMs}\n`);
  }
  return hash.digest("hex");
}

/** @param {string} root */
function hasPage(root) {
  return fs.existsSync(path.join(root, "web", "index.html"));
}

/** @param {string} root */
function buildIsCurrent(root) {
  if (readIfThere(path.join(root, ".setup", "build")) !== buildKey(root)) return false;
  if (!fs.existsSync(path.join(root, "cli", "dist", "main.js"))) return false;
  return !hasPage(root) || fs.existsSync(path.join(root, "web", "dist", "site", "index.html"));
}

/** @param {string} root */
function copyAssets(root) {
  for (const file of buildInputs(root)) {
    const [folder = "", ...rest] = file.split("/");
    const name = rest.at(-1) ?? "";
    if (folder === "web" || folder === "scripts" || rest.length === 0) continue;
    if (!ASSET.test(name) || NOT_ASSET.test(name)) continue;
    const target = path.join(root, folder, "dist", ...rest);
    fs.mkdirSync(path.dirname(target), { recursive: true });
    fs.copyFileSync(path.join(root, file), target);
  }
}

// --- running the steps -------------------------------------------------------------------------------------------

/** @param {number} sinceMs */
function seconds(sinceMs) {
  return `${Math.round((Date.now() - sinceMs) / 1000)} s`;
}

/**
 * Runs one program, with a sign of life every few seconds. Its own output is kept back and given to the caller.
 * @param {{ title: string, command: string, args: string[], cwd: string, out: Out, env?: NodeJS.ProcessEnv, shell?: boolean }} step
 * @returns {Promise<{ code: number, output: string }>}
 */
export function runStep({ title, command, args, cwd, out, env = process.env, shell = false }) {
  const started = Date.now();
  out.write(`${title} ...\n`);
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd, env, shell, stdio: ["ignore", "pipe", "pipe"] });
    let output = "";
    /** @param {Buffer} chunk */
    const keep = (chunk) => {
      output = (output + chunk.toString("utf8")).slice(-2_000_000);
    };
    child.stdout.on("data", keep);
    child.stderr.on("data", keep);
    const beat = setInterval(() => out.write(`  still at it, ${seconds(started)}\n`), HEARTBEAT_MS);
    const stop = () => {
      child.kill("SIGTERM");
    };
    process.once("exit", stop);
    const done = () => {
      clearInterval(beat);
      process.removeListener("exit", stop);
    };
    child.once("error", (error) => {
      done();
      reject(new SetupFailure(`${title}: could not run ${command}: ${error.message}`));
    });
    child.once("close", (code, signal) => {
      done();
      if (code === 0) out.write(`  done in ${seconds(started)}\n`);
      if (signal) output += `\n(ended by ${signal})`;
      resolve({ code: code ?? 1, output });
    });
  });
}

/**
 * @param {string} text
 * @param {number} count
 */
export function lastLines(text, count) {
  return text.trimEnd().split("\n").slice(-count).join("\n");
}

/**
 * @param {string} root
 * @param {Out} out
 */
async function install(root, out) {
  const key = installKey(root);
  fs.rmSync(installStampFile(root), { force: true });
  const args = [
    "ci",
    "--include=dev",
    "--ignore-scripts",
    "--no-audit",
    "--no-fund",
    "--loglevel=error",
    "--no-progress",
  ];
  const npmScript = process.env.npm_execpath;
  const byScript = npmScript !== undefined && path.basename(npmScript) === "npm-cli.js";
  const result = await runStep({
    title: "Installing the libraries (first start, or the list of libraries changed)",
    command: byScript ? process.execPath : "npm",
    args: byScript ? [npmScript, ...args] : args,
    cwd: root,
    out,
    shell: !byScript && process.platform === "win32",
  });
  if (result.code !== 0) {
    throw new SetupFailure(
      `${lastLines(result.output, 15)}\n\n` +
        "The libraries could not be installed. The first start needs the network once, and about 500 MB of free disk.\n" +
        "Nothing of your workshop was touched. Start again when the network is there.",
    );
  }
  writeInstallStamp(root, key);
}

/**
 * @param {string} root
 * @param {Out} out
 * @returns {Promise<("types" | "page")[]>} what went wrong without stopping the rest
 */
async function build(root, out) {
  /** @type {("types" | "page")[]} */
  const problems = [];
  const key = buildKey(root);
  fs.mkdirSync(path.join(root, ".setup"), { recursive: true });
  fs.rmSync(path.join(root, ".setup", "build"), { force: true });
  const compiled = await runStep({
    title: "Building the program",
    command: process.execPath,
    args: [path.join(root, "node_modules", "typescript", "bin", "tsc"), "-b", "cli"],
    cwd: root,
    out,
  });
  if (compiled.code !== 0) {
    // The compiler writes its output in spite of type errors. While the sources are being worked on that is good enough
    // to run; without a stamp the next start builds again, and `npm test` fails on every one of these lines.
    out.write(`${lastLines(compiled.output, 20)}\n`);
    if (!fs.existsSync(path.join(root, "cli", "dist", "main.js")))
      throw new SetupFailure("The program could not be built.");
    out.write("The sources above have errors. Going on with what the compiler wrote.\n");
    problems.push("types");
  }
  copyAssets(root);
  if (hasPage(root)) {
    const page = await runStep({
      title: "Building the page",
      command: process.execPath,
      args: [
        path.join(root, "node_modules", "vite", "bin", "vite.js"),
        ...["build", "web", "--outDir", "dist/site", "--emptyOutDir", "--logLevel", "warn"],
      ],
      cwd: root,
      out,
      env: { ...process.env, NODE_ENV: "production", NO_COLOR: "1" },
    });
    if (page.code !== 0) {
      out.write(`${lastLines(page.output, 25)}\nThe page could not be built. The commands work without it.\n`);
      problems.push("page");
    }
  }
  if (problems.length === 0) writeWhole(path.join(root, ".setup", "build"), key);
  return problems;
}

// --- one at a time -----------------------------------------------------------------------------------------------

/** @param {number} pid */
function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === "EPERM";
  }
}

/**
 * Takes the lock, or says who holds it. A lock left behind by a process that is gone is taken away.
 * @param {string} root
 * @returns {{ release: () => void } | { heldBy: number }}
 */
export function takeLock(root) {
  const file = path.join(root, ".setup", "lock");
  fs.mkdirSync(path.dirname(file), { recursive: true });
  const mine = JSON.stringify({ pid: process.pid, host: os.hostname(), token: randomUUID() });
  for (let attempt = 0; attempt < 5; attempt += 1) {
    try {
      // Written beside and linked into place, so that nobody ever reads a lock without its owner.
      const beside = `${file}.${randomUUID()}`;
      fs.writeFileSync(beside, mine);
      try {
        fs.linkSync(beside, file);
      } finally {
        fs.rmSync(beside, { force: true });
      }
      const touch = setInterval(() => {
        try {
          fs.utimesSync(file, new Date(), new Date());
        } catch {
          // Someone removed the folder while we build. The lock is only a courtesy then.
        }
      }, HEARTBEAT_MS);
      touch.unref();
      return {
        release: () => {
          clearInterval(touch);
          if (readIfThere(file) === mine) fs.rmSync(file, { force: true });
        },
      };
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== "EEXIST") throw error;
    }
    const theirs = readIfThere(file);
    const stat = fs.statSync(file, { throwIfNoEntry: false });
    if (theirs === undefined || stat === undefined) continue;
    const { pid, host } = readOwner(theirs);
    const gone = host === os.hostname() && !isAlive(pid);
    if (!gone && Date.now() - stat.mtimeMs < LOCK_STALE_MS) return { heldBy: pid };
    const aside = `${file}.${randomUUID()}`;
    try {
      fs.renameSync(file, aside);
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== "ENOENT") throw error;
      continue;
    }
    // Between our look and our move somebody else may have healed it: then what we moved is alive, and goes back.
    if (readIfThere(aside) !== theirs && !fs.existsSync(file)) fs.renameSync(aside, file);
    else fs.rmSync(aside, { force: true });
  }
  return { heldBy: 0 };
}

/** @param {string} text */
function readOwner(text) {
  try {
    const { pid, host } = JSON.parse(text);
    return { pid: Number(pid), host: String(host) };
  } catch {
    // Half a lock can only come from a crash: it counts as left behind once it is old.
    return { pid: 0, host: "" };
  }
}

/**
 * @param {string} root
 * @param {Out} out
 */
async function waitForLock(root, out) {
  let spoken = 0;
  for (;;) {
    const lock = takeLock(root);
    if ("release" in lock) return lock;
    if (Date.now() - spoken > HEARTBEAT_MS) {
      spoken = Date.now();
      out.write(`Another start (process ${lock.heldBy}) is setting up. Waiting for it ...\n`);
    }
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

// --- the door ----------------------------------------------------------------------------------------------------

/**
 * Makes the checkout ready: libraries installed, program and page built. Says nothing when there is nothing to do.
 * @param {{ root?: string, out?: Out, quiet?: boolean, build?: boolean }} [options]
 *   quiet: no lines at all, only a failure speaks; build: false installs only.
 * @returns {Promise<{ installed: boolean, built: boolean, problems: ("types" | "page")[] }>} what had to be done, and
 *   what is wrong with the sources though the rest can run
 */
export async function ensureReady(options = {}) {
  const { root = ROOT, quiet = false, build: wantBuild = true } = options;
  const out = quiet ? { write: () => true } : (options.out ?? process.stderr);
  const tooOld = nodeTooOld(process.versions.node);
  if (tooOld !== undefined) throw new SetupFailure(tooOld);
  if (installIsCurrent(root) && (!wantBuild || buildIsCurrent(root)))
    return { installed: false, built: false, problems: [] };

  const lock = await waitForLock(root, out);
  /** @param {NodeJS.Signals} signal */
  const onSignal = (signal) => {
    lock.release();
    process.exit(signal === "SIGINT" ? 130 : 143);
  };
  process.on("SIGINT", onSignal);
  process.on("SIGTERM", onSignal);
  try {
    const installed = !installIsCurrent(root);
    if (installed) await install(root, out);
    const built = wantBuild && !buildIsCurrent(root);
    const problems = built ? await build(root, out) : [];
    return { installed, built, problems };
  } finally {
    process.removeListener("SIGINT", onSignal);
    process.removeListener("SIGTERM", onSignal);
    lock.release();
  }
}

/**
 * As ensureReady, for the head of a program: a failure is told and ends the program with 1.
 * @param {Parameters<typeof ensureReady>[0]} [options]
 */
export async function readyOrExit(options = {}) {
  try {
    return await ensureReady(options);
  } catch (error) {
    if (!(error instanceof SetupFailure)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exit(1);
  }
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(fs.realpathSync(process.argv[1])).href) {
  const done = await readyOrExit({ out: process.stdout });
  process.stdout.write(done.installed || done.built ? "Ready.\n" : "Ready, nothing to do.\n");
}
