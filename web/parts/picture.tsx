/** How does a drawing come onto the page? As SVG text from the drawing room, which writes every letter as text. */
import type { Drawing } from "@coldset/drawing";
import { toSvg } from "@coldset/drawing/svg";
import { memo, useSyncExternalStore } from "react";
import { useNumbers } from "../state/numbers.js";
import { trustedDrawing } from "./trusted.js";

const known = new Map<string, string>();

/** A drawing that was shown before is not written anew: the same key gives the same bytes. */
function svgOf(key: string, make: () => Drawing, width: number | undefined): string {
  const found = known.get(key);
  if (found !== undefined) return found;
  const svg = toSvg(make(), {
    mode: "screen",
    idPrefix: `d${known.size}`,
    ...(width === undefined ? {} : { displayWidthPx: width }),
  });
  if (known.size > 400) known.clear();
  const drawing = trustedDrawing(svg);
  known.set(key, drawing);
  return drawing;
}

interface PictureProps {
  /** All that the drawing is made from, as text. */
  readonly of: string;
  readonly make: () => Drawing;
  readonly widthPx?: number;
  readonly className?: string;
  /** A text that is nothing but a number is a length in mm here: dimensions, gaps. */
  readonly lengths?: boolean;
}

export const Picture = memo(
  function Picture({ of, make, widthPx, className = "pic", lengths = false }: PictureProps) {
    const numbers = useNumbers();
    const svg = svgOf(
      `${numbers.key} ${of} ${widthPx}`,
      () => numbers.drawn(make(), lengths ? "mm" : undefined),
      widthPx,
    );
    // biome-ignore lint/security/noDangerouslySetInnerHtml: only what toSvg wrote, and toSvg escapes every text.
    return <div className={className} dangerouslySetInnerHTML={{ __html: svg }} />;
  },
  (a, b) => a.of === b.of && a.widthPx === b.widthPx && a.className === b.className,
);

/** Is the page wide enough for the wide version of a drawing? Both are never made at once. */
export function useWide(fromPx = 901): boolean {
  // In em, as in the style sheets: where letters are set twice as large, the narrow version comes sooner.
  const wide = `(min-width: ${fromPx / 16}em)`;
  return useSyncExternalStore(
    (listen) => {
      const query = matchMedia(wide);
      query.addEventListener("change", listen);
      return () => query.removeEventListener("change", listen);
    },
    () => matchMedia(wide).matches,
  );
}

const STEP_PX = 20;
const LEAST_PX = 320;

/** How wide is the window, in steps of 20 px, so that dragging its edge does not draw anew at every pixel? */
export function useWindowWidth(): number {
  return useSyncExternalStore(
    (listen) => {
      addEventListener("resize", listen);
      return () => removeEventListener("resize", listen);
    },
    // A window that is not laid out yet says 0; nothing is drawn for that.
    () => Math.max(LEAST_PX, Math.floor(innerWidth / STEP_PX) * STEP_PX),
  );
}
