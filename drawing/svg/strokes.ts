import {
  type Fill,
  LETTER_ROLES,
  type LineRole,
  onCircle,
  type Point,
  type Segment,
  type TextItem,
} from "../model/index.js";
import { escapedXml, fixed } from "./escape.js";
import { lineLook, type Page } from "./page.js";

export function arcOf(item: { centre: Point; radiusMm: number; startDeg: number; endDeg: number }) {
  return { centre: item.centre, radiusMm: item.radiusMm, startDeg: item.startDeg, endDeg: item.endDeg };
}

export function spot(p: Point, page: Page): string {
  const q = page.place(p);
  return `${fixed(q.x)} ${fixed(q.y)}`;
}

export function pathData(path: readonly Segment[], page: Page): string {
  let out = "";
  for (const s of path) {
    if (s.op === "move") out += `M${spot(s.to, page)}`;
    else if (s.op === "line") out += `L${spot(s.to, page)}`;
    else if (s.op === "quad") out += `Q${spot(s.control, page)} ${spot(s.to, page)}`;
    else if (s.op === "cubic") out += `C${spot(s.control1, page)} ${spot(s.control2, page)} ${spot(s.to, page)}`;
    else if (s.op === "close") out += "Z";
    else {
      const radius = fixed(s.radiusMm * page.perMm);
      const sweep = s.endDeg - s.startDeg;
      const large = Math.abs(sweep) > 180 ? 1 : 0;
      const turn = sweep > 0 ? 0 : 1;
      out += `${out === "" ? "M" : "L"}${spot(onCircle(s.centre, s.radiusMm, s.startDeg), page)}`;
      out += `A${radius} ${radius} 0 ${large} ${turn} ${spot(onCircle(s.centre, s.radiusMm, s.endDeg), page)}`;
    }
  }
  return out;
}

export function stroke(path: readonly Segment[], role: LineRole, page: Page, fill: Fill = "none"): string {
  const d = pathData(path, page);
  const line = `<path ${lineLook(role, page, fill)} d="${d}"/>`;
  if (role !== "accent" || page.mode === "screen") return line;
  // On paper the accent is a doubled line.
  const inner = `<path fill="none" stroke="${page.colour("paper")}" stroke-width="${fixed(page.weight(1.4))}" stroke-linecap="butt" d="${d}"/>`;
  return `<path fill="none" stroke="${page.colour("ink")}" stroke-width="${fixed(page.weight(4.2))}" stroke-linecap="butt" d="${d}"/>${inner}`;
}

export function circle(centre: Point, radius: number, look: string, page: Page): string {
  const c = page.place(centre);
  return `<circle ${look} cx="${fixed(c.x)}" cy="${fixed(c.y)}" r="${fixed(radius)}"/>`;
}

/** Letters at a place on the page (page units), turned clockwise by `turnDeg`. */
export function letters(
  words: string,
  role: TextItem["role"],
  x: number,
  y: number,
  page: Page,
  more: { anchor?: string | undefined; turnDeg?: number; halo?: boolean | undefined } = {},
): string {
  if (words === "") return "";
  const style = LETTER_ROLES[role];
  const size = page.letter(style.sizePx);
  const anchor = more.anchor === undefined || more.anchor === "start" ? "" : ` text-anchor="${more.anchor}"`;
  const turn = more.turnDeg === undefined || Math.abs(more.turnDeg) < 0.005 ? "" : more.turnDeg;
  const where =
    turn === ""
      ? `x="${fixed(x)}" y="${fixed(y)}"`
      : `transform="translate(${fixed(x)} ${fixed(y)}) rotate(${fixed(turn)})"`;
  const rim =
    more.halo === true
      ? ` paint-order="stroke" stroke="${page.colour("paper")}" stroke-width="${fixed(size / 3)}" stroke-linejoin="round"`
      : "";
  const family = page.mode === "print" ? "Coldset Letter" : "var(--letter)";
  return `<text class="t-${role}" ${where}${anchor} font-family="${family}" font-size="${fixed(size)}" font-weight="${style.weight}" fill="${page.colour(style.ink)}"${rim}>${escapedXml(words)}</text>`;
}
