import { describe, expect, it } from "vitest";
import { changedPlaces, takenOut } from "./take-back.js";

const route = (rest: string) => `kind: route\nversion: 1\nid: r\n${rest}`;
const BEFORE = route("sections:\n  - { km: 1, grade: 0 } # paced\n  - { km: 2, grade: 3 }\n");
const AFTER = BEFORE.replace("grade: 3", "grade: 4");
const out = (current: string, before = BEFORE, after = AFTER) => takenOut(current, before, after);

describe("taking one change out of a text", () => {
  it("gives the text of before to the letter where nothing came after", () => {
    expect(out(AFTER)).toEqual({ kind: "text", text: BEFORE });
    expect(out(BEFORE)).toEqual({ kind: "text", text: BEFORE });
  });

  it("puts back only its own values where something came after: that and all comments stay", () => {
    const moved = AFTER.replace("km: 1,", "km: 1.4,").replace("# paced", "# paced twice");
    expect(out(moved)).toEqual({ kind: "text", text: moved.replace("grade: 4", "grade: 3") });
  });

  it("takes out again what it had put in, and puts in again what it had taken out", () => {
    const rider = "kind: rider\nversion: 1\nid: r1\nname: r\ninseam: 820\nheight: 1740 # tape\n";
    const more = `${rider}hand_span: 190\n`;
    const moved = more.replace("inseam: 820", "inseam: 825");
    expect(takenOut(moved, rider, more)).toEqual({ kind: "text", text: rider.replace("820", "825") });
    const back = takenOut(rider.replace("820", "825"), more, rider);
    expect(back.kind === "text" && back.text).toContain("hand_span: 190");
  });

  it("refuses where the value was written over, the place is gone, or only comments had changed", () => {
    const codes = (current: string, before = BEFORE, after = AFTER) => {
      const result = out(current, before, after);
      return result.kind === "blocked" ? result.reasons.map((r) => r.code) : [];
    };
    expect(codes(AFTER.replace("grade: 4", "grade: 5"))).toEqual(["changed-since"]);
    expect(codes(route("sections:\n  - { km: 1, grade: 0 }\n"))).toEqual(["place-gone"]);
    const noted = BEFORE.replace("# paced", "# paced twice");
    expect(codes(AFTER, BEFORE, noted)).toEqual(["only-comments"]);
  });

  it("refuses what could not be read afterwards", () => {
    const rider = (inseam: number, height: number) =>
      `kind: rider\nversion: 1\nid: r1\nname: r\ninseam: ${inseam}\nheight: ${height}\n`;
    const result = takenOut(rider(820, 1750), rider(5, 1740), rider(820, 1740));
    expect(result.kind === "blocked" && result.reasons.map((r) => r.code)).toEqual(["not-readable"]);
  });
});

describe("the places at which two pieces of data differ", () => {
  it("are the smallest ones; a list that grew or whose entries changed names is one place", () => {
    expect(changedPlaces({ a: { b: 1, c: 2 } }, { a: { b: 1, c: 3 }, d: 4 })).toEqual([
      { path: ["a", "c"], was: 2, now: 3 },
      { path: ["d"], was: undefined, now: 4 },
    ]);
    expect(changedPlaces([{ id: "x", n: 1 }], [{ id: "x", n: 2 }])).toEqual([{ path: [0, "n"], was: 1, now: 2 }]);
    expect(changedPlaces({ l: [{ id: "x" }] }, { l: [{ id: "y" }] })).toHaveLength(1);
    expect(changedPlaces({ l: [1, 2] }, { l: [1, 3] })).toEqual([{ path: ["l"], was: [1, 2], now: [1, 3] }]);
  });
});
