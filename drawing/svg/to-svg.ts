import type { Drawing } from "../model/index.js";
import { drawItems } from "./draw-items.js";
import { escapedXml, fixed } from "./escape.js";
import { pageFor, type SvgOptions } from "./page.js";

/**
 * How does this drawing look as SVG? Same drawing and options, same bytes. On a screen colours are the look's custom properties
 * and the window is in px (`displayWidthPx`, else the drawing's own width); in print it is black on white and in mm of paper.
 * Letters never come out under 13.5 px on a screen or 10 pt in print. A drawing with a coordinate that is no number throws.
 */
export function toSvg(drawing: Drawing, options: SvgOptions): string {
  const page = pageFor(drawing, options);
  const label = escapedXml(drawing.label);
  const unit = options.mode === "print" ? "mm" : "";
  const id = `${(options.idPrefix ?? "drawing").replace(/[^A-Za-z0-9_-]/g, "-")}-title`;
  const items = drawItems(drawing.items, page);
  // A picture has no parts for a screen reader; a drawing with links in it is a group of them.
  const role = items.includes("<a ") ? "group" : "img";
  const head = [
    `<svg xmlns="http://www.w3.org/2000/svg"`,
    `class="d"`,
    `viewBox="0 0 ${fixed(page.width)} ${fixed(page.height)}"`,
    `width="${fixed(page.width)}${unit}"`,
    `height="${fixed(page.height)}${unit}"`,
    `role="${role}"`,
    `aria-label="${label}"`,
  ].join(" ");
  return `${head}><title id="${id}">${label}</title>${items}</svg>`;
}
