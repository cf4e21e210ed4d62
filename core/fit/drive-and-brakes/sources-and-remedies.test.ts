/** Does this room keep its own house: sources, remedy ids, words, ports? */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { driveAndBrakesRemedies } from "../../data/remedies-drive-and-brakes.js";
import { driveSources } from "../../data/sources-drive.js";
import { fitDriveSources } from "../../data/sources-fit-drive.js";
import { positionSources } from "../../data/sources-position.js";
import { evaluateJoints } from "../evaluate-joints.js";
import { driveAndBrakesJoints } from "./index.js";
import { judge, resolved, viewOf, withParts, withPorts } from "./test-build.js";

const QUAYSIDE = readFileSync(new URL("../../../demo/quayside.yaml", import.meta.url), "utf8");
const quayside = (change: (text: string) => string = (text) => text) => resolved(change(QUAYSIDE));
const view = viewOf(quayside());
const all = evaluateJoints(view);

describe("the room keeps its own house", () => {
  const known = new Set([...fitDriveSources, ...driveSources, ...positionSources].map((row) => row.id));
  it("cites only sources that are listed, and every joint cites one", () => {
    const cited = driveAndBrakesJoints.flatMap((joint) => joint.evaluate(view).sources);
    for (const id of cited) expect(known).toContain(id);
    for (const row of driveAndBrakesRemedies)
      for (const id of row.sources) if (id !== "fit-demo-money") expect(known).toContain(id);
    expect(new Set(fitDriveSources.map((row) => row.id)).size).toBe(fitDriveSources.length);
  });

  it("remedy ids are one of a kind, refused ones say why, and no word is left unfilled", () => {
    expect(new Set(driveAndBrakesRemedies.map((row) => row.id)).size).toBe(driveAndBrakesRemedies.length);
    const answers = [
      ...all.joints,
      judge("J34", withParts(view, { ring: "q31", bb: "q29" })),
      judge("J22", withParts(view, { fork: "FB", adapter_rear: null })),
      judge("J43", withParts(view, { post: "q44" })),
      judge("J36", withPorts(view, "crank", { chainline: 40 })),
      judge("J33", withPorts(view, "crank", { q: 130, z0: 35 })),
    ];
    for (const answer of answers)
      for (const offer of answer.remedies) expect(JSON.stringify(offer)).not.toMatch(/\{\w+\}/);
    for (const answer of answers)
      expect(`${answer.reason}${JSON.stringify(answer.remedies)}`).not.toMatch(/\bsafe\b|NaN|undefined/);
  });

  it("declares every port that its remedies change and that is a number", () => {
    for (const joint of driveAndBrakesJoints) {
      const answers = [
        joint.evaluate(view),
        joint.evaluate(withParts(view, { ring: "q31", bb: "q29", post: "q44" })),
        joint.evaluate(withPorts(view, "crank", { chainline: 40 })),
      ];
      const ports = answers.flatMap((a) =>
        a.remedies.flatMap((r) => r.sideEffects.filter((e) => e.to !== undefined).map((e) => e.port)),
      );
      for (const port of ports) expect([joint.id, joint.changes]).toEqual([joint.id, expect.arrayContaining([port])]);
    }
  });
});
