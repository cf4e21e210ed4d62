/** What happens where an attribute, a part or a plan is missing: never "fits" where it decides (docs/methods/joints.md). */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Place } from "../../workshop/index.js";
import type { FitView } from "../view.js";
import { driveAndBrakesJoints } from "./index.js";
import { judge, resolved, viewOf, withDonor, withParts, withPorts } from "./test-build.js";

const QUAYSIDE = readFileSync(new URL("../../../demo/quayside.yaml", import.meta.url), "utf8");
const quayside = (change: (text: string) => string = (text) => text) => resolved(change(QUAYSIDE));
const view = viewOf(quayside());

/** An attribute that is not known never reads as "fits". Where it decides nothing in this case, the reason stands beside it. */
const NOT_DECISIVE: Readonly<Record<string, string>> = {
  "J32 crank.ports.design_spindle": "the system decides; Q and chainline are flagged",
  "J32 bb.ports.spindle_length": "the same",
  "J32 crank.ports.q": "the same",
  "J28 lever.ports.acts": "a pull says cable",
  "J28 caliper.ports.acts": "a pull says cable",
  "J29 lever.ports.acts": "a fluid says hydraulic",
  "J29 caliper.ports.acts": "a fluid says hydraulic",
  "J23 donor.tube.stay_filler": "a tab is there",
  "J34 crank.ports.ring": "a ring is chosen",
  "J34 crank.ports.rings": "a ring is chosen",
  "J34 crank.ports.ring_chainlines": "one ring: the crank's own chainline",
  "J35 crank.ports.bolt_circle_inner": "one ring",
  "J36 crank.ports.rings": "a ring is chosen",
  "J36 crank.ports.ring_chainlines": "one ring: the crank's own chainline",
  "J36 ring.ports.teeth": "one ring: the crank's own chainline",
  "J34 ring.ports.chain_class": "4.4 or 3.97: both above 3, flagged",
  "J36 wheel_rear.ports.width": "the hub's own chainline is entered",
  "J36 wheel_rear.ports.chainline": "reckoned from locknut to sprocket",
  "J36 wheel_rear.ports.locknut_to_smallest": "the hub's own chainline is entered",
  "J36 wheel_rear.ports.cogs": "the hub's own chainline is entered",
  "J36 wheel_rear.ports.cog_pitch": "one cog",
  "J37 ring.ports.chain_class": "a 1/8 chain takes both",
  "J37 sprocket.ports.chain_class": "a 1/8 chain takes both",
  "J37 sprocket.ports.cogs": "a cassette only",
  "J42 crank.ports.ring": "a ring is chosen",
};

describe("what is not known is measured first", () => {
  // A build in which every joint that can fit does: measured chainstay, axle and flats, a ring of its own.
  const full = (): FitView => {
    const measured = viewOf(
      quayside((text) => text.replace("chainstay: 442\n", 'chainstay: "442 ± 0.1"\n')),
      { "frame.rear_spacing": 135 },
    );
    const axle = withPorts(withPorts(measured, "wheel_rear", { axle_length: 176, axle_flats: 9.9 }), "washers", {
      flats: 10,
    });
    const tabbed = withDonor(axle, (donor) => ({
      ...donor,
      interfaces: { ...donor.interfaces, rear_tab: "tab_51", rear_spacing: 135 },
    }));
    return { ...withParts(tabbed, { ring: "q31" }), ports: {} };
  };
  const cable = (): FitView => withParts(full(), { lever: "q20", caliper: "q21", hose: null });
  const startOf = (id: string) => (id === "J28" ? cable() : full());

  it("starts from a build in which all of them fit", () => {
    for (const joint of driveAndBrakesJoints)
      expect([joint.id, judge(joint.id, startOf(joint.id)).verdict]).toEqual([joint.id, "fits"]);
  });

  const cases = driveAndBrakesJoints.flatMap((joint) => joint.attributes.map((path) => [joint.id, path] as const));
  it.each(cases)("%s without %s", (id, path) => {
    const start = startOf(id);
    const keys = path.split(".");
    const place = keys[0] as Place | "donor";
    let without: FitView;
    if (place === "donor") {
      const [, group, key] = keys as [string, "interfaces", string];
      // The class of a tube is never empty; "unknown" is its word.
      if (path === "donor.tube.class") return;
      without = withDonor(start, (donor) => ({ ...donor, [group]: { ...donor[group], [key]: undefined } }));
      if (path === "donor.measured.chainstay") {
        const { frame: _frame, frameSd: _sd, ...rest } = without;
        without = rest;
      }
    } else {
      if (start.at[place] === undefined) throw new Error(`nothing at ${place}`);
      without = withPorts(start, place, { [keys[2] ?? ""]: undefined });
    }
    const answer = judge(id, without);
    const excuse = NOT_DECISIVE[`${id} ${path}`];
    if (excuse === undefined) {
      if (id === "J23" && path.startsWith("donor.stays")) {
        // Decides only where the tab is still to be made.
        const none = withDonor(without, (donor) => ({
          ...donor,
          interfaces: { ...donor.interfaces, rear_tab: "none" },
        }));
        expect(judge(id, none).verdict).toBe("measure first");
        return;
      }
      expect(answer.verdict).toBe("measure first");
      expect(answer.next?.at).toBeTruthy();
    } else expect(answer.verdict).toBe("fits");
  });

  it("an empty place is not chosen, and says which", () => {
    const places: readonly (readonly [string, Place])[] = [
      ["J19", "rotor_front"],
      ["J20", "wheel_rear"],
      ["J21", "washers"],
      ["J22", "caliper"],
      ["J24", "fork"],
      ["J29", "lever"],
      ["J31", "bb"],
      ["J32", "crank"],
      ["J33", "bb"],
      ["J34", "crank"],
      ["J36", "wheel_rear"],
      ["J37", "chain"],
      ["J42", "sprocket"],
      ["J43", "post"],
    ];
    for (const [id, place] of places) {
      const empty = withParts(view, id === "J19" ? { rotor_front: null, rotor_rear: null } : { [place]: null });
      const answer = judge(id, empty);
      expect([id, answer.verdict, answer.next?.at]).toEqual([id, "not checked yet", `build.chosen.${place}`]);
    }
  });

  it("without a disc in plan and parts, the disc joints have nothing to judge", () => {
    const rim = withParts(view, { caliper: null, rotor_front: null, rotor_rear: null, adapter_rear: null });
    const intent = { ...rim.resolved.intent, brakes: "rim_both" as const };
    for (const id of ["J19", "J20", "J22", "J23", "J24"]) {
      const answer = judge(id, { ...rim, resolved: { ...rim.resolved, intent } });
      expect([id, answer.verdict, answer.next]).toEqual([id, "not checked yet", undefined]);
    }
  });
});
