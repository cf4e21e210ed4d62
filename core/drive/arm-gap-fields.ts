/** What `arm-gap` asks for, and which inputs contradict each other. */
import type { Refusal } from "../quantity/index.js";
import type { Field } from "../sheet/index.js";
import type { ArmGapInput } from "./arm-gap.js";

const mm = (
  key: string,
  label: string,
  min: number,
  max: number,
  start: number,
  help: string,
  optional = false,
): Field => ({ kind: "number", unit: "mm", key, label, min, max, start, help, ...(optional ? { optional } : {}) });

const mms = (key: string, label: string, min: number, max: number, start: readonly number[], help: string): Field => ({
  kind: "numbers",
  unit: "mm",
  key,
  label,
  min,
  max,
  start,
  help,
  minItems: 2,
  maxItems: 60,
});

const QUAYSIDE_RADII = [50, 60, 80, 97, 112, 127, 142, 160, 170, 185];
const QUAYSIDE_OUTER = [34.6, 36.5, 40, 43.5, 46.4, 49.1, 51, 53, 54, 55.5];

export const armGapFields: readonly Field[] = [
  mm("q_mm", "Q", 80, 300, 162, "Pedal face to pedal face on the spindle the chainset was made for."),
  mm("arm_inner_at_spindle_mm", "Arm's inner face at the spindle", 10, 120, 47, "From the centre plane, same spindle."),
  mm("arm_end_thickness_mm", "Arm's thickness at the pedal", 2, 40, 13, "Inner face to pedal face."),
  mm("crank_length_mm", "Crank length", 80, 230, 170, "Spindle centre to pedal centre."),
  mm("spindle_longer_by_mm", "Fitted spindle longer by", -40, 40, 8, "Than the one the chainset was made for.", true),
  mm("right_cup_spacer_mm", "Spacer under the right cup", 0, 10, 0, "Moves both arms to the right.", true),
  mms("stay_radius_mm", "Stay measured at, from the BB axis", 10, 600, QUAYSIDE_RADII, "Each distance once."),
  mms("stay_outer_mm", "Stay's outer face there", 5, 150, QUAYSIDE_OUTER, "From the centre plane, before any setting."),
  mm("chainstay_mm", "Chainstay", 200, 900, 442, "BB axis to rear axle, straight."),
  mm("chainstay_bridge_from_axle_mm", "Chainstay bridge to axle", 50, 890, 383, "Left out: no bridge.", true),
  mm("set_per_side_mm", "Stay set outwards by", -15, 15, 2.3, "At the dropout, each side.", true),
  {
    kind: "list",
    key: "rings",
    label: "Rings",
    optional: true,
    minItems: 0,
    maxItems: 5,
    start: [{ teeth: 42, chainline_mm: 43.5, width: "3/32" }],
    of: [
      { kind: "number", unit: "count", integer: true, key: "teeth", label: "Teeth", min: 6, max: 150, start: 42 },
      mm("chainline_mm", "Ring's chainline", 5, 120, 43.5, "On the spindle the chainset was made for."),
      { kind: "text", key: "width", label: "Width", oneOf: ["3/32", "1/8"], maxLength: 4, start: "3/32" },
    ],
  },
];

export function armGapRefusals(q: ArmGapInput): readonly Refusal[] {
  const refusals: Refusal[] = [];
  const refuse = (code: string, at: string, given: unknown, allowed: string, message: string): void => {
    refusals.push({ code, at, given, allowed, message });
  };
  const radii = Array.isArray(q.stay_radius_mm) ? q.stay_radius_mm : [];
  const outer = Array.isArray(q.stay_outer_mm) ? q.stay_outer_mm : [];
  if (radii.length !== outer.length) {
    const message = `There are ${radii.length} distances but ${outer.length} outer faces.`;
    refuse("wrong-count", "stay_outer_mm", outer.length, `${radii.length} numbers`, message);
  }
  if (new Set(radii).size < radii.length) {
    refuse("given-twice", "stay_radius_mm", radii, "each distance once", "A distance stands in the list twice.");
  }
  const bridge = q.chainstay_bridge_from_axle_mm;
  if (bridge !== undefined && bridge >= q.chainstay_mm) {
    const message = `The chainstay bridge cannot lie ${bridge} mm from the axle of a ${q.chainstay_mm} mm chainstay.`;
    refuse("bridge-past-the-shell", "chainstay_bridge_from_axle_mm", bridge, `under ${q.chainstay_mm} mm`, message);
  }
  if (radii.length > 0 && radii.every((r) => r > q.crank_length_mm)) {
    const message = "No station of the stay lies within the crank's length.";
    refuse("no-station-on-arm", "stay_radius_mm", radii, `some up to ${q.crank_length_mm} mm`, message);
  }
  if (radii.length > 0 && radii.every((r) => r < 50)) {
    const message = "No station of the stay lies 50 mm or more from the BB axis.";
    refuse("no-station-on-arm", "stay_radius_mm", radii, "some from 50 mm on", message);
  }
  for (const [i, ring] of (q.rings ?? []).entries()) {
    if (!Number.isInteger(ring.teeth) || ring.teeth < 6 || ring.teeth > 150) {
      const message = `A ring cannot have ${ring.teeth} teeth.`;
      refuse("out-of-range", `rings[${i}].teeth`, ring.teeth, "6 to 150, whole", message);
    }
    if (!(ring.chainline_mm >= 5 && ring.chainline_mm <= 120)) {
      const message = `A ring's chainline of ${ring.chainline_mm} mm cannot be.`;
      refuse("out-of-range", `rings[${i}].chainline_mm`, ring.chainline_mm, "5 to 120 mm", message);
    }
    if (ring.width !== "3/32" && ring.width !== "1/8") {
      const message = `A ring is 3/32 or 1/8 wide, not "${ring.width}".`;
      refuse("not-a-choice", `rings[${i}].width`, ring.width, "3/32 or 1/8", message);
    }
  }
  return refusals;
}
