/**
 * Which ability does this word for a need mean, and under which condition? The same ability is one word everywhere;
 * a longer word means that ability plus the condition it names.
 * Input: a word such as "coldset", "spray_1k", "weld_tig_by_qualified_volunteer".
 * Answer: the ability and the condition in plain words; ability undefined where the word is not known.
 * Source: workshop-order (common practice, no source).
 */
import type { IrreversibleKind } from "./plan-types.js";

const ABILITIES = ["hand", "press", "ream_face", "tap", "drill", "lathe", "mill", "braze", "weld", "cold_set", "spray"];
const SPELLINGS: readonly (readonly [string, string])[] = [["coldset", "cold_set"]];

export interface Need {
  readonly word: string;
  readonly ability: string | undefined;
  readonly condition: string;
}

export function readNeed(word: string): Need {
  let plain = word
    .trim()
    .toLowerCase()
    .replaceAll(/[\s-]+/g, "_");
  for (const [from, to] of SPELLINGS) {
    if (plain === from || plain.startsWith(`${from}_`)) plain = to + plain.slice(from.length);
  }
  const ability = ABILITIES.find((a) => plain === a || plain.startsWith(`${a}_`));
  const condition = ability === undefined ? "" : plain.slice(ability.length + 1).replaceAll("_", " ");
  return { word, ability, condition };
}

/** What the ability does to the frame that cannot be taken back. Machining a loose plate counts: steel is cut. */
const IRREVERSIBLE_ABILITY: Readonly<Record<string, IrreversibleKind>> = {
  cold_set: "bend",
  braze: "heat",
  weld: "heat",
  drill: "drill",
  mill: "cut",
  spray: "paint",
};

/** Words in the name of an operation that speak of such work, whole words, first match counts. */
const IRREVERSIBLE_WORDS: readonly (readonly [RegExp, IrreversibleKind])[] = [
  [/\b(braze|brazing|weld|welding|tack)\b/i, "heat"],
  [/\b(cold[- ]?set|dimple|bend)\b/i, "bend"],
  [/\b(drill|drilling|rivet nuts?)\b/i, "drill"],
  [/\b(cut|saw|file|slot)\b/i, "cut"],
  [/\b(paint|prime|primer|colour|clear|lacquer|touch[- ]?in|powder)\b/i, "paint"],
];

export function irreversibleOf(
  what: string,
  needs: readonly string[],
): { readonly kind: IrreversibleKind; readonly from: "its needs" | "its words" } | undefined {
  for (const need of needs) {
    const ability = readNeed(need).ability;
    const kind = ability === undefined ? undefined : IRREVERSIBLE_ABILITY[ability];
    if (kind !== undefined) return { kind, from: "its needs" };
  }
  for (const [pattern, kind] of IRREVERSIBLE_WORDS) if (pattern.test(what)) return { kind, from: "its words" };
  return undefined;
}

/** Which of these needs can this shop not meet, and which only under a condition that somebody must confirm? */
export function missingNeeds(
  needs: readonly string[],
  shop: { readonly capabilities: readonly string[]; readonly missing: readonly string[] },
): { readonly missing: readonly string[]; readonly toConfirm: readonly string[] } {
  const missing: string[] = [];
  const toConfirm: string[] = [];
  const lacks = shop.missing.map(readNeed);
  const has = shop.capabilities.map(readNeed);
  const same = (a: Need, b: Need) => (a.ability === undefined ? a.word === b.word : a.ability === b.ability);
  for (const word of needs) {
    const need = readNeed(word);
    const mates = has.filter((h) => same(h, need));
    const barred = lacks.some((l) => same(l, need) && (l.condition === "" || l.condition === need.condition));
    if (mates.length === 0 || barred) missing.push(word);
    // the shop's own condition must hold, and so must the one the task names
    else if (!mates.some((h) => h.condition === need.condition)) toConfirm.push(word);
  }
  return { missing, toConfirm };
}
