/** Which fields does the measuring page show, in which words, and in what are they read? */

import { DONOR_NAMES, measurementKind } from "@coldset/core/survey";
import { say } from "@coldset/core/texts";
import { type DonorDoc, MEASURED, TUBE_CLASSES } from "@coldset/core/workshop";

export type FieldSort =
  | { readonly as: "length" | "angle" | "text" | "long text" | "count" | "money" | "mass" }
  | { readonly as: "choice"; readonly words: readonly string[] }
  | { readonly as: "yes or no" };

export interface FieldInfo {
  /** Path inside the donor's document. */
  readonly path: readonly string[];
  readonly title: string;
  readonly sub?: string;
  readonly how?: string;
  readonly sort: FieldSort;
}

/** The readings of the side view, in the order in which they are usually taken. */
export const READINGS: readonly FieldInfo[] = Object.keys(MEASURED).map((name): FieldInfo => {
  const kind = measurementKind(DONOR_NAMES[name] ?? name);
  const [title = name, ...rest] = (kind?.label ?? name.replaceAll("_", " ")).split(", ");
  return {
    path: ["measured", name],
    title: title.charAt(0).toUpperCase() + title.slice(1),
    ...(rest.length === 0 ? {} : { sub: rest.join(", ") }),
    ...(kind === undefined ? {} : { how: kind.how }),
    sort: { as: kind?.unit === "deg" ? "angle" : "length" },
  };
});

const length = (path: readonly string[], title: string, how?: string): FieldInfo => ({
  path,
  title,
  sort: { as: "length" },
  ...(how === undefined ? {} : { how }),
});
const choice = (path: readonly string[], title: string, words: readonly string[]): FieldInfo => ({
  path,
  title,
  sort: { as: "choice", words },
});
const text = (path: readonly string[], title: string, how?: string): FieldInfo => ({
  path,
  title,
  sort: { as: "text" },
  ...(how === undefined ? {} : { how }),
});
const face = (name: string) => ["interfaces", name];

export const FIELD_GROUPS: readonly { readonly title: string; readonly fields: readonly FieldInfo[] }[] = [
  {
    title: say("web.donor-fields.where-parts-meet"),
    fields: [
      length(
        face("head_bore"),
        say("web.donor-fields.head-tube-bore"),
        say("web.donor-fields.inside-micrometer-two-ways-both-ends"),
      ),
      length(
        face("head_bore_oval"),
        say("web.donor-fields.head-tube-how-oval"),
        say("web.donor-fields.widest-bore-less-narrowest"),
      ),
      length(
        ["lower_headset_stack"],
        say("web.donor-fields.lower-headset-stack"),
        say("web.donor-fields.bottom-face-of-the-head-tube"),
      ),
      length(face("seat_tube_od"), say("web.donor-fields.seat-tube-outside")),
      length(face("seat_tube_ct"), say("web.donor-fields.seat-tube-centre-to-top")),
      length(face("post"), say("web.donor-fields.seatpost-bore-or-post-that-fits")),
      length(face("shell_width"), say("web.donor-fields.bottom-bracket-shell-width")),
      text(face("shell_thread"), say("web.donor-fields.bottom-bracket-thread"), say("web.donor-fields.as-1-37x24")),
      length(face("rear_spacing"), say("web.donor-fields.rear-ends-apart")),
      length(face("front_spacing"), say("web.donor-fields.front-ends-apart")),
      choice(face("rear_end"), say("web.donor-fields.rear-ends"), ["vertical_slot", "horizontal_slot", "closed_12"]),
      length(face("rear_slot"), say("web.donor-fields.rear-slot-width")),
      length(face("rear_end_thickness"), say("web.donor-fields.rear-end-thickness")),
      length(face("rear_web_min"), say("web.donor-fields.rear-end-least-web-round-the")),
      text(face("hanger"), say("web.donor-fields.hanger-thread"), say("web.donor-fields.as-m10x1")),
      { path: face("studs"), title: say("web.donor-fields.brake-studs"), sort: { as: "yes or no" } },
      { path: face("eyelets_rear"), title: say("web.donor-fields.eyelets-at-the-rear"), sort: { as: "count" } },
      { path: face("eyelets_front"), title: say("web.donor-fields.eyelets-at-the-front"), sort: { as: "count" } },
      choice(face("brake_bolt"), say("web.donor-fields.rim-brake-bolt"), ["nutted_6", "recessed_8"]),
      length(
        face("pad_reach_front"),
        say("web.donor-fields.front-brake-bolt-to-pad"),
        say("web.donor-fields.on-the-wheels-of-today"),
      ),
      length(
        face("pad_reach_rear"),
        say("web.donor-fields.rear-brake-bolt-to-pad"),
        say("web.donor-fields.on-the-wheels-of-today"),
      ),
      choice(face("rear_tab"), say("web.donor-fields.rear-disc-mount"), ["none", "tab_51", "post_74", "flat"]),
      text(
        ["wheels_now", "tyre"],
        say("web.donor-fields.tyre-that-is-on-it"),
        say("web.donor-fields.the-two-number-marking-as-622"),
      ),
      length(
        ["wheels_now", "radius"],
        say("workshop.new-build-entries.axle-height-over-the-floor"),
        say("web.donor-fields.under-the-rider-s-weight-tyres"),
      ),
    ],
  },
  {
    title: say("web.donor-fields.tubes-and-stays"),
    fields: [
      choice(["tube", "class"], say("web.donor-fields.what-the-tubes-are"), TUBE_CLASSES),
      { path: ["tube", "evidence"], title: say("web.donor-fields.how-you-know"), sort: { as: "long text" } },
      choice(["tube", "joints"], say("web.donor-fields.how-they-are-joined"), [
        "welded",
        "lugged_brazed",
        "fillet_brazed",
        "bonded",
        "unknown",
      ]),
      length(
        ["tube", "chainstay_wall"],
        say("web.donor-fields.wall-of-the-chainstay"),
        say("web.donor-fields.at-the-bottle-or-rack-eye"),
      ),
      length(["tube", "down_tube_od"], say("web.donor-fields.down-tube-outside")),
      length(["tube", "top_tube_od"], say("web.donor-fields.top-tube-outside")),
      length(["tube", "head_tube_od"], say("web.donor-fields.head-tube-outside")),
      length(
        ["stays", "chainstay_od"],
        say("web.donor-fields.chainstay-outside"),
        say("web.donor-fields.across-where-it-is-oval"),
      ),
      length(["stays", "chainstay_high"], say("web.donor-fields.chainstay-height-where-it-is-oval")),
      choice(["tube", "stay_filler"], say("web.donor-fields.what-the-stays-are-brazed-with"), ["brass", "silver"]),
      length(["stays", "seatstay_od"], say("web.donor-fields.seat-stay-outside")),
      length(["gaps_rear", "chainstay_bridge_from_axle"], say("web.donor-fields.chainstay-bridge-from-the-axle")),
      length(["gaps_rear", "brake_bridge_from_axle"], say("web.donor-fields.brake-bridge-from-the-axle")),
    ],
  },
  {
    title: say("web.donor-fields.what-you-saw"),
    fields: [
      choice(["condition", "cracks"], say("web.donor-fields.cracks"), ["none_seen", "suspect", "found", "not_looked"]),
      choice(["condition", "dents"], say("web.donor-fields.dents"), ["none_seen", "found", "not_looked"]),
      {
        path: ["condition", "rust"],
        title: say("web.donor-fields.rust"),
        how: say("web.donor-fields.where-and-how-deep"),
        sort: { as: "long text" },
      },
      choice(["condition", "post"], say("web.donor-fields.seatpost"), ["free", "stuck", "not_tried"]),
      length(
        ["condition", "string_left"],
        say("web.donor-fields.string-to-seat-tube-left"),
        say("web.donor-fields.string-from-end-to-end-round"),
      ),
      length(["condition", "string_right"], say("web.donor-fields.string-to-seat-tube-right")),
      {
        path: ["condition", "mass_bare"],
        title: say("web.donor-fields.mass-of-the-bare-frame-g"),
        sort: { as: "mass" },
      },
      { path: ["price"], title: say("web.donor-fields.what-it-cost"), sort: { as: "money" } },
    ],
  },
];

const PROFILES = {
  chainstay_inner_at_radius: [say("web.donor-fields.chainstays-inner-gap"), say("web.donor-fields.from-the-axle")],
  seatstay_inner_at_radius: [say("web.donor-fields.seat-stays-inner-gap"), say("web.donor-fields.from-the-axle")],
  chainstay_outer_at_bb_radius: [
    say("web.donor-fields.chainstay-outer-face-from-the-middle"),
    say("web.donor-fields.from-the-cranks-axis"),
  ],
} as const;

/** The stations of the gaps at the rear, one field each, as far as the donor has them. */
export function stationFields(donor: DonorDoc): readonly FieldInfo[] {
  return (Object.keys(PROFILES) as (keyof typeof PROFILES)[]).flatMap((key) =>
    (donor.gaps_rear[key] ?? []).map(([at]): FieldInfo => {
      const [title, from] = PROFILES[key];
      return { path: ["gaps_rear", key, String(at)], title, sub: `${at} ${from}`, sort: { as: "length" } };
    }),
  );
}
