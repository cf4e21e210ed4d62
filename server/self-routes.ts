/** Is the server there, and what can it be asked? */
import { say } from "@coldset/core/texts";
import type { Workshop } from "@coldset/store";
import { z } from "zod";
import type { DescribedApi } from "./described-api.js";
import { openApiSchema } from "./openapi-document.js";

const wellSchema = z.object({
  kind: z.literal("well"),
  workshop: z.string().meta({
    description: say("server.self-routes.name-of-the-workshop-made-with"),
  }),
});

export function selfRoutes(api: DescribedApi, workshop: Workshop): void {
  api.route(
    {
      method: "get",
      path: "/api/health",
      summary: "Says that the server is there.",
      answers: { 200: { means: "It is.", json: wellSchema } },
    },
    (c) => c.json({ kind: "well", workshop: workshop.name }),
  );
  api.route(
    {
      method: "get",
      path: "/api/openapi.json",
      summary: "Gives this description.",
      answers: { 200: { means: "OpenAPI 3.1.", json: openApiSchema } },
    },
    (c) => c.json(api.document()),
  );
}
