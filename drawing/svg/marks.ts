import {
  type AngleItem,
  type ArrowItem,
  at,
  BALLOON_RADIUS_PX,
  type BalloonItem,
  type DimensionItem,
  DUST_DOT_PX,
  dustDots,
  LETTER_ROLES,
  LINE_ROLES,
  onCircle,
  type Point,
  pathOf,
  type Segment,
  SLASH_PX,
} from "../model/index.js";
import { escapedXml, fixed } from "./escape.js";
import { lineLook, type Page } from "./page.js";
import { arcOf, circle, letters, pathData, spot, stroke } from "./strokes.js";

export function dimension(item: DimensionItem, page: Page): string {
  const long = Math.hypot(item.to.x - item.from.x, item.to.y - item.from.y);
  if (long === 0) return "";
  const u = { x: (item.to.x - item.from.x) / long, y: (item.to.y - item.from.y) / long };
  const left = { x: -u.y, y: u.x };
  const shift = (p: Point, mm: number) => ({ x: p.x + left.x * mm, y: p.y + left.y * mm });
  const from = shift(item.from, item.offsetMm);
  const to = shift(item.to, item.offsetMm);
  const pxMm = page.perPx / page.perMm;
  const beyond = Math.sign(item.offsetMm) * 5 * pxMm;
  let out = "";
  if (item.offsetMm !== 0) {
    out += stroke(pathOf([item.from, shift(item.from, item.offsetMm + beyond)]), "construction", page);
    out += stroke(pathOf([item.to, shift(item.to, item.offsetMm + beyond)]), "construction", page);
  }
  out += stroke(pathOf([from, to]), item.role, page);
  const slashMm = SLASH_PX * pxMm;
  const slash = (p: Point) =>
    stroke(
      pathOf([
        { x: p.x + (-u.x - left.x) * slashMm, y: p.y + (-u.y - left.y) * slashMm },
        { x: p.x + (u.x + left.x) * slashMm, y: p.y + (u.y + left.y) * slashMm },
      ]),
      item.role,
      page,
    );
  out += slash(from) + slash(to);
  // Letters read from below or from the right, and stand above their line.
  const flip = u.x < -1e-9 || (Math.abs(u.x) <= 1e-9 && u.y < 0);
  const up = flip ? { x: -left.x, y: -left.y } : left;
  const turnDeg = (-Math.atan2(flip ? -u.y : u.y, flip ? -u.x : u.x) * 180) / Math.PI;
  const role = item.role === "accent" ? "accent" : "strong";
  const lift = (p: Point, px: number) => page.place({ x: p.x + up.x * px * pxMm, y: p.y + up.y * px * pxMm });
  if (item.place === "outside") {
    const end = page.place({ x: to.x + u.x * 10 * pxMm, y: to.y + u.y * 10 * pxMm });
    const down = u.y < -0.5;
    const anchor = down ? "middle" : u.x < 0 ? "end" : "start";
    const y = end.y + (down ? 22 : 6) * page.perPx;
    out += letters(item.text, role, end.x, y, page, { anchor, halo: true });
    if (item.was !== undefined) {
      out += letters(item.was, "before", end.x, y + 18 * page.perPx, page, { anchor, halo: true });
    }
    return out;
  }
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const above = lift(middle, 6);
  out += letters(item.text, role, above.x, above.y, page, { anchor: "middle", turnDeg, halo: true });
  if (item.was !== undefined) {
    const below = lift(middle, -18);
    out += letters(item.was, "before", below.x, below.y, page, { anchor: "middle", turnDeg, halo: true });
  }
  return out;
}

export function angle(item: AngleItem, page: Page): string {
  let out = stroke([{ op: "arc", ...arcOf(item) }], "dimension", page);
  const p = page.place(item.textAt ?? onCircle(item.centre, item.radiusMm, (item.startDeg + item.endDeg) / 2));
  out += letters(item.text, "strong", p.x, p.y, page, { anchor: item.anchor, halo: true });
  if (item.was !== undefined) {
    out += letters(item.was, "before", p.x, p.y + 19 * page.perPx, page, { anchor: item.anchor, halo: true });
  }
  return out;
}

export function balloon(item: BalloonItem, page: Page): string {
  const radius = BALLOON_RADIUS_PX * page.perPx;
  const mm = radius / page.perMm;
  let out = "";
  if (item.target !== undefined) {
    const dx = item.target.x - item.at.x;
    const dy = item.target.y - item.at.y;
    const far = Math.hypot(dx, dy);
    if (far > mm) {
      const edge = at(item.at.x + (dx / far) * mm, item.at.y + (dy / far) * mm);
      out += stroke(pathOf([edge, item.target]), "dimension", page);
    }
    out += circle(item.target, 4 * page.perPx, `fill="${page.colour("ink")}"`, page);
  }
  const solid = item.outline === "refuse" || item.outline === "no";
  if (item.outline === "refuse") {
    const corners = [22.5, 67.5, 112.5, 157.5, 202.5, 247.5, 292.5, 337.5].map((deg) =>
      onCircle(item.at, mm * 1.04, deg),
    );
    out += `<path fill="${page.colour("ink")}" d="${pathData(pathOf(corners, true), page)}"/>`;
  } else {
    const role = item.outline === "measure" ? "unknown" : "after";
    out += circle(item.at, radius, lineLook(role, page, solid ? "ink" : "paper"), page);
  }
  if (item.outline === "work") {
    const foot: Segment[] = [{ op: "arc", centre: item.at, radiusMm: mm, startDeg: 211, endDeg: 329 }, { op: "close" }];
    out += `<path fill="${page.colour("ink")}" d="${pathData(foot, page)}"/>`;
  }
  if (item.outline === "gate") {
    for (const side of [-mm, mm]) {
      out += stroke(
        pathOf([at(item.at.x + side, item.at.y - mm), at(item.at.x + side, item.at.y + mm)]),
        "ground",
        page,
      );
    }
  }
  if (item.outline === "measure") {
    const seed = [...item.text].reduce((sum, sign) => sum * 31 + (sign.codePointAt(0) ?? 0), 7);
    const ring = dustDots({
      kind: "dust",
      shape: "ellipse",
      at: item.at,
      sdXMm: mm * 0.5,
      sdYMm: mm * 0.5,
      seed,
      dots: 44,
    })
      .filter((p) => {
        const r = Math.hypot(p.x - item.at.x, p.y - item.at.y) / mm;
        return r > 0.56 && r < 0.94;
      })
      .map((p) => `M${spot(p, page)}h.01`)
      .join("");
    out += `<path class="dust" fill="none" stroke="${page.colour("ink")}" stroke-width="${fixed(page.weight(DUST_DOT_PX))}" stroke-linecap="round" d="${ring}"/>`;
  }
  const c = page.place(item.at);
  const role = solid ? "plate" : "balloon";
  out += letters(item.text, role, c.x, c.y + page.letter(LETTER_ROLES[role].sizePx) * 0.35, page, { anchor: "middle" });
  if (item.href === undefined || page.mode === "print" || !/^#[\w-]+$/.test(item.href))
    return `<g class="balloon">${out}</g>`;
  return `<a class="balloon" href="${item.href}" tabindex="-1" aria-label="question ${escapedXml(item.text)}">${out}</a>`;
}

export function arrow(item: ArrowItem, page: Page): string {
  const long = Math.hypot(item.to.x - item.from.x, item.to.y - item.from.y);
  if (long === 0) return "";
  const u = { x: (item.to.x - item.from.x) / long, y: (item.to.y - item.from.y) / long };
  const headMm = Math.min((11 * page.perPx) / page.perMm, long);
  const foot = { x: item.to.x - u.x * headMm, y: item.to.y - u.y * headMm };
  const half = headMm * 0.42;
  const barbs = [
    item.to,
    { x: foot.x - u.y * half, y: foot.y + u.x * half },
    { x: foot.x + u.y * half, y: foot.y - u.x * half },
  ];
  let out = stroke(pathOf([item.from, foot]), item.role, page);
  out += `<path fill="${page.colour(LINE_ROLES[item.role].ink)}" d="${pathData(pathOf(barbs, true), page)}"/>`;
  if (item.text !== undefined) {
    const upright = Math.abs(u.y) > Math.abs(u.x);
    const tip = page.place(item.to);
    const gap = 8 * page.perPx;
    out += upright
      ? letters(item.text, item.textRole ?? "strong", tip.x + gap, tip.y + (u.y > 0 ? 14 : -2) * page.perPx, page, {
          halo: true,
        })
      : letters(item.text, item.textRole ?? "strong", tip.x + Math.sign(u.x) * gap, tip.y + 6 * page.perPx, page, {
          anchor: u.x < 0 ? "end" : "start",
          halo: true,
        });
  }
  return out;
}
