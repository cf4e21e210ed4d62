/** How does the page ask for a new build, for what other builds could lend, and for a change of a build's own line? */
import { say } from "@coldset/core/texts";
import { LENT_KINDS, type LentKind } from "@coldset/core/workshop";
import { callServer, isRecord, type Loaded, listIn, loadFrom, messagesIn, referenceOf, sendEdit } from "./api.js";
import { meantFor } from "./which-workshop.js";

export interface Problem {
  readonly at: string;
  readonly code: string;
  readonly message: string;
  readonly allowed: string;
}

export type Made =
  | { readonly kind: "made"; readonly id: string }
  | { readonly kind: "refused"; readonly problems: readonly Problem[] }
  | { readonly kind: "unreachable" }
  | { readonly kind: "failed"; readonly reference: string };

export async function makeBuild(
  entries: Readonly<Record<string, string>>,
  lent: Readonly<Record<string, string>>,
): Promise<Made> {
  const heard = await callServer("/api/builds", {
    method: "POST",
    headers: { "content-type": "application/json", accept: "application/json", ...meantFor() },
    body: JSON.stringify({ entries, lent }),
  });
  if (heard.kind === "unreachable") return heard;
  const { response, body } = heard;
  if (response.status === 201 && isRecord(body) && typeof body.id === "string") return { kind: "made", id: body.id };
  if (response.status === 502 || response.status === 504) return { kind: "unreachable" };
  if (response.status >= 400 && response.status < 500 && messagesIn(body).length > 0)
    return {
      kind: "refused",
      problems: (isRecord(body) ? (listIn(body, "refusals") ?? []) : []).flatMap((r) =>
        isRecord(r)
          ? [{ at: String(r.at), code: String(r.code), message: String(r.message), allowed: String(r.allowed) }]
          : [],
      ),
    };
  return { kind: "failed", reference: referenceOf(response, body) };
}

export interface Lendable {
  readonly kind: LentKind;
  readonly id: string;
}

export function loadLendable(): Promise<Loaded<readonly Lendable[]>> {
  return loadFrom(fetch, "/api/documents", (body) =>
    listIn(body, "documents")?.flatMap((row): Lendable[] =>
      isRecord(row) && typeof row.id === "string" && LENT_KINDS.includes(row.kind as LentKind)
        ? [{ kind: row.kind as LentKind, id: row.id }]
        : [],
    ),
  );
}

/** The title of a build, or whether it is out of the way. Answers with what went wrong, or nothing. */
export async function changeBuildLine(
  id: string,
  revision: number,
  key: "title" | "put_away",
  value: string | boolean,
): Promise<string | undefined> {
  const editId = `line-${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 12)}`;
  const answer = await sendEdit({ kind: "build", id, path: [key], value, revision, editId });
  switch (answer.kind) {
    case "saved":
      return undefined;
    case "conflict":
      return say("web.new-build-calls.somebody-changed-this-build-meanwhile-the");
    case "refused":
      return answer.messages.join(" ");
    case "unreachable":
      return say("web.new-build-calls.the-workshop-s-server-does-not");
    case "failed":
      return say("web.new-build-calls.a-fault-of-ours-nothing-was", { reference: answer.reference });
  }
}
