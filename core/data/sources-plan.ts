/** What do the plan and the ledgers rest on? */
import type { SourceRow } from "./source-row.js";

export const planSources: readonly SourceRow[] = [
  {
    id: "critical-path-textbook",
    title: "Taylor, Introduction to Management Science, solutions to chapter 8 (network flow and project planning)",
    kind: "book",
    where: "earliest and latest times, slack; two worked networks, tested in references/critical-path",
    mark: "read",
  },
  {
    id: "plan-derivation",
    title: "Evening plan: order of starts, what may be left out, bounds",
    kind: "our derivation",
    where: "docs/methods/schedule.md",
    mark: "derived",
  },
  {
    id: "bin-packing-bound",
    title: "Martello and Toth, Knapsack Problems (1990), lower bound for bin packing",
    kind: "book",
    where: "the bound called L2; argued again in docs/methods/schedule.md",
    mark: "memory",
  },
  {
    id: "workshop-order",
    title: "Order of work: dry fit, then bend and heat, then blast, then paint, cure, final build",
    kind: "common practice",
    where: "no single source",
    mark: "common practice",
  },
  {
    id: "mass-bands-practice",
    title: "Mass of a part: weighed to 5 g, or the mean of its class to 20 %",
    kind: "common practice",
    where: "no single source",
    mark: "common practice",
  },
  {
    id: "ledger-derivation",
    title: "Sums, budget verdict and the search for swaps that fit",
    kind: "our derivation",
    where: "docs/methods/ledger.md",
    mark: "derived",
  },
];
