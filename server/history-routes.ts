/** How are the changes of a build listed, taken back and put back, and its versions named, compared and restored? */
import { say } from "@coldset/core/texts";
import type { MovedOn, StoreRefused, Workshop } from "@coldset/store";
import type { Context } from "hono";
import type { DescribedApi } from "./described-api.js";
import { buildParams, conflictSchema, documentParams } from "./document-schemas.js";
import {
  differenceQuery,
  historyQuery,
  historySchema,
  movedOnSchema,
  nameBody,
  namedSchema,
  redoBody,
  restoreBody,
  restoreDocumentBody,
  restoredSchema,
  turnedSchema,
  undoBody,
  versionDifferenceSchema,
  versionsSchema,
} from "./history-schemas.js";
import { refusedBy } from "./problem.js";

const movedOn = { means: say("server.history-routes.another-change-came-after-the-one"), json: movedOnSchema };

export function historyRoutes(api: DescribedApi, workshop: Workshop): void {
  api.route(
    {
      method: "get",
      path: "/api/history/{build}",
      summary: "Lists the changes of a build and of the documents that it names, newest first.",
      params: buildParams,
      query: historyQuery,
      answers: { 200: { means: "One page of changes.", json: historySchema } },
      refuses: [422],
    },
    async (c, { params, query }) => {
      const { before, limit } = query;
      const page = { ...(before === undefined ? {} : { before }), ...(limit === undefined ? {} : { limit }) };
      return told(c, await workshop.buildHistory(params.build, page));
    },
  );

  api.route(
    {
      method: "post",
      path: "/api/history/{build}/undo",
      summary: "Takes back the newest change that stands, or the one named, as a change of its own.",
      params: buildParams,
      body: { json: undoBody },
      answers: { 200: { means: "What was taken back.", json: turnedSchema }, 409: movedOn },
      refuses: [422],
    },
    async (c, { params, body }) => {
      const { change } = body;
      const choice = { ...(change === undefined ? {} : { change }), ...given(body) };
      return told(c, await workshop.undo(params.build, choice));
    },
  );

  api.route(
    {
      method: "post",
      path: "/api/history/{build}/redo",
      summary: "Puts back what was taken back last, as long as nothing new was entered since.",
      params: buildParams,
      body: { json: redoBody },
      answers: { 200: { means: "What was put back.", json: turnedSchema }, 409: movedOn },
      refuses: [422],
    },
    async (c, { params, body }) => told(c, await workshop.redo(params.build, given(body))),
  );

  versionRoutes(api, workshop);

  api.route(
    {
      method: "post",
      path: "/api/documents/{kind}/{id}/restore",
      summary: "Brings one document back to how it was at a revision, as a new change.",
      params: documentParams,
      body: { json: restoreDocumentBody },
      answers: {
        200: { means: "What was written.", json: restoredSchema },
        409: { means: "Somebody else changed it meanwhile; this is how it stands now.", json: conflictSchema },
      },
      refuses: [422],
    },
    async (c, { params, body }) => {
      const { revision, expectedRevision } = body;
      const result = await workshop.restoreDocument(params.kind, params.id, revision, expectedRevision);
      return result.kind === "conflict" ? c.json(result, 409) : told(c, result);
    },
  );
}

function versionRoutes(api: DescribedApi, workshop: Workshop): void {
  api.route(
    {
      method: "get",
      path: "/api/versions/{build}",
      summary: "Lists the named versions of a build, newest first.",
      params: buildParams,
      answers: { 200: { means: "The versions, each with the revision of every document.", json: versionsSchema } },
      refuses: [422],
    },
    async (c, { params }) => told(c, await workshop.versions(params.build)),
  );

  api.route(
    {
      method: "post",
      path: "/api/versions/{build}",
      summary: "Gives a name to how all documents of a build stand now.",
      params: buildParams,
      body: { json: nameBody },
      answers: { 200: { means: "The version.", json: namedSchema } },
      refuses: [422],
    },
    async (c, { params, body }) => told(c, await workshop.nameVersion(params.build, body.name)),
  );

  api.route(
    {
      method: "get",
      path: "/api/versions/{build}/difference",
      summary: "Says what differs between two versions, or between one and now.",
      params: buildParams,
      query: differenceQuery,
      answers: { 200: { means: "Only documents that differ.", json: versionDifferenceSchema } },
      refuses: [422],
    },
    async (c, { params, query }) => told(c, await workshop.versionDifference(params.build, query.from, query.to)),
  );

  api.route(
    {
      method: "post",
      path: "/api/versions/{build}/restore",
      summary: "Brings all documents of a version back to how they were, as one new change.",
      params: buildParams,
      body: { json: restoreBody },
      answers: { 200: { means: "What was written.", json: restoredSchema }, 409: movedOn },
      refuses: [422],
    },
    async (c, { params, body }) => told(c, await workshop.restoreVersion(params.build, body.name, body.seen)),
  );
}

function given(body: { readonly seen?: number | undefined; readonly turnId?: string | undefined }) {
  const { seen, turnId } = body;
  return { ...(seen === undefined ? {} : { seen }), ...(turnId === undefined ? {} : { turnId }) };
}

function told(c: Context, answer: { readonly kind: string } | MovedOn | StoreRefused): Response {
  if ("refusals" in answer) return refusedBy(c, answer.refusals);
  return c.json(answer, answer.kind === "moved-on" ? 409 : 200);
}
