/** How is a sheet described and asked over HTTP? Through the same description and check as everywhere. */
import { type AnySheet, describeSheet, runSheet, sheetJsonSchema, startInput } from "@coldset/core/sheet";
import type { Context, Hono } from "hono";
import { jsonBody } from "./json-body.js";
import { methodNotAllowed, notFound } from "./problem.js";

export function sheetRoutes(app: Hono, sheets: ReadonlyMap<string, AnySheet>): void {
  app.get("/api/sheets", (c) => c.json([...sheets.values()].map(({ id, question }) => ({ id, question }))));
  app.all("/api/sheets", (c) => methodNotAllowed(c, "GET"));

  app.get("/api/sheets/:id", (c) => {
    const sheet = sheets.get(c.req.param("id"));
    if (sheet === undefined) return noSheet(c);
    const schema = sheetJsonSchema(sheet, { writtenNumbers: true });
    return c.json({ description: describeSheet(sheet), schema, start: startInput(sheet) });
  });
  app.post("/api/sheets/:id", async (c) => {
    const sheet = sheets.get(c.req.param("id"));
    if (sheet === undefined) return noSheet(c);
    const body = await jsonBody(c);
    if (body.kind === "bad") return body.response;
    const answer = runSheet(sheet, body.value);
    return c.json(answer, answer.kind === "answered" ? 200 : 422);
  });
  app.all("/api/sheets/:id", (c) => methodNotAllowed(c, "GET, POST"));
}

const noSheet = (c: Context) =>
  notFound(c, `sheet ${c.req.param("id")}`.slice(0, 100), "a sheet listed in /api/sheets");
