/** How do the joints and their remedies stand in print? Open ones large, with numbers and ways; those that fit a line each. */

import type { DecidingNumber, JointAnswer, RemedyOffer } from "@coldset/core/fit";
import { type Reckoning, showNumber } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { gapBars } from "../bicycle/index.js";
import type { BookBlock, BookSection, JointEntry } from "../book/index.js";
import { numberCells } from "./figure-words.js";
import { ruleCautions } from "./rule-cautions.js";
import { sentence, stepWords } from "./words.js";

const GROUPS = [
  ["will not fit", say("drawing.joints-of-build.will-not-fit")],
  ["measure first", "Measure first"],
  ["fits with work", say("drawing.joints-of-build.fits-with-work")],
] as const;

/** @param tasks false while a refusal stands: then no remedy is printed */
export function jointsSection(r: Reckoning, tasks: boolean): BookSection {
  const looked = r.joints.joints.filter((j) => j.verdict !== "not checked yet");
  const fits = looked.filter((j) => j.verdict === "fits");
  const beside = r.rules.filter((f) => !f.onChosen);
  const groups = GROUPS.flatMap(([verdict, title]): BookBlock[] => {
    const joints = looked.filter((j) => j.verdict === verdict);
    return joints.length === 0
      ? []
      : [
          { kind: "heading", text: title },
          { kind: "joints", joints: joints.map((j) => large(j, r.joints.reckoned.get(j.id), tasks)) },
        ];
  });
  // Those not checked yet carry cautions too.
  const shownLarge: readonly string[] = GROUPS.map(([verdict]) => verdict);
  const noted = r.joints.joints.filter((j) => !shownLarge.includes(j.verdict) && j.cautions.length > 0);
  return {
    title: "Joints",
    lead: say("drawing.joints-of-build.where-two-parts-meet-those-that"),
    blocks: [
      ...groups,
      ...(fits.length === 0
        ? []
        : ([
            { kind: "heading", text: "These fit" },
            { kind: "joints", joints: fits.map(line) },
            { kind: "paragraph", first: "What ± means.", text: bandMeanings(looked) },
          ] as const)),
      ...(noted.length === 0
        ? []
        : ([
            {
              kind: "cautions",
              items: noted.map((j) => ({ first: `${j.id}.`, text: j.cautions.map((c) => c.message).join(" ") })),
            },
          ] as const)),
      ...(beside.length === 0
        ? []
        : [
            { kind: "heading", text: say("drawing.joints-of-build.rules-on-parts-weighed-beside-the") } as const,
            ...ruleCautions(r, beside),
          ]),
      ...(tasks ? room(looked) : []),
    ],
  };
}

function large(j: JointAnswer, taken: RemedyOffer | undefined, tasks: boolean): JointEntry {
  return {
    id: j.id,
    title: j.title,
    verdict: j.verdict,
    reason: j.reason,
    numbers: j.numbers.map(numberCells),
    ...(j.next === undefined ? {} : { next: stepWords(j.next) }),
    ways: tasks ? j.remedies.map((m) => ({ what: m.what, facts: wayFacts(m), taken: m.id === taken?.id })) : [],
    cautions: [
      ...j.rules.map((f) => ({ first: `${sentence(f.level).replace(".", "")} ${f.rule}.`, text: sentence(f.why) })),
      ...j.cautions.map((c) => ({ first: "", text: c.message })),
    ],
  };
}

function line(j: JointAnswer): JointEntry {
  const n = deciding(j.numbers);
  const [name, value] = n === undefined ? ["", ""] : numberCells(n);
  return {
    id: j.id,
    title: j.title,
    verdict: j.verdict,
    reason: j.reason,
    line: true,
    ...(n === undefined ? {} : { number: `${name} ${value}` }),
  };
}

/** The first number with a limit that is not simply equal (a 28.6 on a 28.6 needs no figure beside the words). */
function deciding(numbers: readonly DecidingNumber[]): DecidingNumber | undefined {
  return numbers.find((n) => n.limit !== undefined && n.unit !== "count" && Math.abs(n.value) > 1e-9);
}

/** "2.0 h, cost 17, cannot be taken back, medium risk, in this shop. The rear becomes 135." */
function wayFacts(m: RemedyOffer): string {
  if (m.refused !== undefined) return say("drawing.joints-of-build.refused", { refused: sentence(m.refused) });
  const facts = [
    `${showNumber(m.hours, m.hours % 1 === 0 ? 0 : 1)} h`,
    say("drawing.joints-of-build.cost", { cost: showNumber(m.cost, m.cost % 1 === 0 ? 0 : 2) }),
    ...(m.massG === 0
      ? []
      : [
          say("drawing.joints-of-build.by-g", {
            massG: m.massG > 0 ? "heavier" : "lighter",
            massG2: showNumber(Math.abs(m.massG), 0),
          }),
        ]),
    m.reversible
      ? say("drawing.joints-of-build.can-be-taken-back")
      : say("drawing.joints-of-build.cannot-be-taken-back"),
    say("drawing.joints-of-build.risk", { part: { L: "low", M: "medium", H: "high" }[m.risk] }),
    m.here
      ? say("drawing.joints-of-build.in-this-shop")
      : m.missing.length === 0
        ? say("drawing.joints-of-build.not-in-this-shop-ask-a")
        : say("drawing.joints-of-build.not-in-this-shop-ask-a-2", {
            missing: m.missing.map((a) => a.replaceAll("_", " ")).join(", "),
          }),
    ...m.conditions,
    ...(m.part === undefined ? [] : [say("drawing.joints-of-build.with", { part: m.part })]),
    ...(m.rules.length === 0 ? [] : [say("drawing.joints-of-build.under-rule", { rules: m.rules.join(", ") })]),
  ].join(", ");
  return [sentence(facts), ...m.sideEffects.map((s) => sentence(s.words))].join(" ");
}

/** What the ± mean; they are not all the same. */
function bandMeanings(joints: readonly JointAnswer[]): string {
  const byMeaning = new Map<string, string[]>();
  for (const j of joints)
    for (const n of j.numbers) {
      if (n.band === undefined) continue;
      const ids = byMeaning.get(n.band.means) ?? [];
      if (!ids.includes(j.id)) byMeaning.set(n.band.means, [...ids, j.id]);
    }
  const [usual, ...others] = [...byMeaning].sort((a, b) => b[1].length - a[1].length);
  if (usual === undefined) return say("drawing.joints-of-build.a-number-is-as-entered-or");
  const rest = others.map(([meaning, ids]) => `${ids.join(", ")}: ${meaning}`).join("; ");
  return say("drawing.joints-of-build.usually-a-number-without-is-as", {
    usual: usual[0],
    rest: rest === "" ? "" : say("drawing.joints-of-build.at", { rest }),
  });
}

/** Room round the tyres: every gap in mm that has a least size. */
function room(joints: readonly JointAnswer[]): readonly BookBlock[] {
  const gaps = joints
    .filter((j) => j.id === "J15")
    .flatMap((j) => j.numbers)
    .filter((n) => n.unit === "mm" && n.limit?.low !== undefined && n.limit.high === undefined);
  if (gaps.length === 0) return [];
  const rows = gaps.map((n) => {
    const note = n.band?.means.replace(
      "± 3 on the radius estimated from the tyre's size",
      "radius estimated from the size",
    );
    return {
      name: n.name.replace("gap at the ", "gap, "),
      gapMm: n.value,
      ...(n.band === undefined || note === undefined ? {} : { band: { ...n.band, means: note }, note }),
      wantedMm: n.limit?.low ?? 0,
    };
  });
  return [
    { kind: "heading", text: say("drawing.joints-of-build.room-round-the-tyres") },
    {
      kind: "drawing",
      drawing: gapBars(rows, "wide"),
      caption: say("drawing.joints-of-build.gaps-in-mm-on-one-scale"),
    },
  ];
}
