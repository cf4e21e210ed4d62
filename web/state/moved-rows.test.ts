import type { BoardRow } from "@coldset/core/questions";
import { expect, it } from "vitest";
import { listed, movedRows, movedWords } from "./moved-rows.js";

const row = (n: number, answer: string, verdict: BoardRow["verdict"], value?: number): BoardRow => ({
  n,
  question: `Question ${n}?`,
  stake: "money",
  answer,
  verdict,
  also: [],
  open: true,
  ...(value === undefined ? {} : { figure: { name: "gap", value, unit: "mm", decimals: 1 } }),
  working: { words: [], figures: [], tables: [], notChecked: [] },
  joints: [],
  sources: [],
  cautions: [],
});

it("names what turned and what changed parts, and nothing else", () => {
  const before = [row(4, "Yes.", "fits", 6.5), row(13, "Off by 14.", "measure first"), row(19, "Over.", "over")];
  const now = [row(4, "Yes.", "fits", 6.9), row(13, "No.", "no problem found"), row(19, "Over.", "over")];
  const moved = movedRows(before, now);
  expect([...moved.keys()]).toEqual([4, 13]);
  expect(moved.get(4)).toEqual({ n: 4, figure: "6.5 mm" });
  expect(moved.get(13)).toEqual({ n: 13, answer: "Off by 14.", verdict: "measure first" });
  expect(movedWords(moved, before, now)).toEqual({ turned: ["13 measure first, now no problem found"], parts: "4" });
});

it("does not call a figure moved that reads the same", () => {
  expect(movedRows([row(4, "Yes.", "fits", 6.51)], [row(4, "Yes.", "fits", 6.49)]).size).toBe(0);
});

it("lists in words", () => {
  expect([listed([]), listed(["4"]), listed(["4", "5"]), listed(["4", "5", "6"])]).toEqual([
    "",
    "4",
    "4 and 5",
    "4, 5 and 6",
  ]);
});
