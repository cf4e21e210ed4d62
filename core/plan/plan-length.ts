/**
 * How long does a list of operations take in this shop, in whole pieces or with work cut at closing time?
 * Inputs: operations (ids known, no ring), calendar, cut or not. Answer: network, plan, and which operation each piece
 *   belongs to. Where work is not cut, what fits no session is cut by `cutPieces` and nothing else.
 */

import type { Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { type Calendar, CLOCK_EPS_H } from "./calendar.js";
import { cutPieces } from "./cut-pieces.js";
import type { CalendarPlan } from "./feasible-calendar.js";
import { type Network, type NetworkOperation, readNetwork } from "./network.js";
import type { Length, Operation } from "./plan-types.js";
import { proveCalendar } from "./prove-calendar.js";

/** A build plan asks several such questions in one go, so each may look into fewer states than the sheet. */
export const PLAN_BUDGET_STATES = 10_000;

export interface Piece {
  readonly operation: Operation;
  /** 1 = first. */
  readonly number: number;
  readonly of: number;
}

const PLAN_KEYS = { handsOn: "handsOnH", cure: "waitDays", cureUnit: "days", cureUnitH: 24 };

/** The operations as they stand, none cut. */
export function readOperations(
  operations: readonly Operation[],
):
  | { readonly kind: "network"; readonly network: Network }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] } {
  const plain = operations.map(
    (o): NetworkOperation => ({
      id: o.id,
      name: o.what,
      handsOnH: o.handsOnH,
      cureAfterH: o.waitDays * 24,
      after: o.after,
    }),
  );
  return readNetwork(plain, PLAN_KEYS);
}

export interface LengthFound {
  readonly network: Network;
  readonly pieces: readonly Piece[];
  readonly plan: CalendarPlan;
  readonly length: Length;
}

export function planLength(
  operations: readonly Operation[],
  calendar: Calendar,
  cutAtClosing: boolean,
  budgetStates = PLAN_BUDGET_STATES,
): LengthFound {
  const pieces: Piece[] = [];
  const rows: NetworkOperation[] = [];
  const name = (id: string, k: number, of: number) =>
    of === 1 ? id : say("plan.plan-length.piece-of", { id, piece: k, pieces: of });
  const count = (o: Operation) =>
    !cutAtClosing && o.handsOnH > calendar.lengthH + CLOCK_EPS_H ? cutPieces(o.handsOnH, calendar.lengthH).length : 1;
  const lastPiece = new Map(operations.map((o) => [o.id, name(o.id, count(o), count(o))]));
  for (const o of operations) {
    const of = count(o);
    const hours = of === 1 ? [o.handsOnH] : cutPieces(o.handsOnH, calendar.lengthH);
    hours.forEach((handsOnH, k) => {
      pieces.push({ operation: o, number: k + 1, of });
      rows.push({
        id: name(o.id, k + 1, of),
        name: o.what,
        handsOnH,
        cureAfterH: k === of - 1 ? o.waitDays * 24 : 0,
        after: k === 0 ? o.after.map((id) => lastPiece.get(id) ?? id) : [name(o.id, k, of)],
      });
    });
  }
  const reading = readNetwork(rows, PLAN_KEYS);
  if (reading.kind === "refused") throw new Error(`operations were not checked first: ${reading.refusals[0]?.message}`);
  const question = { network: reading.network, calendar, builders: 1, cutAtClosing };
  const plan = proveCalendar(question, budgetStates);
  return {
    network: reading.network,
    pieces,
    plan,
    length: { days: plan.finishH / 24, sessions: plan.finishWindow + 1, proven: plan.proven },
  };
}
