/**
 * What does a route take and answer? One description from which the request is checked, the handler is typed, and the
 * OpenAPI description of the interface is made, so that the three cannot differ.
 */
import type { JsonSchema } from "@coldset/core/sheet";
import type { z } from "zod";
import type { ProblemStatus } from "./problem.js";

export type RouteMethod = "get" | "post" | "put" | "delete";

/** What may stand in the body of a request; each of these answers 400, 413 and 415 by itself. */
export type BodyDescription =
  /** JSON, checked by this schema before the handler is called. */
  | { readonly json: z.ZodType; readonly limitBytes?: number }
  /** JSON that one thing further in checks by its own description, such as a sheet. The handler gets it unchecked. */
  | { readonly jsonCheckedInside: JsonSchema; readonly limitBytes?: number }
  /** A file as it is, of one of these media types. What it really is, the handler finds out from its bytes. */
  | { readonly file: readonly string[]; readonly limitBytes: number };

export type AnswerDescription =
  | { readonly means: string; readonly json: z.ZodType }
  /** Something else than JSON, by its media type. */
  | { readonly means: string; readonly type: string };

export interface RouteDescription {
  readonly method: RouteMethod;
  /** As in OpenAPI: "/api/documents/{kind}/{id}". */
  readonly path: `/api/${string}`;
  /** What it is for, one sentence. */
  readonly summary: string;
  /** The parts of the path in braces. A path that does not pass is answered with 404. */
  readonly params?: z.ZodObject;
  /** A query that does not pass, or gives a key twice, is answered with 400. */
  readonly query?: z.ZodObject;
  readonly body?: BodyDescription;
  /** The answers that are no refusals, by status. */
  readonly answers: Readonly<Record<number, AnswerDescription>>;
  /** The statuses of refusals besides those that every route of its sort has (see refusalsOf). */
  readonly refuses?: readonly ProblemStatus[];
}

/** What a handler gets, checked. */
export interface Asked<D extends RouteDescription> {
  readonly params: D["params"] extends z.ZodObject ? z.output<D["params"]> : undefined;
  readonly query: D["query"] extends z.ZodObject ? z.output<D["query"]> : undefined;
  readonly body: D["body"] extends { readonly json: infer S extends z.ZodType }
    ? z.output<S>
    : D["body"] extends { readonly jsonCheckedInside: JsonSchema }
      ? unknown
      : D["body"] extends { readonly file: readonly string[] }
        ? Uint8Array<ArrayBuffer>
        : undefined;
}

/**
 * Every status with which this route may refuse. 403 and 421 come from the guard, before any route is looked at; 503
 * where too much is asked at once, or the records cannot be reached.
 */
export function refusalsOf(route: RouteDescription): readonly ProblemStatus[] {
  const found = new Set<ProblemStatus>([403, 421, 503, ...(route.refuses ?? [])]);
  if (route.params !== undefined) found.add(404);
  if (route.query !== undefined) found.add(400);
  if (route.body !== undefined) for (const status of [400, 413, 415] as const) found.add(status);
  return [...found].sort((a, b) => a - b);
}
