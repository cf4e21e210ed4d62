/** How does the page speak with its server? A few calls; every answer that is not understood is an error of ours. */
import { say } from "@coldset/core/texts";
import type { EditPath } from "@coldset/core/workshop";
import { keepBuildList, keptBuildList } from "./kept-records.js";
import { meantFor, servedHere, WORKSHOP_HEADER } from "./which-workshop.js";

export interface BuildLine {
  readonly id: string;
  readonly title: string;
  readonly revision: number;
  /** ISO 8601, UTC: the last change of the build or a document that it names. */
  readonly updatedAt: string;
  readonly putAway: boolean;
  /** undefined where its documents cannot be read together. */
  readonly standing?: {
    readonly becomes: string;
    readonly open: number;
    readonly settled: number;
    readonly notChecked: number;
    readonly refused: readonly string[];
  };
}

export interface StoredPlain {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  readonly plain: unknown;
}

export interface EditCall {
  readonly kind: string;
  readonly id: string;
  readonly path: EditPath;
  readonly value: unknown;
  readonly revision: number;
  /** The server takes each id once, however often it arrives. */
  readonly editId: string;
  /** It puts back what stood there before: the records keep it as an undo where that is so. */
  readonly takesBack?: boolean;
  /** The workshop that it was made for: another one does not take it. */
  readonly workshop?: string;
}

export type SaveAnswer =
  /** `repeated`: it had arrived before, and the document may have moved on since. */
  | { readonly kind: "saved"; readonly revision: number; readonly repeated?: boolean }
  /** Somebody else changed the document meanwhile. */
  | { readonly kind: "conflict" }
  | { readonly kind: "refused"; readonly messages: readonly string[] }
  /** Another workshop answers here now. */
  | { readonly kind: "apart" }
  | { readonly kind: "unreachable" }
  /** Ours to mend: a word to quote, or what the server says stands in the way (disk full, records busy). */
  | { readonly kind: "failed"; readonly reference: string };

export type Loaded<T> =
  | { readonly kind: "loaded"; readonly value: T }
  | { readonly kind: "unreachable" }
  | { readonly kind: "missing" }
  | { readonly kind: "failed"; readonly reference: string };

type Fetch = typeof fetch;

/** A server on the own machine that has not answered by then is not there. */
const PATIENCE_MS = 20_000;
export const patience = (): { readonly signal?: AbortSignal } =>
  typeof AbortSignal.timeout === "function" ? { signal: AbortSignal.timeout(PATIENCE_MS) } : {};

export type Heard =
  | { readonly kind: "unreachable" }
  /** `body` is undefined where the answer is no JSON. */
  | { readonly kind: "heard"; readonly response: Response; readonly body: unknown };

/** One call, and which workshop answered it. What status and body mean is for whoever called. */
export async function callServer(path: string, init: RequestInit, fetcher: Fetch = fetch): Promise<Heard> {
  let response: Response;
  try {
    response = await fetcher(path, init);
  } catch {
    return { kind: "unreachable" };
  }
  servedHere.heard(response.headers.get(WORKSHOP_HEADER));
  return { kind: "heard", response, body: await bodyOf(response) };
}

export async function loadFrom<T>(
  fetcher: Fetch,
  path: string,
  read: (body: unknown) => T | undefined,
): Promise<Loaded<T>> {
  const heard = await callServer(path, { headers: { accept: "application/json" }, ...patience() }, fetcher);
  if (heard.kind === "unreachable") return heard;
  const { response, body } = heard;
  if (response.status === 404) return { kind: "missing" };
  if (response.status === 502 || response.status === 504) return { kind: "unreachable" };
  const value = response.ok ? read(body) : undefined;
  return value === undefined ? { kind: "failed", reference: referenceOf(response, body) } : { kind: "loaded", value };
}

/** The list as the server has it now; where it does not answer, as this device last saw it. */
export async function loadBuilds(fetcher: Fetch = fetch): Promise<Loaded<readonly BuildLine[]>> {
  const loaded = await askBuilds(fetcher);
  if (loaded.kind === "loaded") await keepBuildList(loaded.value);
  const kept = loaded.kind === "unreachable" ? await keptBuildList() : undefined;
  return kept === undefined ? loaded : { kind: "loaded", value: kept };
}

function askBuilds(fetcher: Fetch): Promise<Loaded<readonly BuildLine[]>> {
  return loadFrom(fetcher, "/api/builds", (body) =>
    listIn(body, "builds")?.flatMap((row): BuildLine[] => {
      if (!isRecord(row) || typeof row.id !== "string") return [];
      const { standing: s } = row;
      const count = (n: unknown) => (typeof n === "number" ? n : 0);
      return [
        {
          id: row.id,
          title: textOf(row.title) ?? "",
          revision: count(row.revision),
          updatedAt: textOf(row.updatedAt) ?? "",
          putAway: row.putAway === true,
          ...(isRecord(s)
            ? {
                standing: {
                  becomes: textOf(s.becomes) ?? "",
                  open: count(s.open),
                  settled: count(s.settled),
                  notChecked: count(s.notChecked),
                  refused: (listIn(s, "refused") ?? []).flatMap((r) => (typeof r === "string" ? [r] : [])),
                },
              }
            : {}),
        },
      ];
    }),
  );
}

export function loadWorkshop(buildId: string, fetcher: Fetch = fetch): Promise<Loaded<readonly StoredPlain[]>> {
  return loadFrom(fetcher, `/api/workshop/${encodeURIComponent(buildId)}`, (body) =>
    (listIn(body, "documents") ?? listIn(body, "docs"))?.flatMap((row): StoredPlain[] =>
      isRecord(row) && typeof row.kind === "string" && typeof row.id === "string" && typeof row.revision === "number"
        ? [{ kind: row.kind, id: row.id, revision: row.revision, plain: row.plain }]
        : [],
    ),
  );
}

/** One document as it stands now. A text that cannot be read any more has no plain data, and is a fault of ours. */
export function loadDocument(kind: string, id: string, fetcher: Fetch = fetch): Promise<Loaded<StoredPlain>> {
  return loadFrom(fetcher, `/api/documents/${encodeURIComponent(kind)}/${encodeURIComponent(id)}`, (body) =>
    isRecord(body) && typeof body.revision === "number" && isRecord(body.plain)
      ? { kind, id, revision: body.revision, plain: body.plain }
      : undefined,
  );
}

export async function sendEdit(edit: EditCall, fetcher: Fetch = fetch): Promise<SaveAnswer> {
  const heard = await callServer(
    `/api/documents/${encodeURIComponent(edit.kind)}/${encodeURIComponent(edit.id)}/edits`,
    {
      method: "POST",
      headers: { "content-type": "application/json", accept: "application/json", ...meantFor(edit.workshop) },
      body: JSON.stringify({
        path: edit.path,
        value: edit.value,
        revision: edit.revision,
        editId: edit.editId,
        takesBack: edit.takesBack,
      }),
      ...patience(),
    },
    fetcher,
  );
  if (heard.kind === "unreachable") return heard;
  const { response, body } = heard;
  if (response.ok && isRecord(body) && typeof body.revision === "number")
    return { kind: "saved", revision: body.revision, ...(body.repeated === true ? { repeated: true } : {}) };
  if (response.status === 409) return { kind: "conflict" };
  if (response.status === 412) return { kind: "apart" };
  if (response.status === 502 || response.status === 504) return { kind: "unreachable" };
  const messages = messagesIn(body);
  if (response.status >= 400 && response.status < 500)
    return {
      kind: "refused",
      messages: messages.length > 0 ? messages : [say("web.api.status", { status: response.status })],
    };
  return { kind: "failed", reference: referenceOf(response, body) };
}

async function bodyOf(response: Response): Promise<unknown> {
  try {
    return await response.json();
  } catch {
    // No JSON: the caller sees a body without the keys it needs, and says so with the status.
    return undefined;
  }
}

export const isRecord = (v: unknown): v is Record<string, unknown> =>
  v !== null && typeof v === "object" && !Array.isArray(v);
const textOf = (v: unknown) => (typeof v === "string" ? v : undefined);

export function listIn(body: unknown, key: string): readonly unknown[] | undefined {
  if (Array.isArray(body)) return body;
  const inside = isRecord(body) ? body[key] : undefined;
  return Array.isArray(inside) ? inside : undefined;
}

export function messagesIn(body: unknown): readonly string[] {
  return (isRecord(body) ? (listIn(body, "refusals") ?? []) : []).flatMap((r) => {
    const message = isRecord(r) ? textOf(r.message) : undefined;
    return message === undefined ? [] : [message];
  });
}

/** The reasons of the server, or what there is to quote where it gave none. */
export function reasonsIn(body: unknown, status: number): readonly string[] {
  const messages = messagesIn(body);
  return messages.length > 0 ? messages : [say("web.photos.the-server-answered-with-status", { status })];
}

/** One word to quote when something of ours went wrong. */
export function referenceOf(response: Response, body: unknown): string {
  const given = isRecord(body) ? textOf(body.reference) : undefined;
  return given ?? messagesIn(body)[0] ?? say("web.api.status", { status: response.status });
}
