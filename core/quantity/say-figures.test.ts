import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readQuantity } from "./read-quantity.js";
import { PLAIN_WAY, sayFigures, sayNumber, speakFigures, unitIn } from "./say-figures.js";

const INCH = { units: "inch", decimal: "point" } as const;
const COMMA = { units: "metric", decimal: "comma" } as const;
const BOTH = { units: "inch", decimal: "comma" } as const;

/** Hand calculations with 1 in = 25.4 mm and 1 lb = 0.45359237 kg (international yard and pound agreement of 1959). */
describe("a sentence in the reader's way", () => {
  it.each([
    // 551 / 25.4 = 21.6929
    ["The top tube reads 551 mm.", INCH, "The top tube reads 551 mm (21.69 in)."],
    // 9.0 / 25.4 = 0.3543; 0.4 / 25.4 = 0.0157
    ["9.0 ± 0.4 mm left", INCH, "9.0 ± 0.4 mm (0.354 ± 0.016 in) left"],
    // 12 and 14 / 25.4 = 0.4724 and 0.5512
    ["12 to 14 mm", INCH, "12 to 14 mm (0.47 to 0.55 in)"],
    // 25 / 0.45359237 = 55.12
    ["a load of 25 kg", INCH, "a load of 25 kg (55 lb)"],
    // 1 lbf ft = 1.35582 Nm; 40 / 1.35582 = 29.50
    ["40 Nm", INCH, "40 Nm (29.5 lbf ft)"],
    ["to ± 0.3 mm", INCH, "to ± 0.3 mm (± 0.012 in)"],
    ["9.0 ± 0.4 mm", COMMA, "9,0 ± 0,4 mm"],
    ["9.0 mm", BOTH, "9,0 mm (0,354 in)"],
    ["−3.25 mm", BOTH, "−3,25 mm (−0,1280 in)"],
  ])("%s", (text, way, said) => {
    expect(sayFigures(text, way)).toBe(said);
    // What was said already is not said again.
    expect(sayFigures(said, way)).toBe(said);
  });

  it.each([
    "ISO 4210-6:2023, clause 4.3",
    "the thread 1.37x24",
    "Edition 2.0.1",
    "q3.5x",
    "section 4.2 of it",
    "100 mm² of steel",
    "210 N/mm² and 3 kg/m",
    "2026-05-02",
  ])("leaves alone: %s", (text) => {
    expect(sayFigures(text, BOTH)).toBe(text);
  });

  it("in a drawing one figure stands in the other's place, and a dimension is a length", () => {
    expect(sayFigures("551.0 ± 0.6", INCH, { instead: true, bareUnit: "mm" })).toBe("21.693 ± 0.024 in");
    expect(sayFigures("was 126", INCH, { instead: true, bareUnit: "mm" })).toBe("was 4.96 in");
    expect(sayFigures("6 or more", INCH, { bareUnit: "mm" })).toBe("0.24 in or more");
    expect(sayFigures("needed to ± 0.5", INCH, { bareUnit: "mm" })).toBe("needed to ± 0.020 in");
    expect(sayFigures("3 days", INCH, { bareUnit: "mm" })).toBe("3 days");
    expect(sayFigures("12 cm", INCH, { bareUnit: "mm" })).toBe("12 cm");
    expect(sayFigures("t08", INCH, { bareUnit: "mm" })).toBe("t08");
    expect(sayFigures("9 mm left", INCH, { bareUnit: "mm" })).toBe("9 mm (0.35 in) left");
    expect(sayFigures("9 mm", INCH, { instead: true })).toBe("0.35 in");
    expect(sayFigures("71.06°", INCH, { instead: true, bareUnit: "mm" })).toBe("71.06°");
  });

  it("is said in words to a voice", () => {
    expect(speakFigures("9.0 ± 0.4 mm and 71°")).toBe("9.0 plus or minus 0.4 millimetres and 71 degrees");
    expect(speakFigures("± 0,012 in")).toBe("plus or minus 0,012 inches");
  });

  it("changes nothing in millimetres with a point", () => {
    fc.assert(
      fc.property(fc.string(), (text) => sayFigures(text, PLAIN_WAY) === text),
      { seed: 8 },
    );
  });
});

describe("what is shown in inches reads back as the same length", () => {
  it("within half the last digit that was shown in millimetres", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -30_000, max: 30_000 }),
        fc.integer({ min: 0, max: 2 }),
        fc.constantFrom(INCH, BOTH),
        fc.constantFrom("mm", "kg"),
        (count, decimals, way, unit) => {
          const value = count / 10 ** decimals;
          const shown = unitIn(unit, decimals, way);
          const text = `${sayNumber(value * shown.times, shown.decimals, way)} ${shown.unit}`;
          const read = readQuantity(text, unit === "mm" ? "length" : "mass");
          // "1,052 in" could be read two ways when it is typed: refused with three ways to write it, never misread.
          if (read.kind === "unreadable") return read.code === "ambiguous-thousands";
          return read.kind === "read" && Math.abs(read.value - value) <= 0.5 * 10 ** -decimals + 1e-9;
        },
      ),
      { seed: 25, numRuns: 2000 },
    );
  });

  it("the figure beside a length in a sentence is that length", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20_000 }), fc.integer({ min: 0, max: 2 }), (count, decimals) => {
        const value = count / 10 ** decimals;
        const said = sayFigures(`It is ${value.toFixed(decimals)} mm wide.`, INCH);
        const there = /\((.*)\)/.exec(said)?.[1] ?? "";
        const read = readQuantity(there, "length");
        return read.kind === "read" && Math.abs(read.value - value) <= 0.5 * 10 ** -decimals + 1e-9;
      }),
      { seed: 26 },
    );
  });
});

it("a figure that could be two is refused, with three ways to write it", () => {
  const read = readQuantity("1,052", "length");
  expect(read.kind === "unreadable" && [...read.ways]).toEqual(["1.052", "1052", "1 052"]);
});
