/** How is a part said by its numbers, for a buy list? "steerer od 28.6, axle to crown 395, …"; never by a name. */
import { say } from "../texts/say.js";
import type { Part } from "../workshop/index.js";

const UNIT: Readonly<Record<string, string>> = {
  pressure_max_bar: "bar",
  volume_ml: "ml",
  class_kg: "kg",
  child_min_kg: "kg",
  child_max_kg: "kg",
  rack_class_kg: "kg",
  sweep: "°",
  angle: "°",
  end_opens: "°",
};

/** Names of ports as a seller knows them; the others stand as they are entered. */
const NAMES: Readonly<Record<string, string>> = {
  od: say("questions.port-words.outside-diameter"),
  steerer_od: "steerer",
  id: say("questions.port-words.inside-diameter"),
  clamp_id: "clamp",
  bar_clamp: say("questions.port-words.bar-clamp"),
  cup_od: "cup",
  race_id: say("questions.port-words.crown-race"),
  bsd: say("questions.port-words.rim-bead-seat"),
  rim_inner: say("questions.port-words.rim-width-inside"),
  class_kg: "carries",
  volume_ml: say("questions.port-words.can-of"),
  grip: say("questions.port-words.lever-clamp"),
  axle: "axle",
  q: "Q",
  hand: say("questions.port-words.hand-from-the-clamp-forward-up"),
  tyre_max: say("questions.port-words.largest-tyre"),
  tube_od_min: say("questions.port-words.tube-from"),
  tube_od_max: say("questions.port-words.tube-to"),
  tube_free: say("questions.port-words.free-tube-for-its-clamp"),
  child_min_kg: say("questions.port-words.child-from"),
  child_max_kg: say("questions.port-words.child-to"),
  rack_class_kg: say("questions.port-words.rack-of-class"),
  stud_spacing: say("questions.port-words.studs-apart"),
  held_at: say("questions.port-words.held-at"),
  quill_od: "quill",
  design_spindle: say("questions.port-words.made-for-a-spindle-of"),
  bolt_circle_inner: say("questions.port-words.small-bolt-circle"),
  shift_pull: say("questions.port-words.shifter-pull-a-click"),
  shift_speeds: "speeds",
  shift_front: say("questions.port-words.works-a-front-derailleur-too"),
  reach_min: say("questions.port-words.pads-from"),
  reach_max: say("questions.port-words.pads-to"),
  pcd: say("questions.port-words.spoke-circle"),
  flange_left: say("questions.port-words.left-flange-from-the-middle"),
  flange_right: say("questions.port-words.right-flange-from-the-middle"),
  erd: say("questions.port-words.spoke-ends-across"),
  ring_max: say("questions.port-words.largest-ring"),
  cable_from: say("questions.port-words.cable-from-the"),
  largest_cog: say("questions.port-words.largest-sprocket"),
  capacity: say("questions.port-words.takes-up-teeth"),
  length_min: "shortest",
  length_max: "longest",
  silver_percent: say("questions.port-words.silver-percent"),
};
/** Words of the documents as a seller says them. */
const WORDS: Readonly<Record<string, string>> = {
  m10_solid: say("questions.port-words.solid-m10"),
  m9_solid: say("questions.port-words.solid-m9"),
  qr_10: say("questions.port-words.hollow-m10-with-skewer"),
  qr_9: say("questions.port-words.hollow-m9-with-skewer"),
  through_12: say("questions.port-words.through-axle-12"),
  through_15: say("questions.port-words.through-axle-15"),
  through_20: say("questions.port-words.through-axle-20"),
  hanger_m10: say("questions.port-words.m10-hanger"),
  taper_jis: say("questions.port-words.square-taper-jis"),
  taper_iso: say("questions.port-words.square-taper-iso"),
  tab_51: say("questions.port-words.51-tab"),
  post_74: say("questions.port-words.74-post-mount"),
  six_bolt: "six-bolt",
  "1k_aerosol": say("questions.port-words.one-pack-aerosol"),
  "2k": "two-pack",
  recessed_8: say("questions.port-words.recessed-8"),
  nutted_6: say("questions.port-words.with-a-nut-6"),
};
/** Of use at the joint, of none to a seller. */
const NOT_FOR_BUYING = new Set(["z0", "t_end", "crown_underside_from_axle", "clamp_height"]);

function valueWords(key: string, value: unknown): string | undefined {
  const name = NAMES[key] ?? key.replaceAll("_", " ");
  const unit = UNIT[key];
  const after = unit === undefined ? "" : unit === "°" ? "°" : ` ${unit}`;
  const said = typeof value === "string" ? WORDS[value] : undefined;
  if (said !== undefined) return said.startsWith(name) || key === "axle" ? said : `${name} ${said}`;
  if (typeof value === "number" || typeof value === "string")
    return `${name} ${String(value)
      .replaceAll("_", " ")
      .replace("-", typeof value === "number" ? "−" : "-")}${after}`;
  if (typeof value === "boolean")
    return value ? name : key === "threaded" ? "unthreaded" : say("questions.port-words.not", { name });
  if (Array.isArray(value))
    return value.every((v) => typeof v === "number") ? `${name} ${value.join(" / ").replaceAll("-", "−")}` : undefined;
  if (value !== null && typeof value === "object" && "bsdMm" in value && "widthMm" in value)
    return `${key === "size" ? "" : `${key.replaceAll("_", " ")} `}${String(value.bsdMm)}-${String(value.widthMm)}`;
  return undefined;
}

/** Measured profiles are left out: they are the frame's business, not the seller's. */
export function portWords(part: Part): string {
  return Object.entries(part.ports)
    .flatMap(([key, value]) => (value === undefined || NOT_FOR_BUYING.has(key) ? [] : (valueWords(key, value) ?? [])))
    .join(", ");
}
