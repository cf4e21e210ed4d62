/**
 * What does the body of this write say? JSON of at most 2 MB and 60 levels, in UTF-8, and said to be JSON: a foreign
 * page cannot send that type without asking first, and we answer no such question.
 */
import { say } from "@coldset/core/texts";
import type { Context, MiddlewareHandler } from "hono";
import { bodyLimit } from "hono/body-limit";
import { problem } from "./problem.js";

export const BODY_LIMIT_BYTES = 2_000_000;
export const JSON_DEPTH_LIMIT = 60;

export function limitBody(maxSize: number): MiddlewareHandler {
  const limit = bodyLimit({
    maxSize,
    onError: (c) => {
      c.header("Connection", "close");
      return problem(c, 413, {
        code: "body-too-large",
        at: "body",
        given: say("server.json-body.more-than-mb", { maxSize: maxSize / 1e6 }),
        allowed: say("server.json-body.mb-at-most", { maxSize: maxSize / 1e6 }),
        message: say("server.json-body.at-most-mb-are-taken-here", { maxSize: maxSize / 1e6 }),
      });
    },
  });
  return (c, next) => {
    // A body that comes without its length is counted by making the request anew, which the server's own cannot be.
    if (c.req.header("content-length") === undefined) c.req.raw = wholeRequest(c.req.raw);
    return limit(c, next);
  };
}

function wholeRequest({ url, method, headers, body, signal }: Request): Request {
  const init: RequestInit & { duplex: "half" } = { method, headers, body, signal, duplex: "half" };
  return new Request(url, init);
}

export function requireType(types: readonly string[]): MiddlewareHandler {
  return async (c, next) => {
    const type = (c.req.header("content-type") ?? "").split(";")[0]?.trim().toLowerCase() ?? "";
    if (types.includes(type)) return next();
    const allowed = types.join(", ");
    return problem(c, 415, {
      code: types.includes("application/json") ? "not-json" : "wrong-type",
      at: "Content-Type",
      given: type.slice(0, 100),
      allowed,
      message: say("server.json-body.what-is-written-here-must-be", { allowed }),
    });
  };
}

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
      message: say("server.json-body.the-body-is-it-must-be", { given, allowed }),
    }),
  });
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(await c.req.arrayBuffer());
  } catch (cause) {
    if (!(cause instanceof TypeError)) throw cause;
    return bad(say("server.json-body.not-utf-8"), say("server.json-body.json-in-utf-8"));
  }
  if (deeperThan(text, JSON_DEPTH_LIMIT)) {
    return bad(
      say("server.json-body.nested-more-than-levels-deep", { jsonDepthLimit: JSON_DEPTH_LIMIT }),
      say("server.json-body.json-of-at-most-levels", { jsonDepthLimit: JSON_DEPTH_LIMIT }),
    );
  }
  try {
    return { kind: "json", value: JSON.parse(text) };
  } catch (cause) {
    if (!(cause instanceof SyntaxError)) throw cause;
    return bad(text === "" ? "empty" : say("server.json-body.not-json"), "JSON");
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
