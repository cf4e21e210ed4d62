/**
 * J15: do rim and tyre suit the brakes and the space in frame and fork?
 * Gaps by M9: side at the chainstays, seat stays and blades, radial at bridges and crown. 6 wanted, 4 the least (S14); a
 * guard takes 10 to 14 of the radial gap. Width as marked, and more on a wide rim; no credit for a narrow rim and none for
 * what setting the rear may add. A rim brake's reach changes by half the change of bead seat (M22).
 * Sources: fit-m9-gaps, fit-iso-4210-2, fit-m22-reach.
 */

import { BOSS_RADIUS_MM } from "../../data/interfaces.js";
import { WHEEL_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { GAP_LEAST_MM, GAP_WANTED_MM, rimBrakeReachMm } from "../../geometry/index.js";
import { type Caution, capital } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import { caliperAt } from "../drive-and-brakes/calipers.js";
import type { JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen, placeWords } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, plain, rounded, settle } from "../settle.js";
import { span } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { discAt } from "./brakes-wanted.js";
import { frontGaps, rearGaps, stationOf, type WheelInSpace, wheelInSpace } from "./tyre-room.js";

const head = {
  id: "J15",
  title: say("fit.joint-titles.rim-bsd-brake-and-space"),
  between: ["wheel_front", "tyre_front", "fork", "wheel_rear", "tyre_rear", "frame"],
} as const;
export const j15WheelInSpace: JointDefinition = {
  ...head,
  attributes: [
    "donor.gaps_rear.chainstay_inner_at_radius",
    "donor.gaps_rear.seatstay_inner_at_radius",
    "donor.gaps_rear.chainstay_bridge_from_axle",
    "donor.gaps_rear.brake_bridge_from_axle",
    "fork.ports.blade_inner_at_radius",
    "fork.ports.crown_underside_from_axle",
    "tyre_front.ports.size",
    "tyre_rear.ports.size",
    "guards.ports.width",
  ],
  reads: ["frame.rear_spacing"],
  changes: [],
  evaluate: (view) => {
    const empty = (["tyre_front", "tyre_rear", "fork"] as const).filter((place) => view.at[place] === undefined);
    const frontEmpty = empty.includes("tyre_front") || empty.includes("fork");
    if (frontEmpty && empty.includes("tyre_rear")) return notChosen(head, empty[0] ?? "tyre_front");
    const front = wheelInSpace(view, "front");
    const rear = wheelInSpace(view, "rear");
    const checks: Check[] = [...sizeUnknown(view, "rear"), ...sizeUnknown(view, "front")];
    const cautions: Caution[] = empty.map((place) => ({
      code: "one-end-not-chosen",
      at: `build.chosen.${place}`,
      message: say("fit-front.j15-wheel-in-space.the-is-not-judged-no-is", {
        end: place === "tyre_rear" ? "rear" : "front",
        partName: placeWords(place),
      }),
    }));
    if (rear !== undefined) checks.push(...rearGaps(view, rear));
    if (front !== undefined) checks.push(...frontGaps(view, front));
    for (const wheel of [front, rear]) {
      if (wheel === undefined) continue;
      const brake = brakeChecks(view, wheel);
      checks.push(...brake.checks);
      cautions.push(...brake.cautions);
    }
    const settled = settle(checks);
    const gaps = gapRules(settled.failed, checks, front, rear);
    return closeJoint(head, {
      settled,
      words: { fits: fitWords(checks, rear, front), fails: failWords(settled.failed[0], front, rear) },
      remedies: settled.outcome === "fails" ? remedies(view, settled.failed, front, rear) : [],
      rules: gaps,
      sources: ["fit-m9-gaps", "fit-iso-4210-2", "fit-m22-reach"],
      cautions,
    });
  },
};

/** A tyre is chosen, but nobody has read its size. */
function sizeUnknown(view: FitView, end: "front" | "rear"): readonly Check[] {
  const tyre = partAt(view, `tyre_${end}`, "tyre");
  if (tyre === undefined || tyre.ports.size !== undefined) return [];
  return [
    {
      name: say("fit-front.j15-wheel-in-space.tyre-s-size", { end }),
      unit: "mm",
      value: span(undefined),
      limit: { low: 0, kind: "hard", words: say("fit-front.j15-wheel-in-space.the-two-number-marking") },
      measure: {
        what: say("fit-front.j15-wheel-in-space.read-the-two-number-marking-on", { end }),
        at: `bin.parts.${tyre.id}.ports.size`,
        tool: "eye",
      },
    },
  ];
}

/** Rim brakes: same bead seat fits; bosses sit for one bead seat; other brakes need more or less reach. */
function brakeChecks(
  view: FitView,
  wheel: WheelInSpace,
): { readonly checks: readonly Check[]; readonly cautions: readonly Caution[] } {
  const disc = discAt(view, wheel.end);
  if (disc === true) return { checks: [], cautions: [] };
  if (disc === undefined)
    return {
      checks: [],
      cautions: [
        {
          code: "brake-not-decided",
          at: "intent.brakes",
          message: say("fit-front.j15-wheel-in-space.the-brake-is-not-decided-a", { end: wheel.end }),
        },
      ],
    };
  const now = view.resolved.donor.wheels_now.tyre?.bsdMm;
  if (now === undefined)
    return {
      checks: [],
      cautions: [
        {
          code: "brake-reach-changes",
          at: "donor.wheels_now.tyre",
          message: say("fit-front.j15-wheel-in-space.which-tyre-is-on-the-old", { end: wheel.end }),
        },
      ],
    };
  const more = rimBrakeReachMm(0, now, wheel.bsd);
  if (more === 0)
    return {
      checks: [
        {
          name: say("fit-front.j15-wheel-in-space.rim-brake-reach-change", { end: wheel.end }),
          unit: "mm",
          value: span(0),
        },
      ],
      cautions: [],
    };
  const studs = wheel.end === "rear" ? view.resolved.donor.interfaces.studs : partAt(view, "fork", "fork")?.ports.studs;
  if (studs === true) {
    const at = BOSS_RADIUS_MM.find((row) => row.bsd === now)?.radius;
    const words =
      at === undefined
        ? say("fit-front.j15-wheel-in-space.bosses-sit-for", { now })
        : say("fit-front.j15-wheel-in-space.bosses-sit-from-the-axle-for", { at: plain(at), now });
    return {
      checks: [
        {
          name: say("fit-front.j15-wheel-in-space.rim-brake-reach-change", { end: wheel.end }),
          unit: "mm",
          value: span(more),
          limit: { low: -1, high: 1, kind: "hard", words },
        },
      ],
      cautions: [],
    };
  }
  return {
    checks: [
      {
        name: say("fit-front.j15-wheel-in-space.rim-brake-reach-change", { end: wheel.end }),
        unit: "mm",
        value: span(more),
      },
    ],
    cautions: [
      {
        code: "brake-reach-changes",
        at: "donor.wheels_now.tyre",
        message: reachWords(view, wheel, more, now),
      },
    ],
  };
}

/** What the new bead seat asks of a brake on one bolt; whether the chosen one reaches it is J25's. */
function reachWords(view: FitView, wheel: WheelInSpace, more: number, now: number): string {
  const { pad_reach_front, pad_reach_rear } = view.resolved.donor.interfaces;
  const today = wheel.end === "front" ? pad_reach_front : pad_reach_rear;
  const change = say("fit-front.j15-wheel-in-space.mm-bead-seat-to", {
    byMm: plain(Math.abs(more)),
    furtherOrLess: more > 0 ? "further" : "less",
    now,
    bsd: wheel.bsd,
  });
  const caliper = caliperAt(view, wheel.end)?.part;
  const { reach_min: least, reach_max: most } = caliper?.ports ?? {};
  const named =
    caliper === undefined || least === undefined || most === undefined
      ? ""
      : say("fit-front.j15-wheel-in-space.is-made-for-to", {
          caliper: caliper.id,
          least: plain(least),
          most: plain(most),
        });
  return today === undefined
    ? say("fit-front.j15-wheel-in-space.the-pads-must-reach-how-far", { end: wheel.end, change, named })
    : say("fit-front.j15-wheel-in-space.the-pads-must-reach-mm-from", {
        end: wheel.end,
        neededMm: plain(today + more),
        change,
        todayMm: plain(today),
        named,
      });
}

/** S14: under 4 refuse, 4 to 6 flag; only where the whole span says so or the middle does. */
function gapRules(
  failed: readonly Check[],
  checks: readonly Check[],
  front: WheelInSpace | undefined,
  rear: WheelInSpace | undefined,
): JointAnswer["rules"] {
  return checks.flatMap((check): JointAnswer["rules"] => {
    if (check.value.kind === "unknown" || check.limit?.kind !== "hard" || !/ gap at the /.test(check.name)) return [];
    const refuse = failed.includes(check);
    if (!refuse && check.value.mid >= GAP_WANTED_MM - 1e-9) return [];
    const wheel = /fork blades|crown/.test(check.name) ? front : rear;
    const level = refuse ? "refuse" : "flag";
    return [
      {
        rule: "S14",
        level,
        why: `${check.name} ${rounded(check.value.mid)} mm`,
        place: wheel?.end === "front" ? "tyre_front" : "tyre_rear",
        ...(wheel === undefined ? {} : { part: wheel.tyre.id }),
      },
    ];
  });
}

function fitWords(checks: readonly Check[], rear: WheelInSpace | undefined, front: WheelInSpace | undefined): string {
  const least = (wheel: WheelInSpace | undefined, names: RegExp) => {
    if (wheel === undefined) return undefined;
    const gaps = checks.flatMap((c) =>
      c.value.kind === "known" && c.name.startsWith("side gap") && names.test(c.name) ? [c.value.mid] : [],
    );
    return gaps.length === 0
      ? undefined
      : say("fit-front.j15-wheel-in-space.mm-each-side", { end: wheel.end, leastGapMm: rounded(Math.min(...gaps)) });
  };
  const parts = [least(rear, /stays/), least(front, /blades/)].filter((p) => p !== undefined);
  return `${capital(parts.join(", "))}.`;
}

function failWords(check: Check | undefined, front: WheelInSpace | undefined, rear: WheelInSpace | undefined): string {
  if (check === undefined || check.value.kind === "unknown") return "";
  const wheel = /fork blades|crown|^front/.test(check.name) ? front : rear;
  const size = wheel?.tyre.ports.size;
  const name = size === undefined ? say("fit-front.j15-wheel-in-space.the-tyre") : `${size.bsdMm}-${size.widthMm}`;
  if (check.name.includes("reach"))
    return say("fit-front.j15-wheel-in-space.the-bosses-are-for-another-bead", {
      end: wheel?.end ?? "",
      mid: plain(Math.abs(check.value.mid)),
    });
  return say("fit-front.j15-wheel-in-space.only-mm-at-the-is-the", {
    name,
    mid: rounded(check.value.mid),
    check: stationOf(check.name),
    gapLeastMm: GAP_LEAST_MM,
  });
}

function remedies(
  view: FitView,
  failed: readonly Check[],
  front: WheelInSpace | undefined,
  rear: WheelInSpace | undefined,
): readonly RemedyOffer[] {
  const offers: RemedyOffer[] = [];
  const gaps = failed.flatMap((check) =>
    check.value.kind === "known" && / gap at the /.test(check.name) ? [{ check, mid: check.value.mid }] : [],
  );
  const sides = gaps.filter(({ check }) => check.name.startsWith("side"));
  const worst = sides.reduce((least, { mid }) => Math.min(least, mid), Number.POSITIVE_INFINITY);
  const wheel = sides.some(({ check }) => check.name.includes("blades")) ? front : rear;
  if (wheel !== undefined && Number.isFinite(worst)) {
    offers.push(
      offerRemedy(WHEEL_REMEDIES.narrower_tyre, view, {
        values: { width: Math.floor(wheel.widthMm - 2 * (GAP_WANTED_MM - worst)) },
      }),
    );
  }
  if (gaps.length > 0) offers.push(offerRemedy(WHEEL_REMEDIES.smaller_wheel, view));
  const now = view.resolved.donor.wheels_now.tyre;
  if (now !== undefined && failed.some((check) => check.name.includes("reach")))
    offers.push(offerRemedy(WHEEL_REMEDIES.same_bsd_wheel, view, { values: { bsd: now.bsdMm } }));
  return offers;
}
