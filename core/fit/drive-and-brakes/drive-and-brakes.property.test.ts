/** What must hold for any numbers: more room never makes a verdict worse, and the ends of an adapter are 20 apart. */

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { loadText, type Part, type PartOfKind, resolveBuild } from "../../workshop/index.js";
import type { FitView } from "../view.js";
import { viewOfBuild } from "../view-of-build.js";
import { adapterRotor } from "./j22-caliper-on-mount.js";
import { j33ArmAtChainstay } from "./j33-arm-at-chainstay.js";
import { j36Chainline } from "./j36-chainline.js";
import { j42ChainOnFixedCentres } from "./j42-chain-on-fixed-centres.js";

const SEED = { seed: 20260502, numRuns: 200 };
const loaded = loadText(readFileSync(new URL("../../../demo/quayside.yaml", import.meta.url), "utf8"), "quayside.yaml");
if (loaded.kind !== "loaded") throw new Error("not loaded");
const result = resolveBuild(loaded.docs.map((d) => d.doc));
if (result.kind !== "resolved") throw new Error("not resolved");
const view: FitView = viewOfBuild(result.resolved);

function crankWith(ports: Readonly<Record<string, number>>): FitView {
  const crank = view.at.crank;
  if (crank === undefined) throw new Error("no crank");
  return { ...view, at: { ...view.at, crank: { ...crank, ports: { ...crank.ports, ...ports } } as Part } };
}
const RANK = ["will not fit", "measure first", "fits"];
const rank = (verdict: string) => RANK.indexOf(verdict === "fits with work" ? "will not fit" : verdict);

describe("drive and brakes, for any numbers", () => {
  it("a wider Q never makes the arm's verdict worse", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (q, more) => {
          const narrow = j33ArmAtChainstay.evaluate(crankWith({ q, z0: 30 }));
          const wide = j33ArmAtChainstay.evaluate(crankWith({ q: q + more, z0: 30 }));
          expect(rank(wide.verdict)).toBeGreaterThanOrEqual(rank(narrow.verdict));
        },
      ),
      SEED,
    );
  });

  it("the chainline fits exactly where front minus rear is 1.5 or less", () => {
    fc.assert(
      fc.property(fc.double({ min: 35, max: 55, noNaN: true }), (chainline) => {
        // Front: stated + (118 - 110) / 2; rear 46.5.
        const off = Math.abs(chainline + 4 - 46.5);
        fc.pre(Math.abs(off - 1.5) > 1e-6);
        expect(j36Chainline.evaluate(crankWith({ chainline })).verdict === "fits").toBe(off < 1.5);
      }),
      SEED,
    );
  });

  it("a chainstay known to 0.1 that leaves 0.1 to 0.7 of slack fits, and never where the slack lies outside 0 to 0.8", () => {
    fc.assert(
      fc.property(fc.double({ min: 425, max: 460, noNaN: true }), (mm) => {
        const { donor } = view.resolved;
        const chainstay = { value: mm, plusMinus: 0.1, written: String(mm) };
        const answer = j42ChainOnFixedCentres.evaluate({
          ...view,
          resolved: { ...view.resolved, donor: { ...donor, measured: { ...donor.measured, chainstay } } },
        });
        // Handbook form solved by hand for 42/22: links n give C; step of two links is about one pitch, 12.7.
        const k = 20 / (2 * Math.PI);
        const slacks = [98, 100, 102, 104, 106].map(
          (n) => (12.7 * (n - 32 + Math.sqrt((n - 32) ** 2 - 8 * k * k))) / 4 - mm,
        );
        const inside = slacks.some((s) => s >= 0.1 && s <= 0.7);
        const near = slacks.some((s) => s >= -1e-6 && s <= 0.8 + 1e-6);
        if (inside) expect(answer.verdict).toBe("fits");
        if (!near) expect(answer.verdict).toBe("fits with work");
      }),
      SEED,
    );
  });

  it("a tab adapter gives 20 more at the front than at the rear, whatever end is written on it", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 140, max: 203 }),
        fc.constantFrom("front" as const, "rear" as const),
        (rotor, end) => {
          const adapter = { ports: { end, rotor, from: "tab_51", to: "post_74" } } as unknown as PartOfKind<"adapter">;
          expect((adapterRotor(adapter, "front") ?? 0) - (adapterRotor(adapter, "rear") ?? 0)).toBe(20);
          expect(adapterRotor(adapter, end)).toBe(rotor);
        },
      ),
      SEED,
    );
  });
});
