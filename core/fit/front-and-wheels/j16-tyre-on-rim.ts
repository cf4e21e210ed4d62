/**
 * J16: do tyre and rim go together, front and rear?
 * Bead seats equal; tyre width over inner rim width 1.4 to 2.2, flagged above unless the ISO 5775 table lists the pair,
 * refused above 2.6; pressure under the rim's and the tyre's limit; the wall of a braked rim 1.0 or more (S11).
 * Sources: fit-iso-5775, fit-tyre-rim-practice.
 */

import { tyreOnRimListed } from "../../data/interfaces.js";
import { WHEEL_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { type Caution, capital, type SourceId } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { type PartOfKind, type Place, rimPartId } from "../../workshop/index.js";
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
        message: say("fit-drive.j19-rotor-on-hub.only-one-end-is-judged-no", { empty: empty.replace("_", " ") }),
      });
    }
    const settled = settle(checks);
    const rules: JointAnswer["rules"] = settled.failed.flatMap((check) =>
      refusedByS11(check)
        ? [
            {
              rule: "S11",
              level: "refuse" as const,
              why: failWords([check]).replace(/\.$/, ""),
              place: check.name.startsWith("front") ? ("wheel_front" as const) : ("wheel_rear" as const),
              ...partOf(view, check.name.startsWith("front") ? "front" : "rear"),
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
  const rimId = rimPartId(view.at, end) ?? wheel.id;
  const ratio = size === undefined || rim === undefined ? undefined : size.widthMm / rim;
  const listed = size !== undefined && rim !== undefined && tyreOnRimListed(size.widthMm, rim);
  const readTyre = {
    what: say("fit-front.j15-wheel-in-space.read-the-two-number-marking-on", { end }),
    at: `bin.parts.${tyre.id}.ports.size`,
    tool: "eye",
  } as const;
  const readRim = {
    what: say("fit-front.j16-tyre-on-rim.measure-the-inner-width-of-the", { end }),
    at: `bin.parts.${rimId}.ports.rim_inner`,
    tool: "calliper",
    accuracy: "± 0.5 mm",
  } as const;
  const checks: Check[] = [
    {
      name: say("fit-front.j16-tyre-on-rim.bead-seat-of-the-tyre-minus", { end }),
      unit: "mm",
      value: size === undefined || wheel.ports.bsd === undefined ? span(undefined) : span(size.bsdMm - wheel.ports.bsd),
      limit: { low: 0, high: 0, kind: "hard", words: "equal" },
      measure:
        size === undefined
          ? readTyre
          : {
              what: say("fit-front.j16-tyre-on-rim.read-the-bead-seat-diameter-on", { end }),
              at: `bin.parts.${rimId}.ports.bsd`,
              tool: "eye",
            },
    },
    {
      name: say("fit-front.j16-tyre-on-rim.tyre-width-over-inner-rim-width", { end }),
      unit: "ratio",
      value: span(ratio),
      limit: {
        low: RATIO_LOW,
        high: RATIO_REFUSED,
        kind: "hard",
        words: say("fit-front.j16-tyre-on-rim.to", { ratioLow: RATIO_LOW, ratioRefused: RATIO_REFUSED }),
      },
      measure: size === undefined ? readTyre : readRim,
    },
  ];
  if (ratio !== undefined && ratio > RATIO_HIGH && ratio <= RATIO_REFUSED && !listed) {
    checks.push({
      name: say("fit-front.j16-tyre-on-rim.tyre-width-over-inner-rim-width-2", { end }),
      unit: "ratio",
      value: span(ratio),
      limit: {
        high: RATIO_HIGH,
        kind: "wanted",
        words: say("fit-front.j16-tyre-on-rim.or-less-or-a-pair-that", { ratioHigh: RATIO_HIGH }),
      },
      flag: say("fit-front.j16-tyre-on-rim.the-tyre-is-times-as-wide", { end, ratio: plain(ratio) }),
    });
  }
  if (discAt(view, end) === false || wheel.ports.rim_brake === true) {
    checks.push({
      name: say("fit-front.j16-tyre-on-rim.rim-wall", { end }),
      unit: "mm",
      value: span(wheel.ports.rim_wall, 0.05),
      limit: { low: RIM_WALL_MM, kind: "hard", words: say("fit-front.j16-tyre-on-rim.1-0-or-more-at-the") },
      measure: {
        what: say("fit-front.j16-tyre-on-rim.measure-the-wall-of-the-rim", { end }),
        at: `bin.parts.${rimId}.ports.rim_wall`,
        tool: "calliper",
        how: say("fit-front.j16-tyre-on-rim.ball-ended-calliper-tyre-off-four"),
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
      name: say("fit-front.j16-tyre-on-rim.tyre-pressure", { end }),
      unit: "bar",
      value: span(pressure),
      limit: {
        high: limit,
        kind: "hard",
        words: say("fit-front.j16-tyre-on-rim.at-most-by-rim-and-tyre", { limit: plain(limit) }),
      },
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
        ? say("fit-front.j16-tyre-on-rim.no-pressure-limit-is-entered-for", { end })
        : say("fit-front.j16-tyre-on-rim.tyre-never-over-bar", {
            end: end === "front" ? "Front" : "Rear",
            mostBar: plain(Math.min(...limits)),
          }),
  });
  const tube = partAt(view, `tube_${end}`, "tube");
  const size = tyre.ports.size;
  if (tube !== undefined && size !== undefined) {
    const { bsd, width_min: low, width_max: high } = tube.ports;
    if (bsd !== undefined && bsd !== size.bsdMm)
      cautions.push({
        code: "tube-of-another-size",
        at: `bin.parts.${tube.id}.ports.bsd`,
        message: say("fit-front.j16-tyre-on-rim.the-tube-is-for-the-tyre", { end, bsd, bsdMm: size.bsdMm }),
      });
    if ((low !== undefined && size.widthMm < low) || (high !== undefined && size.widthMm > high)) {
      cautions.push({
        code: "tube-of-another-width",
        at: `bin.parts.${tube.id}.ports.width_max`,
        message: say("fit-front.j16-tyre-on-rim.the-tube-is-for-widths-to", {
          end,
          low: plain(low ?? 0),
          high: plain(high ?? 0),
          widthMm: size.widthMm,
        }),
      });
    }
  }
  if (tyre.ports.hooked_only === true)
    cautions.push({
      code: "hooked-rim-only",
      at: `bin.parts.${tyre.id}.ports.hooked_only`,
      message: say("fit-front.j16-tyre-on-rim.the-tyre-is-for-hooked-rims", { end }),
    });
  return cautions;
}

/** The part whose rim it is. */
function partOf(view: FitView, end: End): { readonly part?: string } {
  const id = rimPartId(view.at, end);
  return id === undefined ? {} : { part: id };
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
    return say("fit-front.j16-tyre-on-rim.tyre-and-rim-have-different-bead", { end, value: plain(Math.abs(value)) });
  if (first.name.includes("rim wall"))
    return say("fit-front.j16-tyre-on-rim.rim-wall-worn-under-1-0", { end, value: plain(value) });
  if (first.name.includes("pressure"))
    return say("fit-front.j16-tyre-on-rim.tyre-pressure-bar-is-over-the", { end, value: plain(value) });
  return value > RATIO_REFUSED
    ? say("fit-front.j16-tyre-on-rim.tyre-times-as-wide-as-the", { end, value: plain(value) })
    : say("fit-front.j16-tyre-on-rim.tyre-only-times-as-wide-as", { end, value: plain(value) });
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
