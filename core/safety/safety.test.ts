import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { loadText, type ResolvedBuild, resolveBuild } from "../workshop/index.js";
import { fireRules, SAFETY_RULES, workOnTube } from "./index.js";

const QUAYSIDE = readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8");
function build(change: (text: string) => string = (t) => t): ResolvedBuild {
  const l = loadText(change(QUAYSIDE), "quayside.yaml");
  if (l.kind === "refused") throw new Error(JSON.stringify(l.refusals));
  const r = resolveBuild(l.docs.map((d) => d.doc));
  if (r.kind === "refused") throw new Error(JSON.stringify(r.refusals));
  return r.resolved;
}

// The rules themselves are common practice, no source (docs/methods/safety.md).
describe("safety rules", () => {
  it("has S1 to S18, each with a reason and another way, and none promises anything", () => {
    expect(SAFETY_RULES.map((r) => r.id)).toEqual(Array.from({ length: 18 }, (_, i) => `S${i + 1}`));
    for (const r of SAFETY_RULES) {
      expect(r.why.length).toBeGreaterThan(5);
      expect(r.insteadDo.length).toBeGreaterThan(5);
      expect(`${r.situation}${r.why}${r.insteadDo}`).not.toMatch(/\bsafe\b/i);
    }
  });

  it("plain chrome-moly may be set and welded; Quayside's work fires no S1 to S3", () => {
    const fired = fireRules(build(), []);
    expect(fired.filter((f) => ["S1", "S2", "S3"].includes(f.rule))).toEqual([]);
    expect(fired.find((f) => f.rule === "S16")?.level).toBe("flag");
  });

  it.each([
    ["aluminium", "bend", "S1", "refuse"],
    ["aluminium", "heat", "S1", "refuse"],
    ["carbon", "bend", "S1", "refuse"],
    ["titanium", "bend", "S2", "refuse"],
    ["heat_treated", "bend", "S2", "refuse"],
    ["unknown", "bend", "S2", "refuse"],
    ["unknown", "heat", "S3", "gate"],
    ["stainless", "heat", "S3", "gate"],
  ] as const)("%s, %s: %s %s", (tubeClass, work, rule, level) => {
    expect(workOnTube({ ...build().donor.tube, class: tubeClass }, work)).toMatchObject([{ rule, level }]);
  });

  it("an aluminium donor with Quayside's cold setting and welding is refused on chosen work", () => {
    const fired = fireRules(
      build((t) => t.replace("class: plain_chromoly", "class: aluminium")),
      [],
    );
    const s1 = fired.filter((f) => f.rule === "S1");
    expect(s1.map((f) => f.about).sort()).toEqual(["t07", "t10"]);
    expect(s1.every((f) => f.level === "refuse" && f.onChosen && f.open)).toBe(true);
  });

  it("thin chainstay wall refuses cold setting; 0.6 and above does not", () => {
    const tube = build().donor.tube;
    expect(workOnTube({ ...tube, chainstay_wall: 0.59 }, "bend")).toMatchObject([{ rule: "S2" }]);
    expect(workOnTube({ ...tube, chainstay_wall: 0.6 }, "bend")).toEqual([]);
  });

  it("a gate opens only with evidence a person typed", () => {
    const gate = { rule: "S6", level: "gate", here: "tab", about: "frame", onChosen: true } as const;
    const shut = fireRules(build(), [gate]).find((f) => f.rule === "S6");
    expect(shut?.open).toBe(true);
    const shown = build((t) =>
      t.replace(
        "\noperations:",
        '\nevidence:\n  - { gate: S6, by: a welder, on: "2026-05-02", what: tab load and heat looked at }\noperations:',
      ),
    );
    expect(fireRules(shown, [gate]).find((f) => f.rule === "S6")).toMatchObject({
      open: false,
      evidence: { by: "a welder" },
    });
  });

  it("evidence never opens a refusal", () => {
    const shown = build((t) =>
      t
        .replace("class: plain_chromoly", "class: aluminium")
        .replace(
          "\noperations:",
          '\nevidence:\n  - { gate: S1, by: me, on: "2026-05-02", what: it will be fine }\noperations:',
        ),
    );
    expect(
      fireRules(shown, [])
        .filter((f) => f.rule === "S1")
        .every((f) => f.open),
    ).toBe(true);
  });

  it("a found crack stops everything", () => {
    expect(
      fireRules(
        build((t) => t.replace("cracks: none_seen", "cracks: found")),
        [],
      )[0],
    ).toMatchObject({ rule: "S7", level: "refuse", onChosen: true });
  });
});
