/** Is everything of the reckoning in the book, and nothing more? Read back from the PDF itself. */
import { readFileSync } from "node:fs";
import { aboutWords, type Reckoning, reckon, ruleSentence } from "@coldset/core/questions";
import { STANDING_TEXT } from "@coldset/core/safety";
import { loadText, resolveBuild } from "@coldset/core/workshop";
import { describe, expect, test } from "vitest";
import { printBook } from "../book/index.js";
import { STANDING_TEXT as PRINTED_STANDING_TEXT } from "../pdf/index.js";
import { pageText, readPdf } from "../pdf/read-back.js";
import { bookOfBuild } from "./book-of-build.js";

const QUAYSIDE = readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8");

function reckoned(change: (text: string) => string = (t) => t): Reckoning {
  const loaded = loadText(change(QUAYSIDE), "quayside.yaml");
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  const resolved = resolveBuild(loaded.docs.map((d) => d.doc));
  if (resolved.kind === "refused") throw new Error(JSON.stringify(resolved.refusals));
  return reckon(resolved.resolved);
}

const close = (text: string) => text.replace(/\s+/g, "");
function pagesOf(r: Reckoning): string[] {
  const printed = printBook(bookOfBuild(r, { revision: "2026-05-02" }));
  expect(printed.warnings).toEqual([]);
  return readPdf(printed.pdf).map(pageText);
}

describe("the book of Quayside", () => {
  const r = reckoned();
  const pages = pagesOf(r);
  const whole = pages.join("");

  test("has four sheets or more, each with the standing text, which is one text everywhere", () => {
    expect(pages.length).toBeGreaterThanOrEqual(4);
    expect(PRINTED_STANDING_TEXT).toBe(STANDING_TEXT);
    for (const page of pages) {
      expect(page).toContain(close(STANDING_TEXT));
      expect(page).toContain("2026-05-02");
    }
  });

  test("shows every question with its answer, every joint with its verdict, every operation", () => {
    for (const row of r.board) {
      expect(whole).toContain(close(row.question));
      if (row.verdict !== "not checked yet") expect(whole).toContain(close(row.answer));
    }
    for (const j of r.joints.joints)
      if (j.verdict !== "not checked yet") expect(whole).toContain(close(`${j.id}${j.title}${j.verdict}`));
    for (const o of r.resolved.build.operations) expect(whole).toContain(close(o.what));
    for (const j of r.joints.joints) for (const m of j.remedies) expect(whole).toContain(close(m.what));
  });

  test("draws before and after, and says how surely", () => {
    expect(whole).toContain("Beforeinpencil,afterinink,toscale.");
    expect(whole).toMatch(/head70\.\d°±0\.\d/);
    expect(whole).toContain(close("One reading of the donor was set aside; see question 13."));
  });

  test("carries every rule that fires, with the reason and another way", () => {
    for (const f of r.rules) {
      expect(whole).toContain(close(`(${f.rule}) on`));
      expect(whole).toContain(close(ruleSentence(f)));
      expect(whole).toContain(close(aboutWords(r, f.about)));
      expect(whole).toContain(close(f.insteadDo));
    }
  });

  test("has a line to sign for every gate: of the work, of an accepted risk, of a safety rule", () => {
    for (const label of [
      "t07 cold set 130.4 to 135 and align ends: risk accepted",
      "t08 dry fit everything bare",
      "t11 re-align and dye check",
      "t19 signed check and first ride",
      "S6 tab load and heat reach looked at",
    ])
      expect(whole).toContain(close(label));
  });

  test("says what every open joint is held against, and a caution before the way it belongs to", () => {
    for (const j of r.joints.joints.filter((x) => x.verdict === "measure first" || x.verdict === "fits with work"))
      for (const n of j.numbers) expect(whole).toContain(close(`${n.name}`));
    const j9 = r.joints.joints.find((j) => j.id === "J9");
    const caution = j9?.cautions[0]?.message ?? "";
    expect(caution).not.toBe("");
    expect(whole.indexOf(close(caution))).toBeLessThan(whole.indexOf(close(j9?.remedies[0]?.what ?? "")));
    for (const j of r.joints.joints) for (const c of j.cautions) expect(whole).toContain(close(c.message));
  });

  test("has no double stops and no half-width that is rounded to nothing", () => {
    expect(whole).not.toMatch(/\.;|;\.|±0\.0+(?![\d])/);
  });

  // Prices of the invented demo, added up by hand
  test("adds up the sum", () => {
    expect(whole).toContain(close("As chosen 587 over by 27"));
    expect(whole).toContain(close("With cable discs, with new cables 552 within, 8 to spare"));
  });
});

test("while a refusal stands: stamped, no drawing, no plan, no buy list, no remedy", () => {
  const r = reckoned((t) => t.replace("fork: FA", "fork: FC"));
  const whole = pagesOf(r).join("");
  expect(whole).toContain("NOTTOBEBUILT");
  expect(whole).toContain(close("Refused (S5) on FC, fork."));
  for (const words of ["Before in pencil", "In this order", "Buy list", "Ways to make it fit"])
    expect(whole).not.toContain(close(words));
});

test("too little measured: no drawing, and the book says why", () => {
  const r = reckoned((t) => t.replace(/^lower_headset_stack: .*$/m, ""));
  const whole = pagesOf(r).join("");
  expect(whole).toContain(close("No drawing. The bicycle cannot be drawn yet: Lower headset stack"));
  expect(whole).not.toContain("NaN");
});
