/**
 * How many hands-on hours does the build take, how many are done, and is that inside what the builder will give?
 * Inputs: hours by task, null = not known; done or not; the ceiling in hours. Waits are not hours.
 * Answer: sums and the verdict; over where the known hours alone break the ceiling, measure first where some are not
 *   known and could.
 */

import { type Answer, answered, type LimitVerdict, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";

export interface HoursLine {
  readonly id: string;
  readonly what: string;
  readonly handsOnH: number | null;
  readonly done: boolean;
}

export interface HoursValue {
  readonly handsOnH: number;
  readonly doneH: number;
  readonly toDoH: number;
  readonly hoursNotKnown: readonly string[];
  readonly hoursMax: number | undefined;
  readonly verdict: LimitVerdict | undefined;
  readonly overByH: number;
  readonly toSpareH: number;
}

export function hoursLedger(input: {
  readonly lines: readonly HoursLine[];
  readonly hoursMax?: number;
}): Answer<HoursValue> {
  const given = [
    ...input.lines.map((l, i) => [`lines[${i}].handsOnH`, l.handsOnH ?? 0] as const),
    ["hoursMax", input.hoursMax ?? 0] as const,
  ];
  const refusals = given.flatMap(([place, hours]) =>
    Number.isFinite(hours) && hours >= 0
      ? []
      : [
          {
            code: "bad-time",
            at: place,
            given: hours,
            allowed: say("plan.hours-ledger.0-hours-or-more-null-where"),
            message: say("plan.hours-ledger.is-give-0-hours-or-more", { place, hours }),
          },
        ],
  );
  if (refusals.length > 0) return refused(refusals);
  const sum = (lines: readonly HoursLine[]) => lines.reduce((total, l) => total + (l.handsOnH ?? 0), 0);
  const doneH = sum(input.lines.filter((l) => l.done));
  const toDoH = sum(input.lines.filter((l) => !l.done));
  const unknown = input.lines.filter((l) => l.handsOnH === null);
  const { hoursMax } = input;
  const over = hoursMax === undefined ? 0 : doneH + toDoH - hoursMax;
  const tiny = 1e-9;
  return answered<HoursValue>(
    {
      handsOnH: doneH + toDoH,
      doneH,
      toDoH,
      hoursNotKnown: unknown.map((l) => l.id),
      hoursMax,
      verdict:
        hoursMax === undefined ? undefined : over > tiny ? "over" : unknown.length > 0 ? "measure first" : "within",
      overByH: over > tiny ? over : 0,
      toSpareH: hoursMax !== undefined && over <= tiny ? Math.max(-over, 0) : 0,
    },
    {
      sources: ["ledger-derivation"],
      cautions:
        unknown.length === 0
          ? []
          : [
              {
                code: "hours-not-known",
                at: "lines",
                message: say("plan.hours-ledger.hours-not-known-the-sum-leaves", {
                  lines: unknown.map((l) => `${l.what} (${l.id})`).join(", "),
                }),
              },
            ],
    },
  );
}
