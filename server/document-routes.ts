/** How are documents listed, read, put in, edited and given back over HTTP? */
import type { Workshop } from "@coldset/store";
import type { Context, Hono } from "hono";
import type { DocumentReader } from "./documents-of-build.js";
import { jsonBody } from "./json-body.js";
import { methodNotAllowed, notFound, problem, refusedBy } from "./problem.js";

const PATH_STEPS = 12;
const KEY_LIMIT = 200;
const INDEX_LIMIT = 10_000;

export function documentRoutes(app: Hono, workshop: Workshop, reader: DocumentReader): void {
  app.get("/api/documents", async (c) => c.json(await workshop.listDocuments()));
  app.post("/api/documents", (c) => takeIn(c, workshop));
  app.all("/api/documents", (c) => methodNotAllowed(c, "GET, POST"));

  app.get("/api/documents/:kind/:id", async (c) => {
    const stored = await workshop.getDocument(c.req.param("kind"), c.req.param("id"));
    if (stored === undefined) return noDocument(c);
    const parsed = reader.parse(stored);
    return c.json(
      parsed.kind === "loaded"
        ? { ...stored, plain: parsed.loaded.plain, refusals: [] }
        : { ...stored, plain: null, refusals: parsed.refusals },
    );
  });
  app.all("/api/documents/:kind/:id", (c) => methodNotAllowed(c, "GET"));

  app.get("/api/documents/:kind/:id/export", async (c) => {
    const { kind, id } = c.req.param();
    const text = await workshop.exportText(kind, id);
    if (text === undefined) return noDocument(c);
    c.header("Content-Type", "text/yaml; charset=utf-8");
    // Kind and id of a stored document are letters, digits, - and _.
    c.header("Content-Disposition", `attachment; filename="${kind}-${id}.yaml"`);
    return c.body(text);
  });
  app.all("/api/documents/:kind/:id/export", (c) => methodNotAllowed(c, "GET"));

  app.post("/api/documents/:kind/:id/edits", (c) => edit(c, workshop));
  app.all("/api/documents/:kind/:id/edits", (c) => methodNotAllowed(c, "POST"));
}

const noDocument = (c: Context) =>
  notFound(c, `${c.req.param("kind")} ${c.req.param("id")}`.slice(0, 100), "a document");

async function takeIn(c: Context, workshop: Workshop): Promise<Response> {
  const body = await jsonBody(c);
  if (body.kind === "bad") return body.response;
  const { text, label = "put in on the page" } = fieldsOf(body.value);
  if (typeof text !== "string" || typeof label !== "string") {
    return problem(c, 400, {
      code: "bad-import",
      at: "body",
      given: null,
      allowed: '{"text": "…", "label": "file.yaml"}',
      message: "An import is an object with text, and label if the file has a name.",
    });
  }
  const put = await workshop.putText(text, label);
  return put.kind === "refused" ? refusedBy(c, put.refusals) : c.json(put);
}

async function edit(c: Context, workshop: Workshop): Promise<Response> {
  const body = await jsonBody(c);
  if (body.kind === "bad") return body.response;
  const fields = fieldsOf(body.value);
  const { path, revision, ...rest } = fields;
  const { value, ...unknown } = rest;
  if (!isPath(path) || !isRevision(revision) || Object.keys(unknown).length > 0) {
    return problem(c, 400, {
      code: "bad-edit",
      at: "body",
      given: null,
      allowed: '{"path": ["measured", "chainstay"], "value": 441, "revision": 3}; without value the key is taken out',
      message: `An edit is a path of 1 to ${PATH_STEPS} keys, a value, and the revision that it was made on.`,
    });
  }
  const result = await workshop.edit(c.req.param("kind") ?? "", c.req.param("id") ?? "", path, value, revision);
  if (result.kind === "refused") return refusedBy(c, result.refusals);
  return c.json(result, result.kind === "conflict" ? 409 : 200);
}

function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
  return value !== null && typeof value === "object" && !Array.isArray(value) ? { ...value } : {};
}

const isRevision = (value: unknown): value is number => typeof value === "number" && Number.isSafeInteger(value);

function isPath(value: unknown): value is readonly (string | number)[] {
  if (!Array.isArray(value) || value.length === 0 || value.length > PATH_STEPS) return false;
  return value.every((step: unknown) =>
    typeof step === "number"
      ? Number.isInteger(step) && step >= 0 && step <= INDEX_LIMIT
      : typeof step === "string" && step.length > 0 && step.length <= KEY_LIMIT,
  );
}
