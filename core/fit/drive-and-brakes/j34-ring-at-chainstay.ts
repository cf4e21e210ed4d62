/**
 * J34: does the ring clear the chainstay once the wheel is in?
 * Ring's outside radius = p / (2 sin(180/N)) + 4, inner face = chainline - 1.05 (3/32) or - 1.5 (1/8); 3 or more to the stay
 * (M28), ± 1 until the dry fit: judged like the sheet `arm-gap`, and flagged while the ± 1 reaches under 3. A ring whose
 * width nobody has measured is judged as both. Sources: drive-arm-gap, drive-spread, fit-dimple.
 */
import { CRANK_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { GAP_BAND_MM, predictedFrontChainline, RING_GAP_WANTED_MM } from "../../drive/index.js";
import type { Caution } from "../../quantity/index.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { rounded, settle } from "../settle.js";
import { span, UNKNOWN } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { asOffered, otherBottomBrackets, smallerRings } from "./bins.js";
import { CLEARANCE_ATTRIBUTES, CLEARANCE_READS, type Clearance, crankClearance } from "./crank-clearance.js";
import { dimpleRefused } from "./dimple.js";
import { ringHere } from "./ring-on-crank.js";

const head = { id: "J34", title: "ring – stay", between: ["ring", "crank", "bb", "wheel_rear", "frame"] } as const;

export const CUP_SPACERS_MM = [1, 1.5, 2, 2.5] as const;

export const j34RingAtChainstay: JointDefinition = {
  ...head,
  attributes: [
    ...CLEARANCE_ATTRIBUTES,
    "crank.ports.chainline",
    "crank.ports.ring",
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
    const ring = ringHere(view);
    const limit = { low: RING_GAP_WANTED_MM, kind: "hard", words: "3 or more" } as const;
    const widths = ring?.width === undefined ? (["3/32", "1/8"] as const) : [ring.width];
    const teeth = ring?.teeth;
    const found: Clearance =
      ring === undefined || teeth === undefined
        ? { kind: "missing", measure: ring?.readTeeth ?? { what: "Choose a ring", at: "build.chosen.ring" } }
        : crankClearance(
            view,
            crank,
            bb,
            widths.map((width) => ({ teeth, width })),
          );
    if (found.kind === "missing") {
      const settled = settle([{ name: "gap of the ring", unit: "mm", value: UNKNOWN, limit, measure: found.measure }]);
      return closeJoint(head, {
        settled,
        words: { fits: "", fails: "", open: "Not known yet: the ring's gap at the chainstay." },
        sources: ["drive-arm-gap"],
      });
    }
    const [first, second] = found.gap.ring_gaps;
    const widest = first?.gap_mm ?? undefined;
    const nearest = (second ?? first)?.gap_mm ?? undefined;
    const name = `gap of the ${teeth} ring, ${Math.round(first?.outside_radius_mm ?? 0)} from the BB axis`;
    const measure = {
      what: "Measure the chainstay's outer face where the ring passes it",
      at: "donor.gaps_rear.chainstay_outer_at_bb_radius",
      tool: "rule",
    } as const;
    const dryFit = { what: "Look at the ring's gap at the dry fit", at: "build.chosen.ring", tool: "rule" } as const;
    const mid = widest === undefined || nearest === undefined ? undefined : (widest + nearest) / 2;
    const half = widest === undefined || nearest === undefined ? 0 : (widest - nearest) / 2;
    const settled = settle([
      { name, unit: "mm", value: span(mid, half), limit, measure },
      {
        name: `${name}, wanted`,
        unit: "mm",
        value: span(mid, half + GAP_BAND_MM),
        limit: { ...limit, kind: "wanted" },
        measure: dryFit,
        flag: `The ${teeth} ring passes the stay with ${rounded(nearest ?? 0)} mm ± ${GAP_BAND_MM}; 3 are wanted. Prove it at the dry fit.`,
      },
    ]);
    const cautions: Caution[] = [...found.cautions.filter((caution) => caution.code === "bridge-not-measured")];
    if (half > 0) {
      cautions.push({
        code: "ring-width-not-measured",
        at: "build.chosen.ring",
        message: `Nobody has measured the ring's teeth: the gap of ${rounded(widest ?? 0)} mm holds for 3/32, ${rounded(nearest ?? 0)} for 1/8.`,
      });
    }
    const shown = settled.numbers
      .filter((n) => !n.name.endsWith(", wanted"))
      .map((n) =>
        widest === undefined || nearest === undefined
          ? n
          : {
              ...n,
              value: widest,
              band: {
                low: nearest - GAP_BAND_MM,
                high: widest + GAP_BAND_MM,
                means: "± 1 until the dry fit, common practice",
              },
            },
      );
    return closeJoint(head, {
      settled: { ...settled, numbers: shown, cautions: settled.outcome === "fails" ? [] : settled.cautions },
      words: {
        fits: `The ${teeth} ring passes the stay with ${rounded(widest ?? 0)} mm to spare.`,
        fails: `The ${teeth} ring passes the stay with ${rounded(nearest ?? 0)} mm: too near, 3 are needed.`,
      },
      remedies:
        settled.outcome === "fails" && nearest !== undefined && teeth !== undefined
          ? remedies(view, crank, bb, teeth, nearest, first?.outside_radius_mm ?? 0, found)
          : [],
      sources: ["drive-arm-gap", "drive-spread", "fit-dimple"],
      cautions,
    });
  },
};

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
      statedMm: crank.ports.chainline ?? 0,
      statedSpindleMm: 0,
      spindleMm: found.longerMm,
      rightCupSpacerMm: there + spacer,
    });
    const left = found.gap.left_arm_gap_mm - spacer;
    offers.push(
      offerRemedy(CRANK_REMEDIES.cup_spacer, view, {
        values: { spacer, right_total: there + spacer, left_gap: left, chainline },
        ...(left < 4 ? { refused: `The left arm would pass its stay with only ${rounded(left)} mm.` } : {}),
      }),
    );
  }
  const ring = smallerRings(view, crank.ports.bolt_circle, teeth)[0];
  offers.push(
    offerRemedy(CRANK_REMEDIES.smaller_ring, view, {
      values: { bin: ring === undefined ? "" : `: ${ring.id}, ${ring.ports.teeth} teeth` },
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
