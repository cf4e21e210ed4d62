/**
 * Is the steerer long enough for headset, stack and stem? The sheet `steerer` (step C8) with this build's parts.
 * A length that is missing leaves the spare unknown, with what to measure or choose. Source: position-steerer.
 */

import { steerer, steererThreaded } from "../../position/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { portValue } from "../port.js";
import type { Check, Measure } from "../settle.js";
import { span, UNKNOWN } from "../span.js";
import { type FitView, partAt } from "../view.js";

/** The steerer ends this far below the top of the stem (step C8). */
export const STEERER_GAP_MM = 3;
/** Spacers under the stem are never more than this (S12). */
export const MOST_SPACERS_MM = 40;
/** Length by rule on the steerer, by survey on the head tube, by calliper on the stacks. */
const LENGTH_HALF_MM = 1.5;
/** Steerer ends below the locknut's top (common practice). */
const LOCKNUT_COVER_MM = 2;
export interface SteererRoom {
  readonly checks: readonly Check[];
  readonly needed: number;
  readonly available: number;
  readonly spacers: number;
  readonly mostSpacers: number;
}

const LONG_ENOUGH = { low: 0, kind: "hard", words: say("fit-front.steerer-room.not-shorter-than-needed") } as const;

/** The spare steerer as a check, with the figures behind it. */
export function steererRoom(view: FitView, fork: PartOfKind<"fork">, headset: PartOfKind<"headset">): SteererRoom {
  const headTube = view.frame?.head_tube_mm ?? view.resolved.donor.measured.head_tube?.value;
  const lower = headset.ports.lower_stack ?? view.frame?.lower_stack_mm ?? view.resolved.donor.lower_headset_stack;
  const upper = headset.ports.upper_stack;
  const available = fork.ports.steerer_length;
  const missing = (measure: Measure): SteererRoom => ({
    checks: [
      { name: say("fit-front.steerer-room.spare-steerer"), unit: "mm", value: UNKNOWN, limit: LONG_ENOUGH, measure },
    ],
    needed: 0,
    available: available ?? 0,
    spacers: 0,
    mostSpacers: -1,
  });
  if (headTube === undefined)
    return missing({
      what: say("fit-front.steerer-room.measure-the-head-tube-face-to"),
      at: "donor.measured.head_tube",
      tool: "rule",
    });
  if (lower === undefined)
    return missing({
      what: say("fit-front.steerer-room.measure-crown-race-seat-to-the"),
      at: `bin.parts.${headset.id}.ports.lower_stack`,
      tool: "rule",
    });
  if (upper === undefined)
    return missing({
      what: say("fit-front.steerer-room.measure-the-headset-above-the-head"),
      at: `bin.parts.${headset.id}.ports.upper_stack`,
      tool: "rule",
    });
  if (available === undefined)
    return missing({
      what: say("fit-front.steerer-room.measure-the-steerer-from-the-crown"),
      at: `bin.parts.${fork.id}.ports.steerer_length`,
      tool: "rule",
      accuracy: "± 1 mm",
    });
  if (headset.ports.threaded === true) {
    // The thread's own start does not change the length needed.
    const sums = steererThreaded({
      head_tube_mm: headTube,
      lower_stack_mm: lower,
      threaded_upper_stack_mm: upper,
      locknut_cover_mm: LOCKNUT_COVER_MM,
      unthreaded_upper_mm: 0,
    });
    if (sums.kind === "refused") {
      return missing({
        what: say("fit-front.steerer-room.check-the-lengths", {
          refusals: sums.refusals[0]?.message ?? say("fit-front.steerer-room.they-do-not-go-together"),
        }),
        at: `bin.parts.${headset.id}.ports.upper_stack`,
        tool: "rule",
      });
    }
    const needed = sums.value.steerer_needed_mm;
    return {
      checks: [
        { name: say("fit-front.steerer-room.steerer-needed"), unit: "mm", value: span(needed) },
        {
          name: say("fit-front.steerer-room.spare-steerer"),
          unit: "mm",
          value: span(available - needed, LENGTH_HALF_MM),
          limit: LONG_ENOUGH,
        },
      ],
      needed,
      available,
      spacers: 0,
      mostSpacers: -1,
    };
  }
  const stem = partAt(view, "stem", "stem");
  if (stem === undefined)
    return missing({
      what: say("fit-front.steerer-room.choose-an-unthreaded-stem-so-that"),
      at: "build.chosen.stem",
    });
  if (stem.ports.clamp_height === undefined)
    return missing({
      what: say("fit-front.steerer-room.measure-the-height-of-the-stem"),
      at: `bin.parts.${stem.id}.ports.clamp_height`,
      tool: "calliper",
    });
  const spacers = portValue(view, "cockpit.spacers_below", view.spacersBelowMm ?? view.resolved.build.spacers_below);
  if (spacers === undefined)
    return missing({
      what: say("fit-front.steerer-room.choose-the-height-of-spacers-under"),
      at: "build.spacers_below",
    });
  const sums = steerer({
    head_tube_mm: headTube,
    faced_off_mm: 0,
    lower_stack_mm: lower,
    upper_stack_mm: upper,
    spacers_below_mm: spacers,
    stem_clamp_mm: stem.ports.clamp_height,
    spacers_above_mm: 0,
    gap_mm: STEERER_GAP_MM,
    steerer_available_mm: available,
    limit_spacers_mm: MOST_SPACERS_MM,
  });
  if (sums.kind === "refused")
    return missing({
      what: say("fit-front.steerer-room.check-the-lengths", {
        refusals: sums.refusals[0]?.message ?? say("fit-front.steerer-room.they-do-not-go-together"),
      }),
      at: `bin.parts.${headset.id}.ports.lower_stack`,
      tool: "rule",
    });
  return {
    checks: [
      { name: say("fit-front.steerer-room.steerer-needed"), unit: "mm", value: span(sums.value.steerer_needed_mm) },
      {
        name: say("fit-front.steerer-room.spare-steerer"),
        unit: "mm",
        value: span(sums.value.spare_mm, LENGTH_HALF_MM),
        limit: LONG_ENOUGH,
        measure: {
          what: say("fit-front.steerer-room.measure-the-steerer-from-the-crown-2"),
          at: `bin.parts.${fork.id}.ports.steerer_length`,
          tool: "rule",
        },
      },
    ],
    needed: sums.value.steerer_needed_mm,
    available,
    spacers,
    mostSpacers: sums.value.carries_the_stem_without_spacers ? sums.value.most_spacers_below_mm : -1,
  };
}
