/**
 * How does a route come into the server? Only together with its description: it is checked, limited and described by
 * the same object. Methods that a path does not have are answered with those that it has.
 */
import { say } from "@coldset/core/texts";
import type { Context, Hono, MiddlewareHandler } from "hono";
import type { z } from "zod";
import type { Asked, BodyDescription, RouteDescription } from "./describe-route.js";
import { BODY_LIMIT_BYTES, jsonBody, limitBody, requireType } from "./json-body.js";
import { limitAtOnce } from "./limit-request.js";
import { type OpenApi, openApiDocument } from "./openapi-document.js";
import { methodNotAllowed, notFound, problem } from "./problem.js";
import { refusalsBySchema } from "./refuse-by-schema.js";

/** A body is held in memory while it comes in. So many of the large ones at once, and no more. */
const LARGE_BYTES = 20_000_000;
const LARGE_AT_ONCE = 2;

export interface DescribedApi {
  readonly route: <const D extends RouteDescription>(
    description: D,
    handler: (c: Context, asked: Asked<D>) => Response | Promise<Response>,
  ) => void;
  /** To be called once, after the last route: says of every path which methods it has. */
  readonly finish: () => void;
  readonly described: () => readonly RouteDescription[];
  readonly document: () => OpenApi;
}

/** "/api/documents/{kind}" as hono writes it. */
export const honoPath = (path: string) => path.replace(/\{(\w+)\}/g, ":$1");

export function describedApi(app: Hono): DescribedApi {
  const routes: RouteDescription[] = [];
  let made: OpenApi | undefined;
  return {
    route: (description, handler) => {
      routes.push(description);
      made = undefined;
      app.on(description.method, [honoPath(description.path)], ...guardsOf(description.body), async (c) => {
        const asked = await checked(c, description);
        // The parts were checked by the schemas from which their types are made.
        return asked instanceof Response ? asked : handler(c, asked as Asked<typeof description>);
      });
    },
    finish: () => {
      for (const path of new Set(routes.map((r) => r.path))) {
        const methods = routes.filter((r) => r.path === path).map((r) => r.method.toUpperCase());
        app.all(honoPath(path), (c) => methodNotAllowed(c, methods.join(", ")));
      }
    },
    described: () => routes,
    document: () => {
      made ??= openApiDocument(routes);
      return made;
    },
  };
}

function guardsOf(body: BodyDescription | undefined): readonly MiddlewareHandler[] {
  if (body === undefined) return [];
  const types = "file" in body ? body.file : ["application/json"];
  const limitBytes = body.limitBytes ?? BODY_LIMIT_BYTES;
  const few = limitBytes > LARGE_BYTES ? [limitAtOnce({ atOnce: LARGE_AT_ONCE })] : [];
  return [requireType(types), ...few, limitBody(limitBytes)];
}

async function checked(c: Context, route: RouteDescription): Promise<Response | Asked<RouteDescription>> {
  const params = route.params?.safeParse(c.req.param());
  if (params?.success === false)
    return notFound(c, c.req.path.slice(0, 100), say("server.described-api.a-path-of-this-interface"));
  const query = route.query === undefined ? undefined : queryOf(c, route.query);
  if (query instanceof Response) return query;
  const body = route.body === undefined ? undefined : await bodyOf(c, route.body);
  if (body instanceof Response) return body;
  return { params: params?.data as never, query: query as never, body: body?.value as never };
}

function queryOf(c: Context, schema: z.ZodObject): Response | Readonly<Record<string, unknown>> {
  const given = Object.entries(c.req.queries());
  const twice = given.filter(([, values]) => values.length > 1).map(([key]) => key.slice(0, 100));
  if (twice.length > 0) {
    const [key = ""] = twice;
    const message = say("server.described-api.the-query-gives-more-than-once", { key });
    return problem(c, 400, {
      code: "bad-query",
      at: `query.${key}`,
      given: key,
      allowed: say("server.described-api.each-key-once"),
      message,
    });
  }
  const value = Object.fromEntries(given.map(([key, [first]]) => [key, first]));
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  return problem(c, 400, ...refusalsBySchema("query", read.error, value, allowedBy(schema)));
}

async function bodyOf(c: Context, body: BodyDescription): Promise<Response | { readonly value: unknown }> {
  if ("file" in body) return { value: new Uint8Array(await c.req.arrayBuffer()) };
  const json = await jsonBody(c);
  if (json.kind === "bad") return json.response;
  if (!("json" in body)) return json;
  const read = body.json.safeParse(json.value);
  if (read.success) return { value: read.data };
  return problem(c, 400, ...refusalsBySchema("body", read.error, json.value, allowedBy(body.json)));
}

const allowedBy = (schema: z.ZodType) =>
  schema.meta()?.description ?? say("server.described-api.what-api-openapi-json-describes");
