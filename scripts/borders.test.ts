/**
 * Would a bad import be noticed? Small trees are laid, one good and one full of bad imports, and each rule is seen to speak. A rule that
 * resolves nothing finds nothing, so the good tree is checked for what was seen as well.
 */
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { checkBorders } from "./borders.mjs";
import { ROOT } from "./setup.mjs";

const PACKAGES = ["core", "drawing", "store", "server", "web", "cli"];
const GOOD: Readonly<Record<string, string>> = {
  "core/data/index.ts": "export interface Row { readonly id: string }\n",
  "core/quantity/index.ts": 'import type { Row } from "../data/index.js";\nexport const name = (row: Row) => row.id;\n',
  "core/sheet/index.ts": 'export { name } from "../quantity/index.js";\n',
  "core/geometry/index.ts":
    'import { parse } from "yaml";\nimport "../quantity/index.js";\nexport const read = parse;\n',
  "core/plan/index.ts": 'export { read } from "../geometry/index.js";\n',
  "core/questions/index.ts": 'export { read } from "../plan/index.js";\n',
  "drawing/svg/index.ts": 'export { read } from "@coldset/core/geometry";\n',
  "store/records/index.ts": 'import "node:fs";\nexport { read } from "@coldset/core/plan";\n',
  "server/index.ts": 'import "@coldset/store/records";\nexport { read } from "@coldset/drawing/svg";\n',
  "web/main.tsx": 'export { read } from "@coldset/drawing/svg";\n',
  "cli/main.ts": 'import "@coldset/server";\nexport { read } from "@coldset/core/questions";\n',
};

const made: string[] = [];
afterAll(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function tree(files: Readonly<Record<string, string>>): string {
  const root = mkdtempSync(join(tmpdir(), "borders-"));
  made.push(root);
  mkdirSync(join(root, "node_modules", "@coldset"), { recursive: true });
  for (const name of PACKAGES) {
    mkdirSync(join(root, name));
    cpSync(join(ROOT, name, "package.json"), join(root, name, "package.json"));
    symlinkSync(join(root, name), join(root, "node_modules", "@coldset", name), "junction");
  }
  for (const name of ["yaml", "kysely"]) {
    cpSync(join(ROOT, "node_modules", name), join(root, "node_modules", name), { recursive: true });
  }
  for (const name of ["tsconfig.base.json", "tsconfig.check.json"]) cpSync(join(ROOT, name), join(root, name));
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, file)), { recursive: true });
    writeFileSync(join(root, file), text);
  }
  return root;
}

describe("borders", () => {
  it("finds nothing in a good tree, and has looked at all of it", async () => {
    expect(await checkBorders({ root: tree(GOOD) })).toEqual({ modules: Object.keys(GOOD).length, problems: [] });
  });

  it("counts a run over no modules as a failure", async () => {
    const { modules, problems } = await checkBorders({ root: tree({}) });
    expect(modules).toBe(0);
    expect(problems).toHaveLength(1);
  });

  const bad: readonly (readonly [rule: string, file: string, text: string])[] = [
    ["core-is-pure", "core/geometry/node.ts", 'import "node:fs";\n'],
    ["core-is-pure", "core/geometry/library.ts", 'import "kysely";\n'],
    ["core-is-below-all", "core/plan/drawing.ts", 'import "@coldset/drawing/svg";\n'],
    ["drawing-on-core-only", "drawing/svg/store.ts", 'import "@coldset/store/records";\n'],
    [
      "drawing-on-core-only",
      "drawing/svg/types-of-store.ts",
      'import type * as all from "@coldset/store/records";\nexport type A = typeof all;\n',
    ],
    ["store-on-core-only", "store/records/drawing.ts", 'import "@coldset/drawing/svg";\n'],
    ["server-is-an-edge", "server/cli.ts", 'import "../cli/main.js";\n'],
    ["cli-is-an-edge", "cli/web.ts", 'import "../web/main.js";\n'],
    ["web-needs-no-machine", "web/server.ts", 'import "@coldset/server";\n'],
    ["web-reaches-no-node", "web/node.ts", 'import "node:path";\n'],
    ["web-reaches-no-node", "web/far-down.ts", 'import "../drawing/svg/node.js";\n'],
    ["quantity-stands-alone", "core/quantity/sheet.ts", 'import "../sheet/index.js";\n'],
    ["sheet-on-quantity-only", "core/sheet/room.ts", 'import "../geometry/index.js";\n'],
    ["rooms-do-not-ask", "core/plan/question.ts", 'import "../questions/index.js";\n'],
    ["core-level-2-stays-below", "core/geometry/plan.ts", 'import "../plan/index.js";\n'],
    ["resolves", "drawing/svg/nowhere.ts", 'import "@coldset/core/no-such-room";\n'],
    ["no-cycles", "core/plan/a.ts", 'import { b } from "./b.js";\nexport const a = () => b;\n'],
  ];
  let problems: readonly string[] = [];
  beforeAll(async () => {
    const helpers = {
      "drawing/svg/node.ts": 'import "node:fs";\n',
      "core/plan/b.ts": 'import { a } from "./a.js";\nexport const b = () => a;\n',
    };
    const files = Object.fromEntries(bad.map(([, file, text]) => [file, text]));
    problems = (await checkBorders({ root: tree({ ...GOOD, ...helpers, ...files }) })).problems;
  });
  it.each(bad)("%s speaks on %s", (rule, file) => {
    expect(
      problems.filter((problem) => problem.includes(`: ${file} -> `) && problem.includes(`(${rule})`)),
    ).not.toEqual([]);
  });
});
