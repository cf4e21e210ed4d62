/**
 * Is anything planned in an order that steel or paint will not forgive, and what stays locked until a person has
 * spoken? The rules are data; the plan is shown all the same, with what is locked marked.
 * Inputs: operations, what lies before each, evidence as people typed it, the shop.
 * Answer: findings, and for every operation the gates that still lock it.
 *   - Bending, heating, drilling, cutting and painting need a dry fit before them. Where one is planned earlier, it is
 *     locked until its risk is accepted by name; where one is before it, until that dry fit is signed.
 *   - Bending, heating and drilling come before paint; paint needs a wait before the next work.
 * Source: workshop-order (common practice, no source).
 */
import { say } from "../texts/say.js";
import type { Evidence, IrreversibleKind, Operation, PlanFinding } from "./plan-types.js";
import { irreversibleOf, missingNeeds } from "./read-need.js";

export interface OperationLock {
  readonly irreversible: IrreversibleKind | undefined;
  readonly from: "stated" | "its needs" | "its words" | undefined;
  readonly lockedBy: readonly string[];
  readonly missing: readonly string[];
}

const NEEDS_DRY_FIT: readonly IrreversibleKind[] = ["bend", "heat", "drill", "cut", "paint"];
/** Work that spoils paint that is already on, and why. */
const BEFORE_PAINT: Readonly<Partial<Record<IrreversibleKind, string>>> = {
  bend: say("plan.order-rules.bending-cracks-it"),
  heat: say("plan.order-rules.heat-burns-it"),
  drill: say("plan.order-rules.chips-and-clamps-mark-it"),
};
const DONE_BY: Readonly<Record<IrreversibleKind, string>> = {
  bend: say("plan.order-rules.bends-the-frame"),
  heat: say("plan.order-rules.heats-the-frame"),
  drill: say("plan.order-rules.drills-steel"),
  cut: say("plan.order-rules.cuts-steel"),
  paint: say("plan.order-rules.puts-paint-on"),
};

export function orderRules(
  operations: readonly Operation[],
  allBefore: ReadonlyMap<string, ReadonlySet<string>>,
  evidence: readonly Evidence[],
  shop: { readonly capabilities: readonly string[]; readonly missing: readonly string[] },
): { readonly locks: ReadonlyMap<string, OperationLock>; readonly findings: readonly PlanFinding[] } {
  const findings: PlanFinding[] = [];
  const signed = new Set<string>();
  for (const e of evidence) {
    const known = operations.some((o) => o.id === e.operation);
    if (known && [e.by, e.on, e.what].every((text) => text.trim() !== "")) signed.add(e.operation);
    else {
      findings.push({
        code: "evidence-incomplete",
        level: "gate",
        at: e.operation,
        message: known
          ? say("plan.order-rules.the-evidence-for-opens-nothing-it", { operation: e.operation })
          : say("plan.order-rules.evidence-was-entered-for-but-there", { operation: e.operation }),
        wayOut: say("plan.order-rules.have-the-person-who-looked-enter"),
      });
    }
  }

  const kinds = new Map<string, Pick<OperationLock, "irreversible" | "from">>();
  for (const o of operations) {
    const read = irreversibleOf(o.what, o.needs);
    if (o.irreversible === "no") kinds.set(o.id, { irreversible: undefined, from: "stated" });
    else if (o.irreversible !== undefined) kinds.set(o.id, { irreversible: o.irreversible, from: "stated" });
    else kinds.set(o.id, { irreversible: read?.kind, from: read?.from });
  }
  const kindOf = (id: string) => kinds.get(id)?.irreversible;
  const isBefore = (a: string, b: string) => allBefore.get(b)?.has(a) ?? false;
  const gates = operations.filter((o) => o.gate === true);

  if (gates.length === 0 && operations.some((o) => kindOf(o.id) !== undefined)) {
    findings.push({
      code: "no-dry-fit",
      level: "gate",
      at: "",
      message: say("plan.order-rules.the-plan-has-no-dry-fit"),
      wayOut: say("plan.order-rules.add-a-dry-fit-with-all"),
    });
  }

  const locks = new Map<string, OperationLock>();
  for (const o of operations) {
    const kind = kindOf(o.id);
    const needs = missingNeeds(o.needs, shop);
    let lockedBy: string[] = [];
    if (kind !== undefined && NEEDS_DRY_FIT.includes(kind)) {
      const gatesBefore = gates.filter((g) => isBefore(g.id, o.id));
      lockedBy = gatesBefore.filter((g) => !signed.has(g.id)).map((g) => g.id);
      if (gatesBefore.length === 0) {
        const accepted = signed.has(o.id);
        if (!accepted) lockedBy = [o.id];
        const who = evidence.find((e) => e.operation === o.id);
        findings.push({
          code: accepted ? "before-dry-fit-risk-accepted" : "before-dry-fit",
          level: accepted ? "flag" : "gate",
          at: o.id,
          message: say("plan.order-rules.and-is-planned-before-any-dry", {
            operation: o.id,
            what: o.what,
            doneBy: DONE_BY[kind],
            accepted:
              accepted && who !== undefined
                ? say("plan.order-rules.risk-accepted-by-on", { by: who.by, on: who.on, what: who.what })
                : "",
          }),
          wayOut: accepted
            ? say("plan.order-rules.move-it-behind-the-dry-fit")
            : say("plan.order-rules.move-it-behind-the-dry-fit-2"),
        });
      }
    }
    locks.set(o.id, { irreversible: kind, from: kinds.get(o.id)?.from, lockedBy, missing: needs.missing });
    for (const word of needs.missing) {
      findings.push({
        code: "ability-missing",
        level: "flag",
        at: o.id,
        message: say("plan.order-rules.needs-which-this-shop-does-not", {
          operation: o.id,
          what: o.what,
          ability: word.replaceAll("_", " "),
        }),
        wayOut: say("plan.order-rules.send-it-out-borrow-the-tool"),
      });
    }
    for (const word of needs.toConfirm) {
      findings.push({
        code: "ability-condition",
        level: "flag",
        at: o.id,
        message: say("plan.order-rules.needs-the-shop-has-the-ability", {
          operation: o.id,
          what: o.what,
          ability: word.replaceAll("_", " "),
        }),
        wayOut: say("plan.order-rules.ask-whoever-does-it-and-write"),
      });
    }
  }

  for (const paint of operations.filter((o) => kindOf(o.id) === "paint")) {
    if (paint.waitDays === 0 && operations.some((o) => o.after.includes(paint.id))) {
      findings.push({
        code: "paint-without-wait",
        level: "flag",
        at: paint.id,
        message: say("plan.order-rules.has-no-wait-after-it-but", { paint: paint.id, what: paint.what }),
        wayOut: say("plan.order-rules.enter-the-wait-that-the-can"),
      });
    }
    for (const o of operations) {
      const kind = kindOf(o.id);
      const why = kind === undefined ? undefined : BEFORE_PAINT[kind];
      if (why === undefined || o.id === paint.id || isBefore(o.id, paint.id)) continue;
      const fixed = isBefore(paint.id, o.id);
      findings.push({
        code: fixed ? "after-paint" : "order-to-paint-open",
        level: fixed ? "flag" : "advice",
        at: o.id,
        message: fixed
          ? say("plan.order-rules.comes-after-the-paint-of", { operation: o.id, what: o.what, paint: paint.id, why })
          : say("plan.order-rules.nothing-says-that-comes-before-the", {
              operation: o.id,
              what: o.what,
              paint: paint.id,
              why,
            }),
        wayOut: say("plan.order-rules.put-before", { operation: o.id, paint: paint.id }),
      });
    }
  }
  return { locks, findings };
}
