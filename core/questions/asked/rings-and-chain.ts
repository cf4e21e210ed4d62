/** Question 12: which rings and sprocket for my real rides, and will the chain run on fixed centres? */

import { fixedCentres } from "../../drive/index.js";
import { say } from "../../texts/say.js";
import { figure, type Head, joint, type Question, row, showNumber } from "../question.js";
import { derailleurDrive } from "./derailleur-drive.js";

const HEAD: Head = { n: 12, question: say("asked.rings-and-chain.which-ring-and-sprocket-for-my"), stake: "money" };

export const ringsAndChain: Question = (r) => {
  const drive = r.resolved.at.wheel_rear?.kind === "wheel_rear" ? r.resolved.at.wheel_rear.ports.drive : undefined;
  if (drive === "cassette" || drive === "freewheel" || r.resolved.at.sprocket?.kind === "cassette")
    return derailleurDrive(r);
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
            title: say("asked.rings-and-chain.ring-and-sprocket-on-fixed-centres"),
            columns: [
              "Pair",
              "Links",
              "Slack",
              say("asked.rings-and-chain.fits-if-the-chainstay-lies-between"),
              say("asked.rings-and-chain.slack-at-0-5-wear"),
              "Chance",
            ],
            rows: answer.value.pairs.map((p) => [
              `${p.ring}/${p.cog}`,
              `${p.links}`,
              `${showNumber(p.slack_mm, 2)} mm`,
              say("asked.rings-and-chain.and", {
                fitsIfChainstayFromMm: p.fits_if_chainstay_from_mm.toFixed(2),
                fitsIfChainstayToMm: p.fits_if_chainstay_to_mm.toFixed(2),
              }),
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
                  means:
                    direct === undefined
                      ? say("asked.fits-rider.95-from-the-survey")
                      : say("asked.rings-and-chain.as-measured"),
                },
            { against: say("asked.rings-and-chain.needed-to-0-3") },
          ),
    next: j42.next,
    words: [
      ...(chance === undefined
        ? []
        : [say("asked.rings-and-chain.from-the-survey-alone-the-chance", { chance: showNumber(chance, 2) })]),
      say("asked.rings-and-chain.no-ride-figure-decides-between-the"),
    ],
    tables: table,
    notChecked: [say("asked.derailleur-drive.your-ride-share-of-time-in")],
    joints,
    sources: answer?.kind === "answered" ? answer.sources : [],
  });
};
