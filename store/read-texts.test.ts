/** How often is a text read? Counted, since a second reading gives the same and only takes longer. */
import { readFileSync } from "node:fs";
import { loadText } from "@coldset/core/workshop";
import { describe, expect, it } from "vitest";
import { readTexts } from "./read-texts.js";
import type { StoredDocument } from "./workshop.js";

function demo(kind: string): StoredDocument {
  const loaded = loadText(readFileSync(new URL("../demo/quayside.yaml", import.meta.url), "utf8"), "quayside.yaml");
  const one = loaded.kind === "loaded" ? loaded.docs.find(({ doc }) => doc.kind === kind) : undefined;
  if (one === undefined) throw new Error(`no ${kind} in the demo`);
  const { doc, text } = one;
  return { kind, id: doc.id, label: "quayside.yaml", revision: 1, updatedAt: "2026-05-01T10:00:00.000Z", text };
}

describe("a stored text", () => {
  it("is read once, however often it is opened and edited in place", () => {
    const texts = readTexts();
    let bin = demo("bin");
    for (let n = 1; n <= 20; n += 1) {
      expect(texts.read(bin).kind).toBe("loaded");
      const edited = texts.edit(bin, ["parts", n % 5, "cost"], 40 + n);
      if (edited.kind !== "edited") throw new Error("refused");
      bin = { ...bin, text: edited.text, revision: bin.revision + 1 };
      const read = texts.read(bin);
      const anew = loadText(bin.text, bin.label);
      if (read.kind !== "loaded" || anew.kind !== "loaded") throw new Error("refused");
      expect(read.loaded).toEqual(anew.docs[0]);
    }
    expect(texts.readings()).toBe(1);
  });

  it("is read anew where it stands differently, or came in a file of another name", () => {
    const texts = readTexts();
    const donor = demo("donor");
    const other = { ...donor, text: donor.text.replace("chainstay: ", "chainstay:  ") };
    expect(other.text).not.toBe(donor.text);
    const seen = [donor, other, donor, { ...donor, label: "b.yaml" }].map((d) => texts.read(d));
    expect(seen.map((s) => (s.kind === "loaded" ? [s.loaded.text, s.loaded.file] : []))).toEqual([
      [donor.text, "quayside.yaml"],
      [other.text, "quayside.yaml"],
      [donor.text, "quayside.yaml"],
      [donor.text, "b.yaml"],
    ]);
    // The first came again as it was.
    expect(texts.readings()).toBe(3);
  });

  it("is edited the long way where its place is new, and says why it cannot be", () => {
    const texts = readTexts();
    const donor = demo("donor");
    const fresh = texts.edit(donor, ["measured", "note_of_ours"], 1);
    expect(fresh.kind).toBe("refused");
    const wrong = texts.edit(donor, ["measured", "chainstay"], "no length");
    expect(wrong).toMatchObject({ kind: "refused", refusals: [{ path: ["measured", "chainstay"] }] });
    // What was refused stands nowhere.
    const read = texts.read(donor);
    expect(read.kind === "loaded" ? read.loaded.text : "").toBe(donor.text);
  });

  it("is forgotten where there is no room for all of them, the longest unused first", () => {
    const [bin, donor] = [demo("bin"), demo("donor")];
    const texts = readTexts(bin.text.length + 1);
    texts.read(bin);
    texts.read(donor);
    texts.read(donor);
    expect(texts.readings()).toBe(2);
    texts.read(bin);
    expect(texts.readings()).toBe(3);
  });
});
