import type { Drawing } from "@coldset/drawing";
import { describe, expect, it } from "vitest";
import { numbersOf } from "./numbers.js";
import { decimalOf } from "./settings.js";

const point = { x: 0, y: 0 };
const DRAWING: Drawing = {
  label: "The wheelbase is 1052.0 mm.",
  view: { xMm: 0, yMm: 0, widthMm: 10, heightMm: 10 },
  widthMm: 10,
  nominalWidthPx: 100,
  items: [
    {
      kind: "group",
      name: "dimensions",
      items: [
        { kind: "dimension", role: "dimension", from: point, to: point, offsetMm: 3, text: "126", was: "130" },
        { kind: "text", role: "figure", at: point, text: "71.1°" },
        { kind: "text", role: "figure", at: point, text: "9.0 mm" },
      ],
    },
  ],
};

describe("what a page shows, in the reader's way", () => {
  it("is the very same answer in millimetres with a point", () => {
    const answer = { words: ["9.0 mm"] };
    expect(numbersOf("metric", "point").told(answer)).toBe(answer);
    expect(numbersOf("metric", "point").drawn(DRAWING)).toBe(DRAWING);
  });

  it("says sentences anew and keeps names, numbers and what it is found by", () => {
    const { told } = numbersOf("inch", "comma");
    const answer = { id: "shim 1.5", at: "donor.gaps.1.5", value: 9, words: ["9.0 mm left"], rule: "S1.2" };
    // 9 / 25.4 = 0.3543
    expect(told(answer)).toEqual({ ...answer, words: ["9,0 mm (0,354 in) left"] });
    expect(told(answer)).toBe(told(answer));
  });

  it("draws inches in place of millimetres, angles as they are; its name has both", () => {
    const { label, items } = numbersOf("inch", "point").drawn(DRAWING, "mm");
    // 1052 / 25.4 = 41.4173, 126 / 25.4 = 4.9606, 130 / 25.4 = 5.1181
    expect(label).toBe("The wheelbase is 1052.0 mm (41.417 in).");
    expect(JSON.stringify(items)).toContain('"text":"4.96 in","was":"5.12 in"');
    expect(JSON.stringify(items)).toContain('"text":"71.1°"');
    expect(JSON.stringify(items)).toContain('"text":"0.354 in"');
  });

  it("guesses the decimal sign from the language of the browser", () => {
    // CLDR: German, French and Dutch write a comma, English and Japanese a point.
    expect(["de-DE", "fr", "nl-BE", "en-GB", "en-US", "ja"].map(decimalOf)).toEqual([
      "comma",
      "comma",
      "comma",
      "point",
      "point",
      "point",
    ]);
  });
});
