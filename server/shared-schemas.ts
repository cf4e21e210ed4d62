/** Which shapes do many answers share? Refusals, failures and answered questions, as schemas of the interface. */
import { say } from "@coldset/core/texts";
import { z } from "zod";

export const refusalSchema = z
  .object({
    code: z.string(),
    at: z.string().meta({ description: say("server.shared-schemas.field-or-place-empty-for-the") }),
    given: z.unknown().meta({ description: say("server.shared-schemas.what-was-given-where-it-is") }),
    allowed: z.string(),
    message: z.string().meta({ description: say("server.shared-schemas.one-sentence-for-the-builder") }),
  })
  .meta({ id: "Refusal", description: say("server.shared-schemas.one-reason-why-a-question-is") });

export const refusedSchema = z
  .object({ kind: z.literal("refused"), refusals: z.array(refusalSchema).min(1) })
  .meta({ id: "Refused", description: say("server.shared-schemas.all-reasons-at-once") });

export const failedSchema = z
  .object({ kind: z.literal("failed"), reference: z.string(), message: z.string() })
  .meta({ id: "Failed", description: say("server.shared-schemas.a-fault-of-the-program-the") });

const bandSchema = z
  .object({ low: z.number(), high: z.number(), means: z.string() })
  .meta({ id: "Band", description: say("server.shared-schemas.a-range-around-a-number-and") });

export const cautionSchema = z
  .object({ code: z.string(), at: z.string().optional(), message: z.string() })
  .meta({ id: "Caution" });

/** An answered question with this value; bands are keyed by the keys in it. */
export const answeredSchema = <V extends z.ZodType>(value: V) =>
  z.object({
    kind: z.literal("answered"),
    value,
    bands: z.record(z.string(), bandSchema),
    sources: z.array(z.string()),
    cautions: z.array(cautionSchema),
  });
