/** What happens to inputs that are made to do harm? Each is answered quickly, with a refusal, and nothing is kept of it. */
import { ALL_SHEETS } from "@coldset/core/sheets";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testWorkshop } from "./test-workshop.js";

let w: Awaited<ReturnType<typeof testWorkshop>>;
beforeAll(async () => {
  w = await testWorkshop({ sheets: new Map(ALL_SHEETS.map((sheet) => [sheet.id, sheet])) as never });
});
afterAll(() => w.end());

/**
 * Far above what any of these takes on a machine that is busy with other things (they grow with their length and no
 * faster), far below what a blow-up takes: hours, or no end.
 */
const SOON_MS = 30_000;
const soon = async (ask: () => Response | Promise<Response>) => {
  const began = performance.now();
  const response = await ask();
  expect(performance.now() - began).toBeLessThan(SOON_MS);
  return response;
};

describe("texts that grow when they are read", () => {
  // The "billion laughs": nine levels of ten references each make 10^9 entries out of 400 letters.
  const laughs = ["a: &a [x,x,x,x,x,x,x,x,x,x]"];
  for (let level = 1; level < 10; level++) {
    const [above, here] = [String.fromCharCode(96 + level), String.fromCharCode(97 + level)];
    laughs.push(`${here}: &${here} [${Array(10).fill(`*${above}`).join(",")}]`);
  }

  it.each([
    ["references to references", `kind: route\nversion: 1\nid: x\n${laughs.join("\n")}\nsections: *j\n`],
    ["a thing that holds itself", "kind: route\nversion: 1\nid: x\nsections: &a [*a]\n"],
    ["merge keys", `kind: route\nversion: 1\nid: x\n${"<<: *a\n".repeat(1_000)}`],
    ["half a million open brackets", "[".repeat(500_000)],
    ["half a million indents", Array.from({ length: 900 }, (_, i) => `${" ".repeat(i)}a:`).join("\n")],
    ["a tag that would make something", 'kind: !!js/function "function(){}"\nversion: 1\nid: x\n'],
    ["200 000 documents", "---\n".repeat(200_000)],
    ["200 000 ends of documents", "...\n".repeat(200_000)],
    ["20 000 closing brackets", "}\n".repeat(20_000)],
    ["directives that do not end", "%A\n".repeat(20_000)],
    ["names of places, one a line", "&a\n".repeat(20_000)],
    ["tags, one a line", "!a\n".repeat(20_000)],
    ["lists in lists in a line", "- ".repeat(100_000)],
    ["nothing but line ends", "\n".repeat(900_000)],
    ["remarks only", "#\n".repeat(50_000)],
    ["references to nothing", "- *a\n".repeat(20_000)],
    ["quotes that open and close", "- ''\n".repeat(20_000)],
    ["a key of a million letters", `? ${"a".repeat(1_000_000)}\n: 1\n`],
  ])("are refused: %s", async (_what, text) => {
    const before = await w.workshop.listDocuments();
    const refused = await soon(() => w.post("/api/documents", { text }));
    expect(refused.status).toBe(422);
    expect((await refused.text()).length).toBeLessThan(50_000);
    expect(await w.workshop.listDocuments()).toEqual(before);
  });
});

describe("texts that make a pattern go back and forth", () => {
  const long = 200_000;
  const texts = [
    "1".repeat(long),
    `${"1".repeat(long)}x`,
    `${" ".repeat(long)}x`,
    `${"1 ".repeat(long / 2)}x`,
    `${"1/".repeat(long / 2)}x`,
    `${"1,".repeat(long / 2)}x`,
    `${"1e".repeat(long / 2)}x`,
    `${"-".repeat(long)}1`,
    `${"1±".repeat(long / 2)}x`,
    `${"M1x".repeat(long / 3)}!`,
    `${"½".repeat(long)}!`,
    `${"1 1/8 in ".repeat(long / 9)}!`,
    `${"\t\n ".repeat(long / 3)}!`,
    `${"a".repeat(long)}!`,
  ];

  it("are refused at once where a length, a title or an id is asked", async () => {
    for (const value of texts)
      for (const [kind, id, path] of [
        ["donor", "q1", ["measured", "chainstay"]],
        ["build", "quayside", ["title"]],
        ["bin", "quayside", ["id"]],
      ] as const) {
        const response = await soon(() => w.post(`/api/documents/${kind}/${id}/edits`, { path, value, revision: 1 }));
        expect(response.status, `${kind} ${value.slice(0, 12)}`).toBeGreaterThanOrEqual(400);
        expect(response.status).toBeLessThan(500);
      }
  });

  it("are refused at once where a sheet asks for a number", async () => {
    for (const sheet of ALL_SHEETS) {
      const field = sheet.fields.find((f) => f.kind === "number");
      if (field === undefined) continue;
      for (const value of texts)
        expect((await soon(() => w.post(`/api/sheets/${sheet.id}`, { [field.key]: value }))).status).toBe(422);
    }
  });
});

describe("answers to hostile input", () => {
  it("stay small: what was sent is not sent back at length", async () => {
    const many = { path: Array(12).fill("a".repeat(200)), value: "x".repeat(100_000), revision: 1, ...keys(5_000) };
    const response = await w.post("/api/documents/donor/q1/edits", many);
    expect(response.status).toBe(400);
    expect((await response.text()).length).toBeLessThan(20_000);
  });

  it("are never a page: text that looks like one comes back as JSON that is not sniffed", async () => {
    const response = await w.ask("/api/documents/donor/<script>alert(1)<%2fscript>");
    expect(response.status).toBe(404);
    expect(response.headers.get("content-type")).toMatch(/^application\/json/);
    expect(response.headers.get("x-content-type-options")).toBe("nosniff");
    const missing = await w.ask("/<script>alert(1)<%2fscript>.js");
    expect(await missing.text()).not.toContain("script");
  });

  it("hold no header that was smuggled in through a name", async () => {
    const response = await w.ask("/api/book/x%0d%0aSet-Cookie:%20a=b.pdf");
    expect(response.status).toBe(404);
    expect(response.headers.get("set-cookie")).toBeNull();
  });
});

const keys = (n: number) => Object.fromEntries(Array.from({ length: n }, (_, i) => [`key${i}`, i]));
