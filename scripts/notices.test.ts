/** Would a library with an unknown licence, or a page that lags behind, be noticed? */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { checkNotices, notices } from "./notices.mjs";

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function checkout(licence: string): string {
  const root = mkdtempSync(join(tmpdir(), "notices-"));
  made.push(root);
  const packages = {
    "": {},
    "node_modules/runs": { version: "1.0.0", license: licence },
    "node_modules/builds": { version: "2.0.0", license: "MIT", dev: true },
  };
  writeFileSync(join(root, "package-lock.json"), JSON.stringify({ packages }));
  mkdirSync(join(root, "node_modules", "runs"), { recursive: true });
  writeFileSync(join(root, "node_modules", "runs", "LICENSE"), "You may.\r\n");
  return root;
}

describe("notices", () => {
  it("lists what runs, with its text, and not what builds", () => {
    const { text, problems } = notices(checkout("MIT"));
    expect(problems).toEqual([]);
    expect(text).toContain("| runs | 1.0.0 | MIT |");
    expect(text).toContain("### runs 1.0.0\n\n```text\nYou may.\n```");
    expect(text).not.toContain("builds");
  });

  it("asks for a look at an unknown licence", () => {
    expect(notices(checkout("Own-1.0")).problems).toHaveLength(1);
  });

  it("says that the page lags behind", () => {
    const root = checkout("MIT");
    expect(checkNotices({ root }).problems).toHaveLength(1);
    writeFileSync(join(root, "THIRD-PARTY-NOTICES.md"), notices(root).text);
    expect(checkNotices({ root }).problems).toEqual([]);
  });
});
