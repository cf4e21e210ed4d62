/**
 * What is asked of somebody who begins a build with nothing but a bicycle and a tape, and in which order? Each entry
 * says how it is taken, with what, and what it settles. All but the name may be left out. Why this order, and which
 * readings settle the side view: docs/methods/new-build.md.
 */
import { say } from "../texts/say.js";
import type { DocKind } from "./documents.js";
import type { EditPath } from "./edit.js";

export type EntrySort =
  | { readonly as: "words"; readonly most: number }
  | { readonly as: "length" }
  /** Two lengths in one line: forward, then up. */
  | { readonly as: "two lengths" }
  | { readonly as: "sum" | "hours" | "tyre" | "days" }
  | { readonly as: "choice"; readonly choices: readonly (readonly [value: string, words: string])[] };

export interface NewBuildEntry {
  readonly key: string;
  /** The heading of the step. */
  readonly title: string;
  /** One or two sentences: where to hold the tape, or what to write. */
  readonly how: string;
  readonly tool?: string;
  readonly settles: string;
  readonly sort: EntrySort;
  /** Where the value goes. */
  readonly kind: DocKind;
  readonly path: EditPath;
}

const tape = (
  name: string,
  title: string,
  how: string,
  settles: string,
  tool = "tape",
  path: EditPath = ["measured", name],
): NewBuildEntry => ({ key: name, title, how, tool, settles, sort: { as: "length" }, kind: "donor", path });

/** Twelve readings that close the side view, in an order in which the bicycle need not be turned about. */
const SIDE_VIEW: readonly NewBuildEntry[] = [
  tape(
    "radius",
    say("workshop.new-build-entries.axle-height-over-the-floor"),
    say("workshop.new-build-entries.stand-the-bicycle-on-a-level"),
    say("workshop.new-build-entries.sets-both-wheels-on-the-ground"),
    "tape",
    ["wheels_now", "radius"],
  ),
  tape(
    "bb_height",
    say("workshop.new-build-entries.cranks-axis-over-the-floor"),
    say("workshop.new-build-entries.from-the-floor-straight-up-to"),
    say("workshop.new-build-entries.how-high-the-cranks-stand-and"),
  ),
  tape(
    "chainstay",
    say("workshop.new-build-entries.cranks-axis-to-rear-axle"),
    say("workshop.new-build-entries.straight-from-the-middle-of-the"),
    say("workshop.new-build-entries.places-the-rear-wheel-how-long"),
  ),
  tape(
    "wheelbase",
    say("workshop.new-build-entries.axle-to-axle"),
    say("workshop.new-build-entries.front-wheel-straight-along-the-floor"),
    say("workshop.new-build-entries.places-the-front-wheel"),
  ),
  tape(
    "head_tube",
    say("workshop.new-build-entries.head-tube-from-end-to-end"),
    say("workshop.new-build-entries.the-steel-tube-alone-between-the"),
    say("workshop.new-build-entries.how-long-the-front-of-the"),
  ),
  tape(
    "bb_to_head_top",
    say("workshop.new-build-entries.cranks-axis-to-the-top-of"),
    say("workshop.new-build-entries.straight-from-the-middle-of-the-2"),
    say("workshop.new-build-entries.with-the-next-one-how-high"),
  ),
  tape(
    "front_axle_to_head_top",
    say("workshop.new-build-entries.front-axle-to-the-top-of"),
    say("workshop.new-build-entries.straight-from-the-middle-of-the-3"),
    say("workshop.new-build-entries.stack-and-reach-of-the-frame"),
  ),
  tape(
    "fork_rake",
    say("workshop.new-build-entries.how-far-the-front-axle-stands"),
    say("workshop.new-build-entries.hold-a-straight-lath-along-the"),
    say("workshop.new-build-entries.head-angle-and-trail-how-it"),
    say("workshop.new-build-entries.tape-and-a-straight-lath"),
  ),
  tape(
    "lower_stack",
    say("workshop.new-build-entries.head-tube-s-lower-end-down"),
    say("workshop.new-build-entries.from-the-lower-face-of-the"),
    say("workshop.new-build-entries.where-the-fork-begins-what-another"),
    say("workshop.new-build-entries.tape-or-calliper"),
    ["lower_headset_stack"],
  ),
  tape(
    "seat_tube_cc",
    say("workshop.new-build-entries.cranks-axis-to-the-top-tube"),
    say("workshop.new-build-entries.along-the-seat-tube-from-the"),
    say("workshop.new-build-entries.how-tall-the-frame-is"),
  ),
  tape(
    "seat_cluster_to_rear_axle",
    say("workshop.new-build-entries.that-meeting-place-to-the-rear"),
    say("workshop.new-build-entries.straight-from-where-seat-tube-and"),
    say("workshop.new-build-entries.seat-angle-where-a-saddle-can"),
  ),
  tape(
    "top_tube_joint_below_head_top",
    say("workshop.new-build-entries.top-tube-s-middle-below-the"),
    say("workshop.new-build-entries.along-the-head-tube-from-its"),
    say("workshop.new-build-entries.the-last-of-the-twelve-with"),
  ),
];

const CHECKS: readonly NewBuildEntry[] = [
  tape(
    "rear_axle_to_head_top",
    say("workshop.new-build-entries.rear-axle-to-the-top-of"),
    say("workshop.new-build-entries.straight-from-the-middle-of-the-4"),
    say("workshop.new-build-entries.the-first-reading-to-spare-it"),
  ),
];

export const NEW_BUILD_ENTRIES: readonly NewBuildEntry[] = [
  {
    key: "name",
    title: say("workshop.new-build-entries.what-do-you-call-this-build"),
    how: say("workshop.new-build-entries.a-short-name-that-you-will"),
    settles: say("workshop.new-build-entries.its-address-in-this-workshop-the"),
    sort: { as: "words", most: 60 },
    kind: "build",
    path: ["title"],
  },
  {
    key: "becomes",
    title: say("workshop.new-build-entries.what-is-it-to-become"),
    how: say("workshop.new-build-entries.in-your-own-words-a-bicycle"),
    settles: say("workshop.new-build-entries.what-every-answer-is-held-against"),
    sort: { as: "words", most: 200 },
    kind: "intent",
    path: ["purpose"],
  },
  {
    key: "cracks",
    title: say("workshop.new-build-entries.did-you-look-for-cracks"),
    how: say("workshop.new-build-entries.every-joint-bare-and-degreased-with"),
    tool: say("workshop.new-build-entries.lamp-loupe-magnet"),
    settles: say("workshop.new-build-entries.question-2-whether-anything-is-worth"),
    sort: {
      as: "choice",
      choices: [
        ["none_seen", say("workshop.new-build-entries.i-looked-none-seen")],
        ["suspect", say("workshop.new-build-entries.i-looked-there-is-a-line")],
        ["found", say("workshop.new-build-entries.i-looked-there-is-a-crack")],
        ["not_looked", say("workshop.new-build-entries.not-looked-yet")],
      ],
    },
    kind: "donor",
    path: ["condition", "cracks"],
  },
  ...SIDE_VIEW,
  ...CHECKS,
  {
    key: "inseam",
    title: say("workshop.new-build-entries.inside-leg-of-the-rider"),
    how: say("workshop.new-build-entries.barefoot-against-a-wall-a-book"),
    tool: say("workshop.new-build-entries.tape-and-a-book"),
    settles: say("workshop.new-build-entries.a-first-guess-of-the-saddle"),
    sort: { as: "length" },
    kind: "rider",
    path: ["inseam"],
  },
  {
    key: "budget",
    title: say("workshop.new-build-entries.how-much-money-may-it-take"),
    how: say("workshop.new-build-entries.a-plain-sum-in-your-own"),
    settles: say("workshop.new-build-entries.question-19-whether-it-is-worth"),
    sort: { as: "sum" },
    kind: "intent",
    path: ["budget"],
  },
  {
    key: "price",
    title: say("workshop.new-build-entries.what-did-the-old-bicycle-cost"),
    how: say("workshop.new-build-entries.a-plain-sum-0-if-it"),
    settles: say("workshop.new-build-entries.the-first-line-of-what-is"),
    sort: { as: "sum" },
    kind: "donor",
    path: ["price"],
  },
  {
    key: "hours_max",
    title: say("workshop.new-build-entries.how-many-hours-of-work-may"),
    how: say("workshop.new-build-entries.hands-on-hours-all-together"),
    settles: say("workshop.new-build-entries.whether-the-work-fits-the-time"),
    sort: { as: "hours" },
    kind: "intent",
    path: ["hours_max"],
  },
  {
    key: "open_days",
    title: say("workshop.new-build-entries.on-which-days-of-the-week"),
    how: say("workshop.new-build-entries.write-the-days-tue-thu-sat"),
    tool: "calendar",
    settles: say("workshop.new-build-entries.with-the-next-one-question-15"),
    sort: { as: "days" },
    kind: "shop",
    path: ["open_days"],
  },
  {
    key: "session_h",
    title: say("workshop.new-build-entries.how-long-is-one-evening"),
    how: say("workshop.new-build-entries.hours-at-the-bench-such-as"),
    tool: "clock",
    settles: say("workshop.new-build-entries.question-15-in-which-order-and"),
    sort: { as: "hours" },
    kind: "shop",
    path: ["session_h"],
  },
  tape(
    "top_tube_cc",
    say("workshop.new-build-entries.top-tube-middle-to-middle"),
    say("workshop.new-build-entries.along-the-top-tube-from-the"),
    say("workshop.new-build-entries.the-second-reading-to-spare-it"),
  ),
  {
    key: "tyre_now",
    title: say("workshop.new-build-entries.what-is-written-on-the-tyre"),
    how: say("workshop.new-build-entries.the-two-number-marking-on-the"),
    tool: "eye",
    settles: say("workshop.new-build-entries.which-wheels-it-has-whether-a"),
    sort: { as: "tyre" },
    kind: "donor",
    path: ["wheels_now", "tyre"],
  },
  {
    key: "tyre_wanted",
    title: say("workshop.new-build-entries.which-tyre-do-you-want-on"),
    how: say("workshop.new-build-entries.the-two-number-marking-such-as"),
    settles: say("workshop.new-build-entries.what-the-gaps-between-stays-and"),
    sort: { as: "tyre" },
    kind: "bin",
    path: ["parts", 0, "ports", "size"],
  },
  tape(
    "gap_chainstays",
    say("workshop.new-build-entries.gap-between-the-chainstays-at-the"),
    say("workshop.new-build-entries.between-the-inner-faces-at-the"),
    say("workshop.new-build-entries.question-6-whether-the-wanted-tyre"),
    say("workshop.new-build-entries.tape-or-calliper"),
    ["gaps_rear", "chainstay_inner_at_radius"],
  ),
  tape(
    "gap_seatstays",
    say("workshop.new-build-entries.gap-between-the-seat-stays-at"),
    say("workshop.new-build-entries.between-the-inner-faces-at-the"),
    say("workshop.new-build-entries.question-6-whether-the-wanted-tyre-2"),
    say("workshop.new-build-entries.tape-or-calliper"),
    ["gaps_rear", "seatstay_inner_at_radius"],
  ),
  {
    key: "saddle_xy",
    title: say("workshop.new-build-entries.saddle-of-a-bicycle-that-the"),
    how: say("workshop.new-build-entries.from-the-cranks-axis-to-the"),
    tool: say("workshop.new-build-entries.tape-and-a-plumb-line"),
    settles: say("workshop.new-build-entries.question-4-which-seatpost-brings-the"),
    sort: { as: "two lengths" },
    kind: "rider",
    path: ["saddle_xy"],
  },
  {
    key: "hand_xy",
    title: say("workshop.new-build-entries.hands-on-a-bicycle-that-the"),
    how: say("workshop.new-build-entries.from-the-cranks-axis-to-the-2"),
    tool: say("workshop.new-build-entries.tape-and-a-plumb-line"),
    settles: say("workshop.new-build-entries.question-4-which-stem-brings-the"),
    sort: { as: "two lengths" },
    kind: "rider",
    path: ["hand_xy"],
  },
  tape(
    "rear_spacing",
    say("workshop.new-build-entries.gap-between-the-rear-ends"),
    say("workshop.new-build-entries.wheel-out-between-the-inner-faces"),
    say("workshop.new-build-entries.question-7-which-rear-hub-goes"),
    say("workshop.new-build-entries.tape-or-calliper"),
    ["interfaces", "rear_spacing"],
  ),
];

export const NEW_BUILD_KEYS: readonly string[] = NEW_BUILD_ENTRIES.map((e) => e.key);
/** The twelve readings that close the side view. */
export const SIDE_VIEW_KEYS: readonly string[] = SIDE_VIEW.map((e) => e.key);
/** Up to here the board has its first answers. */
export const FIRST_BOARD_KEY = "price";
