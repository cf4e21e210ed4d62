/** What do we know of the old bicycle? Facts of the advert, every measurement with its spread, and its interfaces. */
import { z } from "zod";
import {
  count,
  degEntered,
  fixed,
  grams,
  id,
  mm,
  mmEntered,
  money,
  profile,
  text,
  tyreSize,
  unknownable,
  word,
} from "./fields.js";
import { TUBE_CLASSES } from "./words.js";

const u = unknownable;

/** Measurements of the side view, in the workshop's names; core/questions maps them to the survey's names. */
export const MEASURED = {
  chainstay: u(mmEntered(200, 700)),
  seat_tube_cc: u(mmEntered(200, 800)),
  top_tube_cc: u(mmEntered(300, 800)),
  top_tube_slope: u(degEntered(-30, 45)),
  top_tube_joint_below_head_top: u(mmEntered(0, 200)),
  down_tube_cc: u(mmEntered(300, 900)),
  down_tube_joint_above_head_bottom: u(mmEntered(0, 200)),
  head_tube: u(mmEntered(60, 300)),
  front_centre: u(mmEntered(400, 900)),
  wheelbase: u(mmEntered(700, 1500)),
  bb_height: u(mmEntered(150, 450)),
  fork_ac: u(mmEntered(250, 600)),
  fork_rake: u(mmEntered(0, 120)),
  head_angle: u(degEntered(50, 90)),
  seat_angle: u(degEntered(50, 90)),
  rear_axle_to_head_top: u(mmEntered(500, 1400)),
  front_axle_to_head_top: u(mmEntered(300, 900)),
  bb_to_head_top: u(mmEntered(300, 1000)),
  bb_to_head_bottom: u(mmEntered(300, 1000)),
  seat_cluster_to_rear_axle: u(mmEntered(200, 900)),
  seat_cluster_to_front_axle: u(mmEntered(400, 1300)),
};
export type MeasuredName = keyof typeof MEASURED;

export const donorSchema = fixed({
  kind: z.literal("donor"),
  version: z.literal(1),
  id: id(),
  label: text(200),
  price: u(money()),
  tube: fixed({
    class: word(TUBE_CLASSES),
    /** Written evidence for the class: decal, weight, filing test. */
    evidence: text(300).optional(),
    joints: word(["welded", "lugged_brazed", "fillet_brazed", "bonded", "unknown"]).optional(),
    down_tube_od: u(mm(20, 80)),
    top_tube_od: u(mm(20, 60)),
    head_tube_od: u(mm(25, 70)),
    chainstay_wall: u(mm(0.3, 4)),
    /** What the stays are brazed in with; silver flows at far less heat than brass. */
    stay_filler: u(word(["brass", "silver"])),
    /** Main tubes, double-butted: wall at one end, in the middle, at the other end. */
    butted_walls: u(z.tuple([mm(0.3, 4), mm(0.3, 4), mm(0.3, 4)])),
  }),
  wheels_now: fixed({ tyre: u(tyreSize()), radius: u(mm(150, 450)), crank: u(mm(80, 220)) }),
  measured: fixed(MEASURED),
  lower_headset_stack: u(mm(0, 60)),
  interfaces: fixed({
    head_bore: u(mm(25, 60)),
    head_bore_oval: u(mm(0, 3)),
    shell_width: u(mm(50, 150)),
    shell_thread: u(text(20)),
    seat_tube_od: u(mm(20, 45)),
    seat_tube_ct: u(mm(200, 800)),
    post: u(mm(20, 40)),
    rear_spacing: u(mm(90, 220)),
    front_spacing: u(mm(60, 150)),
    rear_end: u(word(["vertical_slot", "horizontal_slot", "closed_12"])),
    rear_slot: u(mm(5, 20)),
    rear_end_thickness: u(mm(1, 20)),
    rear_web_min: u(mm(0, 30)),
    hanger: u(text(20)),
    studs: u(z.boolean()),
    stud_spacing: u(mm(50, 120)),
    /** Rear axle to the studs of a rim brake. */
    stud_radius: u(mm(150, 320)),
    seatstay_bosses: u(z.boolean()),
    /** Rim brake on one bolt: how it is held, and how far the pads reach today, bolt to rim. */
    brake_bolt: u(word(["nutted_6", "recessed_8"])),
    pad_reach_front: u(mm(20, 120)),
    pad_reach_rear: u(mm(20, 120)),
    downtube_bosses: u(z.boolean()),
    eyelets_rear: u(count(0, 6)),
    eyelets_front: u(count(0, 6)),
    rear_tab: u(word(["none", "tab_51", "post_74", "flat"])),
  }),
  gaps_rear: fixed({
    chainstay_inner_at_radius: u(profile()),
    seatstay_inner_at_radius: u(profile()),
    /** Outer face from the centre plane, each side, at a distance from the BB axis, before any setting. */
    chainstay_outer_at_bb_radius: u(profile()),
    chainstay_bridge_from_axle: u(mm(200, 600)),
    brake_bridge_from_axle: u(mm(200, 600)),
  }),
  stays: fixed({
    /** Across; of an oval stay the width that the set bends. */
    chainstay_od: u(mm(8, 40)),
    /** Height of an oval chainstay; left out, it is round. */
    chainstay_high: u(mm(8, 50)),
    seatstay_od: u(mm(8, 40)),
    chainstay_angle_from_axle_deg: u(z.number().min(-90).max(90)),
    seatstay_angle_from_axle_deg: u(z.number().min(0).max(120)),
  }),
  condition: fixed({
    rust: text(200).optional(),
    brakes_now: text(200).optional(),
    cracks: word(["none_seen", "suspect", "found", "not_looked"]),
    dents: word(["none_seen", "found", "not_looked"]).optional(),
    post: word(["free", "stuck", "not_tried"]).optional(),
    string_left: u(mm(0, 300)),
    string_right: u(mm(0, 300)),
    mass_bare: u(grams()),
  }),
});
export type DonorDoc = z.output<typeof donorSchema>;
