/**
 * What does the body of this write say? JSON of at most 2 MB and 60 levels, in UTF-8, and said to be JSON: a foreign
 * page cannot send that type without asking first, and we answer no such question.
 */
import type { Context, MiddlewareHandler } from "hono";
import { bodyLimit } from "hono/body-limit";
import { problem } from "./problem.js";

export const BODY_LIMIT_BYTES = 2_000_000;
export const JSON_DEPTH_LIMIT = 60;

export const limitBody: MiddlewareHandler = bodyLimit({
  maxSize: BODY_LIMIT_BYTES,
  onError: (c) => {
    c.header("Connection", "close");
    return problem(c, 413, {
      code: "body-too-large",
      at: "body",
      given: `more than ${BODY_LIMIT_BYTES / 1e6} MB`,
      allowed: `${BODY_LIMIT_BYTES / 1e6} MB at most`,
      message: `At most ${BODY_LIMIT_BYTES / 1e6} MB are taken at once. Photographs do not belong in it.`,
    });
  },
});

export const requireJson: MiddlewareHandler = async (c, next) => {
  const type = (c.req.header("content-type") ?? "").split(";")[0]?.trim().toLowerCase();
  if (type === "application/json") return next();
  return problem(c, 415, {
    code: "not-json",
    at: "Content-Type",
    given: (type ?? "").slice(0, 100),
    allowed: "application/json",
    message: "What is written here must be sent as application/json.",
  });
};

export type JsonBody =
  | { readonly kind: "json"; readonly value: unknown }
  | { readonly kind: "bad"; readonly response: Response };

export async function jsonBody(c: Context): Promise<JsonBody> {
  const bad = (given: string, allowed: string): JsonBody => ({
    kind: "bad",
    response: problem(c, 400, {
      code: "bad-json",
      at: "body",
      given,
      allowed,
      message: `The body is ${given}; it must be ${allowed}.`,
    }),
  });
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(await c.req.arrayBuffer());
  } catch (cause) {
    if (!(cause instanceof TypeError)) throw cause;
    return bad("not UTF-8", "JSON in UTF-8");
  }
  if (deeperThan(text, JSON_DEPTH_LIMIT)) {
    return bad(`nested more than ${JSON_DEPTH_LIMIT} levels deep`, `JSON of at most ${JSON_DEPTH_LIMIT} levels`);
  }
  try {
    return { kind: "json", value: JSON.parse(text) };
  } catch (cause) {
    if (!(cause instanceof SyntaxError)) throw cause;
    return bad(text === "" ? "empty" : "not JSON", "JSON");
  }
}

/** Counts brackets outside strings, before anything recurses. */
export function deeperThan(json: string, limit: number): boolean {
  let depth = 0;
  let inString = false;
  for (let i = 0; i < json.length; i++) {
    const ch = json.charCodeAt(i);
    if (inString) {
      if (ch === 0x5c) i += 1;
      else if (ch === 0x22) inString = false;
    } else if (ch === 0x22) inString = true;
    else if (ch === 0x5b || ch === 0x7b) {
      depth += 1;
      if (depth > limit) return true;
    } else if (ch === 0x5d || ch === 0x7d) depth -= 1;
  }
  return false;
}
