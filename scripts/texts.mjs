/**
 * Does every text that a person reads stand in the one table (core/texts)? Found are: words that stand in the markup of the
 * page, and sentences of four words or more in the code; in web and cli also single words where they plainly reach the
 * screen (a child or a telling attribute of the markup, a text of a terminal's page, what is filled into another text),
 * and any literal that begins with a capital. Not found is a short word in small letters that goes through a variable first.
 * What only a machine or a programmer reads is left alone: thrown errors of ours, names of files and commands, SQL,
 * addresses. The table itself holds no row that nothing uses.
 */
import fs from "node:fs";
import path from "node:path";
import ts from "typescript";
import { ROOT } from "./setup.mjs";

const FOLDERS = ["core", "drawing", "store", "server", "web", "cli"];
/** Data with a source a row, the table itself, the language of the printer, the SQL of the records, and samples for tests. */
const LEFT_ALONE = [
  /^core\/(data|texts)\//,
  /^core\/quantity\/(unit-table|dimension)\.ts$/,
  /^store\/migrations\//,
  /^drawing\/svg\//,
  /^drawing\/pdf\/typst-pdf\.ts$/,
  /^drawing\/book\/template\.ts$/,
  /\/(security-headers|xml-fault|service-worker)\.ts$/,
  /^drawing\/(pdf\/(drawing-pdf|scale-bar)|book\/verdict-marks)\.ts$/,
  /^web\/offline\/build-service-worker\.ts$/,
  // The text of a whole document with its comments, kept in one piece so that it reads like one.
  /^core\/workshop\/new-build\.ts$/,
  /\/sample-[a-z-]+\.ts$/,
  /\.test\.tsx?$|\/test-[a-z-]+\.ts$|\/vite\.config\.ts$/,
];
const SENTENCE_WORDS = 4;
/** SQL, headers of HTTP and types of media. */
const MACHINE_WORDS =
  /^([a-z]+\/[a-z]|[A-Z][a-z]+(-[A-Z][a-z]+)*: |public, max-age)|^(SELECT|PRAGMA|INSERT|UPDATE|DELETE|VACUUM|ATTACH|CREATE|BEGIN)\b/;
/** A name that the code compares, such as that of a figure, is no sentence: it begins small and has no stop. */
const SENTENCE = /^[^A-Za-z]*[A-Z]|[.,;:?!](\s|$)/;
/** Calls whose texts are for the machine. */
const MACHINE_CALLS =
  /^(Error|TypeError|RangeError|exec|rows|prepare|querySelector(All)?|matches|closest|matchMedia|option|command|argument|header|set|split|select|includes|startsWith|replace|replaceAll|regex|raw|sql)$/;

/**
 * @param {string} root
 * @param {string} folder
 * @returns {string[]}
 */
function sources(root, folder) {
  if (!fs.existsSync(path.join(root, folder))) return [];
  return fs.readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const place = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return ["dist", "node_modules"].includes(entry.name) ? [] : sources(root, place);
    return /\.tsx?$/.test(entry.name) ? [place] : [];
  });
}

/** @param {string} text */
const wordsOf = (text) => (MACHINE_WORDS.test(text) ? [] : (text.match(/[A-Za-z][a-z]+/g) ?? []));

/** @param {ts.Node} node @param {string} place */
function forTheMachine(node, place) {
  for (let inner = node, outer = node.parent; outer !== undefined; inner = outer, outer = outer.parent) {
    if (ts.isThrowStatement(outer) || ts.isTypeNode(outer) || ts.isImportDeclaration(outer)) return true;
    if (ts.isTaggedTemplateExpression(outer)) return true;
    // What the description of the calls says to whoever writes a program against them.
    if (
      ts.isPropertyAssignment(outer) &&
      /^(summary|description|means)$/.test(outer.name.getText()) &&
      place.startsWith("server/")
    )
      return true;
    if (ts.isJsxAttribute(outer)) return /^(class(Name)?|d|style|href|src)$/.test(outer.name.getText());
    if ((ts.isCallExpression(outer) || ts.isNewExpression(outer)) && outer.arguments?.some((a) => a === inner)) {
      const callee = ts.isPropertyAccessExpression(outer.expression) ? outer.expression.name : outer.expression;
      if (MACHINE_CALLS.test(callee.getText())) return true;
    }
    if (ts.isFunctionLike(outer) || ts.isBlock(outer)) return false;
  }
  return false;
}

/** Where a person reads single words too. */
const EDGES = /^(web|cli)\//;
/** Attributes that are read out or shown. */
const TELLING =
  /^(aria-label|aria-roledescription|aria-description|title|label|placeholder|alt|caption|legend|summary|sheet|words)$/;
/** What puts text onto a terminal: the page of cli/screen, and the streams. */
const PAGE_CALLS = /^(text|heading|list|table|stdout|stderr)$/;
const STYLES = new Set(["strong", "quiet", "good", "open", "bad"]);
/** A word of a language. Names with an underscore, a point or a slash in them are keys, files and addresses. */
const PLAIN_WORD = /(^|[\s(…])[A-Za-z][a-z]+(?![\w/]|[._][a-z]|-[a-z])/;
const CAPITAL = /^\s*[A-Z][a-z]*[\s:;.,]|^\s*(?!Nm{1,2}$)[A-Z][a-z]+$/;

/**
 * Does this literal plainly reach the screen? Followed outwards through what gives it on: lists, conditions, brackets.
 * @param {ts.Node} node
 * @param {string} text
 * @param {string} place
 */
function reachesScreen(node, text, place) {
  for (let inner = node, outer = node.parent; outer !== undefined; inner = outer, outer = outer.parent) {
    if (ts.isConditionalExpression(outer) && outer.condition === inner) return false;
    // A style, in front of the text that it is for.
    if (ts.isArrayLiteralExpression(outer) && outer.elements[0] === inner && STYLES.has(text)) return false;
    if (ts.isBinaryExpression(outer) && !/^(\?\?|\|\||&&|\+)$/.test(outer.operatorToken.getText())) return false;
    if (ts.isJsxAttribute(outer)) return TELLING.test(outer.name.getText());
    if (ts.isJsxExpression(outer)) {
      if (ts.isJsxElement(outer.parent) || ts.isJsxFragment(outer.parent)) return true;
    } else if (ts.isCallExpression(outer)) {
      if (!outer.arguments.some((a) => a === inner)) return false;
      const callee = ts.isPropertyAccessExpression(outer.expression) ? outer.expression.name : outer.expression;
      if (/^say(Text)?$/.test(callee.getText())) return outer.arguments[0] !== inner;
      return place.startsWith("cli/") && PAGE_CALLS.test(callee.getText());
    } else if (
      !ts.isConditionalExpression(outer) &&
      !ts.isArrayLiteralExpression(outer) &&
      !ts.isSpreadElement(outer) &&
      !ts.isParenthesizedExpression(outer) &&
      !ts.isBinaryExpression(outer) &&
      !ts.isTemplateSpan(outer) &&
      !ts.isTemplateExpression(outer) &&
      !ts.isAsExpression(outer) &&
      !ts.isObjectLiteralExpression(outer) &&
      !(ts.isPropertyAssignment(outer) && outer.initializer === inner)
    )
      return false;
  }
  return false;
}

/** Is it compared with, or a name by which something is found? @param {ts.Node} node */
function isName(node) {
  const { parent } = node;
  return (
    (ts.isBinaryExpression(parent) && /^[!=]==?$|^in$/.test(parent.operatorToken.getText())) ||
    ts.isCaseClause(parent) ||
    ts.isElementAccessExpression(parent) ||
    ts.isLiteralTypeNode(parent) ||
    (ts.isPropertyAssignment(parent) && parent.name === node)
  );
}

/** @param {ts.Node} node @param {string} text @param {string} place */
function shortTextOfAnEdge(node, text, place) {
  if (!EDGES.test(place) || !PLAIN_WORD.test(text) || isName(node) || forTheMachine(node, place)) return false;
  return CAPITAL.test(text) || reachesScreen(node, text, place);
}

/**
 * @param {string} place
 * @param {string} source
 * @param {Set<string>} used takes the keys that are named
 * @returns {string[]}
 */
function findings(place, source, used) {
  const file = ts.createSourceFile(place, source, ts.ScriptTarget.ES2023, true);
  /** @type {string[]} */
  const found = [];
  /** @param {ts.Node} node @param {string} text */
  const tell = (node, text) => {
    const { line } = file.getLineAndCharacterOfPosition(node.getStart(file));
    found.push(
      `texts: ${place}:${line + 1}: belongs into core/texts: ${text.trim().replace(/\s+/g, " ").slice(0, 80)}`,
    );
  };
  /** @param {ts.Node} node */
  const visit = (node) => {
    if (ts.isJsxText(node)) {
      if (wordsOf(node.text).length > 0) tell(node, node.text);
    } else if (ts.isStringLiteralLike(node)) {
      if (!place.startsWith("core/texts/")) used.add(node.text);
      if (
        (wordsOf(node.text).length >= SENTENCE_WORDS &&
          SENTENCE.test(node.text) &&
          /\s/.test(node.text.trim()) &&
          !forTheMachine(node, place)) ||
        shortTextOfAnEdge(node, node.text, place)
      )
        tell(node, node.text);
    } else if (ts.isTemplateExpression(node)) {
      const text = [node.head.text, ...node.templateSpans.map((span) => span.literal.text)].join(" … ");
      if (
        (wordsOf(text).length >= SENTENCE_WORDS &&
          SENTENCE.test(text) &&
          /[a-z,.:;] \(?[a-z]/i.test(text) &&
          !forTheMachine(node, place)) ||
        shortTextOfAnEdge(node, text, place)
      )
        tell(node, text);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/**
 * @param {{ root?: string }} [options]
 * @returns {{ files: number, problems: string[] }}
 */
export function checkTexts({ root = ROOT } = {}) {
  const files = FOLDERS.flatMap((folder) => sources(root, folder));
  /** @type {string[]} */
  const problems = files.length === 0 ? ["texts: no source found, so nothing was checked"] : [];
  /** @type {Set<string>} */
  const used = new Set();
  for (const place of files) {
    const found = findings(place, fs.readFileSync(path.join(root, place), "utf8"), used);
    if (!LEFT_ALONE.some((rule) => rule.test(place))) problems.push(...found);
  }
  for (const { key, place } of rows(root)) if (!used.has(key)) problems.push(`texts: ${place}: nothing says ${key}`);
  return { files: files.length, problems };
}

/** @param {string} root */
function rows(root) {
  const folder = path.join(root, "core", "texts");
  if (!fs.existsSync(folder)) return [];
  return fs
    .readdirSync(folder)
    .filter((name) => name.endsWith(".ts") && !name.endsWith(".test.ts"))
    .flatMap((name) =>
      [...fs.readFileSync(path.join(folder, name), "utf8").matchAll(/^ {2}"([a-z0-9.-]+)":/gm)].map((match) => ({
        key: match[1] ?? "",
        place: `core/texts/${name}`,
      })),
    );
}
