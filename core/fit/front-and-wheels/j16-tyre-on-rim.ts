/**
 * J16: do tyre and rim go together, front and rear?
 * Bead seats equal; tyre width over inner rim width 1.4 to 2.2, flagged above unless the ISO 5775 table lists the pair,
 * refused above 2.6; pressure under the rim's and the tyre's limit; the wall of a braked rim 1.0 or more (S11).
 * Sources: fit-iso-5775, fit-tyre-rim-practice.
 */
import { tyreOnRimListed } from "../../data/interfaces.js";
import { WHEEL_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { type Caution, capital, type SourceId } from "../../quantity/index.js";
import type { PartOfKind, Place } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, plain, settle } from "../settle.js";
import { span } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { discAt } from "./brakes-wanted.js";

const head = {
  id: "J16",
  title: "tyre – rim",
  between: ["tyre_front", "wheel_front", "tyre_rear", "wheel_rear"],
} as const;

export const RATIO_LOW = 1.4;
export const RATIO_HIGH = 2.2;
export const RATIO_REFUSED = 2.6;
/** A braked rim thinner than this bursts (S11), mm. */
export const RIM_WALL_MM = 1;

type End = "front" | "rear";
type Wheel = PartOfKind<"wheel_front"> | PartOfKind<"wheel_rear">;

export const j16TyreOnRim: JointDefinition = {
  ...head,
  attributes: [
    "tyre.ports.size",
    "wheel.ports.bsd",
    "wheel.ports.rim_inner",
    "wheel.ports.rim_wall",
    "wheel.ports.pressure_limit_bar",
    "tyre.ports.pressure_max_bar",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const checks: Check[] = [];
    const cautions: Caution[] = [];
    const words: string[] = [];
    let empty: Place | undefined;
    for (const end of ["front", "rear"] as const) {
      const tyre = partAt(view, `tyre_${end}`, "tyre");
      const wheel =
        end === "front" ? partAt(view, "wheel_front", "wheel_front") : partAt(view, "wheel_rear", "wheel_rear");
      if (tyre === undefined || wheel === undefined) {
        empty ??= tyre === undefined ? `tyre_${end}` : `wheel_${end}`;
        continue;
      }
      checks.push(...endChecks(view, end, tyre, wheel));
      cautions.push(...endCautions(view, end, tyre, wheel));
      const size = tyre.ports.size;
      if (size !== undefined)
        words.push(
          `${end} ${size.bsdMm}-${size.widthMm} on a ${plain(wheel.ports.rim_inner ?? 0)} wide ${plain(wheel.ports.bsd ?? 0)} rim`,
        );
    }
    if (checks.length === 0) return notChosen(head, empty ?? "tyre_rear");
    if (empty !== undefined) {
      cautions.push({
        code: "one-end-not-chosen",
        at: `build.chosen.${empty}`,
        message: `Only one end is judged: no ${empty.replace("_", " ")} is chosen yet.`,
      });
    }
    const settled = settle(checks);
    const rules: JointAnswer["rules"] = settled.failed.flatMap((check) =>
      refusedByS11(check)
        ? [
            {
              rule: "S11",
              level: "refuse" as const,
              why: check.name,
              place: check.name.startsWith("front") ? ("wheel_front" as const) : ("wheel_rear" as const),
            },
          ]
        : [],
    );
    const sources: SourceId[] = ["fit-iso-5775", "fit-tyre-rim-practice"];
    return closeJoint(head, {
      settled,
      words: { fits: `${capital(words.join("; "))}.`, fails: failWords(settled.failed) },
      remedies: settled.outcome === "fails" ? remedies(view, settled.failed) : [],
      rules,
      sources,
      cautions,
    });
  },
};

function endChecks(view: FitView, end: End, tyre: PartOfKind<"tyre">, wheel: Wheel): readonly Check[] {
  const size = tyre.ports.size;
  const rim = wheel.ports.rim_inner;
  const ratio = size === undefined || rim === undefined ? undefined : size.widthMm / rim;
  const listed = size !== undefined && rim !== undefined && tyreOnRimListed(size.widthMm, rim);
  const readTyre = {
    what: `Read the two-number marking on the ${end} tyre`,
    at: `bin.parts.${tyre.id}.ports.size`,
    tool: "eye",
  } as const;
  const readRim = {
    what: `Measure the inner width of the ${end} rim, hook to hook`,
    at: `bin.parts.${wheel.id}.ports.rim_inner`,
    tool: "calliper",
    accuracy: "± 0.5 mm",
  } as const;
  const checks: Check[] = [
    {
      name: `${end} bead seat of the tyre minus the rim's`,
      unit: "mm",
      value: size === undefined || wheel.ports.bsd === undefined ? span(undefined) : span(size.bsdMm - wheel.ports.bsd),
      limit: { low: 0, high: 0, kind: "hard", words: "equal" },
      measure:
        size === undefined
          ? readTyre
          : {
              what: `Read the bead seat diameter on the ${end} rim`,
              at: `bin.parts.${wheel.id}.ports.bsd`,
              tool: "eye",
            },
    },
    {
      name: `${end} tyre width over inner rim width`,
      unit: "ratio",
      value: span(ratio),
      limit: { low: RATIO_LOW, high: RATIO_REFUSED, kind: "hard", words: `${RATIO_LOW} to ${RATIO_REFUSED}` },
      measure: size === undefined ? readTyre : readRim,
    },
  ];
  if (ratio !== undefined && ratio > RATIO_HIGH && ratio <= RATIO_REFUSED && !listed) {
    checks.push({
      name: `${end} tyre width over inner rim width, wanted`,
      unit: "ratio",
      value: span(ratio),
      limit: {
        high: RATIO_HIGH,
        kind: "wanted",
        words: `${RATIO_HIGH} or less, or a pair that the ISO 5775 table lists`,
      },
      flag: `The ${end} tyre is ${plain(ratio)} times as wide as the rim inside, and the table does not list the pair: it rolls sideways in a bend.`,
    });
  }
  if (discAt(view, end) === false || wheel.ports.rim_brake === true) {
    checks.push({
      name: `${end} rim wall`,
      unit: "mm",
      value: span(wheel.ports.rim_wall, 0.05),
      limit: { low: RIM_WALL_MM, kind: "hard", words: "1.0 or more at the brake track" },
      measure: {
        what: `Measure the wall of the ${end} rim at the brake track`,
        at: `bin.parts.${wheel.id}.ports.rim_wall`,
        tool: "calliper",
        how: "ball-ended calliper, tyre off, four places",
      },
    });
  }
  const limit = Math.min(
    wheel.ports.pressure_limit_bar ?? Number.POSITIVE_INFINITY,
    tyre.ports.pressure_max_bar ?? Number.POSITIVE_INFINITY,
  );
  const pressure = view.ports[`tyre_${end}.pressure_bar`];
  if (Number.isFinite(limit) && pressure !== undefined) {
    checks.push({
      name: `${end} tyre pressure`,
      unit: "bar",
      value: span(pressure),
      limit: { high: limit, kind: "hard", words: `${plain(limit)} at most, by rim and tyre` },
    });
  }
  return checks;
}

function endCautions(view: FitView, end: End, tyre: PartOfKind<"tyre">, wheel: Wheel): readonly Caution[] {
  const cautions: Caution[] = [];
  const limits = [wheel.ports.pressure_limit_bar, tyre.ports.pressure_max_bar].filter((v) => v !== undefined);
  cautions.push({
    code: "pressure-limit",
    at: `bin.parts.${tyre.id}.ports.pressure_max_bar`,
    message:
      limits.length === 0
        ? `No pressure limit is entered for the ${end} tyre and rim: read both and keep to the lower.`
        : `${end === "front" ? "Front" : "Rear"} tyre: never over ${plain(Math.min(...limits))} bar.`,
  });
  const tube = partAt(view, `tube_${end}`, "tube");
  const size = tyre.ports.size;
  if (tube !== undefined && size !== undefined) {
    const { bsd, width_min: low, width_max: high } = tube.ports;
    if (bsd !== undefined && bsd !== size.bsdMm)
      cautions.push({
        code: "tube-of-another-size",
        at: `bin.parts.${tube.id}.ports.bsd`,
        message: `The ${end} tube is for ${bsd}, the tyre is ${size.bsdMm}.`,
      });
    if ((low !== undefined && size.widthMm < low) || (high !== undefined && size.widthMm > high)) {
      cautions.push({
        code: "tube-of-another-width",
        at: `bin.parts.${tube.id}.ports.width_max`,
        message: `The ${end} tube is for widths ${plain(low ?? 0)} to ${plain(high ?? 0)}, the tyre is ${size.widthMm}.`,
      });
    }
  }
  if (tyre.ports.hooked_only === true)
    cautions.push({
      code: "hooked-rim-only",
      at: `bin.parts.${tyre.id}.ports.hooked_only`,
      message: `The ${end} tyre is for hooked rims only: look at the rim.`,
    });
  return cautions;
}

/** Above 2.6, over the pressure limit, or a wall worn under 1.0. */
function refusedByS11(check: Check): boolean {
  if (/rim wall|pressure/.test(check.name)) return true;
  return /over inner rim width$/.test(check.name) && check.value.kind === "known" && check.value.mid > RATIO_REFUSED;
}

function failWords(failed: readonly Check[]): string {
  const first = failed[0];
  if (first === undefined) return "";
  const value = first.value.kind === "known" ? first.value.mid : 0;
  const end = first.name.startsWith("front") ? "Front" : "Rear";
  if (first.name.includes("bead seat"))
    return `${end} tyre and rim have different bead seats, ${plain(Math.abs(value))} apart.`;
  if (first.name.includes("rim wall")) return `${end} rim wall ${plain(value)}: worn, under 1.0.`;
  if (first.name.includes("pressure")) return `${end} tyre pressure ${plain(value)} bar is over the limit.`;
  return value > RATIO_REFUSED
    ? `${end} tyre ${plain(value)} times as wide as the rim inside: too wide.`
    : `${end} tyre only ${plain(value)} times as wide as the rim inside: too narrow.`;
}

function remedies(view: FitView, failed: readonly Check[]): readonly RemedyOffer[] {
  const first = failed[0];
  if (first === undefined) return [];
  if (first.name.includes("rim wall")) return [offerRemedy(WHEEL_REMEDIES.new_rim, view)];
  const wheel = first.name.startsWith("front")
    ? partAt(view, "wheel_front", "wheel_front")
    : partAt(view, "wheel_rear", "wheel_rear");
  const rim = wheel?.ports.rim_inner;
  const bsd = wheel?.ports.bsd;
  if (rim === undefined || bsd === undefined) return [];
  return [
    offerRemedy(WHEEL_REMEDIES.other_tyre, view, {
      values: { bsd, narrowest: Math.ceil(rim * RATIO_LOW), widest: Math.floor(rim * RATIO_HIGH) },
    }),
  ];
}
