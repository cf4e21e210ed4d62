/** Would a dead link in the papers be noticed? */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { checkDocs } from "./docs.mjs";

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function paper(readme: string): string {
  const root = mkdtempSync(join(tmpdir(), "docs-"));
  made.push(root);
  mkdirSync(join(root, "docs"));
  writeFileSync(join(root, "README.md"), readme);
  writeFileSync(join(root, "docs", "guide.md"), "# The guide\n\n## First steps, briefly\n");
  return root;
}

describe("docs", () => {
  it("lets good links, outside links and code alone", () => {
    const text =
      "[a](docs/guide.md) [b](docs/guide.md#first-steps-briefly) [c](#top) [d](https://example.org/x)\n# Top\n`[e](no.md)`\n`docs/guide.md`\n";
    expect(checkDocs({ root: paper(text) })).toEqual({ papers: 2, problems: [] });
  });

  it.each([
    ["a link to no file", "[a](docs/gone.md)"],
    ["a link to no heading", "[a](docs/guide.md#gone)"],
    ["a path in the README's table", "| How far? | `docs/gone.ts` |"],
  ])("finds %s", (_, text) => {
    const { problems } = checkDocs({ root: paper(text) });
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain("gone");
  });

  it("finds a page of docs/methods that the README's table does not lead to", () => {
    const root = paper("| How far? | [a](docs/methods/a.md) |\n\n[b](docs/methods/b.md)\n");
    mkdirSync(join(root, "docs", "methods"));
    for (const name of ["a.md", "b.md"]) writeFileSync(join(root, "docs", "methods", name), "# A page\n");
    expect(checkDocs({ root }).problems).toEqual(["docs: README.md has no row in its table for docs/methods/b.md"]);
  });

  it("counts a folder without papers as a failure", () => {
    const root = mkdtempSync(join(tmpdir(), "docs-"));
    made.push(root);
    expect(checkDocs({ root }).problems).toHaveLength(1);
  });
});
