/**
 * Which programs of the system do the tests need, where are they, and how are missing ones brought in?
 * The one place for this: a Chromium for the pages, pdftotext and pdftoppm for the printed book.
 * Only the tests need them; the program itself runs without.
 */
import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { lastLines, runStep, SetupFailure } from "./setup.mjs";

const CHROMIUM_COMMANDS = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
const CHROMIUM_PLACES = [
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
];
const USUAL_FOLDERS = ["/usr/bin", "/usr/local/bin", "/snap/bin", "/opt/homebrew/bin"];

/** @param {string} command */
function onPath(command) {
  const folders = [...(process.env.PATH ?? "").split(path.delimiter), ...USUAL_FOLDERS];
  const names = process.platform === "win32" ? [`${command}.exe`, command] : [command];
  return folders
    .filter((folder) => folder !== "")
    .flatMap((folder) => names.map((name) => path.join(folder, name)))
    .filter((file) => fs.existsSync(file));
}

/**
 * Some systems put a stand-in there that only says what to install, so the program is asked for its version.
 * @param {string} file
 * @param {string[]} args
 */
function answers(file, args) {
  const result = spawnSync(file, args, { stdio: "ignore", timeout: 30_000 });
  return result.error === undefined && result.status === 0;
}

/** The path of a Chromium that runs; COLDSET_CHROMIUM names one at another place. */
export function findChromium() {
  const named = process.env.COLDSET_CHROMIUM;
  const places = named ? [named] : [...CHROMIUM_COMMANDS.flatMap(onPath), ...CHROMIUM_PLACES];
  // Asking a Chromium on Windows for its version opens a window, so there the file alone has to do.
  return places.find((file) => fs.existsSync(file) && (process.platform === "win32" || answers(file, ["--version"])));
}

/** @param {"pdftotext" | "pdftoppm"} command */
export function findPoppler(command) {
  return onPath(command).find((file) => answers(file, ["-v"]));
}

/** @typedef {{ what: string, packages: string, otherwise: string, found: () => boolean }} Need */

/** @type {readonly Need[]} */
const NEEDS = [
  {
    what: "a Chromium (for the tests of the page)",
    packages: "chromium",
    otherwise: "install Chromium or Chrome, or name its path in COLDSET_CHROMIUM",
    found: () => findChromium() !== undefined,
  },
  {
    what: "pdftotext and pdftoppm (for the tests of the printed book)",
    packages: "poppler-utils",
    otherwise: "install Poppler's command line programs (package poppler-utils or poppler)",
    found: () => findPoppler("pdftotext") !== undefined && findPoppler("pdftoppm") !== undefined,
  },
];

/** @param {readonly Need[]} missing */
export function missingText(missing) {
  return [
    "The tests need programs of the system that are not here:",
    ...missing.map((need) => `  ${need.what}: ${need.otherwise}`),
    `On Debian and its kin: apt-get install ${missing.map((need) => need.packages).join(" ")}`,
  ].join("\n");
}

/** How apt-get can be run without asking anybody, if it can. */
function aptPrefix() {
  if (onPath("apt-get").length === 0) return undefined;
  if (process.getuid?.() === 0) return [];
  return answers("sudo", ["-n", "true"]) ? ["sudo", "-n"] : undefined;
}

/**
 * Brings in what is missing with apt-get where that needs no password, else fails with words on what to install.
 * @param {{ out?: import("./setup.mjs").Out }} [options]
 */
export async function ensureSystemPackages({ out = process.stdout } = {}) {
  const missing = NEEDS.filter((need) => !need.found());
  if (missing.length === 0) return;
  const named = process.env.COLDSET_CHROMIUM;
  if (named && findChromium() === undefined) {
    throw new SetupFailure(`COLDSET_CHROMIUM names ${named}, but no Chromium runs there. Correct it, or leave it out.`);
  }
  const prefix = aptPrefix();
  if (prefix === undefined) throw new SetupFailure(missingText(missing));
  const packages = missing.map((need) => need.packages);
  for (const args of [["update"], ["install", "-y", "--no-install-recommends", ...packages]]) {
    const [command = "apt-get", ...rest] = [...prefix, "apt-get", ...args];
    const result = await runStep({
      title: args[0] === "update" ? "Reading the system's list of packages" : `Installing ${packages.join(" and ")}`,
      command,
      args: rest,
      cwd: process.cwd(),
      out,
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
    // A failed update alone is no reason to stop: the old list may still do.
    if (result.code !== 0 && args[0] !== "update") {
      throw new SetupFailure(`${lastLines(result.output, 15)}\n\n${missingText(missing)}`);
    }
  }
  const still = missing.filter((need) => !need.found());
  if (still.length > 0) throw new SetupFailure(missingText(still));
}

if (process.argv[1] !== undefined && fs.realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  try {
    await ensureSystemPackages();
    process.stdout.write(`Chromium: ${findChromium()}\npdftotext: ${findPoppler("pdftotext")}\n`);
  } catch (error) {
    if (!(error instanceof SetupFailure)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 1;
  }
}
