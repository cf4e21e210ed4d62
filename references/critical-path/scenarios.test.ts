/**
 * The plan and money figures of the three demo scenarios, worked out by hand and by a separate search when the
 * scenarios were written (tasks invented for the demo, figures derived). Tolerance: half the last printed digit.
 */
import { hoursLedger, moneyLedger, type Operation, planBuild, schedule, swapsThatFit } from "@coldset/core/plan";
import { describe, expect, test } from "vitest";
import {
  canalsideShop,
  canalsideTasks,
  line,
  moorsideShop,
  moorsideTasks,
  quaysideLines,
  quaysideShop,
  quaysideTasks,
} from "./scenario-tasks.js";

function planned(input: Parameters<typeof planBuild>[0]) {
  const answer = planBuild(input);
  if (answer.kind === "refused") throw new Error(answer.refusals.map((r) => r.message).join(" "));
  return answer;
}

/** Day, from the first session's, on which each of these is worked on. */
function daysOf(plan: ReturnType<typeof planned>, ids: readonly string[]) {
  return Object.fromEntries(ids.map((id) => [id, plan.value.operations.find((o) => o.id === id)?.day]));
}

function sheetInput(tasks: readonly Operation[], lengthH: number, days: readonly number[]) {
  const id = (text: string) => Number(text.slice(1));
  return {
    evening_length_h: lengthH,
    evening_days: days,
    builders: 1,
    operations: tasks.map((t) => ({
      id: id(t.id),
      name: t.what,
      hands_on_h: t.handsOnH,
      cure_after_h: t.waitDays * 24,
      after: t.after.map(id),
    })),
  };
}

describe("scenario Q", () => {
  const plan = planned({ operations: quaysideTasks, shop: quaysideShop, deadlineDays: 35, hoursMax: 40 });
  test("hours, waits, critical tasks, floor", () => {
    expect(plan.value.handsOnH).toBeCloseTo(35.7, 6);
    expect(plan.value.waitsDays).toBe(14);
    expect(plan.value.criticalOperations).toEqual(
      "t01 t02 t03 t04 t05 t08 t09 t10 t11 t12 t13 t14 t15 t16 t17 t18 t19".split(" "),
    );
    expect(plan.value.criticalPathDays).toBeCloseTo(15.4, 1);
  });
  test("44.1 days on 20 sessions in one piece, 37.0 cut at closing time, both proven", () => {
    expect(plan.value.onePiece.days).toBeCloseTo(44.1, 1);
    expect(plan.value.onePiece).toMatchObject({ sessions: 20, proven: true });
    expect(plan.value.cutAtClosing.days).toBeCloseTo(37.0, 1);
    expect(plan.value.cutAtClosing.proven).toBe(true);
    const days = { t05: 7, t08: 14, t10: 18, t14: 25, t15: 28, t16: 37, t19: 44 };
    expect(daysOf(plan, Object.keys(days))).toEqual(days);
  });
  test("the same from a thursday, a day more from a saturday", () => {
    const from = (startDay: "tue" | "thu" | "sat") =>
      planned({ operations: quaysideTasks, shop: { ...quaysideShop, startDay } as typeof quaysideShop }).value.onePiece
        .days;
    expect(from("tue")).toBeCloseTo(44.1, 1);
    expect(from("thu")).toBeCloseTo(44.1, 1);
    expect(from("sat")).toBeCloseTo(45.1, 1);
  });
  test("5 weeks are not met; sessions of 4 h or no clear coat alone are just too late, both together do", () => {
    expect(plan.value.meetsDeadline).toBe(false);
    const way = (sessionH: number, later: string[]) =>
      plan.value.waysBack.find((w) => w.sessionH === sessionH && w.leftForLater.join() === later.join());
    expect(way(4, [])?.days).toBeCloseTo(35.2, 1);
    expect(way(4, [])?.meetsDeadline).toBe(false);
    expect(way(3, ["t15"])?.days).toBeCloseTo(35.1, 1);
    expect(way(3, ["t15"])?.meetsDeadline).toBe(false);
    expect(way(4, ["t15"])?.days).toBeCloseTo(28.2, 1);
    expect(way(4, ["t15"])?.meetsDeadline).toBe(true);
    const finding = plan.value.findings.find((f) => f.code === "deadline-not-met");
    expect(finding?.message).toContain("44.1 days");
    expect(finding?.message).toContain("37.0");
    expect(finding?.wayOut).toContain("28.2");
  });
  test("cold setting before the dry fit is found, and locked until somebody answers for it by name", () => {
    const setting = (p: typeof plan) => p.value.operations.find((o) => o.id === "t07");
    expect(setting(plan)).toMatchObject({ irreversible: "bend", locked: true, lockedBy: ["t07"] });
    expect(plan.value.findings.find((f) => f.at === "t07")).toMatchObject({ code: "before-dry-fit", level: "gate" });
    const evidence = [{ operation: "t07", by: "a volunteer", on: "day 7", what: "hub measured at 135.0, stays sound" }];
    const accepted = planned({ operations: quaysideTasks, shop: quaysideShop, evidence });
    expect(setting(accepted)).toMatchObject({ locked: false });
    expect(accepted.value.findings.find((f) => f.at === "t07")).toMatchObject({
      code: "before-dry-fit-risk-accepted",
      level: "flag",
    });
  });
  test("what comes after the dry fit stays locked until that is signed", () => {
    const locked = (p: typeof plan) => p.value.operations.filter((o) => o.locked).map((o) => o.id);
    expect(locked(plan)).toEqual(["t07", "t09", "t10", "t14", "t15"]);
    const evidence = [{ operation: "t08", by: "a volunteer", on: "day 14", what: "all gaps measured, table kept" }];
    expect(locked(planned({ operations: quaysideTasks, shop: quaysideShop, evidence }))).toEqual(["t07"]);
    const nameless = [{ operation: "t08", by: " ", on: "day 14", what: "fits" }];
    expect(locked(planned({ operations: quaysideTasks, shop: quaysideShop, evidence: nameless }))).toContain("t10");
  });
  test("the sheet gives the same figures", () => {
    const days = Array.from({ length: 8 }, (_, week) => [0, 2, 4].map((d) => d + 7 * week)).flat();
    const answer = schedule(sheetInput(quaysideTasks, 3, days));
    if (answer.kind === "refused") throw new Error("refused");
    expect(answer.value.critical_path_h).toBeCloseTo(15.3625 * 24, 6);
    expect(answer.value.hands_on_total_h).toBeCloseTo(35.7, 6);
    expect(answer.value.cure_total_h).toBe(14 * 24);
    expect(answer.value.one_builder).toMatchObject({ possible: true, finish_evening: 20, proven_optimal: true });
    expect(answer.value.one_builder.elapsed_days).toBeCloseTo(44.0625, 6);
    expect(answer.value.one_builder.hours_into_that_evening).toBeCloseTo(1.5, 6);
  });
  test("money: hydraulic 587, over by 27; cable discs 540, with their cables 552, 8 to spare", () => {
    const ledger = moneyLedger({ lines: quaysideLines, budget: 560, hours: 35.7, ratePerHour: 6 });
    if (ledger.kind === "refused") throw new Error("refused");
    expect(ledger.value).toMatchObject({ total: 587, verdict: "over", overBy: 27, spent: 30, toSpend: 557 });
    expect(ledger.value.work).toBeCloseTo(214.2, 6);
    const cableDiscs = {
      id: "cable discs",
      what: "cable discs q20 and q21 with the cables q52 in place of q17, q18, q27",
      out: ["q17", "q18", "q27"],
      in: [line("q20", 5), line("q21", 20), line("q52", 12)],
    };
    const ways = swapsThatFit({ lines: quaysideLines, budget: 560, swaps: [cableDiscs] });
    if (ways.kind === "refused") throw new Error("refused");
    expect(ways.value).toMatchObject({
      possible: true,
      overBy: 27,
      best: { swaps: ["cable discs"], total: 552, toSpare: 8 },
    });
    const without = swapsThatFit({
      lines: quaysideLines,
      budget: 560,
      swaps: [{ ...cableDiscs, in: cableDiscs.in.slice(0, 2) }],
    });
    expect(without.kind === "answered" && without.value.best?.total).toBe(540);
  });
  test("hours: 35.7 of 40", () => {
    const lines = quaysideTasks.map((t) => ({ id: t.id, what: t.what, handsOnH: t.handsOnH, done: false }));
    const hours = hoursLedger({ lines, hoursMax: 40 });
    if (hours.kind === "refused") throw new Error("refused");
    expect(hours.value.verdict).toBe("within");
    expect(hours.value.toSpareH).toBeCloseTo(4.3, 6);
  });
});

describe("scenario M", () => {
  const plan = planned({ operations: moorsideTasks, shop: moorsideShop, deadlineDays: 70 });
  test("42.5 h and 17 days of waits; the 7 h task is cut into 4 + 3; 63.3 days on 10 saturdays", () => {
    expect(plan.value.handsOnH).toBeCloseTo(42.5, 6);
    expect(plan.value.waitsDays).toBe(17);
    expect(plan.value.findings.find((f) => f.code === "longer-than-a-session")?.message).toContain("4 + 3");
    expect(plan.value.onePiece.days).toBeCloseTo(63.3, 1);
    expect(plan.value.onePiece).toMatchObject({ sessions: 10, proven: true });
    expect(plan.value.meetsDeadline).toBe(true);
    expect(plan.value.waysBack).toEqual([]);
  });
  test("the sheet answers: no evening holds 7 h, the critical path stands", () => {
    const answer = schedule(
      sheetInput(
        moorsideTasks,
        6,
        Array.from({ length: 12 }, (_, w) => 7 * w),
      ),
    );
    if (answer.kind === "refused") throw new Error("refused");
    expect(answer.value.one_builder).toMatchObject({
      possible: false,
      why: "longer-than-an-evening",
      proven_impossible: true,
    });
    expect(answer.cautions.map((c) => c.code)).toContain("longer-than-an-evening");
    // 3 + 4 + 2 + 0.5 + 8 d + 6 + 3 + 3 + 1 + 5 + 2 d + 0 + 7 d + 7 + 3 = 37.5 h + 17 d
    expect(answer.value.critical_path_h).toBeCloseTo(37.5 + 17 * 24, 6);
  });
});

describe("scenario C", () => {
  test("14.5 h and 7 days of waits; by clock hours it takes 8 evenings, 6 are listed", () => {
    const plan = planned({ operations: canalsideTasks, shop: canalsideShop, hoursMax: 15 });
    expect(plan.value.handsOnH).toBeCloseTo(14.5, 6);
    expect(plan.value.waitsDays).toBe(7);
    expect(plan.value.onePiece).toMatchObject({ sessions: 8, proven: true });
    expect(plan.value.findings.find((f) => f.code === "sessions-run-out")?.message).toContain(
      "8 sessions and there are 6",
    );
    const answer = schedule(sheetInput(canalsideTasks, 2.5, [0, 7, 14, 21, 28, 35]));
    if (answer.kind === "refused") throw new Error("refused");
    expect(answer.value.one_builder).toMatchObject({
      possible: false,
      why: "evenings-run-out",
      proven_impossible: true,
      evenings_needed: 8,
    });
  });
  test("six do if the lights go to evening 4 and t05 keeps its hands off the fresh paint", () => {
    const tasks = canalsideTasks.flatMap((t): Operation[] => {
      if (t.id === "t05") return [{ ...t, after: ["t03"] }];
      if (t.id === "t06") return [{ ...t, after: ["t04", "t05"] }];
      if (t.id === "t07")
        return [
          { ...t, what: "rack seat stand", handsOnH: 1 },
          { ...t, id: "t09", what: "lights", handsOnH: 0.5, after: ["t03"] },
        ];
      return [t.id === "t08" ? { ...t, after: ["t07", "t09"] } : t];
    });
    const plan = planned({ operations: tasks, shop: canalsideShop });
    expect(plan.value.onePiece).toMatchObject({ sessions: 6, proven: true });
    expect(plan.value.findings.map((f) => f.code)).not.toContain("sessions-run-out");
  });
});
