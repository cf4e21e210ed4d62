/** In which order is it done, on which evenings, and by when must what be ordered? */
import { type Delivery, type Operation, type PlanValue, planBuild } from "../plan/index.js";
import type { Answer } from "../quantity/index.js";
import type { ResolvedBuild } from "../workshop/index.js";
import { buyLines } from "./ledger-of-build.js";

export interface PlanOfBuild {
  readonly plan: Answer<PlanValue>;
  /** What it was reckoned from: while these stay the same documents the plan is not reckoned again. */
  readonly from: readonly unknown[];
}

export function planOfBuild(build: ResolvedBuild, before?: PlanOfBuild): PlanOfBuild {
  const from = [build.build, build.shop, build.intent, build.bin];
  if (before?.from.every((doc, i) => doc === from[i])) return before;
  const operations = build.build.operations.map(
    (o): Operation => ({
      id: o.id,
      what: o.what,
      handsOnH: o.h,
      waitDays: o.wait ?? 0,
      needs: o.needs ?? [],
      after: o.after,
      ...(o.gate === true ? { gate: true } : {}),
      irreversible: o.irreversible ?? "no",
      ...(o.may_come_later === true ? { mayComeLater: true } : {}),
    }),
  );
  const firstGate = operations.find((o) => o.gate === true);
  const deliveries =
    firstGate === undefined
      ? []
      : buyLines(build).flatMap((l): Delivery[] =>
          l.part.delivery_days === undefined
            ? []
            : [{ part: l.part.id, deliveryDays: l.part.delivery_days, neededBy: firstGate.id }],
        );
  const weeks = build.intent.deadline_weeks;
  const plan = planBuild({
    operations,
    shop: {
      kind: "weekly",
      sessionH: build.shop.session_h,
      openDays: build.shop.open_days,
      hoursPerWeek: build.shop.hours_per_week ?? build.shop.session_h * build.shop.open_days.length,
      capabilities: build.shop.abilities,
      missing: build.shop.missing ?? [],
    },
    evidence: (build.build.evidence ?? []).map((e) => ({ operation: e.gate, by: e.by, on: e.on, what: e.what })),
    deliveries,
    ...(weeks === undefined ? {} : { deadlineDays: weeks * 7 }),
    ...(build.intent.hours_max === undefined ? {} : { hoursMax: build.intent.hours_max }),
    ...(build.build.start_day === undefined ? {} : { startDate: build.build.start_day }),
  });
  return { plan, from };
}
