/** What is known while a new build is being entered, and how surely? The figures with their bands, and a small side view in its haze. */

import type { Band } from "@coldset/core/quantity";
import { newBuildSoFar, type Reckoning } from "@coldset/core/questions";
import { say as sayText } from "@coldset/core/texts";
import { beforeAfter } from "@coldset/drawing/bicycle";
import { dustOfDonor, ringsOfDonor, sketchBefore } from "@coldset/drawing/sketch";
import { useMemo } from "react";
import { useNewBuild } from "../state/new-build.js";
import { useNumbers } from "../state/numbers.js";
import { valueText } from "./figure.js";
import { Picture } from "./picture.js";

const FIGURES = [
  ["reach_mm", sayText("web.so-far.reach"), "mm", 0],
  ["stack_mm", sayText("web.so-far.stack"), "mm", 0],
  ["head_angle_deg", sayText("web.so-far.head-angle"), "°", 1],
  ["seat_angle_deg", sayText("web.so-far.seat-angle"), "°", 1],
  ["trail_mm", sayText("web.so-far.trail"), "mm", 0],
  ["bb_height_mm", sayText("workshop.new-build-entries.cranks-axis-over-the-floor"), "mm", 0],
] as const;

const halfOf = (band: Band | undefined) => (band === undefined ? undefined : (band.high - band.low) / 2);

/** Reckoned once a step, from what was entered before it: nobody has to wait for it while typing. */
export function SoFar({ step }: { readonly step: string }) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the step says when; what it is made from is read then.
  const known = useMemo(() => newBuildSoFar(useNewBuild.getState().entries), [step]);
  const numbers = useNumbers();
  const { have, of } = known.sideView;
  const figures = known.reckoning?.geometry.before?.figures;
  const row = known.reckoning?.board.find((b) => b.n === 13);
  const stillNeeded = known.reckoning?.geometry.frame.kind === "refused";
  return (
    <aside className="sofar" aria-labelledby="so-far">
      <h2 id="so-far">{sayText("web.so-far.known-so-far")}</h2>
      <p>
        {known.entered === 0
          ? sayText("web.so-far.nothing-is-entered-yet")
          : sayText("web.so-far.made-of-the-readings-that-settle", {
              entered: known.entered,
              entries: known.entered === 1 ? sayText("web.so-far.entry") : sayText("web.so-far.entries"),
              have,
              needed: of,
            })}
      </p>
      {figures === undefined ? (
        <p className="soft">
          {have === of && stillNeeded
            ? sayText("web.so-far.these-readings-together-describe-no-frame")
            : sayText("web.so-far.a-small-side-view-stands-here")}
        </p>
      ) : (
        <>
          {known.reckoning === undefined ? null : <SmallView r={known.reckoning} />}
          <dl className="knowns">
            {FIGURES.map(([key, name, unit, decimals]) => {
              const band = figures.bands[key];
              return (
                <div key={key}>
                  <dt>{name}</dt>
                  <dd>{valueText({ value: figures.value[key], half: halfOf(band), unit, decimals }, numbers)}</dd>
                </div>
              );
            })}
          </dl>
          <p className="soft">{sayText("web.so-far.bands-are-95")}</p>
          {row === undefined ? null : (
            <p>
              {sayText("web.so-far.did-i-mis-measure")}
              {numbers.say(row.answer)}
            </p>
          )}
        </>
      )}
    </aside>
  );
}

function SmallView({ r }: { readonly r: Reckoning }) {
  const after = sketchBefore(r);
  if (after === undefined) return null;
  const input = {
    after,
    version: "narrow" as const,
    dust: dustOfDonor(r),
    rings: ringsOfDonor(r),
    label: sayText("web.so-far.the-old-bicycle-from-the-side"),
  };
  const answer = beforeAfter(input);
  if (answer.kind === "refused") return null;
  return (
    <Picture
      of={`so far ${JSON.stringify(input)}`}
      make={() => answer.value.drawing}
      widthPx={340}
      lengths
      className="pic narrow"
    />
  );
}
