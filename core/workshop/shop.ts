/** What can this workshop do, when is it open, what lies in its bin, and what does work cost here? */
import { z } from "zod";
import { fixed, hours, id, money, ratio, text, unknownable, word } from "./fields.js";
import { partSchema } from "./part.js";
import { ABILITIES } from "./words.js";

const u = unknownable;
export const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
export const WEEKDAY_NAMES: Readonly<Record<string, string>> = {
  mon: "Monday",
  tue: "Tuesday",
  wed: "Wednesday",
  thu: "Thursday",
  fri: "Friday",
  sat: "Saturday",
  sun: "Sunday",
};

export const shopSchema = fixed({
  kind: z.literal("shop"),
  version: z.literal(1),
  id: id(),
  place: text(200).optional(),
  abilities: z.array(word(ABILITIES)).max(20),
  /** Conditions an ability carries, e.g. {weld: "TIG, by the qualified volunteer only"}. */
  conditions: z.partialRecord(word(ABILITIES), text(200)).optional(),
  missing: z.array(text(80)).max(30).optional(),
  session_h: u(hours(24)),
  hours_per_week: u(hours(168)),
  open_days: u(z.array(word(WEEKDAYS)).min(1).max(7)),
  /** A course has so many sessions and no more: the days they fall on, counted from the first, which is 0. */
  session_days: z.array(ratio(0, 2000)).min(1).max(200).optional(),
  /** What a session is called here, such as evening. */
  session_word: text(20).optional(),
  rate_per_hour: u(money()),
});
export type ShopDoc = z.output<typeof shopSchema>;

export const binSchema = fixed({
  kind: z.literal("bin"),
  version: z.literal(1),
  id: id(),
  parts: z.array(partSchema).max(5000),
});
export type BinDoc = z.output<typeof binSchema>;

export const pricesSchema = fixed({
  kind: z.literal("prices"),
  version: z.literal(1),
  id: id(),
  currency: text(20).optional(),
  /** Consumables of a remedy where no price is given: hand work, and work with a machine or flame. */
  consumables_hand: u(money()),
  consumables_machine: u(money()),
  /** What a used bicycle of the wanted kind costs here: the cheapest alternative. */
  same_bike_used: u(money()),
  items: z
    .array(fixed({ what: text(120), price: money(), delivery_days: ratio(0, 365).optional() }))
    .max(2000)
    .optional(),
});
export type PricesDoc = z.output<typeof pricesSchema>;
