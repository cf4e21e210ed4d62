/** How does the page look at what a copy would bring, and take it in? */
import type { Difference } from "@coldset/core/workshop";
import { callServer, reasonsIn } from "./api.js";
import type { PhotoAnswer } from "./photos.js";
import { meantFor } from "./which-workshop.js";

export type Choice = "keep-mine" | "take-theirs" | "as-new";

export interface PlanDocument {
  readonly kind: string;
  readonly id: string;
  readonly change: "new" | "same" | "differs";
  readonly difference: Difference;
  readonly histories: "theirs-goes-on" | "mine-goes-on" | "apart" | "only-text";
}

export interface Plan {
  readonly label: string;
  readonly documents: readonly PlanDocument[];
  readonly photos: { readonly fresh: number; readonly there: number };
  readonly versions: { readonly fresh: number; readonly there: number };
  readonly refusals: readonly { readonly message: string }[];
}

/** @param choices by "kind/id"; left out: only looks, nothing is changed */
export async function bringIn(file: File, choices?: Readonly<Record<string, Choice>>): Promise<PhotoAnswer<Plan>> {
  const query = new URLSearchParams({ label: file.name.slice(0, 300) || "copy" });
  if (choices !== undefined) {
    query.set("take", "yes");
    const choose = Object.entries(choices).map(([name, choice]) => `${name}=${choice}`);
    if (choose.length > 0) query.set("choose", choose.join(","));
  }
  const headers = { "content-type": "application/octet-stream", ...meantFor() };
  const heard = await callServer(`/api/archive?${query}`, { method: "POST", body: file, headers });
  if (heard.kind === "unreachable" || heard.body === undefined) return { kind: "unreachable" };
  const { response, body } = heard;
  const plan = planIn(body);
  if (!response.ok || plan === undefined) return { kind: "refused", messages: reasonsIn(body, response.status) };
  return plan.refusals.length > 0
    ? { kind: "refused", messages: plan.refusals.map((r) => r.message) }
    : { kind: "done", value: plan };
}

function planIn(body: unknown): Plan | undefined {
  if (body === null || typeof body !== "object") return undefined;
  if ("plan" in body) return body.plan as Plan;
  return "documents" in body ? (body as Plan) : undefined;
}
