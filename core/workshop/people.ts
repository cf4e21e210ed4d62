/** Who rides it, for what, and on which roads? */
import { z } from "zod";
import { count, fixed, id, kg, mm, money, ratio, text, unknownable, word } from "./fields.js";

const u = unknownable;

export const riderSchema = fixed({
  kind: z.literal("rider"),
  version: z.literal(1),
  id: id(),
  name: text(80).optional(),
  inseam: u(mm(300, 1200)),
  height: u(mm(800, 2300)),
  mass: u(kg()),
  /** Rider, bicycle and load together. */
  total_mass: u(kg(400)),
  hand_span: u(mm(80, 300)),
  shoe_length: u(mm(120, 400)),
  cadence_window: u(z.tuple([count(20, 150), count(20, 180)])),
  power_cruise_w: u(ratio(10, 600)),
  power_burst_w: u(ratio(10, 2000)),
  saddle_height: u(mm(300, 1100)),
  /** Saddle reference point and palm, from the BB on level ground: [forward, up] in mm. */
  saddle_xy: u(z.tuple([mm(-600, 300), mm(200, 1100)])),
  hand_xy: u(z.tuple([mm(0, 900), mm(200, 1200)])),
  bar_above_saddle: u(mm(-300, 300)),
  load_kg: u(kg()),
  /** A child that is carried: its mass, and its age in months where the local law asks for it. */
  child_kg: u(kg(60)),
  child_months: u(count(0, 216)),
  bags_kg: u(kg()),
  novice: z.boolean().optional(),
});
export type RiderDoc = z.output<typeof riderSchema>;

export const intentSchema = fixed({
  kind: z.literal("intent"),
  version: z.literal(1),
  id: id(),
  purpose: text(200),
  surface: text(200).optional(),
  guards: u(z.boolean()),
  brakes: word(["disc_both", "disc_front", "disc_rear", "rim_both", "any"]),
  gears: word(["hub", "derailleur", "single", "any"]),
  rack_class_kg: u(ratio(0, 60)),
  tyre_range: u(z.tuple([mm(15, 130), mm(15, 130)])),
  budget: u(money()),
  hours_max: u(ratio(0, 5000)),
  deadline_weeks: u(ratio(0, 200)),
  carries_child: z.boolean().optional(),
  stand: word(["two_leg", "one_leg", "none"]).optional(),
  foot_retention: z.boolean().optional(),
});
export type IntentDoc = z.output<typeof intentSchema>;

export const routeSchema = fixed({
  kind: z.literal("route"),
  version: z.literal(1),
  id: id(),
  sections: z
    .array(fixed({ km: ratio(0.001, 1000), grade: ratio(-40, 40) }))
    .min(1)
    .max(5000),
});
export type RouteDoc = z.output<typeof routeSchema>;
