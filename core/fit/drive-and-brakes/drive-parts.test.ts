/** Bottom bracket, crank, ring and chain: limits are common practice, no source, or the standard named beside them; builds: the invented demos. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { bbThread } from "./bb-thread.js";
import { judge, number, resolved, viewOf, withDonor, withParts, withPorts } from "./test-build.js";

const QUAYSIDE = readFileSync(new URL("../../../demo/quayside.yaml", import.meta.url), "utf8");
const quayside = (change: (text: string) => string = (text) => text) => resolved(change(QUAYSIDE));
const view = viewOf(quayside());

describe("drive, other parts", () => {
  it("J31: a cartridge for 73 in a 68 shell is rejected (trade 7.3: c24); outside cups for 73 go on with 2.5 each side", () => {
    expect(judge("J31", withPorts(view, "bb", { shell_width: 73 })).verdict).toBe("will not fit");
    const cups = judge("J31", withPorts(view, "bb", { shell_width: 73, spindle: "24" }));
    expect([cups.verdict, cups.remedies[0]?.what]).toEqual([
      "fits with work",
      "Put spacers under the cups, 2.5 on each side",
    ]);
  });

  it("J31: threads and hands: 1.37x24 right side left-hand, 36x24 right-hand, 35x1 must be looked at (trade 4.4)", () => {
    expect(bbThread('1.37" x 24 tpi')).toEqual({ size: "1.37x24", rightSide: "left-hand" });
    expect(bbThread("36x24")).toEqual({ size: "36x24", rightSide: "right-hand" });
    expect(bbThread("35 x 1")).toEqual({ size: "35x1", rightSide: undefined });
    expect(bbThread("M35x1.0 LH")).toEqual({ size: "35x1", rightSide: "left-hand" });
    const shell = (thread: string) =>
      withDonor(view, (donor) => ({ ...donor, interfaces: { ...donor.interfaces, shell_thread: thread } }));
    expect(judge("J31", shell("36x24")).verdict).toBe("will not fit");
    const cups = withPorts(shell("35x1"), "bb", { thread: "35x1 RH" });
    expect(judge("J31", cups).verdict).toBe("measure first");
    expect(judge("J31", withPorts(shell("35x1 LH"), "bb", { thread: "35x1 RH" })).reason).toContain("different hand");
    expect(judge("J31", withPorts(shell("35x1 RH"), "bb", { thread: "35x1 RH" })).verdict).toBe("fits");
  });

  it("J33: the narrow crank m47 on m46 is 1.9 from the set stay, 2.5 before, and too tight; on m48 4.9 (trade 7.2)", () => {
    const stations = [
      [45, 30.8],
      [58, 33.5],
      [72, 37],
      [90, 39.5],
      [105, 42],
      [117, 43.8],
      [130, 45.5],
      [150, 48],
      [172.5, 52],
      [190, 54.5],
    ] as const;
    const m1 = withDonor(view, (donor) => ({
      ...donor,
      measured: { ...donor.measured, chainstay: { value: 430, plusMinus: 0.3, written: "430 ± 0.3" } },
      interfaces: { ...donor.interfaces, rear_spacing: 126 },
      gaps_rear: { ...donor.gaps_rear, chainstay_outer_at_bb_radius: stations, chainstay_bridge_from_axle: 372 },
    }));
    const m47 = withPorts(withPorts(m1, "wheel_rear", { width: 130 }), "crank", {
      length: 172.5,
      q: 136,
      z0: 44,
      t_end: 13.5,
      design_spindle: 110,
      chainline: 42,
    });
    const on = (spindle_length: number) => judge("J33", withPorts(m47, "bb", { spindle_length }));
    expect(Math.abs(number(on(110), /^gap at the chainstay, 172.5/) - 1.9)).toBeLessThan(0.1);
    expect(on(110).verdict).toBe("will not fit");
    expect(on(110).remedies.find((r) => r.id === "file-arm")?.refused).toBeDefined();
    expect(Math.abs(number(on(116), /^gap at the chainstay, 172.5/) - 4.9)).toBeLessThan(0.1);
    expect(on(116).verdict).toBe("fits");
    // "spindle 113 gives only 3.4": 3.4 ± 1 reaches over the least of 3.
    expect(Math.abs(number(on(113), /^gap at the chainstay, 172.5/) - 3.4)).toBeLessThan(0.1);
    expect(on(113).verdict).toBe("measure first");
    // The bare wheel width in place of the set one: 2.5 before setting.
    const before = judge("J33", withPorts(withPorts(m47, "wheel_rear", { width: 126 }), "bb", { spindle_length: 110 }));
    expect(Math.abs(number(before, /^gap at the chainstay, 172.5/) - 2.5)).toBeLessThan(0.1);
    // ring_gap m47_on_m46 42: 1.4
    expect(
      Math.abs(
        number(judge("J34", withPorts(withParts(m47, { ring: "q31" }), "bb", { spindle_length: 110 })), /^gap of the/) -
          1.4,
      ),
    ).toBeLessThan(0.1);
  });

  it("J35: 110 takes 33 or 34 and more, 130 takes 38 (trade 4.4; references 9)", () => {
    expect(judge("J35", withParts(view, { ring: "q31" })).verdict).toBe("fits");
    expect(judge("J35", withPorts(withParts(view, { ring: "q31" }), "ring", { bolt_circle: 130 })).verdict).toBe(
      "will not fit",
    );
    expect(judge("J35", withPorts(withParts(view, { ring: "q31" }), "ring", { teeth: 32 })).reason).toContain(
      "too small",
    );
    expect(
      judge("J35", withPorts(withParts(view, { ring: "q31" }), "ring", { teeth: 33 })).cautions.map((c) => c.code),
    ).toEqual(["ring-at-smallest"]);
  });

  it("J36: with a derailleur 2 is wanted, 4 the most; m28 is 2.1 off: acceptable (trade 7.2)", () => {
    const derailleur = (chainline: number) =>
      judge(
        "J36",
        withPorts(withPorts(view, "wheel_rear", { drive: "cassette", chainline: 43.4 }), "crank", {
          chainline,
          design_spindle: 118,
        }),
      );
    expect([derailleur(45.5).verdict, derailleur(45.5).cautions.length]).toEqual(["fits", 1]);
    expect([derailleur(42).verdict, derailleur(42).cautions.length]).toEqual(["fits", 0]);
    expect(derailleur(48).verdict).toBe("fits with work");
  });

  it("J37: a 1/8 chain takes 2.1 and 3.0 teeth, a 3/32 chain (2.38 inside) not 3.0 (references 11.2)", () => {
    expect(judge("J37", withParts(view, { ring: "q33" })).verdict).toBe("fits");
    const narrow = withPorts(view, "chain", { class: "6-8" });
    expect(
      judge("J37", withPorts(withParts(narrow, { ring: "q33" }), "sprocket", { chain_class: "narrow" })).verdict,
    ).toBe("will not fit");
    expect(judge("J37", narrow).verdict).toBe("measure first");
    expect(
      judge("J37", withPorts(withParts(narrow, { ring: "q31" }), "sprocket", { chain_class: "narrow" })).verdict,
    ).toBe("fits");
  });
});
