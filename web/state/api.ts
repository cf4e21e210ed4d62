/** How does the page speak with its server? Three calls; every answer that is not understood is an error of ours. */
import type { EditPath } from "@coldset/core/workshop";

export interface BuildLine {
  readonly id: string;
  readonly title: string;
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
}

export type SaveAnswer =
  | { readonly kind: "saved"; readonly revision: number }
  /** Somebody else changed the document meanwhile. */
  | { readonly kind: "conflict" }
  | { readonly kind: "refused"; readonly messages: readonly string[] }
  | { readonly kind: "unreachable" }
  /** Ours to mend: a word to quote, or what the server says stands in the way (disk full, records busy). */
  | { readonly kind: "failed"; readonly reference: string };

export type Loaded<T> =
  | { readonly kind: "loaded"; readonly value: T }
  | { readonly kind: "unreachable" }
  | { readonly kind: "missing" }
  | { readonly kind: "failed"; readonly reference: string };

type Fetch = typeof fetch;

async function get<T>(fetcher: Fetch, path: string, read: (body: unknown) => T | undefined): Promise<Loaded<T>> {
  let response: Response;
  try {
    response = await fetcher(path, { headers: { accept: "application/json" } });
  } catch {
    return { kind: "unreachable" };
  }
  if (response.status === 404) return { kind: "missing" };
  const body = await bodyOf(response);
  const value = response.ok ? read(body) : undefined;
  return value === undefined ? { kind: "failed", reference: referenceOf(response, body) } : { kind: "loaded", value };
}

export function loadBuilds(fetcher: Fetch = fetch): Promise<Loaded<readonly BuildLine[]>> {
  return get(fetcher, "/api/builds", (body) =>
    listIn(body, "builds")?.flatMap((row): BuildLine[] =>
      isRecord(row) && typeof row.id === "string" ? [{ id: row.id, title: textOf(row.title ?? row.label) ?? "" }] : [],
    ),
  );
}

export function loadWorkshop(buildId: string, fetcher: Fetch = fetch): Promise<Loaded<readonly StoredPlain[]>> {
  return get(fetcher, `/api/workshop/${encodeURIComponent(buildId)}`, (body) =>
    (listIn(body, "documents") ?? listIn(body, "docs"))?.flatMap((row): StoredPlain[] =>
      isRecord(row) && typeof row.kind === "string" && typeof row.id === "string" && typeof row.revision === "number"
        ? [{ kind: row.kind, id: row.id, revision: row.revision, plain: row.plain }]
        : [],
    ),
  );
}

export async function sendEdit(edit: EditCall, fetcher: Fetch = fetch): Promise<SaveAnswer> {
  let response: Response;
  try {
    response = await fetcher(`/api/documents/${encodeURIComponent(edit.kind)}/${encodeURIComponent(edit.id)}/edits`, {
      method: "POST",
      headers: { "content-type": "application/json", accept: "application/json" },
      body: JSON.stringify({ path: edit.path, value: edit.value, revision: edit.revision }),
    });
  } catch {
    return { kind: "unreachable" };
  }
  const body = await bodyOf(response);
  if (response.ok && isRecord(body) && typeof body.revision === "number")
    return { kind: "saved", revision: body.revision };
  if (response.status === 409) return { kind: "conflict" };
  if (response.status === 502 || response.status === 504) return { kind: "unreachable" };
  const messages = messagesIn(body);
  if (response.status >= 400 && response.status < 500)
    return { kind: "refused", messages: messages.length > 0 ? messages : [`status ${response.status}`] };
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

const isRecord = (v: unknown): v is Record<string, unknown> => v !== null && typeof v === "object" && !Array.isArray(v);
const textOf = (v: unknown) => (typeof v === "string" ? v : undefined);

function listIn(body: unknown, key: string): readonly unknown[] | undefined {
  if (Array.isArray(body)) return body;
  const inside = isRecord(body) ? body[key] : undefined;
  return Array.isArray(inside) ? inside : undefined;
}

function messagesIn(body: unknown): readonly string[] {
  return (isRecord(body) ? (listIn(body, "refusals") ?? []) : []).flatMap((r) => {
    const message = isRecord(r) ? textOf(r.message) : undefined;
    return message === undefined ? [] : [message];
  });
}

/** One word to quote when something of ours went wrong. */
function referenceOf(response: Response, body: unknown): string {
  const given = isRecord(body) ? textOf(body.reference) : undefined;
  return given ?? messagesIn(body)[0] ?? `status ${response.status}`;
}
