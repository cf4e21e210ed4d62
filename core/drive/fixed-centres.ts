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
      note: allowed ? note : "The hub gear does not allow so small a sprocket or so low a ratio.",
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
  const says = `slack ${slack.toFixed(2)} mm, allowed ${least} to ${most}`;
  if (half === undefined) {
    return { verdict: "measure first", note: `${says}, but it is not known how well the chainstay is known.` };
  }
  const low = chainstay - half;
  const high = chainstay + half;
  const inside = windows.some((w) => low >= w.fromMm - EPS && high <= w.toMm + EPS);
  const outside = windows.every((w) => high < w.fromMm || low > w.toMm);
  if (inside) return { verdict: "fits", note: `${says}; the whole band fits.` };
  if (outside) return { verdict: "will not fit", note: `${says}; no chain of whole links fits within the band.` };
  if (half > needed + EPS) {
    return { verdict: "measure first", note: `${says}; ± ${half.toFixed(2)} mm is too wide to tell.` };
  }
  if (!inWindow) {
    const off = slack < least ? least - slack : slack - most;
    return { verdict: "will not fit", note: `${says}; off by ${off.toFixed(2)} mm, a near miss within the band.` };
  }
  const over = slack + half - most;
  const under = least - (slack - half);
  const edge = over > EPS ? `${(slack + half).toFixed(2)} would be ${over.toFixed(2)} over` : "";
  const tight = under > EPS ? `${(slack - half).toFixed(2)} would be ${under.toFixed(2)} too tight` : "";
  return { verdict: "fits", note: `${says}; ${[edge, tight].filter(Boolean).join(", ")}: feel it on the stand.` };
}

function measureChainstay(needed: number): NextStep {
  return {
    kind: "measure",
    what: "Chainstay, rear axle to BB axis",
    at: "donor.measured.chainstay",
    tool: "trammel or long calliper between two turned pins",
    accuracy: `± ${needed} mm`,
    how: "Along each stay, both sides, three times; the mean of the two sides counts.",
  };
}

function cautionsFor(value: FixedCentres, wear: number): readonly Caution[] {
  const cautions: Caution[] = [];
  const first = value.pairs[0];
  if (first !== undefined && wear > 0) {
    cautions.push({
      code: "chain-wear-opens-the-slack",
      at: "pairs[0].slack_when_worn_mm",
      message: `At ${(wear * 100).toFixed(1)} % wear the slack of ${first.ring}/${first.cog} grows to ${first.slack_when_worn_mm.toFixed(1)} mm. Plan a tensioner or an eccentric, or a new chain sooner.`,
    });
  }
  if (value.pairs.some((pair) => pair.half_link)) {
    cautions.push({
      code: "half-link",
      at: "pairs",
      message:
        "An odd number needs a half link of the chain's own width class. Read its sheet; it is the weaker joint.",
    });
  }
  if (value.verdict === "will not fit") {
    cautions.push({
      code: "chain-does-not-close",
      at: "verdict",
      message:
        "None of these pairs fits without a tensioner. Try other teeth, a half link, a tensioner or an eccentric.",
    });
  }
  return cautions;
}

function check(q: FixedCentresInput, pitch: number, least: number, most: number): readonly Refusal[] {
  const refusals: Refusal[] = [];
  const judgeRange = (at: string, given: number, low: number, high: number, what: string, whole = false): void => {
    if (given >= low && given <= high && (!whole || Number.isInteger(given))) return;
    const allowed = `${low} to ${high}${whole ? ", whole" : " mm"}`;
    const message = `${what} (${at}) is ${given}; it must lie in ${allowed}.`;
    refusals.push({ code: "out-of-range", at, given, allowed, message });
  };
  judgeRange("chainstayMm", q.chainstayMm, 100, 2000, "The chainstay");
  judgeRange("pitchMm", pitch, 5, 30, "The chain's pitch");
  judgeRange("chainstayHalfWidthMm", q.chainstayHalfWidthMm ?? 0, 0, 50, "The chainstay's band");
  judgeRange("slackLeastMm", least, -5, 5, "The least slack");
  judgeRange("slackMostMm", most, -5, 10, "The most slack");
  judgeRange("accuracyNeededMm", q.accuracyNeededMm ?? 0.3, 0.01, 5, "The accuracy needed");
  judgeRange("wearPercent", q.wearPercent ?? 0.5, 0, 3, "The wear in percent");
  if (most < least) {
    const message = `The most slack, ${most} mm, is less than the least, ${least} mm.`;
    refusals.push({ code: "empty-window", at: "slackMostMm", given: most, allowed: `at least ${least} mm`, message });
  }
  if (q.pairs.length < 1 || q.pairs.length > 2500) {
    const message = "Give at least one ring and one sprocket, and not more than 2500 pairs.";
    refusals.push({ code: "wrong-count", at: "pairs", given: q.pairs.length, allowed: "1 to 2500", message });
  }
  for (const [i, { ring, cog }] of q.pairs.entries()) {
    const before = refusals.length;
    judgeRange(`pairs[${i}].ring`, ring, 6, 150, "The ring's teeth", true);
    judgeRange(`pairs[${i}].cog`, cog, 6, 100, "The sprocket's teeth", true);
    if (refusals.length > before) continue;
    const radii = pitch / 2 / Math.sin(Math.PI / ring) + pitch / 2 / Math.sin(Math.PI / cog);
    if (q.chainstayMm > radii) continue;
    const message = `Ring ${ring} and sprocket ${cog} would overlap at ${q.chainstayMm} mm of chainstay.`;
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
