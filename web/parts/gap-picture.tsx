/** How much room is left at each place? Several gaps on one scale, each to the room that is wanted. */
import type { Figure } from "@coldset/core/questions";
import { gapBars } from "@coldset/drawing/bicycle";
import { capitalWord } from "../state/words.js";
import { Picture, useWide, useWindowWidth } from "./picture.js";

/** A length that must have at least so much room. */
export function isGap(f: Figure): boolean {
  return f.unit === "mm" && f.limit?.low !== undefined && f.limit.high === undefined && f.name.includes("gap");
}

export function GapPicture({ figures }: { readonly figures: readonly Figure[] }) {
  const wide = useWide();
  const inside = Math.min(useWindowWidth(), 1280) - 112;
  const rows = figures.map((f) => ({
    name: capitalWord(f.name),
    note: `wanted ${f.limit?.low ?? 0}`,
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
        {...(wide ? { widthPx: inside } : {})}
      />
      <figcaption className="cap">
        Close hatching: no room. Open hatching: less than 2 over what is wanted. The dust at the end is the band
        {means.length === 0 ? "" : `: ${means.join("; ")}`}.
      </figcaption>
    </figure>
  );
}
