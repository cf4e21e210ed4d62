/** Question 12: which rings and sprocket for my real rides, and will the chain run on fixed centres? */
import { fixedCentres } from "../../drive/index.js";
import { figure, type Head, joint, type Question, row, showNumber } from "../question.js";

const HEAD: Head = { n: 12, question: "Which ring and sprocket for my real rides?", stake: "money" };

export const ringsAndChain: Question = (r) => {
  const j42 = joint(r, "J42");
  const joints = [j42, ...["J35", "J36", "J37"].map((id) => joint(r, id))];
  const frame = r.geometry.frame.kind === "answered" ? r.geometry.frame.value : undefined;
  const measured = r.resolved.donor.measured.chainstay;
  const direct = measured?.plusMinus !== undefined && measured.plusMinus <= 0.3 ? measured : undefined;
  const chainstay = direct?.value ?? frame?.frame.chainstay_mm;
  const half = direct?.plusMinus ?? (frame === undefined ? undefined : 1.96 * frame.frame_std.chainstay_mm);
  const hub = r.resolved.at.wheel_rear?.kind === "wheel_rear" ? r.resolved.at.wheel_rear.ports : undefined;
  const pairs = r.resolved.build.ring_sprocket_pairs ?? [];
  const answer =
    chainstay !== undefined && pairs.length > 0 && hub?.drive === "hub_gear"
      ? fixedCentres({
          chainstayMm: chainstay,
          ...(half === undefined ? {} : { chainstayHalfWidthMm: half }),
          pairs: pairs.map(([ring, cog]) => ({ ring, cog })),
          ...(hub.ring_over_sprocket_min === undefined ? {} : { leastRingOverCog: hub.ring_over_sprocket_min }),
          ...(hub.sprocket_min === undefined ? {} : { leastCog: hub.sprocket_min }),
        })
      : undefined;
  const table =
    answer?.kind === "answered"
      ? [
          {
            title: "Ring and sprocket on fixed centres",
            columns: ["Pair", "Links", "Slack", "Fits if the chainstay lies between", "Slack at 0.5 % wear", "Chance"],
            rows: answer.value.pairs.map((p) => [
              `${p.ring}/${p.cog}`,
              `${p.links}`,
              `${showNumber(p.slack_mm, 2)} mm`,
              `${p.fits_if_chainstay_from_mm.toFixed(2)} and ${p.fits_if_chainstay_to_mm.toFixed(2)}`,
              `${showNumber(p.slack_when_worn_mm, 1)} mm`,
              p.chance === undefined ? "" : `${showNumber(100 * p.chance, 0)} %`,
            ]),
          },
        ]
      : [];
  const chance = answer?.kind === "answered" ? answer.value.chance_that_any_fits : undefined;
  return row(HEAD, {
    answer: j42.reason,
    verdict: j42.verdict,
    figure:
      chainstay === undefined
        ? undefined
        : figure(
            "chainstay",
            chainstay,
            "mm",
            1,
            half === undefined
              ? undefined
              : {
                  low: chainstay - half,
                  high: chainstay + half,
                  means: direct === undefined ? "95 %, from the survey" : "as measured",
                },
            { against: "needed to ± 0.3" },
          ),
    next: j42.next,
    words: [
      ...(chance === undefined
        ? []
        : [
            `From the survey alone, the chance that one of these pairs runs without a tensioner is ${showNumber(chance, 2)}.`,
          ]),
      "No ride figure decides between the pairs: which one keeps your cadence on your road is not reckoned yet.",
    ],
    tables: table,
    notChecked: ["Your ride: share of time in your cadence window, and the steepest climb. Not in yet."],
    joints,
    sources: answer?.kind === "answered" ? answer.sources : [],
  });
};
