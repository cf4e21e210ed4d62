/**
 * J1 to J16 one by one: what is not known is measured first, limits at their edges, remedies by rule and by shop.
 * Start: the Quayside documents with single values changed. Limits: the joints' own
 * (docs/methods/joints.md) and the safety rules' (docs/methods/safety.md); common practice, no source, where none is named.
 */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  COCKPIT_REMEDIES,
  FORK_REMEDIES,
  frontAndWheelsRemedies,
  HEAD_REMEDIES,
  WHEEL_REMEDIES,
} from "../../data/remedies-front-and-wheels.js";
import { fitSources } from "../../data/sources-fit.js";
import { positionSources } from "../../data/sources-position.js";
import { type AnyDoc, loadText, type Place, type ResolvedBuild, resolveBuild } from "../../workshop/index.js";
import { evaluateCandidate, jointsOfPlace } from "../evaluate-candidate.js";
import { evaluateJoints } from "../evaluate-joints.js";
import type { JointAnswer } from "../joint.js";
import type { FrameFacts } from "../view.js";
import { type ViewOptions, viewOfBuild } from "../view-of-build.js";
import { frontAndWheelsJoints } from "./front-and-wheels-joints.js";

type Loose = Record<string, unknown>;
const plainDocs = (() => {
  const loaded = loadText(
    readFileSync(new URL("../../../demo/quayside.yaml", import.meta.url), "utf8"),
    "quayside.yaml",
  );
  if (loaded.kind !== "loaded") throw new Error(JSON.stringify(loaded));
  return loaded.docs.map((d) => d.doc) as unknown as Loose[];
})();

/** Changes by path: "donor.interfaces.head_bore", "bin.q11.ports.cup_od", "build.chosen.fork". undefined takes out. */
function build(changes: Record<string, unknown> = {}): ResolvedBuild {
  const docs = structuredClone(plainDocs);
  for (const [path, value] of Object.entries(changes)) {
    const [kind, ...rest] = path.split(".");
    let at = docs.find((d) => d.kind === kind) as Loose;
    if (kind === "bin") {
      const id = rest.shift();
      at = (at.parts as Loose[]).find((p) => p.id === id) as Loose;
    }
    const last = rest.pop() as string;
    for (const key of rest) at = at[key] as Loose;
    if (value === undefined) delete at[last];
    else at[last] = value;
  }
  const result = resolveBuild(docs as unknown as readonly AnyDoc[]);
  if (result.kind !== "resolved") throw new Error(JSON.stringify(result));
  return result.resolved;
}

const frame: FrameFacts = {
  seat_tube_cc_mm: 491,
  top_tube_actual_mm: 550.7,
  top_tube_slope_deg: 5.98,
  head_angle_deg: 71,
  seat_angle_deg: 73,
  head_tube_mm: 145,
  top_tube_below_head_tube_top_mm: 35,
  lower_stack_mm: 12,
  axle_to_crown_mm: 392,
  rake_mm: 45,
  chainstay_mm: 442,
  bb_drop_mm: 58,
  rear_radius_mm: 346,
  front_radius_mm: 346,
};

function answer(
  id: string,
  changes: Record<string, unknown> = {},
  options: ViewOptions = { frame, spacersBelowMm: 20 },
): JointAnswer {
  const hit = evaluateJoints(viewOfBuild(build(changes), options)).joints.find((j) => j.id === id);
  if (hit === undefined) throw new Error(id);
  return hit;
}
const offer = (j: JointAnswer, id: string) => j.remedies.find((r) => r.id === id);
const num = (j: JointAnswer, name: string) => j.numbers.find((n) => n.name === name)?.value;

describe("what is not known is measured first, with place and tool", () => {
  it.each([
    ["J1", "donor.interfaces.head_bore", "donor.interfaces.head_bore", {}],
    ["J1", "bin.q11.ports.cup_od", "bin.parts.q11.ports.cup_od", {}],
    ["J2", "bin.FA.ports.race_seat", "bin.parts.FA.ports.race_seat", {}],
    ["J2", "bin.q11.ports.race_id", "bin.parts.q11.ports.race_id", {}],
    ["J3", "bin.FA.ports.steerer_od", "bin.parts.FA.ports.steerer_od", {}],
    ["J3", "bin.FA.ports.steerer_length", "bin.parts.FA.ports.steerer_length", {}],
    ["J3", "bin.q11.ports.threaded", "bin.parts.q11.ports.threaded", {}],
    ["J3", "bin.q11.ports.upper_stack", "bin.parts.q11.ports.upper_stack", {}],
    ["J3", "bin.q13.ports.clamp_height", "bin.parts.q13.ports.clamp_height", {}],
    ["J4", "bin.FA.ports.axle_to_crown", "bin.parts.FA.ports.axle_to_crown", {}],
    ["J4", "bin.FA.ports.rated_disc", "bin.parts.FA.ports.rated_disc", {}],
    ["J5", "bin.q13.ports.clamp_id", "bin.parts.q13.ports.clamp_id", {}],
    ["J6", "bin.q15.ports.clamp", "bin.parts.q15.ports.clamp", {}],
    ["J7", "bin.q17.ports.grip", "bin.parts.q17.ports.grip", {}],
    ["J9", "donor.interfaces.rear_spacing", "donor.interfaces.rear_spacing", {}],
    ["J9", "bin.q01.ports.width", "bin.parts.q01.ports.width", {}],
    ["J10", "donor.interfaces.rear_slot", "donor.interfaces.rear_slot", {}],
    ["J10", "bin.q01.ports.axle", "bin.parts.q01.ports.axle", {}],
    ["J12", "bin.FA.ports.rated_disc", "bin.parts.FA.ports.rated_disc", {}],
    ["J12", "bin.FA.ports.end", "bin.parts.FA.ports.end", {}],
    ["J13", "bin.q02.ports.width", "bin.parts.q02.ports.width", {}],
    ["J14", "bin.q02.ports.axle", "bin.parts.q02.ports.axle", {}],
    ["J15", "donor.gaps_rear.chainstay_inner_at_radius", "donor.gaps_rear.chainstay_inner_at_radius", {}],
    ["J15", "donor.gaps_rear.brake_bridge_from_axle", "donor.gaps_rear.brake_bridge_from_axle", {}],
    ["J15", "bin.FA.ports.blade_inner_at_radius", "bin.parts.FA.ports.blade_inner_at_radius", {}],
    ["J15", "bin.q06.ports.size", "bin.parts.q06.ports.size", {}],
    ["J4", "bin.FA.ports.tyre_max", "bin.parts.FA.ports.tyre_max", { "bin.FA.ports.blade_inner_at_radius": undefined }],
    ["J16", "bin.q01.ports.rim_inner", "bin.parts.q01.ports.rim_inner", {}],
    ["J16", "bin.q06.ports.size", "bin.parts.q06.ports.size", {}],
  ])("%s without %s", (id, path, at, more) => {
    const j = answer(id, { ...more, [path]: undefined });
    expect(j.verdict).toBe("measure first");
    expect(j.next).toMatchObject({ kind: "measure", at });
    expect(j.next?.tool).toBeTruthy();
    expect(j.next?.accuracy).toBeTruthy();
  });
  it("J4 without a frame from the survey", () => {
    expect(answer("J4", {}, { spacersBelowMm: 20 })).toMatchObject({
      verdict: "measure first",
      next: { at: "donor.measured" },
    });
  });
  it("J3 and J8 without a chosen stack: a decision, not a measurement", () => {
    expect(answer("J8", {}, { frame })).toMatchObject({
      verdict: "measure first",
      next: { kind: "decide", at: "build.spacers_below" },
    });
    expect(answer("J3", {}, { frame })).toMatchObject({
      verdict: "measure first",
      next: { kind: "decide", at: "build.spacers_below" },
    });
  });
  it("an empty place is not checked yet and asks for a choice", () => {
    for (const [id, place] of [
      ["J1", "headset"],
      ["J5", "stem"],
      ["J9", "wheel_rear"],
      ["J12", "fork"],
      ["J7", "lever"],
    ] as const) {
      expect(answer(id, { [`build.chosen.${place}`]: undefined })).toMatchObject({
        verdict: "not checked yet",
        next: { kind: "decide", at: `build.chosen.${place}` },
      });
    }
  });
});

describe("less knowledge never makes a joint fit", () => {
  /**
   * Paths whose loss may only turn a verdict towards "measure first". Left out on purpose, and named in
   * docs/methods/joints.md: a steerer without a thread entered counts as unthreaded; seat stays, chainstay bridge and the
   * fork's tyre limit are judged where they are known and flagged where they are not.
   */
  const paths = [
    "donor.interfaces.head_bore",
    "donor.interfaces.rear_spacing",
    "donor.interfaces.rear_slot",
    "donor.interfaces.rear_end",
    "donor.gaps_rear.chainstay_inner_at_radius",
    "donor.gaps_rear.brake_bridge_from_axle",
    "rider.total_mass",
    ...[
      "axle_to_crown",
      "rake",
      "steerer_od",
      "steerer_length",
      "race_seat",
      "axle",
      "end_width",
      "end",
      "end_opens",
      "rated_disc",
    ].flatMap((key) => ["FA", "FB", "FC"].map((fork) => `bin.${fork}.ports.${key}`)),
    ...["cup_od", "steerer_od", "threaded", "race_id", "upper_stack"].map((key) => `bin.q11.ports.${key}`),
    ...["clamp_id", "bar_clamp", "clamp_height"].map((key) => `bin.q13.ports.${key}`),
    ...["clamp", "grip"].flatMap((key) => ["q15", "q16"].map((bar) => `bin.${bar}.ports.${key}`)),
    "bin.q17.ports.grip",
    ...["bsd", "rim_inner", "width", "axle"].flatMap((key) =>
      ["q01", "q02"].map((wheel) => `bin.${wheel}.ports.${key}`),
    ),
    "bin.q06.ports.size",
  ];
  it("for any set of attributes taken away, whichever fork and bar are chosen", () => {
    const choice = fc.record({
      fork: fc.constantFrom("FA", "FB", "FC"),
      bar: fc.constantFrom("q15", "q16"),
      bore: fc.constantFrom(33.93, 30.07, 33.87),
      slot: fc.constantFrom(10.1, 9.5),
    });
    fc.assert(
      fc.property(choice, fc.subarray(paths, { minLength: 1, maxLength: 6 }), (chosen, gone) => {
        const start = {
          "build.chosen.fork": chosen.fork,
          "build.chosen.bar": chosen.bar,
          "donor.interfaces.head_bore": chosen.bore,
          "donor.interfaces.rear_slot": chosen.slot,
        };
        const verdicts = (changes: Record<string, unknown>) =>
          new Map(
            frontAndWheelsJoints.map((d) => [
              d.id,
              d.evaluate(viewOfBuild(build(changes), { frame, spacersBelowMm: 20 })).verdict,
            ]),
          );
        const before = verdicts(start);
        const after = verdicts({ ...start, ...Object.fromEntries(gone.map((path) => [path, undefined])) });
        for (const [id, verdict] of after) if (verdict === "fits") expect([id, before.get(id)]).toEqual([id, "fits"]);
      }),
      { seed: 7411, numRuns: 300 },
    );
  });
});

describe("J1 cup – head tube (trade 4.1: press 0.10 to 0.20; ream 30.0 to 30.2)", () => {
  it("0.21 over: too tight to press; a reamer opens 33.89 to 33.925", () => {
    const j = answer("J1", { "donor.interfaces.head_bore": 33.87 });
    expect(j.verdict).toBe("fits with work");
    expect(offer(j, "ream-head-tube")?.sideEffects[0]).toMatchObject({ port: "frame.head_bore", to: 33.925 });
  });
  it("0.195 with ± 0.02 reaches across 0.20: measure first", () => {
    expect(answer("J1", { "donor.interfaces.head_bore": 33.905 }).verdict).toBe("measure first");
  });
  it("a loose bore is shimmed; the shop without a reamer does not ream", () => {
    expect(offer(answer("J1", { "donor.interfaces.head_bore": 34.05 }), "shim-loose-bore")?.here).toBe(true);
    const j = answer("J1", { "donor.interfaces.head_bore": 33.87, "shop.abilities": ["hand"] });
    expect(offer(j, "ream-head-tube")).toMatchObject({ here: false, missing: ["ream_face"] });
    expect(j.verdict).toBe("fits with work");
  });
  it("34.1 cups in a 1 in head tube (30.07): another size, only other parts", () => {
    const j = answer("J1", { "donor.interfaces.head_bore": 30.07 });
    expect(j.verdict).toBe("will not fit");
    expect(j.remedies.every((r) => r.replacesPart === true || r.refused !== undefined)).toBe(true);
  });
  it("30.2 cups in a JIS bore of 29.87: ream to 30.075 (headset guide: 30.05 to 30.10)", () => {
    const j = answer("J1", { "donor.interfaces.head_bore": 29.87, "bin.q11.ports.cup_od": 30.2 });
    expect(offer(j, "ream-head-tube")?.sideEffects[0]?.to).toBe(30.075);
  });
});

describe("J1 large cups (references 10: 44 reamed to 43.95, 0.05)", () => {
  it("44 in 43.95 fits, 44 in 43.85 does not: 0.15 is too much there", () => {
    const cup = { "bin.q11.ports.cup_od": 44 };
    expect(answer("J1", { ...cup, "donor.interfaces.head_bore": 43.95 }).verdict).toBe("fits");
    expect(answer("J1", { ...cup, "donor.interfaces.head_bore": 43.85 }).verdict).toBe("fits with work");
  });
  it("a cup in no row of the table is judged with the usual press and says so", () => {
    const j = answer("J1", { "bin.q11.ports.cup_od": 49.6, "donor.interfaces.head_bore": 49.45 });
    expect(j.verdict).toBe("fits");
    expect(j.cautions.map((c) => c.code)).toContain("cup-not-in-table");
  });
});

describe("which joints a part touches", () => {
  it("a stem: length, clamp, bar and stack; a fork: head, wheel and space; a tyre: side view, space and rim", () => {
    const ids = (place: Place) => jointsOfPlace(place, frontAndWheelsJoints).map((d) => d.id);
    expect(ids("stem")).toEqual(["J3", "J5", "J6", "J8"]);
    expect(ids("fork")).toEqual(["J2", "J3", "J4", "J5", "J8", "J12", "J13", "J14", "J15"]);
    expect(ids("tyre_rear")).toEqual(["J4", "J15", "J16"]);
  });
});

describe("evaluateCandidate", () => {
  it("works its own remedies out again: a view that already holds 135 does not hide the setting of J9", () => {
    const view = viewOfBuild(build(), { frame, spacersBelowMm: 20 });
    const q01 = view.resolved.parts.get("q01");
    if (q01 === undefined) throw new Error("q01");
    const c = evaluateCandidate({ ...view, ports: { "frame.rear_spacing": 135 } }, "wheel_rear", q01);
    expect(c.joints.find((j) => j.id === "J9")?.verdict).toBe("fits with work");
    expect(c.reckoned.get("J9")?.id).toBe("cold-set-rear");
  });
  it("a joint outside still reaches one inside: J9's setting shows in the tyre's J15", () => {
    const view = viewOfBuild(build(), { frame, spacersBelowMm: 20 });
    const q07 = view.resolved.parts.get("q07");
    if (q07 === undefined) throw new Error("q07");
    const c = evaluateCandidate(view, "tyre_rear", q07, frontAndWheelsJoints);
    expect(c.joints.map((j) => j.id)).toEqual(["J4", "J15", "J16"]);
    const gain = c.joints[1]?.numbers.find((n) => n.name.startsWith("more at the chainstays"));
    // 2.3 x (383 - 329.5) / 383
    expect(gain?.value).toBeCloseTo(0.3213, 3);
  });
  it("every declared change covers the side effects that the remedies bring", () => {
    for (const row of frontAndWheelsRemedies) {
      const joint = frontAndWheelsJoints.find((d) => d.id === row.joint);
      for (const effect of row.sideEffects ?? []) expect(joint?.changes).toContain(effect.port);
    }
  });
});

describe("J2 race – fork (trade 4.1: 0.05 to 0.15 measured; 27.0 cut to 26.4)", () => {
  it("measured 0.10 fits, loose fails", () => {
    expect(answer("J2", { "bin.FA.ports.race_seat": 30.08, "bin.q11.ports.race_id": 29.98 }).verdict).toBe("fits");
    expect(answer("J2", { "bin.FA.ports.race_seat": 29.9, "bin.q11.ports.race_id": 29.98 }).verdict).toBe(
      "will not fit",
    );
  });
  it("27.0 seat, 26.4 race: the seat is cut", () => {
    const j = answer("J2", { "bin.FA.ports.race_seat": 27.0, "bin.q11.ports.race_id": 26.4 });
    expect(j.verdict).toBe("fits with work");
    expect(j.remedies[0]).toMatchObject({ id: "mill-crown-seat", needs: ["lathe"], hours: 0.5 });
  });
});

describe("J3 steerer – headset", () => {
  it("the fork with a 28.6 steerer does not go into a 1 in head tube (trade 7.2: m41 in a 30.07 bore is refused)", () => {
    const j = answer("J3", { "donor.interfaces.head_bore": 30.07 });
    expect(j.verdict).toBe("will not fit");
    expect(j.reason).toContain("another size");
  });
  it("a steerer 10 short: less spacers, never lengthened (S12)", () => {
    const j = answer("J3", { "bin.FA.ports.steerer_length": 214 });
    expect(j.verdict).toBe("fits with work");
    expect(offer(j, "fewer-spacers")?.sideEffects[0]).toMatchObject({ port: "cockpit.spacers_below", to: 10 });
    expect(offer(j, "lengthen-steerer")?.refused).toBeDefined();
    expect(j.rules).toEqual([]);
    const hopeless = answer("J3", { "bin.FA.ports.steerer_length": 190 });
    expect(hopeless.verdict).toBe("will not fit");
    expect(hopeless.rules).toMatchObject([{ rule: "S12", level: "refuse" }]);
  });
  it("its remedy reaches J8: the stack becomes 10", () => {
    expect(num(answer("J8", { "bin.FA.ports.steerer_length": 214 }), "spacers under the stem")).toBe(10);
  });
  it("a 25.4 steerer in a 28.6 headset takes reducer cups; where the shop has no press, a builder does it", () => {
    const j = answer("J3", { "bin.FA.ports.steerer_od": 25.4 });
    expect(offer(j, "reducer-cups")?.here).toBe(true);
    expect(
      offer(answer("J3", { "bin.FA.ports.steerer_od": 25.4, "shop.abilities": ["hand"] }), "reducer-cups")?.missing,
    ).toEqual(["press"]);
  });
  it("threaded headset q10 on the donor's threaded fork: 12 + 145 + 25 - 2 = 180 long", () => {
    const parts = {
      "build.chosen.fork": "FC",
      "build.chosen.headset": "q10",
      "build.chosen.stem": "q14",
      "bin.FC.ports.steerer_length": 182,
    };
    const j = answer("J3", parts);
    expect(num(j, "steerer needed")).toBeCloseTo(180, 9);
    expect(j.verdict).toBe("fits");
    expect(answer("J5", parts).verdict).toBe("fits");
    expect(answer("J8", parts).verdict).toBe("not checked yet");
  });
});

describe("J4, S14: toe clearance", () => {
  it("is flagged under 100 and refused with a child or a novice", () => {
    const near = { "bin.q30.ports.length": 215 };
    expect(answer("J4", near).rules).toMatchObject([{ rule: "S14", level: "flag" }]);
    expect(answer("J4", near).verdict).toBe("fits");
    const child = answer("J4", { ...near, "intent.carries_child": true });
    expect(child.rules).toMatchObject([{ rule: "S14", level: "refuse" }]);
    expect(child.verdict).toBe("will not fit");
  });
  it("89 is enough with foot retention (16 CFR 1512.17(d))", () => {
    const at95 = { "bin.q30.ports.length": 201 };
    const toe = num(answer("J4", at95), "toe to guard") ?? 0;
    expect(toe).toBeGreaterThan(91);
    expect(toe).toBeLessThan(98);
    expect(answer("J4", { ...at95, "intent.foot_retention": true }).rules).toEqual([]);
    expect(answer("J4", at95).rules).toHaveLength(1);
  });
  it("a tyre over the fork's limit does not fit", () => {
    expect(answer("J4", { "bin.FA.ports.tyre_max": { bsdMm: 584, widthMm: 44 } }).verdict).toBe("will not fit");
    // On another bead seat the width limit only flags: the gaps of J15 decide.
    expect(answer("J4", { "bin.FA.ports.tyre_max": { bsdMm: 622, widthMm: 45 } }).verdict).toBe("fits");
  });
});

describe("J6 and J7", () => {
  it("25.4 bar in a 31.8 clamp: shim only in four bolts (trade 4.1), refused otherwise, S12", () => {
    const q16 = { "build.chosen.bar": "q16" };
    const two = answer("J6", { ...q16, "bin.q13.ports.bolts": 2 });
    expect(offer(two, "bar-shim")?.refused).toContain("four bolts");
    expect(two.verdict).toBe("will not fit");
    expect(offer(answer("J6", q16), "bar-shim")?.refused).toContain("count");
    const four = answer("J6", { ...q16, "bin.q13.ports.bolts": 4 });
    expect(four.verdict).toBe("fits with work");
    expect(four.remedies[0]).toMatchObject({ id: "bar-shim", cost: 5.6 }); // 0.1 h x 6 + 5
    expect(four.rules).toEqual([]);
    expect(two.rules).toMatchObject([{ rule: "S12", level: "refuse" }]);
  });
  it("26.0 bar in a 25.4 clamp never goes, whatever is done", () => {
    expect(
      answer("J6", { "bin.q15.ports.clamp": 26, "bin.q13.ports.bar_clamp": 25.4, "bin.q13.ports.bolts": 4 }).verdict,
    ).toBe("will not fit");
  });
  it("22.2 levers on a 23.8 drop bar: nothing is shimmed; 24.0 on 23.8 is one family", () => {
    expect(answer("J7", { "bin.q15.ports.grip": 23.8 }).verdict).toBe("will not fit");
    expect(answer("J7", { "bin.q15.ports.grip": 23.8, "bin.q17.ports.grip": 24 }).verdict).toBe("fits");
  });
});

describe("J8 spacers (trade: 30 to 40 at most; S12 over 40)", () => {
  it.each([
    [30, "fits", 0],
    [36, "fits", 1],
    [41, "will not fit", 0],
  ])("%d mm", (spacersBelowMm, verdict, flags) => {
    const j = answer(
      "J8",
      { "build.also": [{ part: "q51", qty: 1 }], "bin.q51.ports.height": 25, "bin.FA.ports.steerer_length": 300 },
      { frame, spacersBelowMm },
    );
    expect(j.verdict).toBe(verdict);
    expect(j.cautions.filter((c) => c.code === "wanted-limit-missed")).toHaveLength(flags);
  });
});

describe("J9 hub – rear (trade 4.2: 1 by hand, 2 sprung in, else set; more than 10 a builder)", () => {
  it("131 in 130.4 by hand; 131.9 sprung in; 132.4 ± 0.25 measure first", () => {
    expect(answer("J9", { "bin.q01.ports.width": 131 }).cautions).toEqual([]);
    expect(answer("J9", { "bin.q01.ports.width": 132 })).toMatchObject({
      verdict: "fits",
      cautions: [{ code: "wanted-limit-missed" }],
    });
    expect(answer("J9", { "bin.q01.ports.width": 132.4 }).verdict).toBe("measure first");
  });
  it("aluminium, carbon, magnesium and bonded joints are never set (S1)", () => {
    for (const changes of [
      { "donor.tube.class": "aluminium" },
      { "donor.tube.class": "carbon" },
      { "donor.tube.class": "magnesium" },
      { "donor.tube.joints": "bonded" },
    ]) {
      const j = answer("J9", changes);
      expect(j.verdict).toBe("will not fit");
      expect(j.rules).toMatchObject([{ rule: "S1", level: "refuse" }]);
      expect(j.remedies.filter((r) => r.id.startsWith("cold-set")).every((r) => r.refused !== undefined)).toBe(true);
    }
  });
  it("titanium, heat-treated, air-hardening, thin and unknown tubes: a builder only, gate S2", () => {
    const cases = [
      { "donor.tube.class": "titanium" },
      { "donor.tube.class": "heat_treated" },
      { "donor.tube.class": "air_hardening" },
      { "donor.tube.class": "unknown" },
      { "donor.tube.chainstay_wall": 0.5 },
    ];
    for (const changes of cases) {
      const j = answer("J9", changes);
      expect(j.verdict).toBe("fits with work");
      expect(offer(j, "cold-set-rear")?.refused).toBeDefined();
      expect(offer(j, "cold-set-rear-by-builder")).toMatchObject({ here: false, rules: ["S2"] });
      expect(j.rules).toMatchObject([{ rule: "S2", level: "gate" }]);
    }
    expect(answer("J9", { "donor.tube.class": "unknown" }).next).toMatchObject({ at: "donor.tube.class" });
  });
  it("a builder's set is not reckoned with: the rear stays 130.4 for the other joints", () => {
    const all = evaluateJoints(
      viewOfBuild(build({ "donor.tube.class": "heat_treated" }), { frame, spacersBelowMm: 20 }),
    );
    expect(all.ports["frame.rear_spacing"]).toBeUndefined();
  });
  it("more than 10 in all: a builder only, without a rule", () => {
    const j = answer("J9", { "donor.interfaces.rear_spacing": 124 });
    expect(offer(j, "cold-set-rear")?.refused).toContain("more than 10");
    expect(j.rules).toEqual([]);
  });
  it("M10 as printed: 120 to 127 with 340: 3.5 per side, 0.59 degrees; M11: 22 wide, yield 350, 340: 6.0", () => {
    const j = answer("J9", {
      "donor.interfaces.rear_spacing": 120,
      "bin.q01.ports.width": 127,
      "donor.gaps_rear.chainstay_bridge_from_axle": undefined,
      "donor.stays.chainstay_od": undefined,
      "donor.tube.class": "plain_steel",
    });
    expect(num(j, "set per side")).toBeCloseTo(3.5, 9);
    expect(num(j, "turn of each dropout")).toBeCloseTo(0.59, 2);
    expect((num(j, "push per side, first guess") ?? 0) - 3.5).toBeCloseTo(6.0, 1);
    expect(j.cautions.map((c) => c.code)).toEqual(
      expect.arrayContaining(["root-assumed", "stay-width-assumed", "push-is-a-guess"]),
    );
  });
  it("a cassette hub is re-spaced more cheaply than the frame is set; the build may name the other", () => {
    const cassette = { "build.chosen.wheel_rear": "q04", "bin.q06.ports.size": { bsdMm: 622, widthMm: 35 } };
    const all = evaluateJoints(viewOfBuild(build(cassette), { frame, spacersBelowMm: 20 }));
    expect(all.reckoned.get("J9")).toMatchObject({ id: "respace-rear-axle", cost: 14 }); // 1.5 h x 6 + 5
    expect(all.ports).toMatchObject({ "wheel_rear.width": 130.4 });
    const named = evaluateJoints(
      viewOfBuild(build({ ...cassette, "build.remedies": [{ joint: "J9", remedy: "cold-set-rear" }] }), {
        frame,
        spacersBelowMm: 20,
      }),
    );
    expect(named.reckoned.get("J9")?.id).toBe("cold-set-rear");
    expect(named.ports).toMatchObject({ "frame.rear_spacing": 135 });
  });
  it("a hub too narrow by 4 is not clamped together", () => {
    expect(answer("J9", { "donor.interfaces.rear_spacing": 139 })).toMatchObject({ verdict: "will not fit" });
  });
});

describe("J10 axle – slot (trade 4.2; S8 web 4)", () => {
  const through = { "bin.q01.ports.axle": "through_12" };
  it("a through axle: the slot's end is bored where 7.5 - (12.1 - 10.1) / 2 = 6.5 of web is left", () => {
    const j = answer("J10", through);
    expect(j.verdict).toBe("fits with work");
    expect(num(j, "web left round a 12.1 bore")).toBeCloseTo(6.5, 9);
    expect(offer(j, "bore-slot-end")).toMatchObject({ here: true });
  });
  it("refused with less than 4 left, and while the web is not known", () => {
    expect(offer(answer("J10", { ...through, "donor.interfaces.rear_web_min": 4.5 }), "bore-slot-end")).toMatchObject({
      rules: ["S8"],
    });
    expect(answer("J10", { ...through, "donor.interfaces.rear_web_min": 4.5 }).verdict).toBe("will not fit");
    expect(
      offer(answer("J10", { ...through, "donor.interfaces.rear_web_min": undefined }), "bore-slot-end")?.refused,
    ).toContain("measure");
  });
  it("9.5 slot for an M10 axle is filed; an M10 axle in a closed 12 bore does not fit", () => {
    expect(
      offer(answer("J10", { "donor.interfaces.rear_slot": 9.5 }), "file-rear-slot")?.sideEffects[0]?.to,
    ).toBeCloseTo(10.1, 9);
    expect(answer("J10", { "donor.interfaces.rear_end": "closed_12" }).verdict).toBe("will not fit");
  });
});

describe("J12 front retention (trade 4.2, S4, S5)", () => {
  const FB = { "build.chosen.fork": "FB" };
  it("a mount on a fork that was not made for a disc: S5 and S4 refuse (home-modified)", () => {
    const j = answer("J12", { ...FB, "bin.FB.ports.rated_disc": false });
    expect(j.verdict).toBe("will not fit");
    expect(j.rules).toMatchObject([
      { rule: "S5", level: "refuse" },
      { rule: "S4", level: "refuse" },
    ]);
  });
  it("slots that open 45 degrees forward carry no S4 but still need retention; the left end is pushed far less", () => {
    const j = answer("J12", { ...FB, "bin.FB.ports.end_opens": 45 });
    expect(j.rules).toEqual([]);
    expect(j.verdict).toBe("fits with work");
    expect(num(j, "push-out, left end") ?? 0).toBeLessThan(num(answer("J12", FB), "push-out, left end") ?? 0);
  });
  it("a rim brake at the front: nothing to check", () => {
    const j = answer("J12", {
      "intent.brakes": "rim_both",
      "build.chosen.rotor_front": undefined,
      "build.chosen.caliper": undefined,
    });
    expect(j.verdict).toBe("not checked yet");
    expect(j.reason).toContain("No disc");
  });
});

describe("J13 and J14", () => {
  it("100 hub in 100.4 ends fits, 96 in 100 is re-spaced (skewer axle)", () => {
    expect(answer("J13", { "bin.FA.ports.end_width": 100.3 }).verdict).toBe("fits");
    const j = answer("J13", { "build.chosen.fork": "FB", "bin.q02.ports.width": 96, "bin.q02.ports.axle": "qr_9" });
    expect(j.remedies[0]).toMatchObject({ id: "respace-front-axle" });
    expect(offer(j, "set-front-fork")).toBeUndefined();
  });
  it("a carbon fork is never set (S1)", () => {
    const j = answer("J13", {
      "build.chosen.fork": "FB",
      "bin.FB.ports.carbon": true,
      "bin.q02.ports.width": 101.5,
      "bin.q02.ports.axle": "qr_9",
    });
    expect(offer(j, "set-front-fork")).toMatchObject({ here: false, rules: ["S1"] });
  });
  it("a skewer hub does not go into a through-axle fork: caps only make an axle thinner", () => {
    expect(answer("J14", { "bin.q02.ports.axle": "qr_9" }).verdict).toBe("will not fit");
  });
});

describe("J15 space and rim brakes", () => {
  it("S14: 50 wide in 60 is 5 a side, flagged; 54 is 3, refused", () => {
    const wide = (widthMm: number) =>
      answer("J15", {
        "bin.q06.ports.size": { bsdMm: 584, widthMm },
        "donor.gaps_rear.chainstay_inner_at_radius": [
          [300, 60],
          [345, 60],
        ],
      });
    expect(wide(50).rules).toMatchObject([{ rule: "S14", level: "flag" }]);
    expect(wide(50).verdict).toBe("fits");
    const refused = wide(54);
    expect(refused.rules.some((r) => r.rule === "S14" && r.level === "refuse")).toBe(true);
    expect(refused.verdict).toBe("will not fit");
    // 54 - 2 x (6 - 3) = 48
    expect(offer(refused, "narrower-tyre")?.what).toContain("48");
  });
  it("rim brakes on studs: 622 to 584 asks 19 more reach (M22), the bosses sit for 622", () => {
    const rim = {
      "intent.brakes": "rim_both",
      "build.chosen.rotor_front": undefined,
      "build.chosen.rotor_rear": undefined,
      "build.chosen.caliper": undefined,
    };
    const j = answer("J15", rim);
    expect(num(j, "rear rim brake reach change")).toBe(19);
    expect(j.verdict).toBe("will not fit");
    expect(offer(j, "wheel-for-the-brakes")?.what).toContain("622");
  });
});

describe("J16 tyre – rim (trade 4.2: 1.4 to 2.2; flag above unless ISO 5775 lists it; refuse above 2.6)", () => {
  const tyre = (widthMm: number, rim: number) =>
    answer("J16", {
      "bin.q06.ports.size": { bsdMm: 584, widthMm },
      "bin.q01.ports.rim_inner": rim,
      "bin.q02.ports.rim_inner": rim,
    });
  it("47 on 19 is 2.47, but the table lists 47 on 19: fits without a flag", () => {
    expect(tyre(47, 19).verdict).toBe("fits");
    expect(tyre(47, 19).cautions.map((c) => c.code)).not.toContain("wanted-limit-missed");
  });
  it("42 on 18 is 2.33 and not listed: flagged; 50 on 19 is 2.63: refused (S11); 28 on 23 is 1.22: too narrow", () => {
    expect(tyre(42, 18).cautions.map((c) => c.code)).toContain("wanted-limit-missed");
    expect(tyre(50, 19).rules).toMatchObject([
      { rule: "S11", level: "refuse" },
      { rule: "S11", level: "refuse" },
    ]);
    expect(tyre(28, 23)).toMatchObject({ verdict: "will not fit", rules: [] });
  });
  it("different bead seats do not fit (q08 is 622 on the 584 rim)", () => {
    const view = viewOfBuild(build(), { frame, spacersBelowMm: 20 });
    const q08 = view.resolved.parts.get("q08");
    if (q08 === undefined) throw new Error("q08");
    const j = evaluateCandidate(view, "tyre_rear", q08).joints.find((x) => x.id === "J16");
    expect(j?.verdict).toBe("will not fit");
    expect(j?.reason).toContain("bead seats");
  });
  it("a braked rim with 0.8 of wall is refused (S11; q05)", () => {
    const j = answer("J16", { "bin.q01.ports.rim_brake": true, "bin.q01.ports.rim_wall": 0.8 });
    expect(j.rules).toMatchObject([{ rule: "S11", level: "refuse", place: "wheel_rear" }]);
  });
});

/** Trade 7.2 (Moorside): values of `interfaces`, `gaps_rear`, `gaps_front`, put into these documents; `expect` beside each. */
describe("Moorside's numbers", () => {
  const moorside = {
    "donor.interfaces.head_bore": 30.07,
    "bin.q11.ports.cup_od": 30.2,
    "bin.q11.ports.steerer_od": 25.4,
    "bin.q11.ports.threaded": true,
    "bin.q11.ports.thread_tpi": 24,
    "bin.q11.ports.race_id": 26.4,
    "bin.q11.ports.upper_stack": 24,
    "build.chosen.fork": "FC",
    "bin.FC.ports.steerer_od": 25.4,
    "bin.FC.ports.steerer_thread_tpi": 24,
    "bin.FC.ports.race_seat": 26.4,
    "bin.FC.ports.blade_inner_at_radius": [
      [313, 56],
      [325, 55],
    ],
    "bin.FC.ports.crown_underside_from_axle": 358,
    "build.chosen.stem": "q14",
    "bin.q14.ports.quill_od": 22.2,
    "bin.q14.ports.bar_clamp": 26,
    "bin.q15.ports.clamp": 26,
    "donor.interfaces.rear_spacing": 126,
    "bin.q01.ports.width": 130,
    // Rims at the tyre's own width / 1.9, so that the width is the marked one (ruling M9).
    "bin.q01.ports.rim_inner": 22,
    "bin.q02.ports.rim_inner": 22,
    "donor.gaps_rear.chainstay_bridge_from_axle": 372,
    "donor.gaps_rear.brake_bridge_from_axle": 352,
    "donor.gaps_rear.seatstay_inner_at_radius": undefined,
    "donor.gaps_rear.chainstay_inner_at_radius": [
      [280, 62],
      [300, 57],
      [313, 53.5],
      [315.5, 52.8],
      [325, 50],
      [340, 45],
      [358, 40],
    ],
  };
  const tyre = (widthMm: number) => ({ ...moorside, "bin.q06.ports.size": { bsdMm: 584, widthMm } });
  it("30.2 cups in 30.07, 26.4 race, 22.2 quill, 26.0 bar: fit; m37's 31.8 bar in a 26.0 clamp never", () => {
    for (const id of ["J1", "J2", "J5", "J6"]) expect([id, answer(id, moorside).verdict]).toEqual([id, "fits"]);
    expect(answer("J6", { ...moorside, "bin.q15.ports.clamp": 31.8 }).verdict).toBe("will not fit");
  });
  it("rear_set: 126 to 130, 2 per side, 0.31 degrees with L 372", () => {
    const j = answer("J9", moorside);
    expect(num(j, "set per side")).toBeCloseTo(2, 9);
    expect(num(j, "turn of each dropout")).toBeCloseTo(0.31, 2);
  });
  it("584-42: 5.75 a side is under the wanted 6 (S14 flag); 7.0 at the blades, 24 at the crown", () => {
    const j = answer("J15", tyre(42));
    expect(num(j, "side gap at the chainstays")).toBeCloseTo(5.75, 2);
    expect(num(j, "side gap at the fork blades")).toBeCloseTo(7.0, 1);
    expect(num(j, "radial gap at the crown")).toBeCloseTo(24, 9);
    expect(j.rules).toMatchObject([{ rule: "S14", level: "flag", place: "tyre_rear" }]);
    expect(j.verdict).toBe("fits");
  });
  it("584-47: 2.9 a side in the rear: no; 4.4 at the blades", () => {
    const j = answer("J15", tyre(47));
    expect(num(j, "side gap at the chainstays")).toBeCloseTo(2.9, 2);
    expect(num(j, "side gap at the fork blades")).toBeCloseTo(4.4, 1);
    expect(j.verdict).toBe("will not fit");
  });
  it("m41: the 28.6 fork in the 30.07 bore will not fit by J1's headset nor by J3", () => {
    expect(answer("J3", { ...moorside, "bin.FC.ports.steerer_od": 28.6 }).verdict).toBe("will not fit");
  });
});

/** Trade 7.3: with_559-50 and gaps of C; tyre 50 on 24 inner. */
describe("the course bicycle's numbers", () => {
  it("559-50: side 8.5, bridge 30.5, blades 8.0, crown 56.5", () => {
    const j = answer("J15", {
      "bin.q06.ports.size": { bsdMm: 559, widthMm: 50 },
      "bin.q01.ports.bsd": 559,
      "bin.q02.ports.bsd": 559,
      "donor.gaps_rear.chainstay_inner_at_radius": [
        [304.5, 67],
        [320, 62],
      ],
      "donor.gaps_rear.seatstay_inner_at_radius": undefined,
      "donor.gaps_rear.brake_bridge_from_axle": 360,
      "bin.FA.ports.blade_inner_at_radius": [
        [304.5, 66],
        [320, 65],
      ],
      "bin.FA.ports.crown_underside_from_axle": 386,
    });
    expect(num(j, "side gap at the chainstays")).toBeCloseTo(8.5, 9);
    expect(num(j, "radial gap at the brake bridge")).toBeCloseTo(30.5, 9);
    expect(num(j, "side gap at the fork blades")).toBeCloseTo(8.0, 9);
    expect(num(j, "radial gap at the crown")).toBeCloseTo(56.5, 9);
  });
});

describe("sources", () => {
  it("every source a joint or remedy cites stands in a list", () => {
    const ids = new Set([...fitSources, ...positionSources].map((row) => row.id));
    const all = evaluateJoints(viewOfBuild(build(), { frame, spacersBelowMm: 20 }), frontAndWheelsJoints);
    for (const j of all.joints) for (const id of j.sources) expect([j.id, id, ids.has(id)]).toEqual([j.id, id, true]);
    for (const row of frontAndWheelsRemedies)
      for (const id of row.sources) expect([row.id, id, ids.has(id)]).toEqual([row.id, id, true]);
  });
  it("every remedy row is used by a joint", () => {
    const folder = new URL(".", import.meta.url);
    const code = readdirSync(folder)
      .filter((name) => name.endsWith(".ts") && !name.endsWith(".test.ts"))
      .map((name) => readFileSync(new URL(name, folder), "utf8"))
      .join("\n");
    const groups = { HEAD_REMEDIES, FORK_REMEDIES, COCKPIT_REMEDIES, WHEEL_REMEDIES };
    for (const [group, rows] of Object.entries(groups))
      for (const key of Object.keys(rows)) expect(code).toContain(`${group}.${key}`);
  });
});
