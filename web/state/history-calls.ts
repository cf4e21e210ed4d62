/** What does the server know of the changes of a build and of its named versions? Each call answers with a value, or says why not. */
import type { Difference } from "@coldset/core/workshop";
import { callServer, isRecord, messagesIn, patience, reasonsIn } from "./api.js";
import { meantFor } from "./which-workshop.js";

export interface ToldDocument {
  readonly kind: string;
  readonly id: string;
  readonly difference: Difference;
}

export interface ToldChange {
  readonly change: number;
  readonly what: "edit" | "put" | "import" | "undo" | "redo" | "restore";
  readonly words: string | null;
  readonly who: string | null;
  readonly at: string;
  readonly of: number | null;
  readonly state: "stands" | "taken-back";
  readonly canTakeBack: boolean;
  readonly documents: readonly ToldDocument[];
}

export interface ToldHistory {
  readonly newest: number;
  readonly undo: number | null;
  readonly redo: number | null;
  readonly changes: readonly ToldChange[];
  readonly older: number | null;
}

export interface NamedVersion {
  readonly name: string;
  readonly at: string;
}

export interface VersionDifference {
  readonly from: string;
  readonly to: string;
  readonly documents: readonly ToldDocument[];
  readonly newest: number;
}

export interface Written {
  readonly change: number | null;
  readonly documents: readonly ToldDocument[];
}

export type Asked<T> =
  | { readonly kind: "answered"; readonly value: T }
  /** Another change came after the one that was seen; nothing was done. */
  | { readonly kind: "moved-on" }
  | { readonly kind: "no"; readonly messages: readonly string[] }
  | { readonly kind: "unreachable" };

/** @param body given: it is sent, else asked */
async function ask<T>(path: string, kind: string, body?: object): Promise<Asked<T>> {
  const heard = await callServer(path, {
    method: body === undefined ? "GET" : "POST",
    headers: {
      accept: "application/json",
      ...(body === undefined ? {} : { "content-type": "application/json", ...meantFor() }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    ...patience(),
  });
  if (heard.kind === "unreachable") return heard;
  const { response, body: answer } = heard;
  if (response.status === 502 || response.status === 504) return { kind: "unreachable" };
  const record = isRecord(answer) ? answer : {};
  if (record.kind === kind && response.ok) return { kind: "answered", value: answer as T };
  if (record.kind === "moved-on") return { kind: "moved-on" };
  const messages = messagesIn(answer);
  if (messages.length === 0 && typeof record.message === "string") return { kind: "no", messages: [record.message] };
  return { kind: "no", messages: reasonsIn(answer, response.status) };
}

const part = encodeURIComponent;

export const askHistory = (build: string, limit: number, before?: number) =>
  ask<ToldHistory>(
    `/api/history/${part(build)}?limit=${limit}${before === undefined ? "" : `&before=${before}`}`,
    "history",
  );
/** @param turnId the server does it once, however often it arrives under this id */
export const sendUndo = (build: string, change: number | undefined, turnId: string) =>
  ask<Written>(`/api/history/${part(build)}/undo`, "turned", { turnId, ...(change === undefined ? {} : { change }) });
export const sendRedo = (build: string, turnId: string) =>
  ask<Written>(`/api/history/${part(build)}/redo`, "turned", { turnId });
export const askVersions = (build: string) =>
  ask<{ readonly versions: readonly NamedVersion[] }>(`/api/versions/${part(build)}`, "versions");
export const sendName = (build: string, name: string) =>
  ask<{ readonly version: NamedVersion }>(`/api/versions/${part(build)}`, "named", { name });
export const askDifference = (build: string, from: string, to: string) =>
  ask<VersionDifference>(`/api/versions/${part(build)}/difference?from=${part(from)}&to=${part(to)}`, "difference");
export const sendRestore = (build: string, name: string, seen: number) =>
  ask<Written>(`/api/versions/${part(build)}/restore`, "restored", { name, seen });
