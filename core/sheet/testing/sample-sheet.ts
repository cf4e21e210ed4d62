/** A sheet with every kind of field, for the tests of this room. Not part of the product. */
import { answered } from "../../quantity/index.js";
import type { Sheet } from "../sheet.js";

export interface SampleIn {
  readonly length_mm: number;
  readonly new: { readonly rake_mm: number };
}

export const sampleSheet: Sheet<SampleIn, { readonly sum_mm: number }> = {
  id: "sample",
  question: "Does every kind of field hold?",
  notes: "Lengths in mm. Made for tests.",
  fields: [
    {
      kind: "number",
      key: "length_mm",
      label: "Length",
      help: "Dropout to root.",
      unit: "mm",
      min: 100,
      max: 800,
      start: 340,
    },
    { kind: "number", key: "angle_deg", label: "Angle", unit: "deg", min: -10, max: 90, start: 71, optional: true },
    { kind: "number", key: "teeth", label: "Teeth", unit: "count", min: 9, max: 60, integer: true, start: 32 },
    { kind: "number", key: "wait_day", label: "Waiting", unit: "day", min: 0, max: 30, start: 2, optional: true },
    {
      kind: "numbers",
      key: "spacers_mm",
      label: "Spacers",
      unit: "mm",
      min: 0,
      max: 40,
      minItems: 1,
      maxItems: 3,
      start: [5, 10],
    },
    { kind: "text", key: "side", label: "Side", oneOf: ["ahead", "behind"], maxLength: 10, start: "behind" },
    { kind: "text", key: "note", label: "Note", maxLength: 20, start: "", optional: true },
    { kind: "boolean", key: "wet", label: "Wet", start: false, optional: true },
    {
      kind: "group",
      key: "new",
      label: "New fork",
      fields: [{ kind: "number", key: "rake_mm", label: "Rake", unit: "mm", min: 0, max: 100, start: 45 }],
    },
    {
      kind: "list",
      key: "measurements",
      label: "Measurements",
      of: [
        { kind: "text", key: "name", label: "Name", maxLength: 40, start: "" },
        { kind: "number", key: "value", label: "Value", unit: "named", min: -2000, max: 2000, start: 0 },
        { kind: "number", key: "sd", label: "Standard deviation", unit: "named", min: 0.01, max: 50, start: 1 },
      ],
      minItems: 0,
      maxItems: 4,
      start: [{ name: "rake_mm", value: 45, sd: 1 }],
    },
    {
      kind: "table",
      key: "stations",
      label: "Stations",
      columns: [
        { label: "distance", unit: "mm", min: 0, max: 500 },
        { label: "outer diameter", unit: "mm", min: 8, max: 40 },
      ],
      minItems: 2,
      maxItems: 5,
      start: [
        [0, 12],
        [340, 22],
      ],
    },
    {
      kind: "texts",
      key: "fixed",
      label: "Held",
      oneOf: ["x", "y"],
      maxLength: 1,
      minItems: 0,
      maxItems: 2,
      start: ["x"],
    },
    {
      kind: "map",
      key: "cogs_of_ring",
      label: "Sprockets of each ring",
      of: {
        kind: "numbers",
        key: "cogs",
        label: "Sprockets",
        unit: "count",
        min: 9,
        max: 60,
        integer: true,
        minItems: 1,
        maxItems: 4,
        start: [11],
      },
      keyPattern: "\\d{2}",
      minItems: 0,
      maxItems: 3,
      start: { "42": [11, 13] },
      optional: true,
    },
  ],
  gives: [{ key: "sum_mm", means: "length and rake, mm" }],
  run: (q) => answered({ sum_mm: q.length_mm + q.new.rake_mm }, { sources: ["sample"] }),
};
