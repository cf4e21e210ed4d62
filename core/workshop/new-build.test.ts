/** Are the texts of a new build what was entered, whatever somebody writes into a field, and is a bad entry refused where it stands? */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  freeId,
  idOfName,
  loadText,
  NEW_BUILD_ENTRIES,
  type NewBuildEntries,
  newBuild,
  readEntry,
  resolveBuild,
} from "./index.js";

const entryOf = (key: string) => {
  const found = NEW_BUILD_ENTRIES.find((e) => e.key === key);
  if (found === undefined) throw new Error(key);
  return found;
};
const read = (key: string, written: string, more: NewBuildEntries = {}) =>
  readEntry(entryOf(key), { ...more, [key]: written });

describe("one entry", () => {
  // By hand: 49.1 × 10 = 491; 19.25 × 25.4 = 488.95 (the inch of 1959 is 25.4 mm exactly); 17 3/8 in = 441.325.
  it.each([
    ["seat_tube_cc", "49,1 cm", "491 mm"],
    ["seat_tube_cc", '19 1/4"', "488.95 mm"],
    ["chainstay", "442 ± 3", "442 mm ± 3 mm"],
    ["session_h", "2 h 30 min", "2.5 h"],
    ["open_days", "Tuesdays, thu and sat", "Tuesday, Thursday, Saturday"],
    ["saddle_xy", "−220; 69,2 cm", "−220 mm forward, 692 mm up"],
    ["budget", "300,50", "300.5"],
  ])("%s reads %j as %s", (key, written, words) => {
    expect(read(key, written)).toMatchObject({ kind: "read", words });
  });

  it.each([
    ["chainstay", "44.2"],
    ["chainstay", "long"],
    ["open_days", "tue, someday"],
    ["saddle_xy", "220"],
    ["tyre_now", "28 inch"],
    ["cracks", "perhaps"],
    ["budget", "a lot"],
    ["hours_max", "-3"],
    ["gap_chainstays", "60"],
  ])("%s refuses %j, with words", (key, written) => {
    const answer = read(key, written);
    expect(answer.kind).toBe("refused");
    expect(answer.kind === "refused" && answer.messages.join(" ").length).toBeGreaterThan(10);
  });

  it("is skipped when empty or ?", () => {
    for (const written of ["", "  ", "?", " ? "]) expect(read("chainstay", written)).toEqual({ kind: "skipped" });
  });

  // M6, common practice: loaded radius = bead seat / 2 + width = 584 / 2 + 47 = 339; widest at 339 - 47 / 2 = 315.5.
  it("takes the gap at the height where the wanted tyre is widest", () => {
    expect(read("gap_chainstays", "60", { tyre_wanted: "47-584" })).toMatchObject({ value: { "315.5": 60 } });
  });
});

describe("a name", () => {
  it.each([
    ["Old blue", "old-blue"],
    ["  Größe 56!  ", "grosse-56"],
    ["Çà et là", "ca-et-la"],
    ["---", ""],
    ["x".repeat(60), "x".repeat(40)],
  ])("%j has the address %j", (name, id) => expect(idOfName(name)).toBe(id));

  it("that is taken leads to the nearest free one, within 40 letters", () => {
    expect(freeId("a", new Set(["a", "a-2"]))).toBe("a-3");
    expect(freeId("x".repeat(40), new Set(["x".repeat(40)]))).toBe(`${"x".repeat(38)}-2`);
  });
});

it("keeps any words as they were written, and every document can be read alone and together", () => {
  const words = fc.string({ unit: "binary", minLength: 1, maxLength: 50 });
  fc.assert(
    fc.property(words, words, (title, purpose) => {
      const made = newBuild({ entries: { name: `A ${title}`, becomes: `to ${purpose}` } });
      if (made.kind === "refused") {
        // Only what cannot be kept at all is refused, and it says which entry.
        expect(made.refusals.every((r) => r.at === "name" || r.at === "becomes")).toBe(true);
        return;
      }
      for (const d of made.documents) expect(loadText(d.text, "one").kind).toBe("loaded");
      const loaded = loadText(made.text, "all");
      if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
      expect(loaded.docs.map((d) => `${d.doc.kind} ${d.doc.id}`)).toEqual(
        made.documents.map((d) => `${d.kind} ${d.id}`),
      );
      const resolved = resolveBuild(loaded.docs.map((d) => d.doc));
      if (resolved.kind === "refused") throw new Error(JSON.stringify(resolved.refusals));
      const tidy = (text: string) => text.normalize("NFC").replace(/\s+/g, " ").trim();
      expect(resolved.resolved.build.title).toBe(tidy(`A ${title}`));
      expect(resolved.resolved.intent.purpose).toBe(tidy(`to ${purpose}`));
    }),
    { seed: 7, numRuns: 60 },
  );
}, 240_000);

it("names every entry that is wrong at once, and an unknown one with its nearest", () => {
  const made = newBuild({ entries: { name: "A", chainstay: "x", wheelbase: "y", chainstey: "442" } });
  expect(made.kind === "refused" && made.refusals.map((r) => r.at).sort()).toEqual([
    "chainstay",
    "chainstey",
    "wheelbase",
  ]);
  expect(made.kind === "refused" && made.refusals.find((r) => r.at === "chainstey")?.message).toContain("chainstay");
});

it("writes ? for everything that was not entered, and no figure", () => {
  const made = newBuild({ entries: { name: "A" } });
  if (made.kind === "refused") throw new Error("refused");
  const donor = made.documents.find((d) => d.kind === "donor")?.text ?? "";
  // Version 1 is the only figure in the old bicycle's document; comments aside.
  expect(donor.replace(/#.*$/gm, "").match(/\d+/g)).toEqual(["1"]);
});
