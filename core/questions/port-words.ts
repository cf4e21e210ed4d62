/** How is a part said by its numbers, for a buy list? "steerer od 28.6, axle to crown 395, …"; never by a name. */
import type { Part } from "../workshop/index.js";

const UNIT: Readonly<Record<string, string>> = {
  pressure_max_bar: "bar",
  volume_ml: "ml",
  class_kg: "kg",
  sweep: "°",
  angle: "°",
  end_opens: "°",
};

/** Names of ports as a seller knows them; the others stand as they are entered. */
const NAMES: Readonly<Record<string, string>> = {
  od: "outside diameter",
  steerer_od: "steerer",
  id: "inside diameter",
  clamp_id: "clamp",
  bar_clamp: "bar clamp",
  cup_od: "cup",
  race_id: "crown race",
  bsd: "rim bead seat",
  rim_inner: "rim width inside",
  class_kg: "carries",
  volume_ml: "can of",
  grip: "lever clamp",
  axle: "axle",
  q: "Q",
  hand: "hand from the clamp, forward / up",
  tyre_max: "largest tyre",
};
/** Words of the documents as a seller says them. */
const WORDS: Readonly<Record<string, string>> = {
  m10_solid: "solid M10",
  m9_solid: "solid M9",
  qr_10: "hollow M10 with skewer",
  qr_9: "hollow M9 with skewer",
  through_12: "through axle 12",
  through_15: "through axle 15",
  through_20: "through axle 20",
  hanger_m10: "M10 hanger",
  taper_jis: "square taper JIS",
  taper_iso: "square taper ISO",
  tab_51: "51 tab",
  post_74: "74 post mount",
  six_bolt: "six-bolt",
  "1k_aerosol": "one-pack aerosol",
  "2k": "two-pack",
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
  if (typeof value === "boolean") return value ? name : key === "threaded" ? "unthreaded" : `not ${name}`;
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
