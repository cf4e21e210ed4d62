/** Is a table of parts read as people write it, and every bad cell told with its row and column? */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { binWithParts } from "./bin-with-parts.js";
import { loadText } from "./load.js";
import { partsFromCsv } from "./parts-from-csv.js";

const QUAYSIDE = readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8");
const BIN = loadText(QUAYSIDE, "quayside.yaml");
const binText = BIN.kind === "loaded" ? (BIN.docs.find((d) => d.doc.kind === "bin")?.text ?? "") : "";

const parts = (text: string) => {
  const read = partsFromCsv(text, "parts.csv");
  if (read.kind === "refused") throw new Error(JSON.stringify(read.refusals));
  return read.parts;
};
const refusals = (text: string) => {
  const read = partsFromCsv(text, "parts.csv");
  if (read.kind === "parts") throw new Error(JSON.stringify(read.parts));
  return read.refusals;
};
const inBin = (text: string, given: string, choice?: "keep-mine" | "take-theirs" | "as-new") =>
  binWithParts(text, "harbour-bin", parts(given), { choice, suffix: "-b" });

describe("a table of parts", () => {
  it.each([
    [
      "commas",
      'id,kind,condition,mass,cost,qty,note,od,length\np1,post,B,310 g,12.5,2,"scratched, straight",27.2,350\n',
    ],
    [
      "semicolons and a decimal comma",
      "id;kind;condition;mass;cost;qty;note;od;length\np1;post;B;310 g;12,5;2;scratched, straight;27.2;35 cm\n",
    ],
    [
      "tabs",
      "id\tkind\tcondition\tmass\tcost\tqty\tnote\tod\tlength\np1\tpost\tB\t310 g\t12.5\t2\tscratched, straight\t27.2\t350\n",
    ],
    [
      "a byte order mark and other line ends",
      '\uFEFFid,kind,condition,mass,cost,qty,note,od,length\r\np1,post,B,310 g,12.5,2,"scratched, straight",27.2,350\r\n\r\n',
    ],
  ])("is read with %s", (_what, text) => {
    const [part] = parts(text);
    expect(part).toMatchObject({
      id: "p1",
      kind: "post",
      condition: "B",
      mass: "310 g",
      cost: 12.5,
      qty: 2,
      note: "scratched, straight",
    });
    const bin = inBin("kind: bin\nversion: 1\nid: harbour-bin\nparts: []\n", text);
    const loaded = bin.kind === "bin" ? loadText(bin.text, "bin") : undefined;
    const doc = loaded?.kind === "loaded" ? loaded.docs[0]?.doc : undefined;
    // 35 cm are 350 mm; 310 g stay grams.
    expect(doc?.kind === "bin" && doc.parts[0]).toMatchObject({
      mass: 310,
      cost: 12.5,
      qty: 2,
      ports: { od: 27.2, length: 350 },
    });
  });

  it("reads figures, inches, sizes, words and lists as the documents do; an empty cell and ? are not known", () => {
    const table = [
      "id;kind;condition;bsd;hub_ratios;rim_brake;steerer_od;size;width",
      "w1;wheel_rear;A;622;[0.75, 1, 1.33];no;;;135,5",
      'h1;headset;B;;;;"1 1/8""";;',
      "t1;tyre;C;;;;;584-47;",
      "w2;wheel_front;A;?;;;;;",
    ].join("\n");
    // Words of a closed list that look like figures.
    expect(parts("id;kind;condition;class\nc1;chain;A;9\n")).toHaveLength(1);
    expect(parts("id;kind;condition;spindle\nb1;bb;A;24\n")).toHaveLength(1);
    expect(parts(table).map((p) => p.ports)).toEqual([
      { bsd: 622, hub_ratios: [0.75, 1, 1.33], rim_brake: false, width: "135,5" },
      { steerer_od: '1 1/8"' },
      { size: "584-47" },
      { bsd: "?" },
    ]);
    const bin = inBin("kind: bin\nversion: 1\nid: harbour-bin\nparts: []\n", table);
    const loaded = bin.kind === "bin" ? loadText(bin.text, "bin") : undefined;
    const doc = loaded?.kind === "loaded" ? loaded.docs[0]?.doc : undefined;
    if (doc?.kind !== "bin") throw new Error("no bin");
    // An inch is 25.4 mm exactly (ISO 80000-3): 1 1/8 in = 28.575 mm.
    expect(doc.parts[1]?.ports).toMatchObject({ steerer_od: 28.575 });
    expect(doc.parts[0]?.ports).toMatchObject({ width: 135.5 });
    expect(doc.parts[3]?.ports).not.toHaveProperty("bsd", expect.any(Number));
  });

  it("tells every bad cell at once, with row, column, what stands there and what is allowed", () => {
    const table = [
      "id,kind,condition,mass,cost,qty,od,steerer_od",
      "ok,post,A,300,10,1,27.2,",
      "b d,post,A,300,10,1,27.2,",
      "p2,pots,A,300,10,1,27.2,",
      "p3,post,D,300,10,1,27.2,",
      "p4,post,A,heavy,10,1,27.2,",
      'p5,post,A,300,"1,250",1,27.2,',
      "p6,post,A,300,10,1.5,27.2,",
      "p7,post,A,300,10,1,272,",
      "p8,post,A,300,10,1,27.2,28.6",
      "ok,post,A,300,10,1,27.2,",
      ",post,A,300,10,1,27.2,",
      "p9,post,A,300,10,1,27.2,,7",
    ].join("\n");
    const told = refusals(table);
    expect(told.map((r) => r.at.replace("parts.csv, ", ""))).toEqual([
      "row 3, column id",
      "row 4, column kind",
      "row 5, column condition",
      "row 6, column mass",
      "row 7, column cost",
      "row 8, column qty",
      "row 9, column od",
      "row 10, column steerer_od",
      "row 11, column id",
      "row 12, column id",
      "row 13",
    ]);
    expect(told.find((r) => r.at.includes("row 4"))?.message).toContain('did you mean "post"');
    expect(told.find((r) => r.at.includes("row 7"))?.given).toBe("1,250");
    expect(told.find((r) => r.at.includes("row 10"))?.code).toBe("csv-not-of-this-kind");
    for (const r of told) expect(r.allowed, r.at).not.toBe("");
  });

  it.each([
    ["nothing", "", "csv-empty"],
    ["a heading alone", "id,kind,condition\n", "csv-empty"],
    ["a column that is missing", "id,kind\np1,post\n", "csv-column"],
    ["a column that is not known", "id,kind,condition,colour\np1,post,A,red\n", "csv-column"],
    ["a column twice", "id,kind,condition,od,od\np1,post,A,1,2\n", "csv-column"],
    ["a quote that is not closed", 'id,kind,condition,note\np1,post,A,"open\n', "csv-quotes"],
    ["too many rows", `id,kind,condition\n${"p,post,A\n".repeat(5001)}`, "csv-too-large"],
    ["too much text", "x".repeat(2_000_001), "file-too-large"],
  ])("refuses %s", (_what, text, code) => {
    expect(refusals(text).map((r) => r.code)).toContain(code);
  });

  it("answers any text with parts or with reasons", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 200 }), fc.boolean(), (text, headed) => {
        const read = partsFromCsv(headed ? `id,kind,condition,note,od\n${text}` : text, "any.csv");
        if (read.kind === "refused") expect(read.refusals.length).toBeGreaterThan(0);
        else for (const p of read.parts) expect(p.id).toMatch(/^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/);
      }),
      { seed: 11, numRuns: 200 },
    );
  });
});

describe("a bin with a table of parts", () => {
  it("keeps every line and comment that stands in it, and puts the new part at the end", () => {
    const bin = inBin(binText, "id,kind,condition,od,length\nnew1,post,B,27.2,350\n");
    if (bin.kind === "refused") throw new Error(JSON.stringify(bin.refusals));
    const before = binText.trimEnd().split("\n");
    const after = bin.text.trimEnd().split("\n");
    const comments = (lines: readonly string[]) => lines.filter((l) => l.includes("#")).length;
    expect(comments(after)).toBe(comments(before));
    expect(after.at(-1)).toContain("id: new1");
    const again = inBin(bin.text, "id,kind,condition,od,length\nnew1,post,B,27.2,350\n");
    expect(again.kind === "bin" && again.text).toBe(bin.text);
  });

  it("names a part that is there and differs, and waits for a choice", () => {
    const table = "id,kind,condition,od,length\nq43,post,C,27.2,350\n";
    const waits = inBin(binText, table);
    expect(waits.kind === "refused" && waits.refusals.map((r) => [r.code, r.at])).toEqual([
      ["import-differs", "bin harbour-bin q43"],
    ]);
    const mine = inBin(binText, table, "keep-mine");
    const there = (text: string, id: string) => {
      const loaded = loadText(text, "bin");
      const doc = loaded.kind === "loaded" ? loaded.docs[0]?.doc : undefined;
      return doc?.kind === "bin" ? doc.parts.find((p) => p.id === id) : undefined;
    };
    if (mine.kind === "refused") throw new Error("refused");
    expect(there(mine.text, "q43")).toEqual(there(binText, "q43"));
    const theirs = inBin(binText, table, "take-theirs");
    expect(theirs.kind === "bin" && there(theirs.text, "q43")?.condition).toBe("C");
    const beside = inBin(binText, table, "as-new");
    expect(beside.kind === "bin" && there(beside.text, "q43-b")?.condition).toBe("C");
    expect(beside.kind === "bin" && there(beside.text, "q43")).toEqual(there(binText, "q43"));
  });
});
