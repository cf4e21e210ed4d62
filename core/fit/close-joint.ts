/**
 * Which verdict follows from the settled numbers and the remedies? Fits; fits with work, where a remedy keeps both
 * parts and is not refused; will not fit; or measure first.
 */

import { type Caution, capital, type NextStep, type SourceId } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { JointAnswer, RemedyOffer } from "./joint.js";
import type { JointHead } from "./joint-definition.js";
import { orderRemedies } from "./offer-remedy.js";
import type { Settled } from "./settle.js";

export interface ClosingWords {
  readonly fits: string;
  readonly fails: string;
  /** Said when a number is missing or too coarse; the name of the first open number stands in otherwise. */
  readonly open?: string;
}

export interface Closing {
  readonly settled: Settled;
  readonly words: ClosingWords;
  readonly remedies?: readonly RemedyOffer[];
  readonly rules?: JointAnswer["rules"];
  /** Rules that fire only where nothing makes this pair fit: with a remedy the mismatch goes away. */
  readonly rulesIfStuck?: JointAnswer["rules"];
  readonly sources: readonly SourceId[];
  readonly cautions?: readonly Caution[];
  /** A step that stands even where the joint fits. */
  readonly next?: NextStep;
}

export function closeJoint(head: JointHead, closing: Closing): JointAnswer {
  const { settled, words } = closing;
  const remedies = settled.outcome === "fits" ? [] : orderRemedies(closing.remedies ?? []);
  const works = remedies.some((offer) => offer.refused === undefined && offer.replacesPart !== true);
  const next = settled.next ?? closing.next;
  const base = {
    id: head.id,
    title: head.title,
    between: head.between,
    numbers: settled.numbers,
    remedies,
    ...(next === undefined ? {} : { next }),
    rules: [...(closing.rules ?? []), ...(settled.outcome === "fails" && !works ? (closing.rulesIfStuck ?? []) : [])],
    sources: [...new Set(closing.sources)],
    cautions: [...settled.cautions, ...(closing.cautions ?? [])],
  };
  if (settled.outcome === "fits") return { ...base, verdict: "fits", reason: words.fits };
  if (settled.outcome === "fails")
    return { ...base, verdict: works ? "fits with work" : "will not fit", reason: words.fails };
  return { ...base, verdict: "measure first", reason: words.open ?? openWords(settled) };
}

function openWords(settled: Settled): string {
  const open = settled.open[0];
  if (open === undefined) return say("fit.close-joint.one-number-is-missing");
  return open.value.kind === "unknown"
    ? say("fit.close-joint.not-known-yet", { open: open.name })
    : say("fit.close-joint.lies-too-near-its-limit-for", { open: capital(open.name), limit: open.limit?.words ?? "" });
}
