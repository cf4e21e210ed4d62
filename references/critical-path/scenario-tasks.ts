/** Tasks, shops and money of the three demo scenarios (invented for the demo), as the tests of the plan need them. */
import type { MoneyLine, Operation, Shop } from "@coldset/core/plan";

function task(id: string, what: string, handsOnH: number, after: string, rest: Partial<Operation> = {}): Operation {
  return { id, what, handsOnH, waitDays: 0, needs: [], after: after === "" ? [] : after.split(" "), ...rest };
}

export const quaysideTasks: readonly Operation[] = [
  task("t01", "strip and bag", 2.5, ""),
  task("t02", "clean and inspect zones", 2.0, "t01"),
  task("t03", "measure geometry and interfaces", 1.5, "t02"),
  task("t04", "decide wheels fork brake drive", 1.5, "t03"),
  task("t05", "order missing parts", 0.5, "t04", { waitDays: 6 }),
  task("t06", "free stuck caliper piston", 1.0, "t04"),
  task("t07", "cold set 130.4 to 135 and align ends", 2.0, "t04", { needs: ["coldset"] }),
  task("t08", "dry fit everything bare", 3.0, "t05 t06 t07", { gate: true }),
  task("t09", "cut and drill brake tab", 2.5, "t08", { needs: ["mill"] }),
  task("t10", "tack check weld tab and brace", 3.0, "t09", { needs: ["weld_tig_by_qualified_volunteer"] }),
  task("t11", "re-align and dye check", 1.0, "t10"),
  task("t12", "hose guides and eyelet", 1.5, "t11"),
  task("t13", "face and chase", 0.7, "t12", { needs: ["ream_face"] }),
  task("t14", "prime and colour", 3.0, "t13", { waitDays: 1, needs: ["spray_1k"] }),
  task("t15", "clear", 1.0, "t14", { waitDays: 7, needs: ["spray_1k"], mayComeLater: true }),
  task("t16", "headset fork bb crank wheels", 2.5, "t15"),
  task("t17", "brakes hoses bleed", 2.5, "t16"),
  task("t18", "hub gear chain guards rack lights", 2.5, "t17"),
  task("t19", "signed check and first ride", 1.5, "t18"),
];
export const quaysideShop: Shop = {
  kind: "weekly",
  sessionH: 3,
  openDays: ["tue", "thu", "sat"],
  hoursPerWeek: 9,
  capabilities: [
    "hand",
    "press",
    "ream_face",
    "tap",
    "drill",
    "lathe",
    "mill",
    "weld_tig_by_qualified_volunteer",
    "coldset",
    "spray_1k",
  ],
  missing: ["powder_oven", "isocyanate"],
};

export const moorsideTasks: readonly Operation[] = [
  task("t01", "strip", 3, ""),
  task("t02", "inspect with dye and measure", 4, "t01"),
  task("t03", "choose wheels brakes drive", 2, "t02"),
  task("t04", "cold set 126 to 130 and take out the string error", 3, "t03", { needs: ["coldset"] }),
  task("t05", "order rims tyres", 0.5, "t03", { waitDays: 8 }),
  task("t06", "build wheels", 6, "t05"),
  task("t07", "repair sticky lever", 2, "t03"),
  task("t08", "dry fit incl. tyre at pressure and brakes at 71", 3, "t04 t06 t07", { gate: true }),
  task("t09", "dimple chainstays and add guides by silver brazing away from stay joints", 3, "t08", {
    needs: ["braze_oxy_propane_10_years"],
  }),
  task("t10", "align again", 1, "t09"),
  task("t11", "touch paint and re-line lugs", 5, "t10", { waitDays: 2 }),
  task("t12", "harden", 0, "t11", { waitDays: 7 }),
  task("t13", "assemble index and tape", 7, "t12"),
  task("t14", "signed check ride 30 km re-torque", 3, "t13"),
];
export const moorsideShop: Shop = {
  kind: "weekly",
  sessionH: 6,
  openDays: ["sat"],
  hoursPerWeek: 6,
  capabilities: ["hand", "press", "ream_face", "tap", "drill", "braze_oxy_propane_10_years", "coldset", "spray_1k"],
  missing: ["lathe", "mill", "weld"],
};

export const canalsideTasks: readonly Operation[] = [
  task("t01", "strip and inspect (evening 1)", 2.5, ""),
  task("t02", "measure and choose (evening 2)", 1.5, "t01"),
  task("t03", "dry fit seat rack stand brakes (evening 2)", 1, "t02", { gate: true }),
  task("t04", "brush touch-in of rust (evening 3)", 2, "t03", { waitDays: 7 }),
  task("t05", "bearings bb crank (evening 4)", 2, "t04"),
  task("t06", "wheels brakes levers cables (evening 5)", 2.5, "t05"),
  task("t07", "rack seat stand lights (evening 6)", 1.5, "t06"),
  task("t08", "load test with 30 kg dummy and signed check (evening 6)", 1.5, "t07"),
];
export const canalsideShop: Shop = {
  kind: "listed",
  sessionH: 2.5,
  days: [0, 7, 14, 21, 28, 35],
  capabilities: ["hand", "press", "ream_face", "tap", "spray_brush_1k"],
  missing: ["drill_in_tubes", "lathe", "mill", "weld", "braze", "coldset"],
};

export const line = (id: string, price: number | null, qty = 1, rest: Partial<MoneyLine> = {}): MoneyLine => ({
  id,
  what: id,
  kind: "part",
  qty,
  price,
  spent: false,
  ...rest,
});

/** Q's list with hydraulic brakes; prices of one. */
export const quaysideLines: readonly MoneyLine[] = [
  line("FA", 65),
  line("q01", 95),
  line("q02", 55),
  line("q06", 22, 2),
  line("q09", 5, 2),
  line("q11", 12),
  line("q13", 6),
  line("q15", 8),
  line("q17", 28),
  line("q18", 30),
  line("q22", 9, 2),
  line("q24", 6),
  line("q27", 14),
  line("q28", 14),
  line("q30", 12),
  line("q35", 6),
  line("q36", 9),
  line("q37", 16),
  line("q38", 3),
  line("q39", 10),
  line("q40", 22),
  line("q42", 24),
  line("q43", 6),
  line("q45", 6),
  line("q46", 2),
  line("q50", 9, 4, { kind: "consumable" }),
  line("donor", 30, 1, { kind: "donor", spent: true }),
];
