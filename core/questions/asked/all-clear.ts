/** Question 6: will the crank clear the stay, and the tyre clear everything? */

import type { JointAnswer } from "../../fit/index.js";
import { gapAtRadiusMm } from "../../geometry/index.js";
import type { NextStep } from "../../quantity/index.js";
import type { FiredRule } from "../../safety/index.js";
import { say } from "../../texts/say.js";
import { figure, type Head, heaviest, joint, type Question, type Reckoned, row, showNumber } from "../question.js";

const HEAD: Head = { n: 6, question: say("asked.all-clear.will-the-crank-clear-the-stay"), stake: "money" };

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
      words: say("asked.all-clear.the-guard-is-wide-how-far", {
        width: guards.ports.width,
        radius: showNumber(radius, 0),
      }),
    };
  const trim = guards.ports.width > gap;
  return {
    trim,
    words: trim
      ? say("asked.all-clear.the-guard-is-wide-the-chainstays", { width: guards.ports.width, gap: showNumber(gap, 1) })
      : say("asked.all-clear.the-guard-wide-passes-the-chainstays", {
          width: guards.ports.width,
          gap: showNumber(gap, 1),
        }),
  };
}

/** "side gap at the chainstays 5.8 mm, 6 are wanted." */
function tightWords(tight: FiredRule): string {
  const words = lower(tight.here);
  return / gap at the /.test(words) ? words.replace(/\.$/, ", 6 are wanted.") : words;
}

/** What would turn it: with a part of the bin where there is one, else the cheapest. */
function cure(worst: JointAnswer | undefined): NextStep | undefined {
  const offers = worst?.verdict === "fits" ? [] : (worst?.remedies ?? []).filter((o) => o.refused === undefined);
  const offer = offers.find((o) => o.part !== undefined) ?? offers[0];
  return offer === undefined ? undefined : { kind: "decide", what: offer.what };
}

/** Inside a sentence; a size or an id in front stays as it is. */
const lower = (words: string) => words.replace(/^[A-Z](?=[a-z])/, (c) => c.toLowerCase());

export const allClear: Question = (r) => {
  const joints = ["J15", "J16", "J33", "J34", "J4"].map((id) => joint(r, id));
  // A rim whose wall or width nobody has measured says nothing about gaps: only a tyre that does not fit its rim counts.
  const tyreOnRim = joint(r, "J16");
  const worst = heaviest(joints.filter((j) => j.id !== "J16" || j.verdict !== "measure first"));
  const tight = r.rules.find((f) => f.rule === "S14" && f.level === "flag" && f.onChosen);
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
    ? say("asked.all-clear.the-guard-must-be-trimmed-at", {
        tight:
          tight === undefined
            ? say("asked.all-clear.all-clear-bare")
            : say("asked.all-clear.clears-but-tight", { tight: tightWords(tight) }),
      })
    : verdict === "fits"
      ? tight === undefined
        ? say("asked.all-clear.all-clear-as-far-as-it")
        : say("asked.all-clear.clears-but-tight", { tight: tightWords(tight) })
      : verdict === "fits with work"
        ? say("asked.all-clear.clears-with-work", { reason: lower(worst?.reason ?? "") })
        : verdict === "will not fit"
          ? say("asked.all-clear.no", { reason: lower(worst?.reason ?? "") })
          : verdict === "measure first"
            ? worst?.reason.startsWith("Not known yet") === true
              ? worst.reason
              : say("asked.all-clear.not-known-yet", { reason: worst?.reason })
            : say("asked.all-clear.not-checked-yet");
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
      ? { kind: "decide", what: say("asked.all-clear.trim-the-guard-at-the-chainstays") }
      : (worst?.next ?? cure(worst) ?? joints.find((j) => j.next !== undefined)?.next),
    words: [
      ...(tight === undefined ? [] : [say("asked.all-clear.under-6-mm-a-stone-or")]),
      ...(tyreOnRim.verdict === "measure first"
        ? [say("asked.all-clear.tyre-on-rim", { reason: lower(tyreOnRim.reason) })]
        : []),
      say("asked.all-clear.gaps-are-taken-at-the-tyre"),
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
    notChecked: [say("asked.all-clear.heels-panniers-and-the-hose-at")],
    joints,
  });
};
