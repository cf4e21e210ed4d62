/**
 * Which remedies stand when a joint fails at several places at once? A joint fits with work only where every place that
 * fails has a remedy that keeps its parts; otherwise the work at the other places is not offered as if it were enough.
 */
import type { RemedyOffer } from "../joint.js";

const works = (offer: RemedyOffer) => offer.refused === undefined && offer.replacesPart !== true;

/** One list of offers per place that fails. An offer that stands for several places is shown once. */
export function endsTogether(groups: readonly (readonly RemedyOffer[])[]): readonly RemedyOffer[] {
  const enough = groups.every((offers) => offers.some(works));
  const kept = groups.flatMap((offers) => (enough ? offers : offers.filter((offer) => !works(offer))));
  return kept.filter((offer, i) => kept.findIndex((other) => other.id === offer.id && other.what === offer.what) === i);
}
