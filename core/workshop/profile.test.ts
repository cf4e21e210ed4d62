/** Is every key of a measured profile read or refused, and none left out without a word? */
import { describe, expect, it } from "vitest";
import { loadText } from "./load.js";

const withProfile = (profile: string) =>
  loadText(
    `kind: bin\nversion: 1\nid: b\nparts:\n  - {id: f, kind: fork, condition: A, ports: {blade_inner_at_radius: ${profile}}}\n`,
    "a.yaml",
  );

describe("a profile", () => {
  it("is read by distance, whichever order it was written in", () => {
    const read = withProfile('{330: 52, "315.5": 60, 300: 64}');
    const bin = read.kind === "loaded" ? read.docs[0]?.doc : undefined;
    expect(bin?.kind === "bin" ? bin.parts[0]?.ports : read).toEqual({
      blade_inner_at_radius: [
        [300, 64],
        [315.5, 60],
        [330, 52],
      ],
    });
  });

  it.each([
    "{__proto__: 1}",
    '{"": 5}',
    "{constructor: 1}",
    '{"0x10": 5}',
    "{300: 64, a: 3}",
    "{1001: 5}",
    '{"-3": 5}',
  ])("%s is refused", (profile) => {
    const read = withProfile(profile);
    expect(read.kind).toBe("refused");
    if (read.kind === "refused") expect(read.refusals.map((r) => r.message).join()).toMatch(/distance/);
  });
});
