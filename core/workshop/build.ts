/** Which parts were chosen, which are weighed against them, what is to be done, and who has signed what? */

import { z } from "zod";
import { say } from "../texts/say.js";
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
    .regex(/^\d{4}-\d{2}-\d{2}$/, { error: say("workshop.build.write-the-day-as-2026-04") })
    .refine(isDay, { error: say("workshop.build.the-calendar-has-no-such-day") });
const placeWord = () => word(PLACES);
const weightAt = () => unknownable(z.tuple([mm(-2000, 2000), mm(0, 2500)]));

const operation = fixed({
  id: id(),
  what: text(160),
  h: hours(200),
  /** Days of 24 hours that must pass after the end (cure, post). */
  wait: ratio(0, 365).optional(),
  needs: z.array(word(ABILITIES)).max(6).optional(),
  after: z.array(id()).max(50),
  gate: z.boolean().optional(),
  /** The session in which the builder means to do it, the first is 1. */
  session: count(1, 400).optional(),
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
  /** Out of the way: not in the list of builds, and kept. */
  put_away: z.boolean().optional(),
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
  /** Where the sprockets stand on a hub, cassette by cassette; a freewheel's or a hub gear's stands on its hub. */
  rear_lines: z
    .array(
      fixed({
        wheel: id(),
        cassette: id(),
        spacer: id().optional(),
        /** Right locknut to the middle of the smallest sprocket. */
        locknut_to_smallest: mm(0, 60),
      }),
    )
    .max(100)
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
  /** What is carried and where its weight sits: [forward of the cranks' axis, over the ground] in mm. */
  load_model: fixed({
    bike_kg: unknownable(ratio(1, 100)),
    bags_on: word(["rack", "front_basket", "none"]).optional(),
    bike_at: weightAt(),
    rider_at: weightAt(),
    child_on_rack_at: weightAt(),
    child_on_tube_at: weightAt(),
    bags_on_rack_at: weightAt(),
    bags_in_basket_at: weightAt(),
  }).optional(),
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
