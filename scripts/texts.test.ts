/** Would a text that stands outside the one table be noticed, and a row that nothing says? */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { checkTexts } from "./texts.mjs";

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function tree(files: Readonly<Record<string, string>>): string {
  const root = mkdtempSync(join(tmpdir(), "texts-"));
  made.push(root);
  for (const [place, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, place)), { recursive: true });
    writeFileSync(join(root, place), text);
  }
  return root;
}

describe("texts", () => {
  it.each([
    ["web/page.tsx", "export const Page = () => <p>Words here</p>;", "Words here"],
    ["web/page.tsx", "export const Page = () => <p>{1} mm</p>;", "mm"],
    ["core/plan/x.ts", 'export const a = "Measure the hub between its faces.";', "Measure the hub between its faces."],
    ["cli/x.ts", `export const a = (n: number) => \`The gap is \${n} mm, too small.\`;`, "The gap is … mm, too small."],
    ["web/page.tsx", 'export const P = (p: { on: boolean }) => <p>{p.on ? "kept" : null}</p>;', "kept"],
    ["web/page.tsx", 'export const P = () => <i>{"of so many"}</i>;', "of so many"],
    ["web/page.tsx", 'export const P = () => <input aria-label="width" />;', "width"],
    ["web/page.tsx", `export const P = (p: { n: number }) => <b>{\`\${p.n} days\`}</b>;`, "… days"],
    ["web/page.tsx", 'export const STATIONS = [["ask", "Ask"]];', "Ask"],
    ["web/page.tsx", 'export const P = (n: number) => say("web.p.x", { is: n > 1 ? "are" : W });', "are"],
    ["cli/x.ts", 'export const f = (page: Page) => page.text([["strong", "next"], "2"]);', "next"],
    ["cli/x.ts", 'export const f = (page: Page) => page.table([["2"]], { heads: ["mind"] });', "mind"],
    ["cli/x.ts", 'export const f = (page: Page) => page.heading("Given:");', "Given:"],
  ])("finds words in %s", (place, text, words) => {
    expect(checkTexts({ root: tree({ [place]: `// a line before\n${text}\n` }) }).problems).toEqual([
      `texts: ${place}:2: belongs into core/texts: ${words}`,
    ]);
  });

  it("finds a row that nothing says", () => {
    const table = 'export const t = {\n  "web.page.a": "Words here",\n  "web.page.b": "Others",\n} as const;\n';
    const page = 'export const Page = () => <p>{say("web.page.a")}</p>;\n';
    expect(checkTexts({ root: tree({ "core/texts/web.ts": table, "web/page.tsx": page }) }).problems).toEqual([
      "texts: core/texts/web.ts: nothing says web.page.b",
    ]);
  });

  it("takes no name for a text: styles, keys, files, comparisons, classes, and words of the other rooms", () => {
    const names = [
      'export const a = (page: Page, v: string) => page.text([[v === "open" ? "open" : "bad", v]]);',
      'export const b = (p: P) => <p className={p.on ? "kept" : "lost"} data-x="of">{p.kind === "donor" ? p.a : p.b}</p>;',
      'export const c = (p: P) => <ul>{["donor", "rider"].map((k) => p[k])}</ul>;',
      'export const d = say("web.page.a");',
    ].join("\n");
    const files = {
      "web/page.tsx": names,
      "cli/x.ts": names.split("\n")[0] ?? "",
      "core/plan/x.ts": 'export const e = "Day";',
    };
    expect(checkTexts({ root: tree(files) })).toEqual({ files: 3, problems: [] });
  });

  it("lets what is for machines and programmers alone", () => {
    const text =
      'export const f = () => {\n  throw new Error("This can only be a fault of ours.");\n};\nexport const sql = (db: { exec(s: string): void }) => db.exec("SELECT one FROM the table, please.");\n';
    expect(checkTexts({ root: tree({ "store/x.ts": text }) })).toEqual({ files: 1, problems: [] });
  });
});
