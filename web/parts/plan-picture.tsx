/** When is the work, when is the waiting, and where does the end stand against the deadline? */

import type { PlanValue } from "@coldset/core/plan";
import { say } from "@coldset/core/texts";
import { planStrip } from "@coldset/drawing/bicycle";
import { Picture } from "./picture.js";

export function PlanPicture(props: {
  readonly plan: PlanValue;
  readonly version: "wide" | "narrow";
  readonly widthPx?: number;
}) {
  const { plan, version } = props;
  const last = plan.deadlineDays ?? plan.lastSessionEndsDay;
  const input = {
    sessions: [...new Set(plan.operations.map((o) => o.day))],
    waits: plan.operations
      .filter((o) => o.waitDays > 0)
      .map((o) => ({
        fromDay: o.endClockH / 24,
        toDay: o.readyAgainDays,
        text: say("web.plan-picture.wait", { waitDays: o.waitDays }),
      })),
    ...(last === undefined ? {} : { deadlineDay: last }),
    finish: { day: plan.onePiece.days },
    version,
  } as const;
  return (
    <Picture
      of={`plan ${JSON.stringify(input)}`}
      make={() => planStrip(input)}
      className="pic keep"
      {...(props.widthPx === undefined ? {} : { widthPx: props.widthPx })}
    />
  );
}
