/** A dozen kills in the middle of the work; `npm run bench -- kills --kills 200` makes more of them. */
import { expect, it } from "vitest";
import { runKills } from "./kill-harness.mjs";

it("loses nothing and leaves nothing half done when it is killed", async () => {
  const tally = await runKills({ kills: 12, seed: 20_260_501 });
  expect(tally.problems).toEqual([]);
  expect(tally.kills).toBe(12);
  // Something was really under way: edits were said to be kept, and the kills came at all sorts of moments.
  expect(tally.edits).toBeGreaterThan(3);
  expect(tally.workMs.filter((ms) => ms > 5).length).toBeGreaterThan(6);
}, 480_000);
