import type { SourceRow } from "./source-row.js";

/** What do the numeric core and the survey of a frame stand on? */
export const surveySources: readonly SourceRow[] = [
  {
    id: "survey-baarda",
    title: "W. Baarda, A testing procedure for use in geodetic networks, 1968",
    kind: "paper",
    where: "test of one reading at 0.1 %, power 80 %: limit 3.29, delta0 4.13",
    mark: "memory",
  },
  {
    id: "survey-ghilani",
    title: "C. Ghilani, Adjustment Computations",
    kind: "book",
    where: "chapters on weighted and non-linear least squares, blunder detection; example of differential levelling",
    mark: "memory",
  },
  {
    id: "survey-chi-square-table",
    title: "Upper limits of the chi-square distribution, 95 %",
    kind: "book",
    where: "the usual table; computed here from the incomplete gamma function",
    mark: "memory",
  },
  {
    id: "survey-workshop-sigma",
    title: "How surely a careful workshop measures a frame",
    kind: "common practice",
    where:
      "method M2: angles 0.3 deg, head tube and joints 1 mm, down tube, wheelbase, BB height, axle to crown 2 mm, others 1.5 mm",
    mark: "common practice",
  },
  {
    id: "survey-side-view",
    title: "Side view of a diamond frame: points from lengths and angles",
    kind: "our derivation",
    where: "method M1, plane trigonometry",
    mark: "derived",
  },
  {
    id: "survey-slips",
    title: "Slips of hand and eye when measuring, and how often each happens",
    kind: "common practice",
    where: "method M2; the order of likelihood is our own judgement",
    mark: "common practice",
  },
  {
    id: "levelling-network-sample",
    title: "Level network with published output: one fixed height, eight height differences",
    kind: "page",
    where: "sample output of an open network adjustment",
    mark: "read",
  },
  {
    id: "nist-strd",
    title: "NIST Statistical Reference Datasets: Misra1a, DanWood, Norris",
    kind: "page",
    where: "certified values of nonlinear and linear regression; DanWood and Norris data from memory",
    mark: "memory",
  },
];
