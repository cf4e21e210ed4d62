/** How do the joints, their remedies and the buy list stand in print? */
import type { JointAnswer, RemedyOffer } from "@coldset/core/fit";
import { type Reckoning, showNumber } from "@coldset/core/questions";
import { gapBars } from "../bicycle/index.js";
import type { BookBlock, BookSection } from "../book/index.js";
import { numberWords } from "./figure-words.js";
import { ruleCautions } from "./rule-cautions.js";

/** @param tasks false while a refusal stands: then no remedy is printed */
export function jointsSection(r: Reckoning, tasks: boolean): BookSection {
  const looked = r.joints.joints.filter((j) => j.verdict !== "not checked yet");
  const withWays = looked.filter((j) => j.remedies.length > 0);
  const meanings = bandMeanings(looked);
  const beside = r.rules.filter((f) => !f.onChosen);
  return {
    title: "Joints",
    lead: "Where two parts meet: the verdict, the numbers that decided it, and what they are held against.",
    newSheet: true,
    blocks: [
      {
        kind: "table",
        columns: [
          { head: "", share: 5 },
          { head: "Joint", share: 15 },
          { head: "Verdict", share: 12 },
          { head: "Why, and by which numbers", share: 50 },
        ],
        rows: looked.map((j) => [j.id, j.title, j.verdict, whyWords(j)]),
      },
      ...(meanings === "" ? [] : [{ kind: "paragraph", first: "What ± means here.", text: `${meanings}.` } as const]),
      ...(tasks && withWays.length > 0
        ? [
            { kind: "heading", text: "Ways to make it fit" } as const,
            ...withWays.map((j) => remedies(j, r.joints.reckoned.get(j.id))),
          ]
        : []),
      ...(tasks ? room(looked) : []),
      ...(beside.length === 0
        ? []
        : [{ kind: "heading", text: "Rules on parts beside the chosen ones" } as const, ...ruleCautions(beside)]),
    ],
  };
}

function whyWords(j: JointAnswer): string {
  const numbers = j.numbers.map(numberWords).join("; ");
  return numbers === "" ? j.reason : `${j.reason} ${numbers.charAt(0).toUpperCase()}${numbers.slice(1)}.`;
}

/** What the ± in the table mean; they are not all the same. */
function bandMeanings(joints: readonly JointAnswer[]): string {
  const means = joints.flatMap((j) =>
    j.numbers.flatMap((n) => (n.band === undefined ? [] : [`${j.id}: ${n.band.means}`])),
  );
  const byMeaning = new Map<string, string[]>();
  for (const line of means) {
    const [id = "", ...rest] = line.split(": ");
    const ids = byMeaning.get(rest.join(": ")) ?? [];
    if (!ids.includes(id)) byMeaning.set(rest.join(": "), [...ids, id]);
  }
  return [...byMeaning].map(([meaning, ids]) => `${meaning} (${ids.join(", ")})`).join("; ");
}

function remedies(j: JointAnswer, taken: RemedyOffer | undefined): BookBlock {
  return {
    kind: "table",
    caption: `${j.id} ${j.title}`,
    columns: [
      { head: "Way", share: 28 },
      { head: "Hours", align: "right", share: 6 },
      { head: "Cost", align: "right", share: 6 },
      { head: "Back?", share: 7 },
      { head: "Risk", share: 8 },
      { head: "Where, and what goes with it", share: 30 },
    ],
    rows: j.remedies.map((m) => [
      `${m.what}${m.id === taken?.id ? " (reckoned with)" : ""}`,
      showNumber(m.hours, 1),
      showNumber(m.cost, m.cost % 1 === 0 ? 0 : 2),
      m.reversible ? "yes" : "no",
      { L: "low", M: "medium", H: "high" }[m.risk],
      m.refused ??
        [
          m.here ? "in this shop" : `ask a builder (${m.missing.map((a) => a.replaceAll("_", " ")).join(", ")})`,
          ...m.conditions,
          ...(m.massG === 0 ? [] : [`${m.massG > 0 ? "heavier" : "lighter"} by ${showNumber(Math.abs(m.massG), 0)} g`]),
          ...(m.rules.length === 0 ? [] : [`rules ${m.rules.join(", ")}`]),
          ...m.sideEffects.map((s) => s.words),
        ].join("; "),
    ]),
  };
}

/** Room round the tyres: every gap in mm that has a least size. */
function room(joints: readonly JointAnswer[]): readonly BookBlock[] {
  const gaps = joints
    .filter((j) => j.id === "J15")
    .flatMap((j) => j.numbers)
    .filter((n) => n.unit === "mm" && n.limit?.low !== undefined && n.limit.high === undefined);
  if (gaps.length === 0) return [];
  const rows = gaps.map((n) => ({
    name: n.name,
    gapMm: n.value,
    ...(n.band === undefined ? {} : { band: { ...n.band, means: "see left" }, note: n.band.means }),
    wantedMm: n.limit?.low ?? 0,
  }));
  return [
    { kind: "heading", text: "Room round the tyres" },
    { kind: "drawing", drawing: gapBars(rows, "wide"), caption: "Gaps in mm on one scale; hatched is what is wanted." },
  ];
}

export function buySection(r: Reckoning): BookSection {
  const row = r.board.find((b) => b.n === 14);
  const { money, alternatives } = r.ledger;
  return {
    title: "What to buy, and what it comes to",
    lead: row?.working.words[0] ?? "",
    blocks: [
      ...(row?.working.tables ?? [])
        .filter((t) => !t.title.startsWith("Joints behind") && t.rows.length > 0)
        .map(
          (t): BookBlock => ({
            kind: "table",
            caption: t.title,
            columns: t.columns.map((head, i) => ({
              head,
              share: BUY_SHARES[i] ?? 10,
              ...(head === "Sum" || head === "How many" ? { align: "right" as const } : {}),
            })),
            rows: t.rows,
          }),
        ),
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
                  `With ${a.name}`,
                  a.total === undefined ? "?" : showNumber(a.total, 0),
                  a.total === undefined ? "a price is not known" : against(a.toSpare),
                ]),
              ],
            } as const,
          ]),
    ],
  };
}

const BUY_SHARES = [20, 8, 50, 9, 10];

function against(toSpare: number | undefined): string {
  if (toSpare === undefined) return "no budget entered";
  return toSpare < 0 ? `over by ${showNumber(-toSpare, 0)}` : `within, ${showNumber(toSpare, 0)} to spare`;
}
