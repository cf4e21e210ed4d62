import { describe, expect, it } from "vitest";
import { geometrySources } from "../data/sources-geometry.js";
import { brakeEndSheets } from "../mechanics/brake-end-sheets.js";
import type { Field, Sheet } from "../sheet/index.js";
import { clearanceSheets } from "./clearance-sheets.js";
import { forkSwapSheet } from "./fork-swap-sheet.js";
import { sideViewSheet } from "./side-view-sheet.js";

/** The form as it opens: every start value. */
function starts(fields: readonly Field[]): Record<string, unknown> {
  return Object.fromEntries(fields.map((f) => [f.key, f.kind === "group" ? starts(f.fields) : f.start]));
}

const sheets = [sideViewSheet, forkSwapSheet, ...clearanceSheets, ...brakeEndSheets] as readonly Sheet[];
const known = new Set(geometrySources.map((row) => row.id));

describe("every sheet of this room", () => {
  it.each(sheets.map((s) => [s.id, s] as const))(
    "%s answers its own start values and keeps its promises",
    (_id, sheet) => {
      const answer = sheet.run(starts(sheet.fields));
      if (answer.kind !== "answered") throw new Error(JSON.stringify(answer.refusals));
      const value = answer.value as Record<string, unknown>;
      for (const { key } of sheet.gives) expect(value, key).toHaveProperty(key);
      for (const id of answer.sources) expect(known.has(id), id).toBe(true);
      expect(sheet.question.endsWith("?")).toBe(true);
    },
  );

  it("side view opens without a caution", () => {
    const answer = sideViewSheet.run(starts(sideViewSheet.fields));
    expect(answer).toMatchObject({ kind: "answered", cautions: [] });
  });

  it("gives the documented keys as numbers", () => {
    const side = sideViewSheet.run(starts(sideViewSheet.fields));
    const swap = forkSwapSheet.run(starts(forkSwapSheet.fields) as never);
    if (side.kind !== "answered" || swap.kind !== "answered") throw new Error("refused");
    const shared =
      "stack_mm reach_mm effective_top_tube_mm front_centre_mm front_centre_horizontal_mm wheelbase_mm bb_height_mm trail_mm mechanical_trail_mm wheel_flop_mm";
    const check = (value: object, keys: string) => {
      for (const key of keys.split(" "))
        expect(Number.isFinite((value as Record<string, unknown>)[key]), key).toBe(true);
    };
    check(side.value, `${shared} effective_top_tube_at_crossing_mm`);
    check(swap.value, `${shared} rotation_nose_up_deg head_angle_deg seat_angle_deg bb_drop_mm`);
  });
});
