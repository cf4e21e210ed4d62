/** Question 13: did I mis-measure? */
import { capital } from "../../quantity/index.js";
import { likeliestWrong } from "../../survey/index.js";
import {
  cautionsInWords,
  figure,
  type Head,
  inWords,
  type Question,
  readingWords,
  row,
  SURVEY_NAME,
  showNumber,
} from "../question.js";

const HEAD: Head = { n: 13, question: "Did I mis-measure?", stake: "money" };

/** The first three of the measurements that the survey asks for. */
function moreToMeasure(message: string): string {
  const names = [...new Set((message.match(SURVEY_NAME) ?? []).map(readingWords))].slice(0, 3);
  return names.length === 0 ? "Measure more of the frame" : `Measure more of the frame: ${names.join("; ")}`;
}

export const misMeasured: Question = (r) => {
  const { blunder, survey } = r.geometry;
  if (blunder.kind === "refused" || survey.kind === "refused") {
    const first = survey.kind === "refused" ? survey.refusals[0] : undefined;
    return row(HEAD, {
      answer: "Too little is measured to tell.",
      verdict: "measure first",
      next: r.geometry.missing[0] ?? { kind: "measure", what: moreToMeasure(first?.message ?? "") },
      words: survey.kind === "refused" ? survey.refusals.map((x) => inWords(x.message)) : [],
    });
  }
  const s = survey.value;
  const rows = s.readings.map((c) => [
    readingWords(c.measurement),
    showNumber(c.measured, 1),
    showNumber(c.adjusted, 1),
    showNumber(c.residual, 1),
    c.normalised_residual === null ? "nothing checks it" : showNumber(c.normalised_residual, 1),
    showNumber(c.redundancy, 2),
  ]);
  const tables = [
    {
      title: "Readings, worst first",
      columns: ["Reading", "You read", "All together say", "Off by", "In spreads", "Checked by the rest"],
      rows,
    },
  ];
  const alone = s.uncheckable.map((u) => readingWords(u.measurement));
  const unchecked =
    alone.length === 0
      ? []
      : [`Nothing else checks these; read each a second time, starting afresh: ${alone.join("; ")}.`];
  if (!blunder.value.disagrees) {
    return row(HEAD, {
      answer: `No: ${s.readings.length} readings agree.`,
      verdict: "no problem found",
      about: alone.length > 0 ? `${alone.length} cannot be checked` : undefined,
      figure:
        s.largest_normalised_residual === null
          ? undefined
          : figure(
              "furthest off, in spreads of that reading",
              Math.abs(s.largest_normalised_residual.value),
              "",
              1,
              undefined,
              {
                against: "limit 3.29",
              },
            ),
      tables,
      words: [
        `Together they differ by ${s.global_test_passes ? "no more" : "more"} than careful measuring does: chi-square ${showNumber(s.chi_square, 1)}, ${showNumber(s.chi_square_limit_95, 1)} at most with ${s.degrees_of_freedom} readings to spare.`,
      ],
      notChecked: unchecked,
      sources: survey.sources,
      cautions: cautionsInWords(survey.cautions),
    });
  }
  const wrong = likeliestWrong(blunder.value);
  const first = wrong?.explanation;
  const suspect = wrong?.suspect;
  const name = wrong?.measurement ?? "";
  const reading = s.readings.find((c) => c.measurement === name);
  const off =
    first !== undefined
      ? Math.abs(first.offset)
      : suspect === undefined
        ? 0
        : Math.abs(suspect.predicted_by_others - suspect.measured);
  const unit = name.endsWith("_deg") ? "°" : "mm";
  const shares = (first ?? reading)?.shares_residual_with.map(readingWords) ?? [];
  const words = readingWords(name);
  const causeWords = first === undefined ? "" : first.sentence.replace(/^[^:]*: /, "");
  const likely = first?.corrected[0] ?? suspect?.predicted_by_others;
  const explained = first !== undefined;
  return row(HEAD, {
    answer: `The ${words} disagrees with everything else by ${showNumber(off, off < 10 ? 1 : 0)}${unit === "°" ? "°" : " mm"}.`,
    verdict: "measure first",
    about: shares.length > 0 ? "2 readings" : undefined,
    figure: figure(
      "you read",
      reading?.measured ?? 0,
      unit,
      unit === "°" ? 1 : 0,
      undefined,
      likely === undefined ? {} : { against: `likely ${showNumber(likely, unit === "°" ? 1 : 0)}` },
    ),
    next: {
      kind: "measure",
      what: `Re-measure the ${words}${name.includes("tube_actual") ? ", centre to centre along the tube" : ""}${shares.length > 0 ? `, then the ${shares.join(" and ")}` : ""}`,
      at: donorPath(name),
      ...(blunder.value.next?.step.tool === undefined ? {} : { tool: blunder.value.next.step.tool }),
      accuracy: blunder.value.next?.step.accuracy ?? "± 1 mm",
    },
    words: [
      ...(explained
        ? [`You read ${showNumber(reading?.measured ?? 0, 1)}${unit === "°" ? "°" : " mm"}. Likely ${causeWords}`]
        : [
            `You read ${showNumber(reading?.measured ?? 0, 1)}${unit === "°" ? "°" : " mm"}; the others say ${suspect === undefined ? "otherwise" : `${showNumber(suspect.predicted_by_others, 0)} ± ${showNumber(1.96 * suspect.predicted_sd, 0)}`}. No usual slip explains it.`,
          ]),
      ...(shares.length > 0
        ? [
            `The ${words} and the ${shares.join(" and ")} stand or fall together: the numbers cannot tell which of them is off, so measure both.`,
          ]
        : []),
      "Nothing is corrected for you. Until it is measured again, everything else is reckoned without this reading.",
    ],
    figures: [
      figure("how far off, in spreads of that reading", Math.abs(reading?.normalised_residual ?? 0), "", 1, undefined, {
        against: "limit 3.29",
      }),
    ],
    tables: [
      {
        title: "What would explain it",
        columns: ["Cause", "Reading would be", "Worst reading then, in spreads", "Explains"],
        rows: blunder.value.explanations
          .slice(0, 6)
          .map((e) => [
            capital(e.sentence.replace(/^[^:]*: /, "")),
            e.corrected.map((c) => showNumber(c, 1)).join(", "),
            e.largest_residual_after === null ? "" : showNumber(Math.abs(e.largest_residual_after.value), 1),
            e.explains ? "yes" : "no",
          ]),
      },
      ...tables,
    ],
    notChecked: unchecked,
    sources: survey.sources,
    cautions: cautionsInWords(survey.cautions),
  });
};

const PATHS: Readonly<Record<string, string>> = {
  top_tube_actual_mm: "top_tube_cc",
  top_tube_below_head_tube_top_mm: "top_tube_joint_below_head_top",
  down_tube_joint_above_head_tube_bottom_mm: "down_tube_joint_above_head_bottom",
  axle_to_crown_mm: "fork_ac",
  rake_mm: "fork_rake",
  rear_axle_to_head_tube_top_mm: "rear_axle_to_head_top",
  front_axle_to_head_tube_top_mm: "front_axle_to_head_top",
  bb_to_head_tube_top_mm: "bb_to_head_top",
  bb_to_head_tube_bottom_mm: "bb_to_head_bottom",
  rear_axle_to_seat_cluster_mm: "seat_cluster_to_rear_axle",
  front_axle_to_seat_cluster_mm: "seat_cluster_to_front_axle",
};

/** Where this reading is entered in the donor's document. */
export function donorPath(surveyName: string): string {
  return `donor.measured.${PATHS[surveyName] ?? surveyName.replace(/_(mm|deg)$/, "")}`;
}
