/** Where do unit factors, number signs and thread marks come from? */
import type { SourceRow } from "./source-row.js";

export const quantitySources: readonly SourceRow[] = [
  {
    id: "yard-and-pound-1959",
    title: "International yard and pound agreement, 1959: 1 yard = 0.9144 m and 1 pound = 0.45359237 kg, both exact",
    kind: "standard",
    where: "so 1 in = 25.4 mm and 1 ft = 304.8 mm exactly",
    mark: "memory",
  },
  {
    id: "standard-gravity-1901",
    title: "3rd General Conference on Weights and Measures, 1901: standard gravity 9.80665 m/s2, exact",
    kind: "standard",
    where: "resolution 2",
    mark: "memory",
  },
  {
    id: "pound-force-derived",
    title: "Pound-force, psi and their torques from the pound, the inch and standard gravity",
    kind: "our derivation",
    where: "1 lbf = 0.45359237 kg x 9.80665 m/s2 = 4.4482216152605 N exactly",
    mark: "derived",
  },
  {
    id: "si-brochure-9",
    title: "The International System of Units, 9th edition, 2019",
    kind: "standard",
    where: "prefixes; minute, hour, day; degree, minute and second of arc; decimal sign and digits in threes",
    mark: "memory",
  },
  {
    id: "iso-metric-thread-marks",
    title: "ISO 965-1, general-purpose metric screw threads, tolerances: how a thread is written",
    kind: "standard",
    where: "M, then diameter x pitch in mm; the pitch may be left out for the coarse series",
    mark: "memory",
  },
  {
    id: "inch-thread-habit",
    title: "Inch threads of bicycles are written as diameter in inches x threads per inch",
    kind: "common practice",
    where: "for example 1.37 x 24; pitch in mm = 25.4 / threads per inch",
    mark: "common practice",
  },
  {
    id: "kept-as-written",
    title: "Money and counts are kept as written; nothing is converted",
    kind: "common practice",
    mark: "common practice",
  },
];
