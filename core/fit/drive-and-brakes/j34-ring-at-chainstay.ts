/**
 * J34: does the ring clear the chainstay once the wheel is in?
 * Ring's outside radius = p / (2 sin(180/N)) + 4, inner face = chainline - 1.05 (3/32) or - 1.5 (1/8); 3 or more to the stay
 * (M28), ± 1 until the dry fit: judged like the sheet `arm-gap`, and flagged while the ± 1 reaches under 3. A ring whose
 * width nobody has measured is judged as both; of several rings each is judged. Sources: drive-arm-gap, drive-spread, fit-dimple.
 */

import { CRANK_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { type ArmGapAnswer, GAP_BAND_MM, predictedFrontChainline, RING_GAP_WANTED_MM } from "../../drive/index.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, rounded, settle } from "../settle.js";
import { span, UNKNOWN } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { asOffered, otherBottomBrackets, smallerRings } from "./bins.js";
import {
  CLEARANCE_ATTRIBUTES,
  CLEARANCE_READS,
  type Clearance,
  crankClearance,
  type RingAsked,
} from "./crank-clearance.js";
import { dimpleRefused } from "./dimple.js";
import { type RingHere, ringsHere, statedChainline, statedRingLine } from "./ring-on-crank.js";

const head = {
  id: "J34",
  title: "ring – stay",
  between: ["ring", "ring_inner", "crank", "bb", "wheel_rear", "frame"],
} as const;

export const CUP_SPACERS_MM = [1, 1.5, 2, 2.5] as const;

export const j34RingAtChainstay: JointDefinition = {
  ...head,
  attributes: [
    ...CLEARANCE_ATTRIBUTES,
    "crank.ports.chainline",
    "crank.ports.ring",
    "crank.ports.rings",
    "crank.ports.ring_chainlines",
    "ring.ports.teeth",
    "ring.ports.chain_class",
  ],
  reads: CLEARANCE_READS,
  changes: ["bb.right_spacer"],
  evaluate: (view) => {
    const crank = partAt(view, "crank", "crank");
    const bb = partAt(view, "bb", "bb");
    if (crank === undefined) return notChosen(head, "crank");
    if (bb === undefined) return notChosen(head, "bb");
    const rings = ringsHere(view);
    const limit = { low: RING_GAP_WANTED_MM, kind: "hard", words: "3 or more" } as const;
    const unread = rings.find((ring) => ring.teeth === undefined);
    const asked = rings.flatMap(({ teeth, width }): readonly RingAsked[] => {
      if (teeth === undefined) return [];
      const chainlineMm = statedRingLine(crank, rings, teeth);
      const widths = width === undefined ? (["3/32", "1/8"] as const) : [width];
      return widths.map((w) => ({ teeth, width: w, chainlineMm }));
    });
    const found: Clearance =
      unread !== undefined || asked.length === 0
        ? {
            kind: "missing",
            measure: unread?.readTeeth ?? {
              what: say("fit-drive.j34-ring-at-chainstay.choose-a-ring"),
              at: "build.chosen.ring",
            },
          }
        : crankClearance(view, crank, bb, asked);
    if (found.kind === "missing") {
      const settled = settle([
        {
          name: say("fit-drive.j34-ring-at-chainstay.gap-of-the-ring"),
          unit: "mm",
          value: UNKNOWN,
          limit,
          measure: found.measure,
        },
      ]);
      return closeJoint(head, {
        settled,
        words: { fits: "", fails: "", open: say("fit-drive.j34-ring-at-chainstay.not-known-yet-the-ring-s") },
        sources: ["drive-arm-gap"],
      });
    }
    const passes = rings.map((ring) => passing(ring, found.gap.ring_gaps));
    const measure = {
      what: say("fit-drive.j34-ring-at-chainstay.measure-the-chainstay-s-outer-face"),
      at: "donor.gaps_rear.chainstay_outer_at_bb_radius",
      tool: "rule",
    } as const;
    const dryFit = {
      what: say("fit-drive.j34-ring-at-chainstay.look-at-the-ring-s-gap"),
      at: "build.chosen.ring",
      tool: "rule",
    } as const;
    const settled = settle(
      passes.flatMap(({ name, teeth, mid, half, nearest }): readonly Check[] => [
        { name, unit: "mm", value: span(mid, half), limit, measure },
        {
          name: say("fit-drive.j34-ring-at-chainstay.wanted", { name }),
          unit: "mm",
          value: span(mid, half + GAP_BAND_MM),
          limit: { ...limit, kind: "wanted" },
          measure: dryFit,
          flag: say("fit-drive.j34-ring-at-chainstay.the-ring-passes-the-stay-with", {
            teeth,
            nearest: rounded(nearest ?? 0),
            gapBandMm: GAP_BAND_MM,
          }),
        },
      ]),
    );
    const cautions: Caution[] = [...found.cautions.filter((caution) => caution.code === "bridge-not-measured")];
    for (const { half, widest, nearest } of passes) {
      if (half <= 0) continue;
      cautions.push({
        code: "ring-width-not-measured",
        at: "build.chosen.ring",
        message: say("fit-drive.j34-ring-at-chainstay.nobody-has-measured-the-ring-s", {
          widest: rounded(widest ?? 0),
          nearest: rounded(nearest ?? 0),
        }),
      });
    }
    const shown = settled.numbers
      .filter((n) => !n.name.endsWith(", wanted"))
      .map((n) => {
        const pass = passes.find((p) => p.name === n.name);
        return pass?.widest === undefined || pass.nearest === undefined
          ? n
          : {
              ...n,
              value: pass.widest,
              band: {
                low: pass.nearest - GAP_BAND_MM,
                high: pass.widest + GAP_BAND_MM,
                means: say("fit-drive.j33-arm-at-chainstay.1-until-the-dry-fit-common"),
              },
            };
      });
    const tightest = passes.reduce((a, b) => ((b.nearest ?? 0) < (a.nearest ?? 0) ? b : a));
    const others = passes.filter((pass) => pass !== tightest);
    return closeJoint(head, {
      settled: { ...settled, numbers: shown, cautions: settled.outcome === "fails" ? [] : settled.cautions },
      words: {
        fits: say("fit-drive.j34-ring-at-chainstay.the-ring-passes-the-stay-with-2", {
          teeth: tightest.teeth,
          widest: rounded(tightest.widest ?? 0),
          others: others
            .map((pass) =>
              say("fit-drive.j34-ring-at-chainstay.the-with", { teeth: pass.teeth, widest: rounded(pass.widest ?? 0) }),
            )
            .join(""),
        }),
        fails: say("fit-drive.j34-ring-at-chainstay.the-ring-passes-the-stay-with-3", {
          teeth: tightest.teeth,
          nearest: rounded(tightest.nearest ?? 0),
        }),
      },
      remedies:
        settled.outcome === "fails" && tightest.nearest !== undefined && tightest.teeth !== undefined
          ? remedies(view, crank, bb, tightest.teeth, tightest.nearest, tightest.radius, found)
          : [],
      sources: ["drive-arm-gap", "drive-spread", "fit-dimple"],
      cautions,
    });
  },
};

/** One ring's gap: widest with 3/32 teeth, nearest with 1/8 where nobody has measured them. */
function passing(ring: RingHere, gaps: ArmGapAnswer["ring_gaps"]) {
  const own = gaps.filter((gap) => gap.teeth === ring.teeth);
  const widest = own[0]?.gap_mm ?? undefined;
  const nearest = own.at(-1)?.gap_mm ?? undefined;
  const known = widest !== undefined && nearest !== undefined;
  const radius = own[0]?.outside_radius_mm ?? 0;
  return {
    teeth: ring.teeth,
    name: say("fit-drive.j34-ring-at-chainstay.gap-of-the-ring-from-the", {
      teeth: ring.teeth,
      radius: Math.round(radius),
    }),
    radius,
    widest,
    nearest,
    mid: known ? (widest + nearest) / 2 : undefined,
    half: known ? (widest - nearest) / 2 : 0,
  };
}

function remedies(
  view: FitView,
  crank: PartOfKind<"crank">,
  bb: PartOfKind<"bb">,
  teeth: number,
  gap: number,
  radius: number,
  found: Extract<Clearance, { kind: "known" }>,
): readonly RemedyOffer[] {
  const short = RING_GAP_WANTED_MM - gap;
  const offers: RemedyOffer[] = [];
  const spacer = CUP_SPACERS_MM.find((s) => s >= short);
  const there = view.ports["bb.right_spacer"] ?? 0;
  if (spacer !== undefined && there + spacer <= 2.5) {
    const chainline = predictedFrontChainline({
      statedMm: statedChainline(crank, ringsHere(view)) ?? 0,
      statedSpindleMm: 0,
      spindleMm: found.longerMm,
      rightCupSpacerMm: there + spacer,
    });
    const left = found.gap.left_arm_gap_mm - spacer;
    offers.push(
      offerRemedy(CRANK_REMEDIES.cup_spacer, view, {
        values: { spacer, right_total: there + spacer, left_gap: left, chainline },
        ...(left < 4
          ? { refused: say("fit-drive.j34-ring-at-chainstay.the-left-arm-would-pass-its", { left: rounded(left) }) }
          : {}),
      }),
    );
  }
  const ring = smallerRings(view, crank.ports.bolt_circle, teeth)[0];
  offers.push(
    offerRemedy(CRANK_REMEDIES.smaller_ring, view, {
      values: {
        bin:
          ring === undefined
            ? ""
            : say("fit-drive.j34-ring-at-chainstay.teeth", { ring: ring.id, teeth: ring.ports.teeth }),
      },
      ...(ring === undefined ? {} : { part: asOffered(ring) }),
    }),
  );
  const more = Math.ceil(short * 2);
  const longer = otherBottomBrackets(view, bb).find(
    (part) => (part.ports.spindle_length ?? 0) >= (bb.ports.spindle_length ?? 0) + more,
  );
  offers.push(
    offerRemedy(CRANK_REMEDIES.longer_spindle_ring, view, {
      values: { more, bin: longer === undefined ? "" : `: ${longer.id}` },
      ...(longer === undefined ? {} : { part: asOffered(longer) }),
    }),
  );
  const deep = Math.round(short * 10) / 10;
  const refused = dimpleRefused(view, deep, radius);
  offers.push(
    offerRemedy(CRANK_REMEDIES.dimple_ring, view, {
      values: { deep, at: radius },
      ...(refused === undefined ? {} : { refused }),
    }),
  );
  return offers;
}
