/** How are documents listed, read, put in, edited and given back over HTTP? */
import { say } from "@coldset/core/texts";
import type { Workshop } from "@coldset/store";
import type { Context } from "hono";
import { z } from "zod";
import type { DescribedApi } from "./described-api.js";
import {
  conflictSchema,
  documentLineSchema,
  documentParams,
  editBody,
  editedSchema,
  importBody,
  putSchema,
  storedDocumentSchema,
} from "./document-schemas.js";
import type { DocumentReader } from "./documents-of-build.js";
import { notFound, refusedBy } from "./problem.js";

export function documentRoutes(api: DescribedApi, workshop: Workshop, reader: DocumentReader): void {
  api.route(
    {
      method: "get",
      path: "/api/documents",
      summary: "Lists all documents, without their texts.",
      answers: { 200: { means: "In order of kind and id.", json: z.array(documentLineSchema) } },
    },
    async (c) => c.json(await workshop.listDocuments()),
  );

  api.route(
    {
      method: "post",
      path: "/api/documents",
      summary: "Takes in a text of one or more documents: all of them, or none.",
      body: { json: importBody },
      answers: { 200: { means: "What was put in.", json: putSchema } },
      refuses: [422, 503],
    },
    async (c, { body }) => {
      const put = await workshop.putText(body.text, body.label);
      return put.kind === "refused" ? refusedBy(c, put.refusals) : c.json(put);
    },
  );

  api.route(
    {
      method: "get",
      path: "/api/documents/{kind}/{id}",
      summary: "Gives one document with its text and its plain data.",
      params: documentParams,
      answers: { 200: { means: "The document as it stands.", json: storedDocumentSchema } },
    },
    async (c, { params }) => {
      const stored = await workshop.getDocument(params.kind, params.id);
      if (stored === undefined) return noDocument(c, params);
      const known = jsonOf.get(stored);
      if (known !== undefined) return c.body(known, 200, JSON_TYPE);
      const parsed = reader.parse(stored);
      const json = JSON.stringify(
        parsed.kind === "loaded"
          ? { ...stored, plain: parsed.loaded.plain, refusals: [] }
          : { ...stored, plain: null, refusals: parsed.refusals },
      );
      jsonOf.set(stored, json);
      return c.body(json, 200, JSON_TYPE);
    },
  );

  api.route(
    {
      method: "get",
      path: "/api/documents/{kind}/{id}/export",
      summary: "Gives a document back as it was put in, byte for byte where nobody edited it.",
      params: documentParams,
      answers: { 200: { means: "The text.", type: "text/yaml" } },
    },
    async (c, { params }) => {
      const text = await workshop.exportText(params.kind, params.id);
      if (text === undefined) return noDocument(c, params);
      c.header("Content-Type", "text/yaml; charset=utf-8");
      // Kind and id of a stored document are letters, digits, - and _.
      c.header("Content-Disposition", `attachment; filename="${params.kind}-${params.id}.yaml"`);
      return c.body(text);
    },
  );

  api.route(
    {
      method: "post",
      path: "/api/documents/{kind}/{id}/edits",
      summary: "Changes one value where it stands in the text; everything else stays as written.",
      params: documentParams,
      body: { json: editBody },
      answers: {
        200: { means: "The new text.", json: editedSchema },
        409: { means: "Somebody else changed it meanwhile; this is how it stands now.", json: conflictSchema },
      },
      refuses: [404, 422, 503],
    },
    async (c, { params, body }) => {
      const { path, value, revision, editId, takesBack } = body;
      const result = await workshop.edit(params.kind, params.id, path, value, revision, editId, takesBack);
      if (result.kind === "refused") return refusedBy(c, result.refusals);
      return c.json(result, result.kind === "conflict" ? 409 : 200);
    },
  );
}

const JSON_TYPE = { "Content-Type": "application/json" };
/** Made once for each state of a document; the store gives the same object until that changes. */
const jsonOf = new WeakMap<object, string>();

const noDocument = (c: Context, { kind, id }: { readonly kind: string; readonly id: string }) =>
  notFound(c, `${kind} ${id}`.slice(0, 100), say("server.document-routes.a-document"));
