/** Do the papers on threats and on the security standard name tests that exist, and does every row say where it stands? */
import fs from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT } from "./setup.mjs";

const PAPERS = ["docs/threats.md", "docs/asvs.md"];
/** `[file](link) “name”, “name”` */
const NAMED = /\[([\w./-]+\.test\.tsx?)\]\((?:\.\.\/)?[\w./-]+\)((?:,? “[^”]+”)*)/g;

interface Named {
  readonly file: string;
  readonly test: string;
}

function namedIn(paper: string): readonly Named[] {
  return [...paper.matchAll(NAMED)].flatMap(([, file = "", names = ""]) =>
    [...names.matchAll(/“([^”]+)”/g)].map(([, test = ""]) => ({ file, test })),
  );
}

/** Only a title counts: the name as it stands behind `it(`, `test(` or the brackets of `each`. */
function missing({ file, test }: Named): boolean {
  const place = path.join(ROOT, file);
  if (!fs.existsSync(place)) return true;
  const source = fs.readFileSync(place, "utf8");
  return !["(", "(\n    ", "(\n  "].some((before) => source.includes(`${before}"${test}"`));
}

describe("the tests that the papers name", () => {
  it.each(PAPERS)("exist: %s", (paper) => {
    const named = namedIn(fs.readFileSync(path.join(ROOT, paper), "utf8"));
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter(missing)).toEqual([]);
  });

  it("would be missed", () => {
    const here = "[scripts/named-tests.test.ts](../scripts/named-tests.test.ts)";
    expect(namedIn(`${here} “would be missed”, “was never written”`).filter(missing)).toEqual([
      { file: "scripts/named-tests.test.ts", test: "was never written" },
    ]);
    expect(namedIn("[core/none.test.ts](../core/none.test.ts) “a”").filter(missing)).toHaveLength(1);
  });
});

describe("the papers", () => {
  it("say in every row of the threats how it is held, by a test or with the words why not", () => {
    const rows = fs
      .readFileSync(path.join(ROOT, "docs/threats.md"), "utf8")
      .split("\n")
      .filter((line) => line.startsWith("| ") && !line.startsWith("| Who"));
    expect(rows.length).toBeGreaterThan(40);
    for (const row of rows) {
      const [, , held = "", test = ""] = row.split(" | ").length === 3 ? ["", ...row.split(" | ")] : [];
      expect(held.length, row).toBeGreaterThan(10);
      if (!test.includes(".test.ts")) expect(held, row).toMatch(/^(Not held|No CSV)/);
    }
  });
});
