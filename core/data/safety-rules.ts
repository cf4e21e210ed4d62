/**
 * Which situations are refused, gated or flagged? S1 to S18, with the reason and the way that is usually taken instead.
 * Common practice of workshops, no single source; a part's own instructions, local rules and qualified people come first.
 * refuse: no plan, no drawing, no task. gate: only after a person has entered evidence. flag: stays on every print.
 */
import type { SafetyLevel } from "../quantity/index.js";

export interface SafetyRule {
  readonly id: `S${number}`;
  readonly situation: string;
  readonly levels: readonly SafetyLevel[];
  readonly why: string;
  readonly insteadDo: string;
  /** Gate: what must be shown, in words. */
  readonly evidence?: string;
}

export const SAFETY_RULES: readonly SafetyRule[] = [
  {
    id: "S1",
    situation: "Bending or heating an aluminium, magnesium or carbon frame or fork, or one with bonded joints",
    levels: ["refuse"],
    why: "It cracks, loses its temper or comes apart in layers.",
    insteadDo: "Another hub, end caps, or another frame.",
  },
  {
    id: "S2",
    situation: "Cold setting titanium, or heat-treated, air-hardening or very thin steel (wall under 0.6)",
    levels: ["refuse", "gate"],
    why: "Little room between spring and kink; it springs back or cracks.",
    insteadDo: "A frame builder with a bending table, or another hub.",
    evidence: "frame builder who has seen the frame and will do it",
  },
  {
    id: "S3",
    situation: "Welding or brazing on a heat-treated, unknown, stainless, chromed or galvanised tube or part",
    levels: ["gate"],
    why: "The tube loses strength; plating gives poisonous fume.",
    insteadDo: "A clamp-on part or another fork.",
    evidence: "material identified, builder named, plating removed well outside the heat",
  },
  {
    id: "S4",
    situation: "A front disc brake in open slots that face down, with the caliper behind the blade",
    levels: ["refuse", "flag"],
    why: "Braking pushes the wheel out of the slot and works the clamp loose.",
    insteadDo: "A fork made for a disc, with closed ends.",
    evidence: "factory-made fork with a second retention and a checked clamp",
  },
  {
    id: "S5",
    situation:
      "A disc brake on a fork that was not made for one, or on any tab added to a carbon, aluminium or suspension fork",
    levels: ["refuse"],
    why: "The blade root, crown and steerer are bent in a way they were not built for.",
    insteadDo: "Replace the fork.",
  },
  {
    id: "S6",
    situation: "A rear disc tab: on a thin seat stay alone, without a brace, or within 15 mm of a brazed joint",
    levels: ["gate"],
    why: "The stay cracks beside the tab.",
    insteadDo: "A tab on the dropout plate between the stays, with a brace.",
    evidence: "tab load and heat reach looked at, and a qualified welder or builder named",
  },
  {
    id: "S7",
    situation: "A frame or fork with a crack, wrinkle, kink or deep pit; a bent steerer; a fork bent in a crash",
    levels: ["refuse"],
    why: "It fails suddenly.",
    insteadDo: "Scrap it (cut it so that nobody rides it), or a builder's repair.",
  },
  {
    id: "S8",
    situation:
      "Axle ends: less than 4 mm of web left at the rear, or a front end bored or welded without the fork being rated for it",
    levels: ["refuse"],
    why: "The axle tears out.",
    insteadDo: "A bolt-through axle in the slot as it is, rear only.",
  },
  {
    id: "S9",
    situation: "Mixing brake fluid families, old fluid, or seals of an unknown kind",
    levels: ["refuse"],
    why: "Seals swell and the brake is lost.",
    insteadDo: "One family throughout; new seals and hose.",
  },
  {
    id: "S10",
    situation: "A long-pull caliper on a short-pull lever, or the reverse",
    levels: ["refuse"],
    why: "Either no brake, or a wheel that locks.",
    insteadDo: "A matched set, or an adapter that changes the pull.",
  },
  {
    id: "S11",
    situation: "A rim wall under 1.0 mm or worn hollow; a rim outside the tyre's width or pressure limits",
    levels: ["refuse"],
    why: "The rim bursts or the tyre comes off.",
    insteadDo: "Another rim or tyre.",
  },
  {
    id: "S12",
    situation:
      "Post or quill above its mark, steerer too short, more than 40 mm of spacers, a shim in a clamp not meant for it, a stem clamp that does not match",
    levels: ["refuse"],
    why: "Bar or saddle drops the rider.",
    insteadDo: "A part of the right size.",
  },
  {
    id: "S13",
    situation:
      "A child seat on a carbon, thin heat-treated or aluminium frame, on a rack under its class, or with a load over the class of seat, rack, tyre or wheel",
    levels: ["refuse", "flag"],
    why: "What gives way hurts the child, who can do nothing about it.",
    insteadDo:
      "A seat and rack rated for what they carry, on a plain steel frame; the bags elsewhere; the local age law.",
  },
  {
    id: "S14",
    situation:
      "Tyre gap under 4 mm (refuse) or 4 to 6 (flag); toe clearance under 100 mm, or 89 with foot retention (flag; refuse with a child or a novice)",
    levels: ["refuse", "flag"],
    why: "The wheel jams; the foot meets the wheel at low speed.",
    insteadDo: "A smaller tyre, a shorter crank or another fork.",
  },
  {
    id: "S15",
    situation: "A hose or cable near tyre, rotor or crank, or bent tighter than it may be",
    levels: ["refuse"],
    why: "It is cut through.",
    insteadDo: "Another route.",
  },
  {
    id: "S16",
    situation: "Drilling in steerer, fork blade, bar, stem or post; holes over 9 mm or within 30 mm of a joint",
    levels: ["refuse"],
    why: "A crack starts there.",
    insteadDo: "A strap, clamp or braze-on.",
  },
  {
    id: "S17",
    situation: "Home repair of cracked carbon; an aluminium hanger straightened more than once",
    levels: ["refuse"],
    why: "Hidden damage.",
    insteadDo: "A new hanger or part.",
  },
  {
    id: "S18",
    situation: "A wear check that is overdue on a frame with a tab or an axle insert",
    levels: ["flag"],
    why: "Fatigue cracks grow unseen.",
    insteadDo: "Dye check, then ride on.",
  },
];

/** Stands on every plan, drawing, sheet and hand-over page. */
export const STANDING_TEXT =
  "Guidance only. Welding, brazing, brake work, electrical work and the sale of modified bicycles may be governed by local law, workplace rules and standards, and need trained or licensed people. A modified frame or fork has not been type-tested. Where local rules, the component's own instructions or a qualified person say otherwise, follow them.";
