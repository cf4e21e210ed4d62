/** What `arm-gap` asks for, and which inputs contradict each other. */

import type { Refusal } from "../quantity/index.js";
import type { Field } from "../sheet/index.js";
import { say } from "../texts/say.js";
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
  mm("q_mm", "Q", 80, 300, 162, say("drive.arm-gap-fields.pedal-face-to-pedal-face-on")),
  mm(
    "arm_inner_at_spindle_mm",
    say("drive.arm-gap-fields.arm-s-inner-face-at-the"),
    10,
    120,
    47,
    say("drive.arm-gap-fields.from-the-centre-plane-same-spindle"),
  ),
  mm(
    "arm_end_thickness_mm",
    say("drive.arm-gap-fields.arm-s-thickness-at-the-pedal"),
    2,
    40,
    13,
    say("drive.arm-gap-fields.inner-face-to-pedal-face"),
  ),
  mm(
    "crank_length_mm",
    say("drive.arm-gap-fields.crank-length"),
    80,
    230,
    170,
    say("drive.arm-gap-fields.spindle-centre-to-pedal-centre"),
  ),
  mm(
    "spindle_longer_by_mm",
    say("drive.arm-gap-fields.fitted-spindle-longer-by"),
    -40,
    40,
    8,
    say("drive.arm-gap-fields.than-the-one-the-chainset-was"),
    true,
  ),
  mm(
    "right_cup_spacer_mm",
    say("drive.arm-gap-fields.spacer-under-the-right-cup"),
    0,
    10,
    0,
    say("drive.arm-gap-fields.moves-both-arms-to-the-right"),
    true,
  ),
  mms(
    "stay_radius_mm",
    say("drive.arm-gap-fields.stay-measured-at-from-the-bb"),
    10,
    600,
    QUAYSIDE_RADII,
    say("drive.arm-gap-fields.each-distance-once"),
  ),
  mms(
    "stay_outer_mm",
    say("drive.arm-gap-fields.stay-s-outer-face-there"),
    5,
    150,
    QUAYSIDE_OUTER,
    say("drive.arm-gap-fields.from-the-centre-plane-before-any"),
  ),
  mm("chainstay_mm", "Chainstay", 200, 900, 442, say("drive.arm-gap-fields.bb-axis-to-rear-axle-straight")),
  mm(
    "chainstay_bridge_from_axle_mm",
    say("drive.arm-gap-fields.chainstay-bridge-to-axle"),
    50,
    890,
    383,
    say("drive.arm-gap-fields.left-out-no-bridge"),
    true,
  ),
  mm(
    "set_per_side_mm",
    say("drive.arm-gap-fields.stay-set-outwards-by"),
    -15,
    15,
    2.3,
    say("drive.arm-gap-fields.at-the-dropout-each-side"),
    true,
  ),
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
      mm(
        "chainline_mm",
        say("drive.arm-gap-fields.ring-s-chainline"),
        5,
        120,
        43.5,
        say("drive.arm-gap-fields.on-the-spindle-the-chainset-was"),
      ),
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
    const message = say("drive.arm-gap-fields.there-are-distances-but-outer-faces", {
      radiiCount: radii.length,
      outerCount: outer.length,
    });
    refuse(
      "wrong-count",
      "stay_outer_mm",
      outer.length,
      say("drive.arm-gap-fields.numbers", { radiiCount: radii.length }),
      message,
    );
  }
  if (new Set(radii).size < radii.length) {
    refuse(
      "given-twice",
      "stay_radius_mm",
      radii,
      say("drive.arm-gap-fields.each-distance-once-2"),
      say("drive.arm-gap-fields.a-distance-stands-in-the-list"),
    );
  }
  const bridge = q.chainstay_bridge_from_axle_mm;
  if (bridge !== undefined && bridge >= q.chainstay_mm) {
    const message = say("drive.arm-gap-fields.the-chainstay-bridge-cannot-lie-mm", {
      bridge,
      chainstayMm: q.chainstay_mm,
    });
    refuse(
      "bridge-past-the-shell",
      "chainstay_bridge_from_axle_mm",
      bridge,
      say("drive.arm-gap-fields.under-mm", { chainstayMm: q.chainstay_mm }),
      message,
    );
  }
  if (radii.length > 0 && radii.every((r) => r > q.crank_length_mm)) {
    const message = say("drive.arm-gap-fields.no-station-of-the-stay-lies");
    refuse(
      "no-station-on-arm",
      "stay_radius_mm",
      radii,
      say("drive.arm-gap-fields.some-up-to-mm", { crankLengthMm: q.crank_length_mm }),
      message,
    );
  }
  if (radii.length > 0 && radii.every((r) => r < 50)) {
    const message = say("drive.arm-gap-fields.no-station-of-the-stay-lies-2");
    refuse("no-station-on-arm", "stay_radius_mm", radii, say("drive.arm-gap-fields.some-from-50-mm-on"), message);
  }
  for (const [i, ring] of (q.rings ?? []).entries()) {
    if (!Number.isInteger(ring.teeth) || ring.teeth < 6 || ring.teeth > 150) {
      const message = say("drive.arm-gap-fields.a-ring-cannot-have-teeth", { teeth: ring.teeth });
      refuse("out-of-range", `rings[${i}].teeth`, ring.teeth, say("drive.arm-gap-fields.6-to-150-whole"), message);
    }
    if (!(ring.chainline_mm >= 5 && ring.chainline_mm <= 120)) {
      const message = say("drive.arm-gap-fields.a-ring-s-chainline-of-mm", { chainlineMm: ring.chainline_mm });
      refuse(
        "out-of-range",
        `rings[${i}].chainline_mm`,
        ring.chainline_mm,
        say("drive.arm-gap-fields.5-to-120-mm"),
        message,
      );
    }
    if (ring.width !== "3/32" && ring.width !== "1/8") {
      const message = say("drive.arm-gap-fields.a-ring-is-3-32-or", { width: ring.width });
      refuse("not-a-choice", `rings[${i}].width`, ring.width, say("drive.arm-gap-fields.3-32-or-1-8"), message);
    }
  }
  return refusals;
}
