/**
 * What does an answer claim, and what must be there whole or not at all? A claim is looked for after every later kill, too.
 */
import fs from "node:fs";
import { fileURLToPath } from "node:url";

export const QUAYSIDE = fileURLToPath(new URL("../demo/quayside.yaml", import.meta.url));

/**
 * @typedef {import("./kill-look.mjs").View} View
 * @typedef {import("./kill-look.mjs").Claim} Claim
 * @typedef {{ there: boolean, wrong: readonly string[] }} Judged
 * @typedef {readonly (readonly [string, string])[]} Marks letters that a text holds once it came in, each with its document
 */

/** @param {string} name @param {number} revision @param {(row: import("./kill-look.mjs").Row) => boolean} fits @returns {Claim} */
export const revisionClaim = (name, revision, fits) => ({
  what: `${name}, revision ${revision}`,
  holds: (view) => {
    const row = view.histories.get(name)?.[revision - 1];
    return row !== undefined && fits(row);
  },
});

/** What an undo, a redo or a restore that was answered claims. @param {any} told @param {string} what @returns {Claim[]} */
export const changeClaims = (told, what) =>
  told.documents
    .map((/** @type {any} */ d) => revisionClaim(`${d.kind} ${d.id}`, d.revision, (row) => row.change === told.change))
    .concat(
      told.change === null
        ? []
        : [
            {
              what: `change ${told.change} (${what})`,
              holds: (/** @type {View} */ v) => v.changes.get(told.change)?.what === what,
            },
          ],
    );

/** @param {string} name @returns {Claim} */
export const versionClaim = (name) => ({
  what: `version ${name}`,
  holds: (view) => view.versions.has(`quayside ${name}`),
});

/** @param {Marks} marks @returns {Claim[]} */
export const markClaims = (marks) =>
  marks.map(([name, letters]) => ({
    what: `${name} with "${letters.trim()}"`,
    holds: (view) => view.histories.get(name)?.some((row) => row.after.includes(letters)) === true,
  }));

/** Whole or nothing. @param {View} view @param {Marks} marks @param {string} what @returns {Judged} */
export function judgeMarks(view, marks, what) {
  const there = markClaims(marks).filter((claim) => claim.holds(view)).length;
  const half = there > 0 && there < marks.length;
  return {
    there: there === marks.length,
    wrong: half ? [`half of ${what} is there: ${there} of ${marks.length}`] : [],
  };
}

/** The text of the demo build with other words in two of its documents. @param {string} words @param {number} price */
export function otherText(words, price) {
  const text = fs.readFileSync(QUAYSIDE, "utf8");
  const other = text.replace(/^title: .*$/m, `title: ${words}`).replace(/^price: .*$/m, `price: ${price}`);
  /** @type {Marks} */
  const marks = [
    ["donor q1", `price: ${price}\n`],
    ["build quayside", `title: ${words}\n`],
  ];
  return { text: other, marks };
}
