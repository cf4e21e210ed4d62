import { readFileSync } from "node:fs";
import { readQuantity } from "@coldset/core/quantity";
import { loadText } from "@coldset/core/workshop";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bothAtPlace, bothReadings } from "./both-readings.js";

describe("two readings of one length", () => {
  // By hand, as in the file's head.
  it.each([
    [549, 551, "550 ± 1 mm"],
    ["549 ± 0.5", 551, "550 ± 1.5 mm"],
    ["55,1 cm", 549, "550 ± 1 mm"],
    ["1 in", 25.4, "25.4 ± 0 mm"],
    [441, "441.5", "441.25 ± 0.25 mm"],
    ["71°", "72 deg", "71.5 ± 0.5°"],
  ])("%s and %s are %s", (a, b, both) => {
    expect(bothReadings(a, b)).toBe(both);
  });

  it.each([
    ["?", 551],
    [undefined, 551],
    ["steel", 551],
    [[1], 551],
  ])("%j and %j are no two readings", (a, b) => {
    expect(bothReadings(a, b)).toBeUndefined();
  });

  it("covers both with their spreads, and can be read again", () => {
    const mm = fc.integer({ min: 0, max: 200_000 }).map((n) => n / 100);
    const spread = fc.integer({ min: 0, max: 500 }).map((n) => n / 100);
    fc.assert(
      fc.property(mm, spread, mm, spread, (a, sa, b, sb) => {
        const text = bothReadings(`${a} ± ${sa}`, `${b} ± ${sb}`) ?? "";
        const read = readQuantity(text, "length");
        if (read.kind !== "read") throw new Error(text);
        const half = (read.plusMinus ?? 0) + 0.0011;
        for (const [v, s] of [
          [a, sa],
          [b, sb],
        ] as const) {
          expect(read.value - half).toBeLessThanOrEqual(v - s);
          expect(read.value + half).toBeGreaterThanOrEqual(v + s);
        }
      }),
      { seed: 7 },
    );
  });

  it("is offered for what is measured on the donor, and for nothing else", () => {
    const loaded = loadText(
      readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8"),
      "quayside.yaml",
    );
    if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
    const plain = loaded.docs.find((d) => d.doc.kind === "donor")?.plain;
    expect(bothAtPlace({ kind: "donor", path: ["measured", "top_tube_cc"], plain }, 549, 551)).toBe("550 ± 1 mm");
    expect(bothAtPlace({ kind: "donor", path: ["label"], plain }, 549, 551)).toBeUndefined();
    expect(bothAtPlace({ kind: "build", path: ["measured", "top_tube_cc"], plain }, 549, 551)).toBeUndefined();
  });
});
