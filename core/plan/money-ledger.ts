/**
 * What does the build cost, what is already spent, and is it inside the budget?
 * Inputs: lines with quantity and price of one, in the shop's own currency; null = price not known (never taken as 0;
 *   write 0 for what is owned); hours and the rate an hour; the budget.
 * Answer: total of the known prices, by kind, spent and to spend; work shown beside it, not in it; the verdict.
 *   Over: the known prices alone break the budget. Within: all prices are known and they do not. Else measure first.
 * What is spent is gone either way: `toSpend` is what a choice can still change, and what a ready bicycle of the
 * wanted kind must be compared with.
 */

import { type Answer, answered, type LimitVerdict, type NextStep, type Refusal, refused } from "../quantity/index.js";
import { say } from "../texts/say.js";

/** Half of the smallest coin: sums nearer than that to a limit count as on it. */
export const COIN = 0.005;

export type MoneyKind = "donor" | "part" | "consumable" | "tool share" | "remedy";

export interface MoneyLine {
  readonly id: string;
  readonly what: string;
  readonly kind: MoneyKind;
  /** 0 or more. */
  readonly qty: number;
  /** Price of one; null where it is not known. */
  readonly price: number | null;
  readonly spent: boolean;
}

export interface MoneyInput {
  readonly lines: readonly MoneyLine[];
  readonly budget?: number;
  readonly hours?: number;
  readonly ratePerHour?: number;
  /** Price of a used bicycle of the wanted kind, the cheapest other way. */
  readonly readyBicycle?: number;
}

export interface MoneyValue {
  /** Sum of the known prices; work is not in it. */
  readonly total: number;
  readonly byKind: Readonly<Record<MoneyKind, number>>;
  readonly spent: number;
  readonly toSpend: number;
  /** Ids of lines whose price is not known. */
  readonly priceNotKnown: readonly string[];
  /** Hours × rate; undefined where either is not given. */
  readonly work: number | undefined;
  readonly budget: number | undefined;
  readonly verdict: LimitVerdict | undefined;
  /** By how much it is over; 0 where it is not. */
  readonly overBy: number;
  /** What the budget has left after all known prices; 0 where it is over. */
  readonly toSpare: number;
  readonly next: readonly NextStep[];
  /** What is still to spend, less a ready bicycle: above 0 the bicycle is the cheaper end. */
  readonly dearerThanReadyBicycleBy: number | undefined;
}

export function moneyLedger(input: MoneyInput): Answer<MoneyValue> {
  const refusals = [...lineRefusals(input.lines), ...amountRefusals(input)];
  if (refusals.length > 0) return refused(refusals);

  const byKind: Record<MoneyKind, number> = { donor: 0, part: 0, consumable: 0, "tool share": 0, remedy: 0 };
  let spent = 0;
  let toSpend = 0;
  for (const line of input.lines) {
    if (line.price === null) continue;
    const amount = line.price * line.qty;
    byKind[line.kind] += amount;
    if (line.spent) spent += amount;
    else toSpend += amount;
  }
  const total = spent + toSpend;
  const unknown = input.lines.filter((l) => l.price === null && l.qty > 0);
  const { budget } = input;
  const over = budget === undefined ? 0 : total - budget;
  const verdict: LimitVerdict | undefined =
    budget === undefined ? undefined : over > COIN ? "over" : unknown.length > 0 ? "measure first" : "within";
  const work =
    input.hours === undefined || input.ratePerHour === undefined ? undefined : input.hours * input.ratePerHour;
  return answered<MoneyValue>(
    {
      total,
      byKind,
      spent,
      toSpend,
      priceNotKnown: unknown.map((l) => l.id),
      work,
      budget,
      verdict,
      overBy: over > COIN ? over : 0,
      toSpare: budget !== undefined && over <= COIN ? Math.max(-over, 0) : 0,
      next:
        verdict === "within"
          ? []
          : unknown.map((l) => ({
              kind: "do",
              what: say("plan.money-ledger.ask-the-price-of", { what: l.what, id: l.id }),
              at: `lines.${l.id}.price`,
            })),
      dearerThanReadyBicycleBy: input.readyBicycle === undefined ? undefined : toSpend - input.readyBicycle,
    },
    {
      sources: ["ledger-derivation"],
      cautions:
        unknown.length === 0
          ? []
          : [
              {
                code: "price-not-known",
                at: "lines",
                message: say("plan.money-ledger.price-not-known-the-total-leaves", {
                  lines: unknown.map((l) => `${l.what} (${l.id})`).join(", "),
                }),
              },
            ],
    },
  );
}

export function lineRefusals(lines: readonly MoneyLine[]): Refusal[] {
  const refusals: Refusal[] = [];
  const seen = new Set<string>();
  lines.forEach((line, i) => {
    if (seen.has(line.id)) {
      refusals.push({
        code: "duplicate-id",
        at: `lines[${i}].id`,
        given: line.id,
        allowed: say("plan.money-ledger.an-id-that-no-other-line"),
        message: say("plan.money-ledger.stands-in-the-list-twice-give", { line: line.id }),
      });
    }
    seen.add(line.id);
    for (const [key, given] of [
      ["qty", line.qty],
      ["price", line.price ?? 0],
    ] as const) {
      if (!(Number.isFinite(given) && given >= 0)) {
        refusals.push({
          code: "bad-amount",
          at: `lines[${i}].${key}`,
          given,
          allowed: say("plan.money-ledger.0-or-more-null-for-a"),
          message: say("plan.mass-ledger.of-is-give-0-or-more", { key, line: line.id, given }),
        });
      }
    }
  });
  return refusals;
}

function amountRefusals(input: MoneyInput): Refusal[] {
  const amounts = [
    ["budget", input.budget],
    ["hours", input.hours],
    ["ratePerHour", input.ratePerHour],
    ["readyBicycle", input.readyBicycle],
  ] as const;
  return amounts.flatMap(([key, given]) =>
    given === undefined || (Number.isFinite(given) && given >= 0)
      ? []
      : [
          {
            code: "bad-amount",
            at: key,
            given,
            allowed: say("plan.money-ledger.0-or-more"),
            message: say("plan.money-ledger.is-give-0-or-more", { key, given }),
          },
        ],
  );
}
