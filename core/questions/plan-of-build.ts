/** In which order is it done, on which evenings, and by when must what be ordered? */

import { type Delivery, type Operation, type PlanValue, planBuild } from "../plan/index.js";
import { type Answer, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";
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
  const { session_h: sessionH, open_days: openDays, session_days: listedDays } = build.shop;
  // Without working days there is no plan; an evening of a length that nobody said would be a guess.
  if (sessionH === undefined || (openDays === undefined && listedDays === undefined))
    return { plan: refused(notEntered(sessionH, openDays)), from };
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
      ...(o.session === undefined ? {} : { session: o.session }),
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
  const abilities = { capabilities: build.shop.abilities, missing: build.shop.missing ?? [] };
  const plan = planBuild({
    operations,
    shop:
      listedDays === undefined
        ? {
            kind: "weekly",
            sessionH,
            openDays: openDays ?? [],
            hoursPerWeek: build.shop.hours_per_week ?? sessionH * (openDays ?? []).length,
            ...abilities,
          }
        : { kind: "listed", sessionH, days: listedDays, ...abilities },
    ...(build.shop.session_word === undefined ? {} : { sessionWord: build.shop.session_word }),
    evidence: (build.build.evidence ?? []).map((e) => ({ operation: e.gate, by: e.by, on: e.on, what: e.what })),
    deliveries,
    ...(weeks === undefined ? {} : { deadlineDays: weeks * 7 }),
    ...(build.intent.hours_max === undefined ? {} : { hoursMax: build.intent.hours_max }),
    ...(build.build.start_day === undefined ? {} : { startDate: build.build.start_day }),
  });
  return { plan, from };
}

/** Which of the two facts about the shop's hours is missing? */
function notEntered(sessionH: number | undefined, openDays: readonly string[] | undefined): readonly Refusal[] {
  return [
    ...(openDays === undefined
      ? [
          {
            code: "measure-first",
            at: "shop.open_days",
            given: null,
            allowed: say("questions.plan-of-build.days-such-as-tue-thu"),
            message: say("questions.plan-of-build.enter-on-which-days-of-the"),
          },
        ]
      : []),
    ...(sessionH === undefined
      ? [
          {
            code: "measure-first",
            at: "shop.session_h",
            given: null,
            allowed: say("questions.plan-of-build.hours-such-as-3"),
            message: say("questions.plan-of-build.enter-how-many-hours-of-work"),
          },
        ]
      : []),
  ];
}
