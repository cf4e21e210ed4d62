/** Brakes beside each other: methods M15, M16, M21 (docs/methods/clearances.md, joints.md); limits are common practice, no source, or named beside. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { evaluateCandidate } from "../evaluate-candidate.js";
import { evaluateJoints } from "../evaluate-joints.js";
import type { JointAnswer } from "../joint.js";
import { adapterRotor } from "./j22-caliper-on-mount.js";
import { judge, number, partOf, resolved, viewOf, withDonor, withParts, withPorts } from "./test-build.js";

const QUAYSIDE = readFileSync(new URL("../../../demo/quayside.yaml", import.meta.url), "utf8");
const quayside = (change: (text: string) => string = (text) => text) => resolved(change(QUAYSIDE));
const base = quayside();
const view = viewOf(base);
const all = evaluateJoints(view);

const board = (id: string): JointAnswer => {
  const hit = all.joints.find((answer) => answer.id === id);
  if (hit === undefined) throw new Error(id);
  return hit;
};

describe("brakes beside each other", () => {
  it("J29: q19 with q17 is refused by S9 and will not fit (brake_family: never q19 with q17)", () => {
    const candidate = evaluateCandidate(view, "caliper_rear", partOf(base, "q19"));
    const j = candidate.joints.find((answer) => answer.id === "J29");
    expect(j?.verdict).toBe("will not fit");
    expect(j?.rules).toMatchObject([{ rule: "S9", level: "refuse", place: "caliper_rear", part: "q19" }]);
    expect(j?.remedies.find((r) => r.id === "fill-with-the-other-fluid")?.refused).toBeDefined();
    // Not on the chosen build.
    expect(board("J29").rules).toEqual([]);
  });

  it("J29: a hose for the other fluid is refused; another fitting of the same fluid is made up", () => {
    expect(judge("J29", withPorts(view, "hose", { fluid: "glycol" })).rules).toMatchObject([
      { rule: "S9", place: "hose" },
    ]);
    const ends = judge("J29", withPorts(view, "caliper", { fitting: "banjo N" }));
    expect([ends.verdict, ends.remedies[0]?.id]).toEqual(["fits with work", "hose-ends-for-both"]);
    expect(judge("J29", withParts(view, { caliper: "q21" })).verdict).toBe("will not fit");
  });

  it("J28: q20 with q21, 14 on 14; short pull on long pull is refused by S10 (trade 7.3: c10 with c07 is a refuse)", () => {
    const cable = withParts(view, { lever: "q20", caliper: "q21", hose: null });
    expect(judge("J28", cable).verdict).toBe("fits");
    expect(judge("J29", cable).verdict).toBe("not checked yet");
    const mixed = judge("J28", withPorts(cable, "lever", { pull: 7 }));
    expect(mixed.verdict).toBe("will not fit");
    expect(mixed.rules).toMatchObject([{ rule: "S10", level: "refuse", part: "q21" }]);
    const named = withPorts(cable, "lever", { pull: 7 });
    const build = { ...named.resolved.build, remedies: [{ joint: "J28", remedy: "pull-ratio-pulley" }] };
    const taken = judge("J28", { ...named, resolved: { ...named.resolved, build } });
    expect([taken.verdict, taken.rules[0]?.level]).toEqual(["fits with work", "flag"]);
    expect(judge("J28", withParts(view, { lever: "q20" })).verdict).toBe("will not fit"); // cable lever, hydraulic caliper
  });

  it("J24: FC was not made for a disc, S5 refuses; FA and FB were (fork_FC)", () => {
    const c = judge("J24", withParts(view, { fork: "FC" }));
    expect([c.verdict, c.rules[0]?.rule, c.rules[0]?.level, c.rules[0]?.part]).toEqual([
      "will not fit",
      "S5",
      "refuse",
      "FC",
    ]);
    expect(c.remedies.find((r) => r.id === "add-tab-to-fork")?.refused).toBeDefined();
    const b = judge("J24", withParts(view, { fork: "FB" }));
    expect([b.verdict, b.rules]).toEqual(["fits", []]);
    expect(b.cautions.map((caution) => caution.code)).toEqual(["open-fork-end"]); // S4 is J12's
  });

  it("J22: a 51 tab adapter for 180 at the front is one for 160 at the rear, and the other way round (ruling 1b)", () => {
    const q24 = partOf(base, "q24");
    const q25 = partOf(base, "q25");
    if (q24.kind !== "adapter" || q25.kind !== "adapter") throw new Error("no adapters");
    expect([adapterRotor(q24, "rear"), adapterRotor(q24, "front")]).toEqual([160, 180]);
    expect([adapterRotor(q25, "front"), adapterRotor(q25, "rear")]).toEqual([180, 160]);
    expect(judge("J22", withParts(view, { adapter_rear: "q25" })).verdict).toBe("fits");
    // FB has a 51 tab: no adapter of the bin gives 160 at the front, q25 gives 180.
    const fb = judge("J22", withParts(view, { fork: "FB" }));
    expect(fb.remedies.map((r) => r.id)).toContain("adapter-for-the-rotor");
    expect(judge("J22", withParts(view, { fork: "FB", adapter_front: "q25" })).reason).toBe(
      "Front rotor 160, the adapter q25 puts the caliper at 180.",
    );
    // Without an adapter at the rear, the bin's q24 or q25 would do.
    const bare = judge("J22", withParts(view, { adapter_rear: null }));
    expect([bare.verdict, bare.remedies.filter((r) => r.id === "adapter-from-the-bin").map((r) => r.part)]).toEqual([
      "fits with work",
      ["q24", "q25"],
    ]);
    // q26 leads to a flat mount.
    expect(judge("J22", withParts(view, { adapter_rear: "q26" })).reason).toContain("does not join");
  });

  it("J22: two ends that fail fit with work only if both can be helped", () => {
    // Rear could take q24 from the bin; FC has no mount at all.
    expect(judge("J22", withParts(view, { fork: "FC", adapter_rear: null })).verdict).toBe("will not fit");
  });

  it("J19: splined q23 on a six-bolt hub will not; a six-bolt rotor on a splined hub by adapter; no mount, no home-made one", () => {
    expect(judge("J19", withParts(view, { rotor_rear: "q23" })).verdict).toBe("will not fit");
    const splined = judge("J19", withPorts(view, "wheel_rear", { rotor_mount: "splined" }));
    expect([splined.verdict, splined.remedies[0]?.id, splined.remedies[0]?.hours]).toEqual([
      "fits with work",
      "spline-to-six-bolt-adapter",
      0.2,
    ]);
    const none = judge("J19", withPorts(view, "wheel_rear", { rotor_mount: "none" }));
    expect(none.verdict).toBe("will not fit");
    expect(none.remedies.find((r) => r.id === "home-made-rotor-adapter")?.refused).toBeDefined();
    // 1.50 is worn out (references 8.3).
    expect(judge("J19", withPorts(view, "rotor_front", { thickness: 1.4 })).reason).toContain("worn");
  });

  it("J20: a tab flush with flat faces 142 apart stands 3.5 too far out (M15); closed 12 ends at 142 are right", () => {
    const through = withPorts(view, "wheel_rear", { width: 142, axle: "through_12" });
    const faces = (rear_end: "vertical_slot" | "closed_12") =>
      withDonor(through, (donor) => ({
        ...donor,
        interfaces: { ...donor.interfaces, rear_tab: "tab_51", rear_end, rear_spacing: 142 },
      }));
    const flat = judge("J20", faces("vertical_slot"));
    expect(number(flat, "tab over rotor, outward")).toBeCloseTo(3.5, 9);
    expect(flat.verdict).toBe("will not fit"); // washers reach 2.5, a rotor spacer 2
    const recessed = judge("J20", faces("closed_12"));
    expect([number(recessed, "tab over rotor, outward"), recessed.verdict]).toEqual([0, "fits"]);
    // 138 between the faces: 1.5 + half of ± 0.2 reaches over, so measure first; 139: 2.0 out, washers.
    const at = (rear_spacing: number) =>
      judge(
        "J20",
        withDonor(view, (donor) => ({
          ...donor,
          interfaces: { ...donor.interfaces, rear_tab: "tab_51", rear_spacing },
        })),
      );
    expect(at(138).verdict).toBe("measure first");
    expect(at(139).remedies[0]).toMatchObject({ id: "shim-caliper-inboard" });
    expect(at(130.4).remedies[0]).toMatchObject({ id: "face-tab" });
  });

  it("J23: no heat on aluminium (S1); an unknown tube is gated (S3) and goes to a builder; evidence stays with the person", () => {
    const tube = (name: "aluminium" | "unknown") =>
      withDonor(view, (donor) => ({ ...donor, tube: { ...donor.tube, class: name } }));
    const alu = judge("J23", tube("aluminium"));
    expect([alu.verdict, alu.rules.map((r) => r.rule)]).toEqual(["will not fit", ["S6", "S1"]]);
    const unknown = judge("J23", tube("unknown"));
    expect(unknown.rules.map((r) => [r.rule, r.level])).toEqual([
      ["S6", "gate"],
      ["S3", "gate"],
    ]);
    expect(unknown.remedies.every((r) => r.id === "leave-rim-brake" || !r.here)).toBe(true);
  });
});
