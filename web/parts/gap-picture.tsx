/** How much room is left at each place? Several gaps on one scale, each to the room that is wanted. */

import type { Figure } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { gapBars } from "@coldset/drawing/bicycle";
import { capitalWord } from "../state/words.js";
import { Picture, useWide, useWindowWidth } from "./picture.js";
import { Said } from "./said.js";

/** A length that must have at least so much room. */
export function isGap(f: Figure): boolean {
  return f.unit === "mm" && f.limit?.low !== undefined && f.limit.high === undefined && f.name.includes("gap");
}

export function GapPicture({ figures }: { readonly figures: readonly Figure[] }) {
  const wide = useWide();
  const inside = Math.min(useWindowWidth(), 1280) - 112;
  const rows = figures.map((f) => ({
    name: capitalWord(f.name),
    note: say("web.gap-picture.wanted", { low: f.limit?.low ?? 0 }),
    gapMm: f.value,
    // What the band means would run over the sheet's edge beside each bar; it stands below the drawing instead.
    ...(f.band === undefined ? {} : { band: { ...f.band, means: "95 %" } }),
    wantedMm: f.limit?.low ?? 0,
  }));
  const means = [...new Set(figures.flatMap((f) => (f.band === undefined ? [] : [f.band.means])))];
  const version = wide ? "wide" : "narrow";
  return (
    <figure>
      <Picture
        of={`gaps ${version} ${JSON.stringify(rows)}`}
        make={() => gapBars(rows, version)}
        className={`pic ${version}`}
        lengths
        {...(wide ? { widthPx: inside } : {})}
      />
      <figcaption className="cap">
        <Said text={say("web.gap-picture.close-hatching")} />
        {say("web.gap-picture.the-dust-at-the-end-is")}
        {means.length === 0 ? "" : `: ${means.join("; ")}`}.
      </figcaption>
    </figure>
  );
}
