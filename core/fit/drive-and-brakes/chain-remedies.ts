/** What makes a chain run on fixed centres that it does not fit? A tensioner, another pair; never a moved dropout. */

import { CHAIN_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { centreForLinks, type FixedCentresPair } from "../../drive/index.js";
import { say } from "../../texts/say.js";
import type { RemedyOffer } from "../joint.js";
import { offerRemedy } from "../offer-remedy.js";
import { type FitView, partAt } from "../view.js";
import { bbThread } from "./bb-thread.js";
import { asOffered } from "./bins.js";
import { CHAINSTAY_NEEDED_MM } from "./chainstay-length.js";

/** Slack of the centre distance that a chain on fixed centres may have (M26). */
export const SLACK_LEAST_MM = 0;
export const SLACK_MOST_MM = 0.8;

export function chainRemedies(
  view: FitView,
  mine: FixedCentresPair | undefined,
  onlyParts: boolean,
  pairs: readonly FixedCentresPair[],
  halfMm: number | undefined,
): readonly RemedyOffer[] {
  const offers: RemedyOffer[] = [];
  if (!onlyParts) {
    const chosen = partAt(view, "tensioner", "chain_tensioner");
    const found = chosen ?? [...view.resolved.parts.values()].find((part) => part.kind === "chain_tensioner");
    if (found?.kind === "chain_tensioner") {
      const hanger = view.resolved.donor.interfaces.hanger;
      const toHanger = found.ports.to !== "bolt_on";
      const refused =
        found.ports.to === undefined
          ? say("fit-drive.chain-remedies.how-the-tensioner-is-fixed-is")
          : toHanger && hanger === undefined
            ? say("fit-drive.chain-remedies.the-hanger-s-thread-is-not")
            : toHanger && bbThread(hanger ?? "").size !== "10x1"
              ? say("fit-drive.chain-remedies.the-frame-has-no-m10-hanger")
              : undefined;
      offers.push(
        offerRemedy(CHAIN_REMEDIES.tensioner, view, {
          values: { part: found.id },
          ...(chosen === undefined ? { part: asOffered(found) } : {}),
          ...(refused === undefined ? {} : { refused }),
        }),
      );
    }
    offers.push(offerRemedy(CHAIN_REMEDIES.move_dropout, view));
  }
  const odd = mine === undefined || onlyParts ? undefined : halfLinks(mine, halfMm);
  if (odd !== undefined) offers.push(offerRemedy(CHAIN_REMEDIES.half_link, view, { values: { links: odd } }));
  const other = pairs.slice(1).find((pair) => pair.allowed_by_hub && pair.verdict === "fits");
  if (other !== undefined && mine !== undefined)
    offers.push(
      offerRemedy(CHAIN_REMEDIES.other_pair, view, {
        values: { pair: `${other.ring}/${other.cog}, ${other.links} links` },
      }),
    );
  return offers;
}

/** The odd number of links with which this pair would fit by the middle of a well-known chainstay. */
function halfLinks(pair: FixedCentresPair, halfMm: number | undefined): number | undefined {
  if (halfMm === undefined || halfMm > CHAINSTAY_NEEDED_MM + 1e-9) return undefined;
  const chainstay = pair.centre_for_links_mm - pair.slack_mm;
  return [pair.links - 1, pair.links + 1].find((links) => {
    const slack = centreForLinks({ ring: pair.ring, cog: pair.cog, links }) - chainstay;
    return slack >= SLACK_LEAST_MM && slack <= SLACK_MOST_MM;
  });
}
