/**
 * Whose work ships with Coldset, and under which licence? Writes THIRD-PARTY-NOTICES.md from the lockfile and the
 * licence files of the libraries that run (not those for building and testing) and of the fonts.
 *   node scripts/notices.mjs           writes the file
 *   node scripts/notices.mjs --check   says what is out of date, changes nothing
 */
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { ROOT } from "./setup.mjs";

const FILE = "THIRD-PARTY-NOTICES.md";
/** Licences that let the whole be given on under MIT, with their notices kept. Any other needs a person's look first. */
const ALLOWED = new Set([
  "MIT",
  "ISC",
  "0BSD",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "Apache-2.0",
  "OFL-1.1",
  "BlueOak-1.0.0",
]);
const LICENCE_FILE = /^(licen[cs]e|copying|notice)([.-].*)?$/i;

/**
 * @typedef {{ name: string, version: string, licence: string, optional: boolean, folder: string }} Library
 */

/**
 * @param {string} root
 * @returns {Library[]}
 */
export function runtimeLibraries(root = ROOT) {
  const lock = JSON.parse(fs.readFileSync(path.join(root, "package-lock.json"), "utf8"));
  return Object.entries(lock.packages)
    .filter(([place, entry]) => place.includes("node_modules/") && !entry.link && !entry.dev && !entry.devOptional)
    .map(([place, entry]) => ({
      name: place.slice(place.lastIndexOf("node_modules/") + "node_modules/".length),
      version: String(entry.version),
      licence: String(entry.license ?? "not stated"),
      optional: entry.optional === true,
      folder: place,
    }))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));
}

/** @param {string} folder */
function licenceTexts(folder) {
  if (!fs.existsSync(folder)) return [];
  return fs
    .readdirSync(folder)
    .filter((name) => LICENCE_FILE.test(name))
    .sort()
    .map((name) => tidy(fs.readFileSync(path.join(folder, name), "utf8")));
}

/** @param {string} text */
const tidy = (text) =>
  text
    .replace(/\r\n?/g, "\n")
    .replace(/[ \t]+$/gm, "")
    .trim();

/** @param {string} root */
function fonts(root) {
  const folder = path.join(root, "drawing", "fonts");
  if (!fs.existsSync(folder)) return [];
  return fs
    .readdirSync(folder)
    .filter((name) => /OFL.*\.txt$/i.test(name))
    .sort()
    .map((name) => ({ name: `drawing/fonts/${name}`, text: tidy(fs.readFileSync(path.join(folder, name), "utf8")) }));
}

/**
 * @param {string} [root]
 * @returns {{ text: string, problems: string[] }}
 */
export function notices(root = ROOT) {
  const libraries = runtimeLibraries(root);
  /** @type {string[]} */
  const problems = [];
  /** @type {Map<string, string[]>} texts in order, each with those who use it */
  const byText = new Map();
  for (const library of libraries) {
    if (!ALLOWED.has(library.licence)) {
      problems.push(
        `notices: ${library.name} ${library.version} has the licence "${library.licence}"; look at it first`,
      );
    }
    // Parts for one kind of machine are not all installed, and the page must not depend on which one wrote it.
    if (library.optional) continue;
    for (const text of licenceTexts(path.join(root, library.folder))) {
      byText.set(text, [...(byText.get(text) ?? []), `${library.name} ${library.version}`]);
    }
  }
  for (const font of fonts(root)) byText.set(font.text, [...(byText.get(font.text) ?? []), font.name]);
  const lines = [
    "# Third-party notices",
    "",
    "Coldset is under the MIT licence (`LICENSE`). It runs on the libraries and fonts below. This page is written by",
    "`npm run notices`; change it there.",
    "",
    "| library | version | licence |",
    "|---|---|---|",
    ...libraries.map(
      ({ name, version, licence, optional }) =>
        `| ${name} | ${version} | ${licence}${optional ? " (where needed)" : ""} |`,
    ),
    "",
    "Libraries marked *where needed* are parts for one kind of machine, or extras, of another library in the table.",
    "",
    "The fonts in `drawing/fonts` are cut down and renamed versions; their licence, the SIL Open Font License 1.1, is below.",
    "",
    "## Texts of the licences",
  ];
  for (const [text, users] of byText) lines.push("", `### ${users.join(", ")}`, "", "```text", text, "```");
  return { text: `${lines.join("\n")}\n`, problems };
}

/**
 * @param {{ root?: string }} [options]
 * @returns {{ problems: string[] }}
 */
export function checkNotices({ root = ROOT } = {}) {
  const { text, problems } = notices(root);
  const file = path.join(root, FILE);
  const kept = fs.existsSync(file) ? fs.readFileSync(file, "utf8").replace(/\r\n/g, "\n") : "";
  if (kept !== text) problems.push(`notices: ${FILE} is out of date; run: npm run notices`);
  return { problems };
}

if (process.argv[1] !== undefined && fs.realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const { text, problems } = notices();
  if (!process.argv.includes("--check")) fs.writeFileSync(path.join(ROOT, FILE), text);
  const all = process.argv.includes("--check") ? checkNotices().problems : problems;
  for (const problem of all) process.stderr.write(`${problem}\n`);
  process.exitCode = all.length > 0 ? 1 : 0;
}
