/**
 * How does a program learn what this interface takes and answers? OpenAPI 3.1, made from the descriptions of the routes
 * and nothing else.
 */
import { say } from "@coldset/core/texts";
import { z } from "zod";
import { createDocument, type ZodOpenApiOperationObject, type ZodOpenApiPathsObject } from "zod-openapi";
import { type AnswerDescription, type BodyDescription, type RouteDescription, refusalsOf } from "./describe-route.js";
import { failedSchema, refusedSchema } from "./shared-schemas.js";

export type OpenApi = ReturnType<typeof createDocument>;

const REFUSED: Readonly<Record<number, string>> = {
  400: say("server.openapi-document.the-request-is-not-what-is"),
  403: say("server.openapi-document.a-page-from-elsewhere-asked"),
  404: say("server.openapi-document.there-is-no-such-thing-here"),
  405: say("server.openapi-document.the-path-has-other-methods"),
  409: say("server.openapi-document.it-has-changed-meanwhile"),
  413: say("server.openapi-document.the-body-is-too-large"),
  415: say("server.openapi-document.the-body-is-of-another-type"),
  421: say("server.openapi-document.the-host-header-names-another-server"),
  422: say("server.openapi-document.what-was-sent-can-be-read"),
  503: say("server.openapi-document.the-records-cannot-be-reached-just"),
};

export function openApiDocument(routes: readonly RouteDescription[]): OpenApi {
  const paths: ZodOpenApiPathsObject = {};
  for (const route of routes) {
    paths[route.path] = { ...paths[route.path], [route.method]: operationOf(route) };
  }
  return createDocument({
    openapi: "3.1.1",
    info: {
      title: "Coldset",
      version: "1",
      description: say("server.openapi-document.the-workshop-s-server-on-this"),
    },
    servers: [{ url: "/" }],
    paths,
  });
}

function operationOf(route: RouteDescription): ZodOpenApiOperationObject {
  const responses: ZodOpenApiOperationObject["responses"] = {};
  const answers = new Map<number, AnswerDescription>(Object.entries(route.answers).map(([s, a]) => [Number(s), a]));
  for (const [status, answer] of answers) {
    responses[`${status}` as "200"] = { description: answer.means, content: contentOf(answer) };
  }
  for (const status of refusalsOf(route)) {
    const said = answers.get(status);
    if (said !== undefined) continue;
    responses[`${status}` as "400"] = {
      description: REFUSED[status] ?? "Refused.",
      content: { "application/json": { schema: refusedSchema } },
    };
  }
  responses["500"] = {
    description: say("server.openapi-document.a-fault-of-the-program-not"),
    content: { "application/json": { schema: failedSchema } },
  };
  return {
    operationId: operationId(route),
    summary: route.summary,
    ...(route.params === undefined && route.query === undefined
      ? {}
      : {
          requestParams: {
            ...(route.params === undefined ? {} : { path: route.params }),
            ...(route.query === undefined ? {} : { query: route.query }),
          },
        }),
    ...(route.body === undefined ? {} : { requestBody: { required: true, content: bodyContentOf(route.body) } }),
    responses,
  };
}

/** "get /api/documents/{kind}" becomes "get-documents-kind". */
const operationId = (route: RouteDescription) =>
  `${route.method}${route.path.slice("/api".length)}`.replace(/[^\w-]+/g, "-").replace(/-$/, "");

function contentOf(answer: AnswerDescription) {
  if ("json" in answer) return { "application/json": { schema: answer.json } };
  return { [answer.type]: {} };
}

function bodyContentOf(body: BodyDescription) {
  if ("file" in body) return Object.fromEntries(body.file.map((type) => [type, {}]));
  if ("json" in body) return { "application/json": { schema: body.json } };
  const { $schema: _dialect, ...schema } = body.jsonCheckedInside;
  return { "application/json": { schema } };
}

/** The description itself, as far as it can be said of itself. */
export const openApiSchema = z.looseObject({
  openapi: z.string().startsWith("3.1."),
  info: z.looseObject({ title: z.string(), version: z.string() }),
  paths: z.record(z.string(), z.unknown()),
});
