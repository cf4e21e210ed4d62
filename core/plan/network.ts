/**
 * Do these operations hang together, and in which order may they come? Reads the list a builder gives and turns it
 * into a network, or names everything that is wrong with it at once.
 * Inputs: hands-on time in hours, 0 or more; cure in clock hours, 0 or more (time after the end before any successor
 *   may start; the builder is free meanwhile); after = ids of what must be finished before.
 * Answer: the network, or refusals with the codes `duplicate-id`, `unknown-predecessor`, `loop`, `bad-time`,
 *   `no-operations`, `too-many-operations`.
 * Limits: 200 operations.
 */

import type { Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { at } from "./at.js";

export const MOST_OPERATIONS = 200;

export interface NetworkOperation {
  readonly id: number | string;
  readonly name: string;
  readonly handsOnH: number;
  readonly cureAfterH: number;
  readonly after: readonly (number | string)[];
}

export interface Network {
  readonly count: number;
  readonly ids: readonly (number | string)[];
  readonly names: readonly string[];
  readonly handsOnH: readonly number[];
  readonly cureAfterH: readonly number[];
  /** Places (not ids) of the direct predecessors of each operation. */
  readonly before: readonly (readonly number[])[];
  /** Places of the direct successors. */
  readonly next: readonly (readonly number[])[];
  /** All places, predecessors first. */
  readonly order: readonly number[];
}

export type NetworkReading =
  | { readonly kind: "network"; readonly network: Network }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

/** What the two times are called where the list was written. */
const SHEET_KEYS = { handsOn: "hands_on_h", cure: "cure_after_h", cureUnit: "hours", cureUnitH: 1 };

export function readNetwork(operations: readonly NetworkOperation[], keys = SHEET_KEYS): NetworkReading {
  const where = "operations";
  const refusals: Refusal[] = [];
  if (operations.length === 0) {
    refusals.push({
      code: "no-operations",
      at: where,
      given: 0,
      allowed: say("plan.network.1-to-operations", { mostOperations: MOST_OPERATIONS }),
      message: say("plan.network.there-is-nothing-to-plan-yet"),
    });
  }
  if (operations.length > MOST_OPERATIONS) {
    refusals.push({
      code: "too-many-operations",
      at: where,
      given: operations.length,
      allowed: say("plan.network.1-to-operations", { mostOperations: MOST_OPERATIONS }),
      message: say("plan.network.operations-are-too-many-for-one", {
        operationsCount: operations.length,
        mostOperations: MOST_OPERATIONS,
      }),
    });
    return { kind: "refused", refusals };
  }

  const placeOf = new Map<number | string, number>();
  operations.forEach((o, i) => {
    if (placeOf.has(o.id)) {
      refusals.push({
        code: "duplicate-id",
        at: `${where}[${i}].id`,
        given: o.id,
        allowed: say("plan.network.an-id-that-no-other-operation"),
        message: say("plan.network.two-operations-have-the-id-give", { operation: o.id }),
      });
    } else placeOf.set(o.id, i);
    for (const [key, time, unit] of [
      [keys.handsOn, o.handsOnH, "hours"],
      [keys.cure, o.cureAfterH / keys.cureUnitH, keys.cureUnit],
    ] as const) {
      if (!(Number.isFinite(time) && time >= 0)) {
        refusals.push({
          code: "bad-time",
          at: `${where}[${i}].${key}`,
          given: time,
          allowed: say("plan.network.0-or-more", { unit }),
          message: say("plan.network.of-operation-is-a-time-is", { key, operation: o.id, time, unit }),
        });
      }
    }
  });

  const before: number[][] = operations.map((o, i) => {
    const places: number[] = [];
    o.after.forEach((id, k) => {
      const place = placeOf.get(id);
      if (place === undefined) {
        refusals.push({
          code: "unknown-predecessor",
          at: `${where}[${i}].after[${k}]`,
          given: id,
          allowed: say("plan.network.ids-of-operations-in-the-list"),
          message: say("plan.network.operation-comes-after-but-there-is", { operation: o.id, before: id }),
        });
      } else if (!places.includes(place)) places.push(place);
    });
    return places;
  });
  const next: number[][] = operations.map(() => []);
  before.forEach((places, i) => {
    for (const p of places) at(next, p).push(i);
  });

  const order = sortedPlaces(before, next);
  if (order.length < operations.length) {
    const loop = findLoop(before, new Set(order)).map((i) => at(operations, i).id);
    refusals.push({
      code: "loop",
      at: where,
      given: loop,
      allowed: say("plan.network.an-order-in-which-no-operation"),
      message: say("plan.network.operations-wait-for-each-other-in", { loop: loop.join(" → ") }),
    });
  }
  if (refusals.length > 0) return { kind: "refused", refusals };
  return {
    kind: "network",
    network: {
      count: operations.length,
      ids: operations.map((o) => o.id),
      names: operations.map((o) => o.name),
      handsOnH: operations.map((o) => o.handsOnH),
      cureAfterH: operations.map((o) => o.cureAfterH),
      before,
      next,
      order,
    },
  };
}

/** Places with predecessors first; those in or behind a ring are missing. */
function sortedPlaces(before: readonly (readonly number[])[], next: readonly (readonly number[])[]): number[] {
  const open = before.map((b) => b.length);
  const order: number[] = [];
  open.forEach((n, i) => {
    if (n === 0) order.push(i);
  });
  for (let k = 0; k < order.length; k++) {
    for (const j of at(next, at(order, k))) {
      open[j] = at(open, j) - 1;
      if (open[j] === 0) order.push(j);
    }
  }
  return order;
}

/** One ring, first place repeated at the end, in the order in which the work would have to be done. */
function findLoop(before: readonly (readonly number[])[], sorted: ReadonlySet<number>): number[] {
  let place = before.findIndex((_, i) => !sorted.has(i));
  const walked: number[] = [];
  while (!walked.includes(place)) {
    walked.push(place);
    const back = at(before, place).find((p) => !sorted.has(p));
    if (back === undefined) throw new Error("a place outside the order must have a predecessor outside it");
    place = back;
  }
  const ring = walked.slice(walked.indexOf(place)).reverse();
  return [...ring, at(ring, 0)];
}

/** All operations that must be finished before each one, near or far. */
export function everythingBefore(network: Network): readonly ReadonlySet<number>[] {
  const sets: Set<number>[] = network.before.map(() => new Set<number>());
  for (const i of network.order) {
    const mine = at(sets, i);
    for (const p of at(network.before, i)) {
      mine.add(p);
      for (const q of at(sets, p)) mine.add(q);
    }
  }
  return sets;
}
