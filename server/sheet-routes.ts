/** How is a sheet described and asked over HTTP? Through the same description and check as everywhere. */

import { type AnySheet, describeSheet, runSheet, sheetJsonSchema, startInput } from "@coldset/core/sheet";
import { say } from "@coldset/core/texts";
import { z } from "zod";
import type { DescribedApi } from "./described-api.js";
import { answeredSchema } from "./shared-schemas.js";

const sheetLine = z.object({ id: z.string(), question: z.string() });
const sheetFace = z
  .object({
    description: z.looseObject({
      id: z.string(),
      question: z.string(),
      notes: z.string(),
      inputs: z.array(z.looseObject({ key: z.string(), label: z.string(), kind: z.string(), optional: z.boolean() })),
      gives: z.array(z.object({ key: z.string(), means: z.string() })),
    }),
    schema: z
      .looseObject({ type: z.literal("object") })
      .meta({ description: say("server.sheet-routes.json-schema-2020-12-of-the") }),
    start: z.record(z.string(), z.unknown()).meta({ description: say("server.sheet-routes.the-worked-example") }),
  })
  .meta({ id: "SheetFace" });
const sheetAnswer = answeredSchema(z.record(z.string(), z.unknown())).meta({ id: "SheetAnswer" });

export function sheetRoutes(api: DescribedApi, sheets: ReadonlyMap<string, AnySheet>): void {
  api.route(
    {
      method: "get",
      path: "/api/sheets",
      summary: "Lists the calculations.",
      answers: { 200: { means: "Each with its question.", json: z.array(sheetLine) } },
    },
    (c) => c.json([...sheets.values()].map(({ id, question }) => ({ id, question }))),
  );

  // A path for each, because each takes something else.
  for (const sheet of sheets.values()) {
    const schema = sheetJsonSchema(sheet, { writtenNumbers: true });
    const path = `/api/sheets/${sheet.id}` as const;
    api.route(
      {
        method: "get",
        path,
        summary: `Describes the sheet: ${sheet.question}`,
        answers: { 200: { means: "What it asks for, what it gives, and a worked example.", json: sheetFace } },
      },
      (c) => c.json({ description: describeSheet(sheet), schema, start: startInput(sheet) }),
    );
    api.route(
      {
        method: "post",
        path,
        summary: sheet.question,
        body: { jsonCheckedInside: schema },
        answers: { 200: { means: sheet.gives.map((g) => `${g.key}: ${g.means}`).join("; "), json: sheetAnswer } },
        refuses: [422],
      },
      (c, { body }) => {
        const answer = runSheet(sheet, body);
        return c.json(answer, answer.kind === "answered" ? 200 : 422);
      },
    );
  }
}
