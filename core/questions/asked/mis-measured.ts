/** Question 13: did I mis-measure? */

import { capital } from "../../quantity/index.js";
import { likeliestWrong } from "../../survey/index.js";
import { say } from "../../texts/say.js";
import { donorPath } from "../donor-path.js";
import {
  cautionsInWords,
  figure,
  type Head,
  inWords,
  type Question,
  readingWords,
  row,
  showNumber,
} from "../question.js";
import { sideViewStep, spareReading } from "../side-view-step.js";

const HEAD: Head = { n: 13, question: say("asked.mis-measured.did-i-mis-measure"), stake: "money" };

export const misMeasured: Question = (r) => {
  const { blunder, survey } = r.geometry;
  if (blunder.kind === "refused" || survey.kind === "refused") {
    return row(HEAD, {
      answer: say("asked.mis-measured.too-little-is-measured-to-tell"),
      verdict: "measure first",
      next: sideViewStep(r),
      words: survey.kind === "refused" ? survey.refusals.map((x) => inWords(x.message)) : [],
    });
  }
  const s = survey.value;
  const rows = s.readings.map((c) => [
    readingWords(c.measurement),
    showNumber(c.measured, 1),
    showNumber(c.adjusted, 1),
    showNumber(c.residual, 1),
    c.normalised_residual === null ? say("asked.mis-measured.nothing-checks-it") : showNumber(c.normalised_residual, 1),
    showNumber(c.redundancy, 2),
  ]);
  const tables = [
    {
      title: say("asked.mis-measured.readings-worst-first"),
      columns: [
        "Reading",
        say("asked.mis-measured.you-read"),
        say("asked.mis-measured.all-together-say"),
        say("asked.mis-measured.off-by"),
        say("asked.mis-measured.in-spreads"),
        say("asked.mis-measured.checked-by-the-rest"),
      ],
      rows,
    },
  ];
  const alone = s.uncheckable.map((u) => readingWords(u.measurement));
  const unchecked =
    alone.length === 0
      ? []
      : [say("asked.mis-measured.nothing-else-checks-these-read-each", { alone: alone.join("; ") })];
  if (s.degrees_of_freedom === 0) {
    return row(HEAD, {
      answer: say("asked.mis-measured.not-known-yet-readings-and-none", { readingsCount: s.readings.length }),
      verdict: "measure first",
      about: say("asked.mis-measured.one-more-reading"),
      next: spareReading(r),
      tables,
      notChecked: unchecked,
      sources: survey.sources,
      cautions: cautionsInWords(survey.cautions),
    });
  }
  if (!blunder.value.disagrees) {
    const checked = s.readings.length - alone.length;
    return row(HEAD, {
      // Where most readings stand alone, that they agree says nothing of them.
      answer:
        2 * alone.length > s.readings.length
          ? say("asked.mis-measured.not-that-it-shows-of-readings", { checked, readingsCount: s.readings.length })
          : say("asked.mis-measured.no-readings-agree", { readingsCount: s.readings.length }),
      verdict: "no problem found",
      about: alone.length > 0 ? say("asked.mis-measured.cannot-be-checked", { aloneCount: alone.length }) : undefined,
      figure:
        s.largest_normalised_residual === null
          ? undefined
          : figure(
              say("asked.mis-measured.furthest-off-in-spreads-of-that"),
              Math.abs(s.largest_normalised_residual.value),
              "",
              1,
              undefined,
              {
                against: say("asked.mis-measured.limit-3-29"),
              },
            ),
      tables,
      words: [
        say("asked.mis-measured.together-they-differ-by-than-careful", {
          globalTestPasses: s.global_test_passes ? say("asked.mis-measured.no-more") : "more",
          chiSquare: showNumber(s.chi_square, 1),
          chiSquareLimit95: showNumber(s.chi_square_limit_95, 1),
          degreesOfFreedom: s.degrees_of_freedom,
        }),
      ],
      notChecked: unchecked,
      sources: survey.sources,
      cautions: cautionsInWords(survey.cautions),
    });
  }
  const wrong = likeliestWrong(blunder.value);
  if (wrong === undefined)
    return row(HEAD, {
      answer: say("asked.mis-measured.the-readings-do-not-fit-each"),
      verdict: "measure first",
      about: say("asked.mis-measured.one-more-reading"),
      next: spareReading(r) ?? {
        kind: "measure",
        what: say("questions.side-view-step.measure-the-frame-again-all-readings"),
        at: "donor.measured.chainstay",
        tool: "tape",
      },
      tables,
      notChecked: unchecked,
      sources: survey.sources,
      cautions: cautionsInWords(survey.cautions),
    });
  const first = wrong.explanation;
  const suspect = wrong.suspect;
  const name = wrong.measurement;
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
    answer: say("asked.mis-measured.the-disagrees-with-everything-else-by", {
      words,
      off: showNumber(off, off < 10 ? 1 : 0),
      unit: unit === "°" ? "°" : " mm",
    }),
    verdict: "measure first",
    about: shares.length > 0 ? say("asked.mis-measured.2-readings") : undefined,
    figure: figure(
      say("asked.mis-measured.you-read-2"),
      reading?.measured ?? 0,
      unit,
      unit === "°" ? 1 : 0,
      undefined,
      likely === undefined
        ? {}
        : { against: say("asked.mis-measured.likely", { likely: showNumber(likely, unit === "°" ? 1 : 0) }) },
    ),
    next: {
      kind: "measure",
      what: say("asked.mis-measured.re-measure-the", {
        words,
        name: name.includes("tube_actual") ? say("asked.mis-measured.centre-to-centre-along-the-tube") : "",
        sharesCount: shares.length > 0 ? say("asked.mis-measured.then-the", { shares: shares.join(" and ") }) : "",
      }),
      at: donorPath(name),
      tool: blunder.value.next?.step.tool ?? (unit === "°" ? say("asked.mis-measured.digital-level") : "tape"),
      accuracy: blunder.value.next?.step.accuracy ?? "± 1 mm",
    },
    words: [
      ...(explained
        ? [
            say("asked.mis-measured.you-read-likely", {
              measured: showNumber(reading?.measured ?? 0, 1),
              unit: unit === "°" ? "°" : " mm",
              causeWords,
            }),
          ]
        : [
            say("asked.mis-measured.you-read-the-others-say-no", {
              measured: showNumber(reading?.measured ?? 0, 1),
              unit: unit === "°" ? "°" : " mm",
              suspect:
                suspect === undefined
                  ? "otherwise"
                  : `${showNumber(suspect.predicted_by_others, 0)} ± ${showNumber(1.96 * suspect.predicted_sd, 0)}`,
            }),
          ]),
      ...(shares.length > 0
        ? [say("asked.mis-measured.the-and-the-stand-or-fall", { words, shares: shares.join(" and ") })]
        : []),
      say("asked.mis-measured.nothing-is-corrected-for-you-until"),
    ],
    figures: [
      figure(
        say("asked.mis-measured.how-far-off-in-spreads-of"),
        Math.abs(reading?.normalised_residual ?? 0),
        "",
        1,
        undefined,
        {
          against: say("asked.mis-measured.limit-3-29"),
        },
      ),
    ],
    tables: [
      {
        title: say("asked.mis-measured.what-would-explain-it"),
        columns: [
          "Cause",
          say("asked.mis-measured.reading-would-be"),
          say("asked.mis-measured.worst-reading-then-in-spreads"),
          "Explains",
        ],
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
