import { readFileSync } from "node:fs";
import { reckon, standingOfBuild } from "@coldset/core/questions";
import { type AnyDoc, loadText, readPlain, resolveBuild } from "@coldset/core/workshop";
import { expect, it } from "vitest";
import { reckonHere } from "./reckon-here.js";

function demoDocs(): readonly AnyDoc[] {
  const loaded = loadText(readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8"), "quayside.yaml");
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  return loaded.docs.map((d) => d.doc);
}

function fresh(docs: readonly AnyDoc[]) {
  const found = resolveBuild(docs, "quayside");
  if (found.kind === "refused") throw new Error(JSON.stringify(found.refusals));
  return reckon(found.resolved);
}

it("answers check and standing by one reckoning of the same documents, and anew where one has changed", () => {
  const seen: unknown[] = [];
  const here = reckonHere((r) => {
    seen.push(r);
    return { board: r.board };
  });
  const docs = demoDocs();
  expect(here.standing(docs, "quayside")).toEqual(standingOfBuild(fresh(docs)));
  expect(here.check(docs, "quayside")).toBe(JSON.stringify({ board: fresh(docs).board }));
  here.check([...docs], "quayside");
  expect(seen[1]).toBe(seen[0]);

  const changed = docs.map((doc) => {
    if (doc.kind !== "intent") return doc;
    const read = readPlain({ ...structuredClone(doc), purpose: "another purpose" });
    return read.kind === "read" ? read.doc : doc;
  });
  expect(here.standing(changed, "quayside")?.becomes).toBe("another purpose");
  expect(here.check(changed, "quayside")).toBe(JSON.stringify({ board: fresh(changed).board }));
  expect(here.standing(docs, "quayside")).toEqual(standingOfBuild(fresh(docs)));
});

it("says why where the documents make no build", () => {
  const here = reckonHere(() => ({}));
  const docs = demoDocs().filter((d) => d.kind !== "donor");
  expect(here.standing(docs, "quayside")).toBeNull();
  const said = JSON.parse(here.check(docs, "quayside")) as { kind: string; refusals: readonly { code: string }[] };
  expect([said.kind, said.refusals.map((r) => r.code)]).toEqual(["refused", ["not-found"]]);
});
