/** Is this refusal one that a person can use? Code, place, what was given, what is allowed, and a sentence. */
import type { Refusal } from "@coldset/core/quantity";
import { mustHold } from "../door.js";

export function describedRefusals(refusals: readonly Refusal[]): void {
  mustHold(refusals.length > 0, () => "refused without a reason");
  for (const r of refusals) {
    const all = () => JSON.stringify(r).slice(0, 300);
    mustHold(/^[a-z0-9][a-z0-9-]*$/.test(r.code), () => `no code: ${all()}`);
    mustHold(typeof r.at === "string", () => `no place: ${all()}`);
    mustHold(Object.hasOwn(r, "given"), () => `not said what was given: ${all()}`);
    mustHold(typeof r.allowed === "string" && r.allowed.trim() !== "", () => `not said what is allowed: ${all()}`);
    mustHold(typeof r.message === "string" && r.message.trim().length > 5, () => `no sentence: ${all()}`);
    mustHold(
      !/undefined|\[object |NaN is|Invalid input/.test(withoutGiven(r)),
      () => `a sentence for programs: ${all()}`,
    );
  }
}

/** The sentence without what the person wrote, which may hold any word. */
function withoutGiven(r: Refusal): string {
  const given = typeof r.given === "string" ? r.given : JSON.stringify(r.given);
  return given === undefined || given === "" ? r.message : r.message.replaceAll(given, "");
}

/** The path of the first number that is NaN or infinite. Loops are not followed twice. */
export function notFinite(value: unknown, at = "", above: ReadonlySet<unknown> = new Set()): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${at} is ${value}`;
  if (value === null || typeof value !== "object" || above.has(value)) return undefined;
  const path = new Set(above).add(value);
  const entries = value instanceof Map ? [...value] : Object.entries(value);
  for (const [key, inner] of entries) {
    const found = notFinite(inner, `${at}.${String(key)}`, path);
    if (found !== undefined) return found;
  }
  return undefined;
}
