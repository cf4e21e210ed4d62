/**
 * Is uncertainty a haze in every picture of the page too? Each part that shows one is in the table; those that draw their own marks are
 * rendered here, and every small picture of the demos' questions is looked at: dust and a band in words, or the word that there is none.
 */
import { readdirSync, readFileSync } from "node:fs";
import { type Reckoning, reckon } from "@coldset/core/questions";
import { loadText, resolveBuild } from "@coldset/core/workshop";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { beforeAll, describe, expect, test, vi } from "vitest";

const HERE = new URL(".", import.meta.url);

/** "drawing": what it shows is made by the drawing room, whose own table proves it. "own": its marks are made in the file. */
const TABLE: Readonly<Record<string, "drawing" | "own" | "drawing and own">> = {
  "bicycle-picture.tsx": "drawing",
  "gap-picture.tsx": "drawing",
  "new-build-step.tsx": "drawing",
  "plan-picture.tsx": "drawing",
  "question-picture.tsx": "drawing",
  "residual-bar.tsx": "own",
  "row-picture.tsx": "drawing and own",
  "so-far.tsx": "drawing",
  "wall.tsx": "drawing",
};

/** A mark beside a word (a verdict, a hand) is hidden from readers and shows no quantity. */
function showsPicture(source: string): boolean {
  return /<Picture\b/.test(source) || /role="img"/.test(source);
}

function reckoned(name: string): Reckoning {
  const text = readFileSync(new URL(`../../demo/${name}.yaml`, HERE), "utf8");
  const loaded = loadText(text, `${name}.yaml`);
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  const resolved = resolveBuild(loaded.docs.map((d) => d.doc));
  if (resolved.kind === "refused") throw new Error(JSON.stringify(resolved.refusals));
  return reckon(resolved.resolved);
}

let rows: typeof import("./row-picture.js");
let bars: typeof import("./residual-bar.js");
beforeAll(async () => {
  // The settings ask the browser for its language.
  vi.stubGlobal("navigator", { language: "en" });
  rows = await import("./row-picture.js");
  bars = await import("./residual-bar.js");
});

test("every part that shows a picture is in the table, and no other", () => {
  const found = ["parts", "pages", "measure"].flatMap((room) =>
    readdirSync(new URL(`../${room}/`, HERE), "utf8")
      .filter((f) => f.endsWith(".tsx") && showsPicture(readFileSync(new URL(`../${room}/${f}`, HERE), "utf8")))
      .map((f) => (room === "parts" ? f : `${room}/${f}`)),
  );
  expect(found.sort()).toEqual(Object.keys(TABLE).sort());
  expect(showsPicture('<svg viewBox="0 0 1 1" role="img" />')).toBe(true);
});

const drawings = (html: string) =>
  [...html.matchAll(/<svg\b[^>]*role="img"[^>]*aria-label="([^"]*)"[\s\S]*?<\/svg>/g)].map((m) => ({
    label: (m[1] ?? "").replaceAll("&#x27;", "'"),
    dust: (m[0].match(/class="dust"/g) ?? []).length,
  }));

test("a residual's bar ends in dust; a reading that nothing checks is a box of dust", () => {
  const bar = (w: number | null) =>
    drawings(renderToStaticMarkup(createElement(bars.ResidualBar, { w, limit: 3.29, span: 6, hot: false })));
  expect(bar(2)).toEqual([{ label: "2.0 of its spread, ± 1.96 (95 %); the limit is 3.29.", dust: 1 }]);
  expect(bar(null)).toEqual([{ label: "Nothing else checks this reading.", dust: 1 }]);
  const two = [
    { w: 4, hot: true },
    { w: -1, hot: false },
  ];
  const stack = drawings(renderToStaticMarkup(createElement(bars.ResidualStack, { rows: two, limit: 3.29 })));
  expect(stack[0]?.dust).toBe(2);
  expect(stack[0]?.label).toContain("4.0, −1.0, each ± 1.96 (95 %)");
});

describe.each(["quayside", "moorside", "canalside"])("%s", (name) => {
  const r = reckoned(name);
  const shown = () =>
    r.board.flatMap((row) =>
      drawings(renderToStaticMarkup(createElement(rows.RowPicture, { row, r }))).map((d) => ({ n: row.n, ...d })),
    );

  test("each small picture has dust and its band in words, or says that there is none", () => {
    const all = shown();
    expect(all.length).toBeGreaterThan(5);
    for (const { n, label, dust } of all) {
      // Gates are open or shut: nothing in that picture has a band.
      if (n === 20) expect(label).toMatch(/gates are shut/);
      else if (dust > 0) expect(label, `question ${n}`).toMatch(/± \d|\d to \d/);
      else expect(label, `question ${n}`).toMatch(/as entered|no band|not measured/);
    }
  });
});
