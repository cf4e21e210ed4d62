import { describe, expect, test } from "vitest";
import { cutPieces } from "./cut-pieces.js";
import { planBuild } from "./plan-build.js";
import { dateAfter, weekDayOf } from "./plan-date.js";
import type { Operation, PlanInput, WeeklyShop } from "./plan-types.js";
import { irreversibleOf, missingNeeds, readNeed } from "./read-need.js";

const op = (id: string, handsOnH: number, after: string[] = [], rest: Partial<Operation> = {}): Operation => ({
  id,
  what: `task ${id}`,
  handsOnH,
  waitDays: 0,
  needs: [],
  after,
  ...rest,
});
const shop: WeeklyShop = {
  kind: "weekly",
  sessionH: 3,
  openDays: ["tue", "thu", "sat"],
  hoursPerWeek: 9,
  capabilities: ["hand", "drill", "weld_tig_by_qualified_volunteer"],
  missing: ["mill"],
};
function planned(input: PlanInput) {
  const answer = planBuild(input);
  if (answer.kind === "refused") throw new Error(answer.refusals.map((r) => r.message).join(" "));
  return answer.value;
}
const findings = (input: PlanInput) => planned(input).findings.map((f) => `${f.code} ${f.at}`.trim());
function codes(input: PlanInput) {
  const answer = planBuild(input);
  return answer.kind === "refused" ? answer.refusals.map((r) => r.code) : [];
}

describe("orders, dates, slack, by hand", () => {
  // Sessions of 3 h on day 0, 2, 4, 7. a 2 h, then b 2 h after a, c 1 h free, d 3 h after all.
  // a 0-2 and c 2-3 on day 0, b on day 2 (48-50), d on day 4 (96-99).
  // b may end as late as 51, so it may start 1 h later; c may be moved to behind b at 50 at the latest? In the order
  // shown c comes before b, so it may start no later than 49 - 1 = ... the last place that ends before b's latest
  // start (49) and lies in a session: 48-49, from 2 to 48 = 46 h. a must end before c's latest start: 3, so 1 h.
  const operations = [op("a", 2), op("b", 2, ["a"]), op("c", 1), op("d", 3, ["b", "c"])];
  const plan = planned({
    operations,
    shop,
    startDate: "2027-03-02",
    deliveries: [
      { part: "tyres", deliveryDays: 3, neededBy: "d" },
      { part: "rims", deliveryDays: 5, neededBy: "b" },
    ],
  });
  test("sessions and dates", () => {
    expect(plan.operations.map((o) => [o.id, o.session, o.day, o.date, o.hoursIntoSession])).toEqual([
      ["a", 1, 0, "2027-03-02", 0],
      ["c", 1, 0, "2027-03-02", 2],
      ["b", 2, 2, "2027-03-04", 0],
      ["d", 3, 4, "2027-03-06", 0],
    ]);
    expect(plan.onePiece).toEqual({ days: 99 / 24, sessions: 3, proven: true });
  });
  test("slack", () => {
    expect(Object.fromEntries(plan.operations.map((o) => [o.id, o.slackH]))).toEqual({ a: 1, b: 1, c: 46, d: 0 });
  });
  test("order-by days, one of them before the start", () => {
    expect(plan.orders.map((o) => [o.part, o.neededOnDay, o.orderByDay, o.orderByDate])).toEqual([
      ["tyres", 4, 1, "2027-03-03"],
      ["rims", 2, -3, "2027-02-27"],
    ]);
    expect(plan.findings.map((f) => [f.code, f.at])).toEqual([["order-before-the-start", "rims"]]);
  });
});

describe("order of work", () => {
  test("no dry fit at all", () => {
    expect(findings({ operations: [op("a", 1, [], { irreversible: "heat" })], shop })).toEqual([
      "no-dry-fit",
      "before-dry-fit a",
    ]);
  });
  test("nothing irreversible, nothing said", () => {
    expect(findings({ operations: [op("a", 1), op("b", 1, ["a"])], shop })).toEqual([]);
  });
  test("two dry fits before it: both must be signed", () => {
    const operations = [
      op("g1", 1, [], { gate: true }),
      op("g2", 1, ["g1"], { gate: true }),
      op("w", 1, ["g2"], { irreversible: "heat" }),
    ];
    const sign = (operation: string) => ({ operation, by: "second person", on: "2027-03-02", what: "gaps measured" });
    const locked = (evidence: PlanInput["evidence"]) =>
      planned({ operations, shop, ...(evidence ? { evidence } : {}) }).operations.find((o) => o.id === "w")?.lockedBy;
    expect(locked(undefined)).toEqual(["g1", "g2"]);
    expect(locked([sign("g1")])).toEqual(["g2"]);
    expect(locked([sign("g1"), sign("g2")])).toEqual([]);
    // a signature on the work itself does not replace the dry fit before it
    expect(locked([sign("w")])).toEqual(["g1", "g2"]);
  });
  test("evidence for nothing, or without a name, opens nothing and is said", () => {
    const evidence = [{ operation: "zz", by: "a", on: "b", what: "c" }];
    expect(findings({ operations: [op("a", 1)], shop, evidence })).toEqual(["evidence-incomplete zz"]);
  });
  test("heat after paint, drilling in no order to it, paint without a wait", () => {
    const operations = [
      op("g", 1, [], { gate: true }),
      op("p", 1, ["g"], { irreversible: "paint" }),
      op("w", 1, ["p"], { irreversible: "heat" }),
      op("d", 1, ["g"], { irreversible: "drill" }),
    ];
    expect(findings({ operations, shop })).toEqual(["paint-without-wait p", "after-paint w", "order-to-paint-open d"]);
  });
  test("the builder's word overrules what the name suggests", () => {
    const [guess] = planned({ operations: [op("a", 1, [], { what: "cut the old cable" })], shop }).operations;
    expect(guess).toMatchObject({ irreversible: "cut", irreversibleFrom: "its words", locked: true });
    const [said] = planned({
      operations: [op("a", 1, [], { what: "cut the old cable", irreversible: "no" })],
      shop,
    }).operations;
    expect(said).toMatchObject({ irreversible: undefined, irreversibleFrom: "stated", locked: false });
  });
  test("a dry fit cannot be left for later", () => {
    expect(findings({ operations: [op("g", 1, [], { gate: true, mayComeLater: true })], shop })).toEqual([
      "gate-cannot-wait g",
    ]);
  });
});

describe("abilities", () => {
  test("a longer word means the ability plus its condition", () => {
    expect(readNeed("weld_tig_by_qualified_volunteer")).toMatchObject({
      ability: "weld",
      condition: "tig by qualified volunteer",
    });
    expect(readNeed("coldset")).toMatchObject({ ability: "cold_set", condition: "" });
    expect(readNeed("powder_oven").ability).toBeUndefined();
    expect(irreversibleOf("anything", ["spray_1k"])).toEqual({ kind: "paint", from: "its needs" });
    expect(irreversibleOf("strip and bag", [])).toBeUndefined();
  });
  test("missing, had under another condition, had", () => {
    expect(missingNeeds(["mill", "lathe", "powder_oven"], shop).missing).toEqual(["mill", "lathe", "powder_oven"]);
    expect(missingNeeds(["weld", "drill"], shop)).toEqual({ missing: [], toConfirm: ["weld"] });
    const school = { capabilities: ["drill"], missing: ["drill_in_tubes"] };
    expect(missingNeeds(["drill_in_tubes", "drill"], school)).toEqual({ missing: ["drill_in_tubes"], toConfirm: [] });
    expect(findings({ operations: [op("a", 1, [], { needs: ["lathe"] })], shop })).toEqual(["ability-missing a"]);
    expect(findings({ operations: [op("a", 1, [], { needs: ["weld"], irreversible: "no" })], shop })).toEqual([
      "ability-condition a",
    ]);
  });
});

describe("limits of time", () => {
  test("hours over, deadline missed with no way back", () => {
    const input = { operations: [op("a", 3), op("b", 3, ["a"])], shop, hoursMax: 5, deadlineDays: 1 };
    expect(findings(input)).toEqual(["hours-over", "deadline-not-met"]);
    const plan = planned(input);
    expect(plan.meetsDeadline).toBe(false);
    expect(plan.waysBack.every((w) => !w.meetsDeadline)).toBe(true);
    expect(plan.findings.at(-1)?.wayOut).toContain("None of the ways tried");
  });
  test.each([
    [7, 6, [4, 3]],
    [6, 6, [6]],
    [13, 6, [5, 4, 4]],
    [2.5, 1.2, [1, 1, 0.5]],
    [4.2, 2.2, [2.1, 2.1]],
  ])("%d h in sessions of %d h", (hours, session, pieces) => {
    const cut = cutPieces(hours, session);
    expect(cut).toHaveLength(pieces.length);
    cut.forEach((h, i) => {
      expect(h).toBeCloseTo(pieces[i] ?? 0, 9);
      expect(h).toBeLessThanOrEqual(session);
    });
  });
  test("6 h a week in sessions of 3 h use the first two open days", () => {
    const plan = planned({
      operations: [op("a", 3), op("b", 3, ["a"]), op("c", 3, ["b"])],
      shop: { ...shop, hoursPerWeek: 6 },
    });
    expect(plan.operations.map((o) => o.day)).toEqual([0, 2, 7]);
  });
});

describe("refusals", () => {
  const a = [op("a", 1)];
  test.each([
    ["loop", { operations: [op("a", 1, ["b"]), op("b", 1, ["a"])], shop }],
    ["bad-time", { operations: [op("a", 1, [], { waitDays: -1 })], shop }],
    ["session-length", { operations: a, shop: { ...shop, sessionH: 0 } }],
    ["no-open-day", { operations: a, shop: { ...shop, openDays: [] } }],
    ["no-whole-session", { operations: a, shop: { ...shop, hoursPerWeek: 2 } }],
    ["closed-on-start-day", { operations: a, shop: { ...shop, startDay: "mon" as const } }],
    ["bad-date", { operations: a, shop, startDate: "2027-02-30" }],
    ["closed-on-start-day", { operations: a, shop, startDate: "2027-03-01" }],
    [
      "start-day-and-date-differ",
      { operations: a, shop: { ...shop, startDay: "tue" as const }, startDate: "2027-03-04" },
    ],
    ["no-sessions", { operations: a, shop: { ...shop, kind: "listed" as const, days: [] } }],
    ["bad-day", { operations: a, shop: { ...shop, kind: "listed" as const, days: [0, 0] } }],
    ["unknown-operation", { operations: a, shop, deliveries: [{ part: "x", deliveryDays: 1, neededBy: "q" }] }],
    ["bad-limit", { operations: a, shop, deadlineDays: -1 }],
  ] satisfies [string, PlanInput][])("%s", (code, input) => {
    expect(codes(input)).toEqual([code]);
  });
});

test("dates: leap days, turns of the year, week days (2000-01-01 was a Saturday)", () => {
  expect(dateAfter("2028-02-28", 1)).toBe("2028-02-29");
  expect(dateAfter("2027-02-28", 1)).toBe("2027-03-01");
  expect(dateAfter("2026-12-31", 1)).toBe("2027-01-01");
  expect(dateAfter("2027-01-01", -1)).toBe("2026-12-31");
  expect(dateAfter("2000-02-28", 2)).toBe("2000-03-01");
  expect(dateAfter("2027-13-01", 1)).toBeUndefined();
  expect(weekDayOf("1970-01-01")).toBe("thu");
  expect(weekDayOf("2000-01-01")).toBe("sat");
  expect(weekDayOf("2027-03-02")).toBe("tue");
});
