/**
 * Two rings on one crank: is each judged, and does each missing figure say what to measure?
 * Expected figures: the invented demo Moorside (gaps ± 1, worked by hand from the stay's profile and each ring's own chainline);
 * by hand: the middle of 45.0 and 37.5 is 41.25, less 65 - 3.8 - 9 x 3.95 / 2 = 43.425 gives -2.175.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { judge, resolved, viewOf, withDonor, withParts, withPorts } from "./test-build.js";

const MOORSIDE = readFileSync(new URL("../../../demo/moorside.yaml", import.meta.url), "utf8");
const asEntered = viewOf(resolved(MOORSIDE));
// The scenario's adjusted chainstay; the helper's frame is another bicycle's.
const view =
  asEntered.frame === undefined ? asEntered : { ...asEntered, frame: { ...asEntered.frame, chainstay_mm: 429.8 } };
const value = (answer: ReturnType<typeof judge>, name: string) =>
  answer.numbers.find((n) => n.name.startsWith(name))?.value;

describe("a double", () => {
  it("judges both rings at the stay, and the middle of both in line", () => {
    expect(value(judge("J34", view), "gap of the 42 ring")).toBeCloseTo(4.4, 1);
    expect(value(judge("J34", view), "gap of the 26 ring")).toBeCloseTo(3.2, 1);
    expect(value(judge("J36", view), "front chainline")).toBeCloseTo(41.25, 9);
    expect(value(judge("J36", view), "front minus rear")).toBeCloseTo(-2.175, 9);
  });
  it.each([
    ["J34", "crank", { ring_chainlines: undefined }, "bin.parts.m29.ports.ring_chainlines"],
    ["J36", "crank", { ring_chainlines: undefined }, "bin.parts.m29.ports.ring_chainlines"],
    ["J35", "crank", { bolt_circle_inner: undefined }, "bin.parts.m29.ports.bolt_circle_inner"],
    ["J35", "ring_inner", { bolt_circle: undefined }, "bin.parts.m31.ports.bolt_circle"],
    ["J35", "ring_inner", { teeth: undefined }, "bin.parts.m31.ports.teeth"],
    ["J37", "ring_inner", { chain_class: undefined }, "bin.parts.m31.ports.chain_class"],
  ] as const)("%s: without it, measure first (%s %o)", (id, place, ports, at) => {
    const answer = judge(id, withPorts(view, place, ports));
    expect([answer.verdict, answer.next?.at]).toEqual(["measure first", at]);
  });
  it("a small ring for another circle does not bolt on", () => {
    const answer = judge("J35", withPorts(view, "ring_inner", { bolt_circle: 64 }));
    expect(answer.verdict).toBe("will not fit");
    expect(answer.reason).toMatch(/small ring is for 64/);
  });
  it("the line of sprockets is that of this cassette with this spacer, else it is measured", () => {
    expect(
      value(judge("J36", withParts(view, { sprocket: "m24", cassette_spacer: null })), "rear chainline"),
    ).toBeCloseTo(65 - 3.6 - 5 * 3.74, 9);
    const none = { ...view.resolved, build: { ...view.resolved.build, rear_lines: [] } };
    const answer = judge("J36", { ...view, resolved: none });
    expect([answer.verdict, answer.next?.at]).toEqual(["measure first", "bin.parts.m02.ports.locknut_to_smallest"]);
  });
  it("a spindle that is the crank's own is neither longer nor shorter", () => {
    const own = withParts(view, { crank: "m28", bb: "m32", ring: null, ring_inner: null });
    expect(value(judge("J33", own), "Q as fitted")).toBe(150);
    expect(value(judge("J36", own), "front chainline")).toBe(45.5);
    expect(judge("J35", own).verdict).toBe("fits");
  });
});

describe("a tab between stays that are brazed in with silver", () => {
  it("is not heated on, whatever the shop can do; with brass it is looked at as ever", () => {
    const disc = { ...view.resolved, intent: { ...view.resolved.intent, brakes: "disc_rear" as const } };
    const rear = withParts({ ...view, resolved: disc }, { caliper_front: null, caliper_rear: null });
    const silver = judge("J23", rear);
    expect(silver.verdict).not.toBe("fits");
    for (const offer of silver.remedies.filter(
      (o) => /tab/.test(o.id) && o.needs.some((n) => n === "weld" || n === "braze"),
    ))
      expect(offer.refused).toMatch(/silver/);
    const brass = withDonor(rear, (d) => ({ ...d, tube: { ...d.tube, stay_filler: "brass" } }));
    expect(judge("J23", brass).reason).not.toMatch(/silver/);
  });
});
