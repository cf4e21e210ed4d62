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

function valueWords(key: string, value: unknown): string | undefined {
  if (typeof value === "number" || typeof value === "string")
    return `${key.replaceAll("_", " ")} ${String(value).replaceAll("_", " ")}${UNIT[key] === undefined ? "" : ` ${UNIT[key]}`}`;
  if (typeof value === "boolean") return value ? key.replaceAll("_", " ") : `not ${key.replaceAll("_", " ")}`;
  if (Array.isArray(value))
    return value.every((v) => typeof v === "number") ? `${key.replaceAll("_", " ")} ${value.join(", ")}` : undefined;
  if (value !== null && typeof value === "object" && "bsdMm" in value && "widthMm" in value)
    return `${key === "size" ? "" : `${key.replaceAll("_", " ")} `}${String(value.bsdMm)}-${String(value.widthMm)}`;
  return undefined;
}

/** Measured profiles are left out: they are the frame's business, not the seller's. */
export function portWords(part: Part): string {
  return Object.entries(part.ports)
    .flatMap(([key, value]) => (value === undefined ? [] : (valueWords(key, value) ?? [])))
    .join(", ");
}
