/** The engine by itself: order and money of remedies, side effects to a fixed point, and the words of an empty place. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { frontAndWheelsRemedies, HEAD_REMEDIES, WHEEL_REMEDIES } from "../data/remedies-front-and-wheels.js";
import type { RemedyRow } from "../data/remedy-row.js";
import { type AnyDoc, loadText, type ResolvedBuild, resolveBuild } from "../workshop/index.js";
import { closeJoint } from "./close-joint.js";
import { evaluateJoints, MOST_PASSES } from "./evaluate-joints.js";
import { j9HubInFrame } from "./front-and-wheels/j9-hub-in-frame.js";
import type { JointDefinition } from "./joint-definition.js";
import { offerRemedy, orderRemedies, reckonedRemedy } from "./offer-remedy.js";
import { portValue } from "./port.js";
import { settle } from "./settle.js";
import { span } from "./span.js";
import type { FitView } from "./view.js";

function resolved(edit: (docs: Record<string, unknown>[]) => void = () => {}): ResolvedBuild {
  const loaded = loadText(readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8"), "quayside.yaml");
  if (loaded.kind !== "loaded") throw new Error(JSON.stringify(loaded));
  const docs = structuredClone(loaded.docs.map((d) => d.doc)) as unknown as Record<string, unknown>[];
  edit(docs);
  const result = resolveBuild(docs as unknown as readonly AnyDoc[]);
  if (result.kind !== "resolved") throw new Error(JSON.stringify(result));
  return result.resolved;
}
const viewOf = (build: ResolvedBuild): FitView => ({ resolved: build, at: build.at, ports: {} });
const shopWith = (abilities: readonly string[]) =>
  resolved((docs) => {
    for (const doc of docs) if (doc.kind === "shop") doc.abilities = abilities;
  });
const view = viewOf(resolved());

/** Rate 6, hand 5, machine 15: the money of trade 1b (ruling on the money of a remedy) with Quayside's prices. */
describe("offerRemedy", () => {
  it("hand work: hours x rate + 5", () => {
    // 1 h x 6 + 5 = 11
    expect(offerRemedy(HEAD_REMEDIES.shim, view).cost).toBe(11);
  });
  it("machine work: hours x rate + 15", () => {
    // reamer 0.5 h x 6 + 15 = 18; mill 1 h x 6 + 15 = 21
    expect(offerRemedy(HEAD_REMEDIES.ream, view).cost).toBe(18);
    expect(offerRemedy(WHEEL_REMEDIES.bore_slot_end, view).cost).toBe(21);
  });
  it("a price that is given wins, a part of the bin is added", () => {
    const row: RemedyRow = { ...HEAD_REMEDIES.shim, costGiven: 4 };
    expect(offerRemedy(row, view, { part: { id: "q51", cost: 3, mass: 10 } })).toMatchObject({
      cost: 7,
      massG: 10,
      part: "q51",
    });
  });
  it("names what this shop cannot do", () => {
    const poor = viewOf(shopWith(["hand"]));
    const offer = offerRemedy(WHEEL_REMEDIES.bore_slot_end, poor);
    expect(offer).toMatchObject({ here: false, missing: ["mill"] });
    expect(offer.conditions.join(" ")).toContain("ask the builder");
  });
  it("carries the shop's condition on an ability (weld by the qualified volunteer, trade 7.1)", () => {
    const row: RemedyRow = { ...HEAD_REMEDIES.shim, needs: ["weld"] };
    expect(offerRemedy(row, view).conditions).toEqual(["weld: TIG, by the qualified volunteer only"]);
  });
  it("a frame builder's work is never done here, whatever the shop can do", () => {
    expect(offerRemedy(HEAD_REMEDIES.head_tube, viewOf(shopWith(["hand", "braze", "weld", "lathe"]))).here).toBe(false);
  });
  it("fills the numbers into the words and the side effects", () => {
    const offer = offerRemedy(HEAD_REMEDIES.ream, view, { values: { bore: 29.87, to_bore: 30.075 } });
    expect(offer.what).toBe("Ream the head tube from 29.87 to 30.08 and face it");
    expect(offer.sideEffects[0]?.to).toBe(30.075);
  });
});

describe("order and choice of remedies", () => {
  const keep = offerRemedy(HEAD_REMEDIES.shim, view);
  const cheap = { ...keep, id: "cheap", cost: 1, here: false };
  const other = { ...keep, id: "other", cost: 0, replacesPart: true };
  const never = { ...keep, id: "never", cost: 0, refused: "no", here: false };
  it("this shop's before a builder's, other parts after, refused last", () => {
    expect(orderRemedies([never, other, cheap, keep]).map((o) => o.id)).toEqual([keep.id, "cheap", "other", "never"]);
  });
  it("reckons with the cheapest that is done here, never with a refused one", () => {
    expect(reckonedRemedy("J1", [never, other, cheap, keep], view)?.id).toBe(keep.id);
    expect(reckonedRemedy("J1", [never, other], view)).toBeUndefined();
  });
  it("reckons with the one the build names, but not if it is refused", () => {
    const named = (remedy: string) =>
      viewOf({ ...view.resolved, build: { ...view.resolved.build, remedies: [{ joint: "J1", remedy }] } });
    expect(reckonedRemedy("J1", [never, other, cheap, keep], named("cheap"))?.id).toBe("cheap");
    expect(reckonedRemedy("J1", [never, other, cheap, keep], named("never"))?.id).toBe(keep.id);
  });
});

const row = (joint: string, port: string): RemedyRow => ({
  id: `set-${port}`,
  joint: joint as RemedyRow["joint"],
  what: "set it",
  needs: ["hand"],
  reversible: true,
  hours: 1,
  risk: "L",
  sideEffects: [{ port, to: "to", joints: [], words: "" }],
  sources: [],
});

/** A joint that wants `reads` to be at most `high` and, where it is not, sets `port` to what `next` says. */
function toy(
  id: `J${number}`,
  reads: string,
  high: number,
  port: string,
  next: (seen: number) => number,
): JointDefinition {
  const head = { id, title: id, between: [] };
  return {
    ...head,
    attributes: [],
    reads: [reads],
    evaluate: (seen) => {
      const value = portValue(seen, reads, 1) ?? 0;
      const settled = settle([
        { name: "it", unit: "mm", value: span(value), limit: { high, kind: "hard", words: "" } },
      ]);
      return closeJoint(head, {
        settled,
        words: { fits: "", fails: "" },
        remedies: [offerRemedy(row(id, port), seen, { values: { to: next(value) } })],
        sources: [],
      });
    },
  };
}

describe("evaluateJoints", () => {
  it("a side effect reaches the joint that reads the port, and its own joint keeps the remedy", () => {
    const a = toy("J101", "a", 0, "b", () => 7);
    const b = toy("J102", "b", 3, "c", () => 9);
    const answer = evaluateJoints(view, [a, b]);
    expect(answer.joints.map((j) => j.verdict)).toEqual(["fits with work", "fits with work"]);
    expect(answer.joints[1]?.numbers[0]?.value).toBe(7);
    expect(answer.ports).toEqual({ b: 7, c: 9 });
    expect(answer.cautions).toEqual([]);
  });
  it("a joint that sets the port it reads does not lose its remedy", () => {
    const answer = evaluateJoints(view, [toy("J101", "a", 0, "a", () => 0)]);
    expect(answer.joints[0]?.verdict).toBe("fits with work");
    expect(answer.ports).toEqual({ a: 0 });
  });
  it("two remedies that chase each other end in the caution no-fixed-point", () => {
    const a = toy("J101", "a", 0, "b", (seen) => seen + 1);
    const b = toy("J102", "b", 0, "a", (seen) => seen + 1);
    const answer = evaluateJoints(view, [a, b]);
    expect(answer.passes).toBe(MOST_PASSES);
    expect(answer.cautions.map((c) => c.code)).toContain("no-fixed-point");
  });
  it("two remedies that want different values of one port are told", () => {
    const answer = evaluateJoints(view, [toy("J101", "a", 0, "x", () => 1), toy("J102", "b", 0, "x", () => 2)]);
    expect(answer.cautions.map((c) => c.code)).toContain("remedies-disagree");
  });
  it("a remedy that no joint offers is told, with those that are", () => {
    const build = { ...view.resolved.build, remedies: [{ joint: "J9", remedy: "hammer" }] };
    const answer = evaluateJoints(viewOf({ ...view.resolved, build }), [j9HubInFrame]);
    expect(answer.cautions[0]?.code).toBe("remedy-not-offered");
    expect(answer.cautions[0]?.message).toContain("cold-set-rear");
  });
});

describe("remedy rows", () => {
  it("have ids of their own, and every {name} in their words is a name that side effects or joints can fill", () => {
    const ids = frontAndWheelsRemedies.map((r) => r.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const r of frontAndWheelsRemedies) expect(r.sources.length).toBeGreaterThan(0);
  });
});
