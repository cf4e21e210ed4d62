/**
 * Do the papers point at things that are there? Relative links in every .md file must lead to a file (and, with #, to a
 * heading of it), every path that the README names must exist, and its table of questions must lead to every page of
 * docs/methods.
 */
import fs from "node:fs";
import path from "node:path";
import { ROOT } from "./setup.mjs";

const SKIPPED = new Set(["node_modules", "dist", ".git", ".setup", "coverage"]);

/**
 * @param {string} root
 * @param {string} [folder]
 * @returns {string[]}
 */
function papers(root, folder = "") {
  return fs.readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const place = path.posix.join(folder, entry.name);
    if (entry.isDirectory()) return SKIPPED.has(entry.name) ? [] : papers(root, place);
    return entry.name.endsWith(".md") ? [place] : [];
  });
}

/** @param {string} text */
const withoutCode = (text) => text.replace(/^(```|~~~)[\s\S]*?^\1/gm, "").replace(/`[^`\n]*`/g, "");

/**
 * The anchors that a page's headings give.
 * @param {string} text
 */
export function anchors(text) {
  const headings = text.replace(/^(```|~~~)[\s\S]*?^\1/gm, "").match(/^#{1,6} .+$/gm) ?? [];
  return new Set(
    headings.map((line) =>
      line
        .replace(/^#+ /, "")
        .trim()
        .toLowerCase()
        .replace(/[^\p{L}\p{N}\s_-]/gu, "")
        .replace(/\s/g, "-"),
    ),
  );
}

/**
 * @param {{ root?: string }} [options]
 * @returns {{ papers: number, problems: string[] }}
 */
export function checkDocs({ root = ROOT } = {}) {
  const found = papers(root);
  /** @type {string[]} */
  const problems = found.length === 0 ? ["docs: no .md file found, so nothing was checked"] : [];
  for (const paper of found) {
    const text = fs.readFileSync(path.join(root, paper), "utf8");
    for (const [, target = ""] of withoutCode(text).matchAll(/\]\(<?([^)\s>]+)>?(?:\s+"[^"]*")?\)/g)) {
      if (/^[a-z][a-z0-9+.-]*:/i.test(target)) continue;
      const [file = "", anchor] = decodeURI(target).split("#");
      const place = file === "" ? path.join(root, paper) : path.join(root, path.dirname(paper), file);
      if (!fs.existsSync(place)) problems.push(`docs: ${paper} links to ${target}, which is not there`);
      else if (anchor && place.endsWith(".md") && !anchors(fs.readFileSync(place, "utf8")).has(anchor)) {
        problems.push(`docs: ${paper} links to ${target}, but there is no such heading`);
      }
    }
    if (paper === "README.md") problems.push(...missingPaths(root, text), ...notInTable(found, text));
  }
  return { papers: found.length, problems };
}

/**
 * @param {string} root
 * @param {string} text
 */
function missingPaths(root, text) {
  const folders = fs.readdirSync(root, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  const known = new Set(folders.map((entry) => entry.name));
  const named = [...text.matchAll(/`([\w.-]+(?:\/[\w.-]+)+)\/?`/g)].map((match) => match[1] ?? "");
  return named
    .filter((place) => known.has(place.split("/")[0] ?? "") && !fs.existsSync(path.join(root, place)))
    .map((place) => `docs: README.md names ${place}, which is not there`);
}

/**
 * @param {readonly string[]} found all papers
 * @param {string} text of the README
 */
function notInTable(found, text) {
  const table = text.match(/^\|.*$/gm)?.join("\n") ?? "";
  return found
    .filter((paper) => paper.startsWith("docs/methods/") && !table.includes(`](${paper})`))
    .map((paper) => `docs: README.md has no row in its table for ${paper}`);
}
