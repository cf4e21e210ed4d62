/**
 * Which ring and sprocket make a chain fit between fixed centres (hub gear or single speed, vertical dropouts)?
 * Inputs: chainstayMm (rear axle to BB axis, straight) and how well it is known: chainstayHalfWidthMm, the half-width of
 *   its 95 % band, or nothing where it is not known; pairs of ring and sprocket in teeth; the slack allowed in centre
 *   distance (0 to 0.8 is usual); the accuracy a decision needs (0.3); wear in percent of chain length (0.5 = worn out).
 * Answer: for each pair the number of links, the centre distance at which they are tight, the slack, the range of
 *   chainstays for which it fits, the chance that it does, the slack when worn, and a verdict; over all pairs the chance
 *   that one of them fits, and what to measure first where the chainstay is not known well enough.
 * Formula: `centreForLinks`; slack = that centre distance - chainstay. Chances: the chainstay is normally spread with
 *   sd = half-width / 1.96. Worn: slack + wear x links x dC/dn.
 * Limits: new chain, true round sprockets. A ring out of round by 0.5 takes that much from the window. Wear opens every
 *   fixed-centre drive: plan a tensioner or an eccentric. Sources: iso-606, drive-fixed-centres.
 */

import {
  type Answer,
  answered,
  type Band,
  type Caution,
  type JointVerdict,
  type NextStep,
  type Refusal,
  refused,
} from "../quantity/index.js";
import { say } from "../texts/say.js";
import { CHAIN_PITCH_MM, centreForLinks, centrePerPitch, chainPitches } from "./chain-length.js";
import { chanceInside, type Range } from "./normal-chance.js";

export interface FixedCentresInput {
  readonly chainstayMm: number;
  readonly chainstayHalfWidthMm?: number;
  readonly pairs: readonly { readonly ring: number; readonly cog: number }[];
  readonly slackLeastMm?: number;
  readonly slackMostMm?: number;
  readonly accuracyNeededMm?: number;
  readonly wearPercent?: number;
  readonly halfLinkAllowed?: boolean;
  readonly pitchMm?: number;
  /** What the hub gear's sheet asks for, where there is one. */
  readonly leastRingOverCog?: number;
  readonly leastCog?: number;
}

export interface FixedCentresPair {
  readonly ring: number;
  readonly cog: number;
  readonly links: number;
  readonly half_link: boolean;
  readonly centre_for_links_mm: number;
  readonly slack_mm: number;
  readonly fits_if_chainstay_from_mm: number;
  readonly fits_if_chainstay_to_mm: number;
  /** Left out where it is not known how well the chainstay is known. */
  readonly chance?: number;
  readonly slack_when_worn_mm: number;
  readonly verdict: JointVerdict;
  readonly allowed_by_hub: boolean;
  readonly note: string;
}

export interface FixedCentres {
  readonly verdict: JointVerdict;
  readonly pairs: readonly FixedCentresPair[];
  readonly chance_that_any_fits?: number;
  readonly accuracy_needed_mm: number;
  readonly next: NextStep | null;
}

const EPS = 1e-9;

export function fixedCentres(q: FixedCentresInput): Answer<FixedCentres> {
  const pitch = q.pitchMm ?? CHAIN_PITCH_MM;
  const least = q.slackLeastMm ?? 0;
  const most = q.slackMostMm ?? 0.8;
  const needed = q.accuracyNeededMm ?? 0.3;
  const wear = (q.wearPercent ?? 0.5) / 100;
  const half = q.chainstayHalfWidthMm;
  const refusals = check(q, pitch, least, most);
  if (refusals.length > 0) return refused(refusals);

  const sd = half === undefined ? undefined : half / 1.959964;
  const allWindows: Range[] = [];
  const bands: Record<string, Band> = {};
  const pairs = q.pairs.map(({ ring, cog }, index): FixedCentresPair => {
    const drive = { ring, cog, pitchMm: pitch };
    const wanted = chainPitches({ ...drive, chainstayMm: q.chainstayMm + (least + most) / 2 });
    const slackOf = (links: number): number => centreForLinks({ ...drive, links }) - q.chainstayMm;
    const even = 2 * Math.round(wanted / 2);
    const evenFits = slackOf(even) >= least - EPS && slackOf(even) <= most + EPS;
    const links = evenFits || q.halfLinkAllowed !== true ? even : Math.round(wanted);
    const centre = centreForLinks({ ...drive, links });
    const slack = centre - q.chainstayMm;
    const windows = windowsWithinReach(
      drive,
      links,
      q.halfLinkAllowed === true ? 1 : 2,
      q.chainstayMm,
      sd,
      least,
      most,
    );
    const allowed =
      (q.leastRingOverCog === undefined || ring / cog >= q.leastRingOverCog - EPS) &&
      (q.leastCog === undefined || cog >= q.leastCog);
    if (allowed) allWindows.push(...windows);
    const inWindow = slack >= least - EPS && slack <= most + EPS;
    const { verdict, note } = judge(q.chainstayMm, half, needed, slack, least, most, inWindow, windows);
    if (half !== undefined) {
      bands[`pairs.${index}.slack_mm`] = { low: slack - half, high: slack + half, means: "95 %" };
    }
    const chance = sd === undefined ? undefined : sd > 0 ? chanceInside(q.chainstayMm, sd, windows) : inWindow ? 1 : 0;
    return {
      ring,
      cog,
      links,
      half_link: links % 2 !== 0,
      centre_for_links_mm: centre,
      slack_mm: slack,
      fits_if_chainstay_from_mm: centre - most,
      fits_if_chainstay_to_mm: centre - least,
      ...(chance === undefined ? {} : { chance }),
      slack_when_worn_mm: slack + wear * links * centrePerPitch({ ...drive, chainstayMm: q.chainstayMm }),
      verdict: allowed ? verdict : "will not fit",
      allowed_by_hub: allowed,
      note: allowed ? note : say("drive.fixed-centres.the-hub-gear-does-not-allow"),
    };
  });

  const usable = pairs.filter((pair) => pair.allowed_by_hub);
  const verdict = (["fits", "measure first"] as const).find((v) => usable.some((pair) => pair.verdict === v));
  const anyChance =
    sd === undefined
      ? undefined
      : sd > 0
        ? chanceInside(q.chainstayMm, sd, allWindows)
        : usable.some((pair) => pair.verdict === "fits")
          ? 1
          : 0;
  const value: FixedCentres = {
    verdict: verdict ?? "will not fit",
    pairs,
    ...(anyChance === undefined ? {} : { chance_that_any_fits: anyChance }),
    accuracy_needed_mm: needed,
    next: verdict === "measure first" ? measureChainstay(needed) : null,
  };
  return answered(value, { bands, sources: ["iso-606", "drive-fixed-centres"], cautions: cautionsFor(value, wear) });
}

/** The ranges of chainstay that fit some number of links, as far out as the chainstay may still be (6 sd). */
function windowsWithinReach(
  drive: { readonly ring: number; readonly cog: number; readonly pitchMm: number },
  links: number,
  step: number,
  chainstayMm: number,
  sd: number | undefined,
  least: number,
  most: number,
): readonly Range[] {
  const reach = 6 * (sd ?? 0);
  const windows: Range[] = [];
  for (const way of [-step, step]) {
    for (let n = way < 0 ? links : links + step; ; n += way) {
      const at = centreForLinks({ ...drive, links: n });
      if (Number.isNaN(at)) break;
      const range = { fromMm: at - most, toMm: at - least };
      const past = way < 0 ? range.toMm < chainstayMm - reach : range.fromMm > chainstayMm + reach;
      if (past) break;
      windows.push(range);
    }
  }
  return windows;
}

function judge(
  chainstay: number,
  half: number | undefined,
  needed: number,
  slack: number,
  least: number,
  most: number,
  inWindow: boolean,
  windows: readonly Range[],
): { verdict: JointVerdict; note: string } {
  const says = say("drive.fixed-centres.slack-mm-allowed-to", { slack: slack.toFixed(2), least, most });
  if (half === undefined) {
    return { verdict: "measure first", note: say("drive.fixed-centres.but-it-is-not-known-how", { says }) };
  }
  const low = chainstay - half;
  const high = chainstay + half;
  const inside = windows.some((w) => low >= w.fromMm - EPS && high <= w.toMm + EPS);
  const outside = windows.every((w) => high < w.fromMm || low > w.toMm);
  if (inside) return { verdict: "fits", note: say("drive.fixed-centres.the-whole-band-fits", { says }) };
  if (outside)
    return { verdict: "will not fit", note: say("drive.fixed-centres.no-chain-of-whole-links-fits", { says }) };
  if (half > needed + EPS) {
    return {
      verdict: "measure first",
      note: say("drive.fixed-centres.mm-is-too-wide-to-tell", { says, half: half.toFixed(2) }),
    };
  }
  if (!inWindow) {
    const off = slack < least ? least - slack : slack - most;
    return {
      verdict: "will not fit",
      note: say("drive.fixed-centres.off-by-mm-a-near-miss", { says, off: off.toFixed(2) }),
    };
  }
  const over = slack + half - most;
  const under = least - (slack - half);
  const edge =
    over > EPS
      ? say("drive.fixed-centres.would-be-over", { slack: (slack + half).toFixed(2), over: over.toFixed(2) })
      : "";
  const tight =
    under > EPS
      ? say("drive.fixed-centres.would-be-too-tight", { slack: (slack - half).toFixed(2), under: under.toFixed(2) })
      : "";
  return {
    verdict: "fits",
    note: say("drive.fixed-centres.feel-it-on-the-stand", { says, reasons: [edge, tight].filter(Boolean).join(", ") }),
  };
}

function measureChainstay(needed: number): NextStep {
  return {
    kind: "measure",
    what: say("drive.fixed-centres.chainstay-rear-axle-to-bb-axis"),
    at: "donor.measured.chainstay",
    tool: say("drive.fixed-centres.trammel-or-long-calliper-between-two"),
    accuracy: `± ${needed} mm`,
    how: say("drive.fixed-centres.along-each-stay-both-sides-three"),
  };
}

function cautionsFor(value: FixedCentres, wear: number): readonly Caution[] {
  const cautions: Caution[] = [];
  const first = value.pairs[0];
  if (first !== undefined && wear > 0) {
    cautions.push({
      code: "chain-wear-opens-the-slack",
      at: "pairs[0].slack_when_worn_mm",
      message: say("drive.fixed-centres.at-wear-the-slack-of-grows", {
        wear: (wear * 100).toFixed(1),
        ring: first.ring,
        cog: first.cog,
        slackWhenWornMm: first.slack_when_worn_mm.toFixed(1),
      }),
    });
  }
  if (value.pairs.some((pair) => pair.half_link)) {
    cautions.push({
      code: "half-link",
      at: "pairs",
      message: say("drive.fixed-centres.an-odd-number-needs-a-half"),
    });
  }
  if (value.verdict === "will not fit") {
    cautions.push({
      code: "chain-does-not-close",
      at: "verdict",
      message: say("drive.fixed-centres.none-of-these-pairs-fits-without"),
    });
  }
  return cautions;
}

function check(q: FixedCentresInput, pitch: number, least: number, most: number): readonly Refusal[] {
  const refusals: Refusal[] = [];
  const judgeRange = (at: string, given: number, low: number, high: number, what: string, whole = false): void => {
    if (given >= low && given <= high && (!whole || Number.isInteger(given))) return;
    const allowed = say("drive.fixed-centres.to", {
      low,
      high,
      whole: whole ? say("drive.fixed-centres.whole") : " mm",
    });
    const message = say("drive.fixed-centres.is-it-must-lie-in", { what, at, given, allowed });
    refusals.push({ code: "out-of-range", at, given, allowed, message });
  };
  judgeRange("chainstayMm", q.chainstayMm, 100, 2000, say("drive.fixed-centres.the-chainstay"));
  judgeRange("pitchMm", pitch, 5, 30, say("drive.fixed-centres.the-chain-s-pitch"));
  judgeRange(
    "chainstayHalfWidthMm",
    q.chainstayHalfWidthMm ?? 0,
    0,
    50,
    say("drive.fixed-centres.the-chainstay-s-band"),
  );
  judgeRange("slackLeastMm", least, -5, 5, say("drive.fixed-centres.the-least-slack"));
  judgeRange("slackMostMm", most, -5, 10, say("drive.fixed-centres.the-most-slack"));
  judgeRange("accuracyNeededMm", q.accuracyNeededMm ?? 0.3, 0.01, 5, say("drive.fixed-centres.the-accuracy-needed"));
  judgeRange("wearPercent", q.wearPercent ?? 0.5, 0, 3, say("drive.fixed-centres.the-wear-in-percent"));
  if (most < least) {
    const message = say("drive.fixed-centres.the-most-slack-mm-is-less", { most, least });
    refusals.push({
      code: "empty-window",
      at: "slackMostMm",
      given: most,
      allowed: say("drive.fixed-centres.at-least-mm", { least }),
      message,
    });
  }
  if (q.pairs.length < 1 || q.pairs.length > 2500) {
    const message = say("drive.fixed-centres.give-at-least-one-ring-and");
    refusals.push({
      code: "wrong-count",
      at: "pairs",
      given: q.pairs.length,
      allowed: say("drive.fixed-centres.1-to-2500"),
      message,
    });
  }
  for (const [i, { ring, cog }] of q.pairs.entries()) {
    const before = refusals.length;
    judgeRange(`pairs[${i}].ring`, ring, 6, 150, say("drive.fixed-centres.the-ring-s-teeth"), true);
    judgeRange(`pairs[${i}].cog`, cog, 6, 100, say("drive.fixed-centres.the-sprocket-s-teeth"), true);
    if (refusals.length > before) continue;
    const radii = pitch / 2 / Math.sin(Math.PI / ring) + pitch / 2 / Math.sin(Math.PI / cog);
    if (q.chainstayMm > radii) continue;
    const message = say("drive.fixed-centres.ring-and-sprocket-would-overlap-at", {
      ring,
      cog,
      chainstayMm: q.chainstayMm,
    });
    refusals.push({
      code: "wheels-overlap",
      at: `pairs[${i}]`,
      given: q.chainstayMm,
      allowed: `over ${radii}`,
      message,
    });
  }
  return refusals;
}
