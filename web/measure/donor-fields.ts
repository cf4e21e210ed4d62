/** Which fields does the measuring page show, in which words, and in what are they read? */
import { DONOR_NAMES, measurementKind } from "@coldset/core/survey";
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
    title: "Where parts meet",
    fields: [
      length(face("head_bore"), "Head tube, bore", "Inside micrometer, two ways, both ends; the middle of all."),
      length(face("head_bore_oval"), "Head tube, how oval", "Widest bore less narrowest."),
      length(["lower_headset_stack"], "Lower headset stack", "Bottom face of the head tube to the crown seat."),
      length(face("seat_tube_od"), "Seat tube, outside"),
      length(face("seat_tube_ct"), "Seat tube, centre to top"),
      length(face("post"), "Seatpost, bore or post that fits"),
      length(face("shell_width"), "Bottom-bracket shell, width"),
      text(face("shell_thread"), "Bottom-bracket thread", "As 1.37x24."),
      length(face("rear_spacing"), "Rear ends apart"),
      length(face("front_spacing"), "Front ends apart"),
      choice(face("rear_end"), "Rear ends", ["vertical_slot", "horizontal_slot", "closed_12"]),
      length(face("rear_slot"), "Rear slot, width"),
      length(face("rear_end_thickness"), "Rear end, thickness"),
      length(face("rear_web_min"), "Rear end, least web round the slot"),
      text(face("hanger"), "Hanger thread", "As M10x1."),
      { path: face("studs"), title: "Brake studs", sort: { as: "yes or no" } },
      { path: face("eyelets_rear"), title: "Eyelets at the rear", sort: { as: "count" } },
      { path: face("eyelets_front"), title: "Eyelets at the front", sort: { as: "count" } },
      choice(face("rear_tab"), "Rear disc mount", ["none", "tab_51", "post_74", "flat"]),
      text(["wheels_now", "tyre"], "Tyre that is on it", "The two-number marking, as 622-35."),
      length(
        ["wheels_now", "radius"],
        "Axle height over the floor",
        "Under the rider's weight, tyres at riding pressure.",
      ),
    ],
  },
  {
    title: "Tubes and stays",
    fields: [
      choice(["tube", "class"], "What the tubes are", TUBE_CLASSES),
      { path: ["tube", "evidence"], title: "How you know", sort: { as: "long text" } },
      choice(["tube", "joints"], "How they are joined", [
        "welded",
        "lugged_brazed",
        "fillet_brazed",
        "bonded",
        "unknown",
      ]),
      length(["tube", "chainstay_wall"], "Wall of the chainstay", "At the bottle or rack eye with a wall gauge."),
      length(["tube", "down_tube_od"], "Down tube, outside"),
      length(["tube", "top_tube_od"], "Top tube, outside"),
      length(["tube", "head_tube_od"], "Head tube, outside"),
      length(["stays", "chainstay_od"], "Chainstay, outside"),
      length(["stays", "seatstay_od"], "Seat stay, outside"),
      length(["gaps_rear", "chainstay_bridge_from_axle"], "Chainstay bridge from the axle"),
      length(["gaps_rear", "brake_bridge_from_axle"], "Brake bridge from the axle"),
    ],
  },
  {
    title: "What you saw",
    fields: [
      choice(["condition", "cracks"], "Cracks", ["none_seen", "suspect", "found", "not_looked"]),
      choice(["condition", "dents"], "Dents", ["none_seen", "found", "not_looked"]),
      { path: ["condition", "rust"], title: "Rust", how: "Where, and how deep.", sort: { as: "long text" } },
      choice(["condition", "post"], "Seatpost", ["free", "stuck", "not_tried"]),
      length(["condition", "string_left"], "String to seat tube, left", "String from end to end round the head tube."),
      length(["condition", "string_right"], "String to seat tube, right"),
      { path: ["condition", "mass_bare"], title: "Mass of the bare frame, g", sort: { as: "mass" } },
      { path: ["price"], title: "What it cost", sort: { as: "money" } },
    ],
  },
];

const PROFILES = {
  chainstay_inner_at_radius: ["Chainstays, inner gap", "from the axle"],
  seatstay_inner_at_radius: ["Seat stays, inner gap", "from the axle"],
  chainstay_outer_at_bb_radius: ["Chainstay, outer face from the middle", "from the cranks' axis"],
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
