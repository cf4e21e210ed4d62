/**
 * The Quayside build (invented demo) against values worked by hand beforehand. Frame: the demo's exact geometry (M4 worked:
 * CS 442, drop 58, A-C 392, rake 45, lower stack 12, HT 145, HA 71, SA 73, R 346, stack 560.0, reach 392.8).
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { loadText, type Part, type ResolvedBuild, resolveBuild } from "../workshop/index.js";
import { evaluateCandidate } from "./evaluate-candidate.js";
import { evaluateJoints } from "./evaluate-joints.js";
import type { JointAnswer } from "./joint.js";
import type { FitView, FrameFacts } from "./view.js";
import { viewOfBuild } from "./view-of-build.js";

const RAD = Math.PI / 180;
/** Head top (392.8, 560.0), crossing 35 below it along the axis, seat cluster 491 up the seat tube. */
function frame(): FrameFacts {
  const crossing = { x: 392.8 + 35 * Math.cos(71 * RAD), y: 560 - 35 * Math.sin(71 * RAD) };
  const cluster = { x: -491 * Math.cos(73 * RAD), y: 491 * Math.sin(73 * RAD) };
  return {
    seat_tube_cc_mm: 491,
    top_tube_actual_mm: Math.hypot(crossing.x - cluster.x, crossing.y - cluster.y),
    top_tube_slope_deg: Math.atan2(crossing.y - cluster.y, crossing.x - cluster.x) / RAD,
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
}

function resolved(): ResolvedBuild {
  const loaded = loadText(readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8"), "quayside.yaml");
  if (loaded.kind !== "loaded") throw new Error(JSON.stringify(loaded));
  const docs = loaded.docs.map((d) => d.doc);
  const result = resolveBuild(docs);
  if (result.kind !== "resolved") throw new Error(JSON.stringify(result));
  return result.resolved;
}

const base = resolved();
const view: FitView = viewOfBuild(base, { frame: frame(), spacersBelowMm: 20 });
const all = evaluateJoints(view);

function joint(answers: readonly JointAnswer[], id: string): JointAnswer {
  const hit = answers.find((answer) => answer.id === id);
  if (hit === undefined) throw new Error(`no ${id}`);
  return hit;
}
function number(answer: JointAnswer, name: string): number {
  const hit = answer.numbers.find((n) => n.name === name);
  if (hit === undefined)
    throw new Error(`${answer.id} has no number "${name}": ${answer.numbers.map((n) => n.name).join(", ")}`);
  return hit.value;
}
function part(id: string): Part {
  const hit = base.parts.get(id);
  if (hit === undefined) throw new Error(id);
  return hit;
}
const fork = (id: string) => evaluateCandidate(view, "fork", part(id));

describe("Quayside, fork FA chosen (trade 7.1)", () => {
  it("shows all 58 joints in order", () => {
    expect(all.joints.map((a) => a.id)).toEqual(Array.from({ length: 58 }, (_, i) => `J${i + 1}`));
    expect(all.cautions).toEqual([]);
  });

  it("J1: 34.1 - 33.93 = 0.17 inside 0.10 to 0.20, oval 0.04 leaves 0.15", () => {
    const j = joint(all.joints, "J1");
    expect(j.verdict).toBe("fits");
    expect(number(j, "cup over bore")).toBeCloseTo(0.17, 9);
    expect(number(j, "cup over bore where the bore is widest")).toBeCloseTo(0.15, 9);
    expect(j.cautions).toEqual([]);
    expect(j.reason).toBe("34.1 cup in a 33.93 bore: 0.17 tight, as it should be.");
  });

  it("J2, J3, J5, J6, J7, J8 fit; the steerer needs 224 of 240 (fit.steerer_needed, steerer_have)", () => {
    for (const id of ["J2", "J3", "J5", "J6", "J7", "J8"])
      expect([id, joint(all.joints, id).verdict]).toEqual([id, "fits"]);
    expect(number(joint(all.joints, "J3"), "steerer needed")).toBeCloseTo(224, 9);
    expect(number(joint(all.joints, "J3"), "spare steerer")).toBeCloseTo(16, 9);
    expect(number(joint(all.joints, "J8"), "spacers under the stem")).toBe(20);
    expect(joint(all.joints, "J2").reason).toContain("same class");
  });

  it("J9: set 130.4 to 135, 2.3 per side, 0.34 degrees each with L 383 (rear_set); 2 h x 6 + 5 = 17", () => {
    const j = joint(all.joints, "J9");
    expect(j.verdict).toBe("fits with work");
    expect(number(j, "set per side")).toBeCloseTo(2.3, 9);
    expect(number(j, "turn of each dropout")).toBeCloseTo(0.34, 2);
    const first = j.remedies[0];
    expect(first).toMatchObject({ id: "cold-set-rear", here: true, cost: 17, hours: 2, risk: "M", reversible: false });
    expect(first?.sideEffects[0]).toMatchObject({ port: "frame.rear_spacing", to: 135 });
    expect(all.ports["frame.rear_spacing"]).toBe(135);
    // M11 by hand: 450 x 383^2 / (3 x 205000 x 9.5) = 11.298; + 2.3 = 13.60; band +- 40 % of 11.298.
    const push = j.numbers.find((n) => n.name === "push per side, first guess");
    expect(push?.value).toBeCloseTo(13.598, 2);
    expect(push?.band?.low).toBeCloseTo(9.08, 2);
    expect(push?.band?.high).toBeCloseTo(18.12, 2);
    expect(j.next).toMatchObject({ kind: "measure", at: "donor.tube.chainstay_wall" });
  });

  it("J10: M10 axle in a 10.1 slot, +0.1", () => {
    const j = joint(all.joints, "J10");
    expect(j.verdict).toBe("fits");
    expect(number(j, "slot minus axle")).toBeCloseTo(0.1, 9);
  });

  it("J13, J14, J16 fit: 100 hub, through axle 12 in FA; 47 / 23 = 2.04", () => {
    for (const id of ["J13", "J14", "J16"]) expect([id, joint(all.joints, id).verdict]).toEqual([id, "fits"]);
    expect(number(joint(all.joints, "J16"), "rear tyre width over inner rim width")).toBeCloseTo(47 / 23, 9);
  });

  it("says not checked yet for the joints without code", () => {
    for (const id of ["J11", "J17", "J18", "J50", "J58"]) expect(joint(all.joints, id).verdict).toBe("not checked yet");
  });
});

/** Trade 7.1: side_gap, radial_gap_brake_bridge, side_gap_front, radial_gap_crown. All ± 0.1 for the printed digit. */
describe("Quayside gaps (M9, S14)", () => {
  const rearWith = (tyre: string) => joint(evaluateCandidate(view, "tyre_rear", part(tyre)).joints, "J15");
  const frontWith = (forkId: string, tyre: string) => {
    const withFork = evaluateCandidate(view, "fork", part(forkId)).view;
    return joint(evaluateCandidate(withFork, "tyre_front", part(tyre)).joints, "J15");
  };
  it.each([
    ["q06", 6.5, 27],
    ["q08", 6.0, 13],
    ["q07", 9.0, 18],
  ])("rear %s: side %d, brake bridge %d", (tyre, side, bridge) => {
    const j = rearWith(tyre);
    expect(number(j, "side gap at the chainstays")).toBeCloseTo(side, 1);
    expect(number(j, "radial gap at the brake bridge")).toBeCloseTo(bridge, 1);
  });
  it.each([
    ["FA", "q06", 8.5, 37],
    ["FA", "q08", 10.5, 23],
    ["FA", "q07", 13.1, 28],
    ["FB", "q06", 9.5, 80],
    ["FB", "q08", 11.5, 66],
    ["FB", "q07", 14.1, 71],
    ["FC", "q06", 6.0, 33],
    ["FC", "q08", 8.0, 19],
    ["FC", "q07", 10.6, 24],
  ])("front %s with %s: side %d, crown %d", (forkId, tyre, side, crown) => {
    const j = frontWith(forkId, tyre);
    expect(number(j, "side gap at the fork blades")).toBeCloseTo(side, 1);
    expect(number(j, "radial gap at the crown")).toBeCloseTo(crown, 1);
  });
  it("584-47 fits without a gap rule; setting adds 2.3 x (383 - 315.5) / 383 = 0.41 a side, no credit taken", () => {
    const j = joint(all.joints, "J15");
    expect(j.verdict).toBe("fits");
    expect(j.rules).toEqual([]);
    expect(number(j, "more at the chainstays each side after setting")).toBeCloseTo(0.405, 3);
  });
  it("622-42 cannot take a guard comfortably (tyre_choice): 13 bare at the bridge", () => {
    const j = rearWith("q08");
    expect(j.cautions.some((c) => c.message.includes("A guard hardly goes in at the brake bridge"))).toBe(true);
    expect(joint(all.joints, "J15").cautions.some((c) => c.message.includes("A guard hardly"))).toBe(false);
  });
});

/** Trade 7.1: fork_FA_with_584-47, fork_FB_with_584-47, fork_FC; toe ± 2 as the trade says of its figures. */
describe("Quayside forks beside each other", () => {
  it("FA: head 70.8, toe 143 bare and 127 with guard: fits", () => {
    const c = fork("FA");
    expect(c.view.after?.head_angle_deg).toBeCloseTo(70.8, 1);
    const j = joint(c.joints, "J4");
    expect(j.verdict).toBe("fits");
    expect(Math.abs(number(j, "toe to tyre, no guard") - 143)).toBeLessThan(2);
    expect(Math.abs(number(j, "toe to guard") - 127)).toBeLessThan(2);
    expect(joint(c.joints, "J12").verdict).toBe("fits");
    expect(joint(c.joints, "J12").rules).toEqual([]);
  });

  it("FB: head 68.6, 2.4 slacker: will not fit; open-down ends with disc carry the flag S4", () => {
    const c = fork("FB");
    const j = joint(c.joints, "J4");
    expect(c.view.after?.head_angle_deg).toBeCloseTo(68.6, 1);
    expect(j.verdict).toBe("will not fit");
    expect(j.reason).toContain("too slack");
    expect(j.remedies[0]?.id).toBe("shorter-fork");
    expect(Math.abs(number(j, "toe to tyre, no guard") - 154)).toBeLessThan(2);
    expect(Math.abs(number(j, "toe to guard") - 139)).toBeLessThan(2);
    const keep = joint(c.joints, "J12");
    expect(keep.verdict).toBe("fits with work");
    expect(keep.rules).toMatchObject([{ rule: "S4", level: "flag", part: "FB" }]);
    expect(keep.remedies[0]?.id).toBe("secondary-retention");
    expect(keep.remedies.find((r) => r.id === "weld-closed-ends")?.refused).toBeDefined();
  });

  it("M17 by hand for FB: 105 kg, 0.6 g, R 339, r_e 72, pads 30 up, slots straight down", () => {
    // W 1029.7, F_b 617.8, F_c 617.8 x 339 / 72 = 2908.9; E = 2908.9 cos 30 - 0.9 x 1029.7 = 1592.4;
    // left 2908.9 cos 30 x (50 + 39.5) / 100 - 463.4 = 1791.3; right 2519.2 x 0.105 - 463.4 = -198.9.
    const j = joint(fork("FB").joints, "J12");
    expect(number(j, "push-out, both ends")).toBeCloseTo(1592.4, 0);
    expect(number(j, "push-out, left end")).toBeCloseTo(1791.3, 0);
    expect(number(j, "push-out, right end")).toBeCloseTo(-198.9, 0);
  });

  it("FC: refuse disc, not made for it (S5)", () => {
    const c = fork("FC");
    expect(joint(c.joints, "J12").verdict).toBe("will not fit");
    expect(joint(c.joints, "J12").rules).toMatchObject([{ rule: "S5", level: "refuse", part: "FC" }]);
    expect(joint(c.joints, "J4").verdict).toBe("will not fit");
  });

  it("FC: threaded steerer in the unthreaded headset q11 does not fit; a through axle hub does not go into its ends", () => {
    const c = fork("FC");
    expect(joint(c.joints, "J3").verdict).toBe("will not fit");
    expect(joint(c.joints, "J14").verdict).toBe("fits with work");
    expect(joint(c.joints, "J5").verdict).toBe("fits with work");
    expect(joint(c.joints, "J5").remedies[0]).toMatchObject({ id: "quill-to-threadless-adapter", here: true });
  });
});
