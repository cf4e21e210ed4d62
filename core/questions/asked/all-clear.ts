/** Question 6: will the crank clear the stay, and the tyre clear everything? */
import { gapAtRadiusMm } from "../../geometry/index.js";
import { figure, type Head, heaviest, joint, type Question, type Reckoned, row, showNumber } from "../question.js";

const HEAD: Head = { n: 6, question: "Will the crank clear the stay, the tyre clear everything?", stake: "money" };

/** Does the guard pass between the chainstays, or must it be trimmed there? Gap in the measured profile at the tyre's outside. */
function guardAtStays(r: Reckoned): { readonly words: string; readonly trim: boolean } | undefined {
  const guards = r.resolved.at.guards;
  const radius = r.view.rearRadiusMm;
  const stations = r.resolved.donor.gaps_rear.chainstay_inner_at_radius;
  if (guards?.kind !== "guards" || guards.ports.width === undefined || radius === undefined || stations === undefined)
    return undefined;
  const gap = gapAtRadiusMm(
    stations.map(([radius_mm, inner_gap_mm]) => ({ radius_mm, inner_gap_mm })),
    radius,
  );
  if (gap === undefined)
    return {
      trim: true,
      words: `The guard is ${guards.ports.width} wide; how far apart the chainstays stand at the tyre's outside, ${showNumber(radius, 0)} from the axle, is not measured.`,
    };
  const trim = guards.ports.width > gap;
  return {
    trim,
    words: trim
      ? `The guard is ${guards.ports.width} wide, the chainstays stand ${showNumber(gap, 1)} apart at the tyre's outside: trim it there on both sides.`
      : `The guard, ${guards.ports.width} wide, passes the chainstays (${showNumber(gap, 1)}).`,
  };
}

/** Inside a sentence; a size or an id in front stays as it is. */
const lower = (words: string) => words.replace(/^[A-Z](?=[a-z])/, (c) => c.toLowerCase());

export const allClear: Question = (r) => {
  const joints = ["J15", "J16", "J33", "J34", "J4"].map((id) => joint(r, id));
  const worst = heaviest(joints);
  const gaps = joints.flatMap((j) =>
    j.numbers
      .filter((n) => n.unit === "mm" && n.limit?.low !== undefined && /gap|clear|toe|room/i.test(n.name))
      .map((n) => ({ j, n })),
  );
  const nearest = [...gaps].sort((a, b) => a.n.value - (a.n.limit?.low ?? 0) - (b.n.value - (b.n.limit?.low ?? 0)))[0];
  const guard = guardAtStays(r);
  const trim = worst?.verdict === "fits" && guard?.trim === true;
  const verdict = trim ? "fits with work" : (worst?.verdict ?? "not checked yet");
  const answer = trim
    ? "All clear bare. The guard must be trimmed at the chainstays."
    : verdict === "fits"
      ? "All clear, as far as it was measured."
      : verdict === "fits with work"
        ? `Clears with work: ${lower(worst?.reason ?? "")}`
        : verdict === "will not fit"
          ? `No: ${lower(worst?.reason ?? "")}`
          : verdict === "measure first"
            ? worst?.reason.startsWith("Not known yet") === true
              ? worst.reason
              : `Not known yet: ${worst?.reason}`
            : "Not checked yet.";
  return row(HEAD, {
    answer,
    verdict,
    about: trim ? "guard" : verdict === "fits" ? undefined : worst?.title,
    figure:
      nearest === undefined
        ? undefined
        : figure(nearest.n.name, nearest.n.value, "mm", 1, nearest.n.band, {
            against: nearest.n.limit?.words ?? "",
            limit: {
              ...(nearest.n.limit?.low === undefined ? {} : { low: nearest.n.limit.low }),
              words: nearest.n.limit?.words ?? "",
            },
          }),
    next: trim
      ? { kind: "decide", what: "Trim the guard at the chainstays, or leave it off" }
      : (worst?.next ?? joints.find((j) => j.next !== undefined)?.next),
    words: [
      "Gaps are taken at the tyre's widest point, in the profile you measured, and after the stays are set wider. Frame and wheel flex by 1 to 2 mm.",
    ],
    figures: gaps.map(({ n }) =>
      figure(
        n.name,
        n.value,
        "mm",
        1,
        n.band,
        n.limit === undefined
          ? {}
          : {
              against: n.limit.words,
              limit: { ...(n.limit.low === undefined ? {} : { low: n.limit.low }), words: n.limit.words },
            },
      ),
    ),
    notChecked: ["Heels, panniers and the hose: at the dry fit."],
    joints,
  });
};
