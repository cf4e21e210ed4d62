/** Which parts were chosen, which are weighed against them, what is to be done, and who has signed what? */
import { z } from "zod";
import { count, fixed, hours, id, mm, ratio, saidText, text, unknownable, word } from "./fields.js";
import { ABILITIES, PLACES } from "./words.js";

/** A day that the calendar has: 2026-02-30 is none. */
const isDay = (text: string) => {
  const read = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(read.getTime()) && read.toISOString().startsWith(text);
};
const day = () =>
  z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/, { error: "write the day as 2026-04-30" })
    .refine(isDay, { error: "the calendar has no such day" });
const placeWord = () => word(PLACES);

const operation = fixed({
  id: id(),
  what: text(160),
  h: hours(200),
  /** Days of 24 hours that must pass after the end (cure, post). */
  wait: ratio(0, 365).optional(),
  needs: z.array(word(ABILITIES)).max(6).optional(),
  after: z.array(id()).max(50),
  gate: z.boolean().optional(),
  /** May be done after the deadline if need be (a clear coat, lights). */
  may_come_later: z.boolean().optional(),
  /** What cannot be taken back. */
  irreversible: word(["bend", "heat", "drill", "cut", "paint"]).optional(),
});

export const buildSchema = fixed({
  kind: z.literal("build"),
  version: z.literal(1),
  id: id(),
  title: text(200),
  donor: id(),
  rider: id(),
  intent: id(),
  shop: id(),
  bin: id(),
  prices: id(),
  route: id().optional(),
  /** Other files, relative to this one, in which the documents above may stand. */
  files: z.array(text(300)).max(20).optional(),
  /** Place → part id of the bin. */
  chosen: z.partialRecord(placeWord(), id()),
  /** Parts without a place of their own (paint, plate, tubes), with how many. */
  also: z
    .array(fixed({ part: id(), qty: count(1, 100) }))
    .max(100)
    .optional(),
  /** Place → other parts to be shown beside the chosen one. */
  consider: z.partialRecord(placeWord(), z.array(id()).max(20)).optional(),
  /** Ring and sprocket pairs weighed for a chain on fixed centres. */
  ring_sprocket_pairs: z
    .array(z.tuple([count(18, 70), count(8, 50)]))
    .max(30)
    .optional(),
  /** Remedies taken, by joint; where none is named the cheapest that this shop can do is reckoned with. */
  remedies: z
    .array(fixed({ joint: id(), remedy: text(60) }))
    .max(100)
    .optional(),
  /** Sets of changes weighed against the chosen one, for the money. null takes a place out. */
  alternatives: z
    .array(fixed({ name: text(80), change: z.partialRecord(placeWord(), z.union([id(), z.null()])) }))
    .max(20)
    .optional(),
  /** Height of spacers under the stem, mm; left out: the cockpit's best. */
  spacers_below: unknownable(mm(0, 80)),
  operations: z.array(operation).max(200),
  /** A gate opens only with what a person typed. `gate` is an operation id or a safety rule (S1 …). */
  evidence: z
    .array(fixed({ gate: id(), by: saidText(80), on: day(), what: saidText(400) }))
    .max(200)
    .optional(),
  start_day: day().optional(),
  spent: ratio(0, 1_000_000).optional(),
});
export type BuildDoc = z.output<typeof buildSchema>;
