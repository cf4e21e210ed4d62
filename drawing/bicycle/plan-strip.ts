import type { Band } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { at, bandWords, type Drawing, type Item, numberWords, rectangle } from "../model/index.js";

export interface PlanStripInput {
  /** Evenings at the bench, in days from the start. */
  readonly sessions: readonly number[];
  /** Paint that cures, parts on their way. */
  readonly waits: readonly { readonly fromDay: number; readonly toDay: number; readonly text: string }[];
  /** The wall. Left out when nobody waits for it. */
  readonly deadlineDay?: number;
  /** The day it is done, with the days between which it falls in 95 of 100 cases. Without them it is as good as the hours entered. */
  readonly finish?: { readonly day: number; readonly low?: number; readonly high?: number };
  readonly version: "wide" | "narrow";
}

const AS_ENTERED = say("drawing.number-words.as-entered");

function bandOf(finish: NonNullable<PlanStripInput["finish"]>): Band | undefined {
  const { low, high } = finish;
  return low === undefined || high === undefined || high <= low ? undefined : { low, high, means: "95 %" };
}

/** The widest stretch between two places that no stroke crosses: letters stand there. */
function widestFree(from: number, to: number, strokes: readonly number[]): readonly [number, number] {
  const edges = [from, ...strokes.filter((s) => s > from && s < to).sort((a, b) => a - b), to];
  let best: readonly [number, number] = [from, from];
  for (const [i, left] of edges.entries()) {
    const right = edges[i + 1] ?? left;
    if (right - left > best[1] - best[0]) best = [left, right];
  }
  return best;
}

/** When is the work, when is waiting, and where does the end stand against the deadline? Days from left to right. */
export function planStrip(input: PlanStripInput): Drawing {
  const wide = input.version === "wide";
  const width = wide ? 760 : 358;
  const waits = input.waits.filter(
    (w) => Number.isFinite(w.fromDay) && Number.isFinite(w.toDay) && w.toDay > w.fromDay,
  );
  const sessions = input.sessions.filter((d) => Number.isFinite(d));
  const last = Math.max(
    7,
    input.deadlineDay ?? 0,
    input.finish?.high ?? 0,
    input.finish?.day ?? 0,
    ...sessions,
    ...waits.map((w) => w.toDay),
  );
  const days = Math.ceil(last * 1.1);
  const x = (day: number) => 10 + ((width - 20) * day) / days;
  const bottom = 40;
  const top = 100;
  const items: Item[] = [];
  if (input.deadlineDay !== undefined) {
    items.push({
      kind: "hatch",
      hatch: "short",
      path: rectangle(x(input.deadlineDay), bottom, x(days) - x(input.deadlineDay), top - bottom),
    });
  }
  const { finish } = input;
  const band = finish === undefined ? undefined : bandOf(finish);
  /** The finish's letters, and beside them that it has no band: no week's number is written there. */
  const toLeft = finish !== undefined && x(finish.day) > width / 2;
  const beside = band === undefined ? 18 + AS_ENTERED.length * 8.2 : 0;
  const taken =
    finish === undefined
      ? undefined
      : ([x(finish.day) - 30 - (toLeft ? beside : 0), x(finish.day) + 30 + (toLeft ? 0 : beside)] as const);
  const weeks = Math.max(1, Math.ceil(days / 7 / 14));
  for (let week = 0; week * 7 <= days; week += weeks) {
    items.push({ kind: "line", role: "construction", from: at(x(week * 7), bottom - 6), to: at(x(week * 7), bottom) });
    const far = taken === undefined || x(week * 7) + (week === 0 ? 40 : 0) < taken[0] || x(week * 7) > taken[1];
    if ((wide || (week / weeks) % 2 === 0) && far && x(week * 7) < width - 14) {
      items.push({
        kind: "text",
        role: "note",
        at: at(x(week * 7), bottom - 26),
        text: week === 0 ? say("drawing.plan-strip.day-0") : String(week * 7),
        anchor: week === 0 ? "start" : "middle",
      });
    }
  }
  for (const wait of waits) {
    const [left, right] = widestFree(x(wait.fromDay), x(wait.toDay), sessions.map(x));
    items.push({
      kind: "polyline",
      role: "unknown",
      closed: true,
      fill: "paper",
      points: [
        at(x(wait.fromDay), bottom + 14),
        at(x(wait.toDay), bottom + 14),
        at(x(wait.toDay), bottom + 42),
        at(x(wait.fromDay), bottom + 42),
      ],
    });
    if (wide && right - left > wait.text.length * 8.5 + 8) {
      items.push({
        kind: "text",
        role: "note",
        at: at((left + right) / 2, bottom + 22),
        text: wait.text,
        anchor: "middle",
      });
    }
  }
  if (band !== undefined) {
    items.push({
      kind: "polyline",
      role: "ornament",
      closed: true,
      fill: "paper",
      points: [
        at(x(band.low), bottom + 10),
        at(x(band.high), bottom + 10),
        at(x(band.high), bottom + 46),
        at(x(band.low), bottom + 46),
      ],
    });
    items.push({
      kind: "dust",
      shape: "strip",
      at: at((x(band.low) + x(band.high)) / 2, bottom + 28),
      sdXMm: (x(band.high) - x(band.low)) / (2 * 1.96),
      sdYMm: 34,
      seed: 15,
      dots: 110,
    });
  }
  for (const day of sessions) {
    const half = Math.max(1.5, (x(1) - x(0)) * 0.3);
    items.push({
      kind: "solid",
      ink: "ink",
      points: [
        at(x(day) - half, bottom),
        at(x(day) + half, bottom),
        at(x(day) + half, bottom + 50),
        at(x(day) - half, bottom + 50),
      ],
    });
  }
  items.push({ kind: "line", role: "after", from: at(x(0), bottom), to: at(x(days), bottom) });
  if (input.deadlineDay !== undefined) {
    items.push({
      kind: "line",
      role: "cut",
      from: at(x(input.deadlineDay), bottom - 8),
      to: at(x(input.deadlineDay), top + 8),
    });
    items.push({
      kind: "text",
      role: "strong",
      at: at(x(input.deadlineDay), top + 14),
      text: say("drawing.plan-strip.due", { deadlineDay: numberWords(input.deadlineDay, 0) }),
      anchor: "middle",
    });
  }
  const said: string[] = [
    say("drawing.plan-strip.evenings-at-the-bench", {
      sessionsCount: sessions.length,
      waitsCount: waits.length,
      waitsCount2: waits.length === 1 ? "wait" : "waits",
    }),
  ];
  if (finish !== undefined && Number.isFinite(finish.day)) {
    items.push({
      kind: "solid",
      ink: "ink",
      points: [at(x(finish.day) - 8, bottom - 12), at(x(finish.day) + 8, bottom - 12), at(x(finish.day), bottom - 1)],
    });
    items.push({
      kind: "text",
      role: "figure",
      at: at(x(finish.day), bottom - 32),
      text: numberWords(finish.day, 0),
      anchor: "middle",
      halo: true,
    });
    said.push(
      say("drawing.plan-strip.done-on-day", {
        day: numberWords(finish.day, 0),
        band: band === undefined ? say("drawing.plan-strip.by-the-hours-and-waits-as") : bandWords(finish.day, band, 0),
      }),
    );
    if (band === undefined)
      items.push({
        kind: "text",
        role: "note",
        at: at(x(finish.day) + (toLeft ? -18 : 18), bottom - 32),
        text: AS_ENTERED,
        anchor: toLeft ? "end" : "start",
        halo: true,
      });
  }
  if (input.deadlineDay !== undefined)
    said.push(say("drawing.plan-strip.due-on-day", { deadlineDay: numberWords(input.deadlineDay, 0) }));
  return {
    label: `${said.join(", ")}.`,
    view: { xMm: 0, yMm: 0, widthMm: width, heightMm: 134 },
    widthMm: wide ? 175 : 86,
    nominalWidthPx: width,
    items,
  };
}
