/** How do the buy list and the sum stand in print? */

import { type Reckoning, showNumber, type WorkingTable } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { BookBlock, BookSection } from "../book/index.js";

export function buySection(r: Reckoning): BookSection {
  const row = r.board.find((b) => b.n === 14);
  const { money, alternatives } = r.ledger;
  return {
    title: say("drawing.buy-of-build.what-to-buy-and-what-it"),
    lead: row?.working.words.join(" ") ?? "",
    blocks: [
      ...(row?.working.tables ?? [])
        .filter((t) => !t.title.startsWith("Joints behind") && t.rows.length > 0)
        .map((t) => (t.title === "On hand" ? onHand(t) : list(t))),
      ...(money.kind === "refused"
        ? [{ kind: "list", items: money.refusals.map((x) => x.message) } as const]
        : [
            {
              kind: "table",
              caption: "The sum",
              columns: [{ head: "" }, { head: "Sum", align: "right", share: 10 }, { head: "Budget", share: 24 }],
              rows: [
                [
                  "As chosen",
                  showNumber(money.value.total, 0),
                  against(money.value.budget === undefined ? undefined : money.value.budget - money.value.total),
                ],
                ...alternatives.map((a) => [
                  say("drawing.buy-of-build.with", { name: a.name }),
                  a.total === undefined ? "?" : showNumber(a.total, 0),
                  a.total === undefined ? say("drawing.buy-of-build.a-price-is-not-known") : against(a.toSpare),
                ]),
              ],
            } as const,
          ]),
    ],
  };
}

/** A column that nothing stands in is left out. */
function list(t: WorkingTable): BookBlock {
  const kept = t.columns.map((_, i) => i).filter((i) => t.rows.some((row) => (row[i] ?? "") !== ""));
  return {
    kind: "table",
    caption: t.title,
    columns: kept.map((i) => {
      const head = t.columns[i] ?? "";
      const short = head === "How many" ? "Qty" : head;
      return {
        head: short,
        share: SHARES[i] ?? 10,
        ...(head === "Sum" || head === "How many" ? { align: "right" as const } : {}),
      };
    }),
    rows: t.rows.map((row) => kept.map((i) => row[i] ?? "")),
  };
}

function onHand(t: WorkingTable): BookBlock {
  const lines = t.rows.map(
    ([part = "", count = "", numbers = ""]) => `${count === "1" ? "" : `${count} `}${part}, ${numbers}`,
  );
  return { kind: "paragraph", first: say("drawing.buy-of-build.on-hand"), text: `${lines.join("; ")}.` };
}

const SHARES = [22, 6, 74, 8, 10];

function against(toSpare: number | undefined): string {
  if (toSpare === undefined) return say("drawing.buy-of-build.no-budget-entered");
  return toSpare < 0
    ? say("drawing.buy-of-build.over-by", { toSpare: showNumber(-toSpare, 0) })
    : say("drawing.buy-of-build.within-to-spare", { toSpare: showNumber(toSpare, 0) });
}
