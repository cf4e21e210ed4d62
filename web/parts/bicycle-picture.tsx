/** How does the bicycle look, before in pencil and after in ink, with the questions on their places? */

import { type BoardRow, type Reckoning, readingWords, showNumber } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { BalloonOutline, Point } from "@coldset/drawing";
import { type BeforeAfterInput, type BicycleSketch, beforeAfter } from "@coldset/drawing/bicycle";
import {
  dimensionsOfAfter,
  dustOfAfter,
  dustOfDonor,
  ringsOfAfter,
  ringsOfDonor,
  sketchAfter,
  sketchBefore,
} from "@coldset/drawing/sketch";
import { memo, useDeferredValue, useMemo } from "react";
import { Picture, useWide, useWindowWidth } from "./picture.js";

const OUTLINES: Readonly<Record<BoardRow["verdict"], BalloonOutline>> = {
  fits: "settled",
  within: "settled",
  "no problem found": "settled",
  flag: "settled",
  "fits with work": "work",
  "measure first": "measure",
  "not checked yet": "measure",
  "will not fit": "no",
  over: "no",
  refuse: "refuse",
  gate: "gate",
};

const at = (x: number, y: number): Point => ({ x, y });
const between = (a: Point, b: Point, t: number) => at(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
const beside = (p: Point, dx: number, dy: number) => at(p.x + dx, p.y + dy);

/** Where on the bicycle is each question, and where does its balloon hang? Only questions that have a place. */
function places(s: BicycleSketch): Readonly<Record<number, readonly [Point, Point]>> {
  const low = s.groundY - 92;
  const hand = s.palm ?? s.barClamp ?? s.headTop;
  return {
    1: [s.frontAxle, beside(s.frontAxle, s.frontRadiusMm + 92, 60)],
    2: [s.bb, beside(s.bb, 62, 215)],
    4: [hand, beside(hand, -215, -8)],
    5: [between(s.crownSeat, s.frontAxle, 0.6), beside(s.frontAxle, 330, 350)],
    6: [beside(s.rearAxle, s.rearRadiusMm - 14, -22), at(s.rearAxle.x + 190, low)],
    7: [s.rearAxle, beside(s.rearAxle, -(s.rearRadiusMm + 92), 30)],
    8: [beside(s.rearAxle, 0, -8), at(s.rearAxle.x - 190, low)],
    9: [between(s.rearAxle, s.seatCluster, 0.14), beside(s.rearAxle, -280, 370)],
    11: [s.barClamp ?? s.headTop, beside(s.barClamp ?? s.headTop, 250, 60)],
    12: [beside(s.bb, 0, -(s.chainringRadiusMm ?? 90)), at(s.bb.x + 40, low)],
    13: [between(s.seatCluster, s.headCrossing, 0.42), beside(between(s.seatCluster, s.headCrossing, 0.42), 6, -140)],
    18: [between(s.bb, s.headBottom, 0.52), beside(between(s.bb, s.headBottom, 0.52), -130, 100)],
  };
}

/**
 * The board's drawing: before and after with the questions. A question's own: the same with its figures in place of the questions.
 * The measuring page's: the donor alone, with its figures.
 */
function pictureInput(
  r: Reckoning,
  board: readonly BoardRow[] | undefined,
  wide: boolean,
  figures: boolean,
): BeforeAfterInput | undefined {
  const before = sketchBefore(r);
  const after = board === undefined ? undefined : sketchAfter(r);
  const shown = after ?? before;
  if (shown === undefined) return undefined;
  if (board === undefined) {
    const dimensions = donorDimensions(r);
    const figures = dimensions.map((d) => `${d.name.replace("-", " ")} ${d.text?.replace(/^[a-z ]+/, "") ?? ""}`);
    return {
      after: shown,
      version: wide ? "wide" : "narrow",
      dimensions,
      dust: dustOfDonor(r),
      rings: ringsOfDonor(r),
      label: say("web.bicycle-picture.the-donor-from-the-side-to", { figures: figures.join(", ") }),
    };
  }
  const spot = wide ? places(shown) : {};
  const { hand_xy: hand, saddle_xy: saddle } = r.resolved.rider;
  return {
    after: shown,
    ...(after === undefined || before === undefined ? {} : { before }),
    version: wide ? "wide" : "narrow",
    dust: after === undefined ? dustOfDonor(r) : dustOfAfter(r),
    rings: after === undefined ? ringsOfDonor(r) : ringsOfAfter(r),
    wanted: {
      ...(saddle === undefined ? {} : { saddle: at(...saddle) }),
      ...(hand === undefined ? {} : { palm: at(...hand) }),
    },
    ...(figures ? { dimensions: inRoom(after === undefined ? donorDimensions(r) : dimensionsOfAfter(r), wide) } : {}),
    balloons: board.flatMap((row) => {
      const place = spot[row.n];
      return place === undefined || row.verdict === "not checked yet"
        ? []
        : [{ target: place[0], at: place[1], text: String(row.n), outline: OUTLINES[row.verdict], href: `#q${row.n}` }];
    }),
    label: after === undefined ? say("web.bicycle-picture.the-donor-from-the-side-to-2") : sentence(r),
  };
}

/** On a narrow drawing one figure has room: the trail where it is known, for two would run into each other under the front wheel. */
function inRoom(dimensions: NonNullable<BeforeAfterInput["dimensions"]>, wide: boolean): typeof dimensions {
  const trail = dimensions.filter((d) => d.name === "trail");
  return wide ? dimensions : trail.length > 0 ? trail : dimensions.slice(0, 1);
}

const DIMENSIONS = [
  { name: "wheelbase", key: "wheelbase_mm", words: say("web.bicycle-picture.wheelbase"), unit: "" },
  { name: "head-angle", key: "head_angle_deg", words: "", unit: "°" },
  { name: "bb-height", key: "bb_height_mm", words: "", unit: "" },
  { name: "seat-angle", key: "seat_angle_deg", words: "", unit: "°" },
] as const;

const TUBES = [
  { name: "top-tube", key: "top_tube_actual_mm", words: "" },
  { name: "seat-tube", key: "seat_tube_cc_mm", words: "" },
  { name: "chainstay", key: "chainstay_mm", words: "" },
] as const;
/** A 95 % band in standard deviations, each way. */
const TWO_SIDED_95 = 1.96;

function donorDimensions(r: Reckoning): NonNullable<BeforeAfterInput["dimensions"]> {
  const figures = r.geometry.before?.figures;
  if (figures === undefined) return [];
  const whole = DIMENSIONS.map(({ name, key, words, unit }) => {
    const band = figures.bands[key];
    const half = band === undefined ? "" : ` ± ${showNumber((band.high - band.low) / 2, 1)}`;
    return { name, text: `${words}${showNumber(figures.value[key], 1)}${unit}${half}` };
  });
  const { frame, setAside } = r.geometry;
  if (frame.kind === "refused") return whole;
  const tubes = TUBES.map(({ name, key, words }) => {
    const accent = setAside === key;
    const half = TWO_SIDED_95 * frame.value.frame_std[key];
    return {
      name,
      text: `${accent ? say("web.bicycle-picture.all-the-rest-says") : words}${showNumber(frame.value.frame[key], 1)} ± ${showNumber(half, 1)}`,
      ...(accent ? { accent } : {}),
    };
  });
  const suspect = tubes.filter((t) => t.accent);
  return [...whole.slice(0, 1), ...suspect, ...whole.slice(1), ...tubes.filter((t) => !t.accent)];
}

function sentence(r: Reckoning): string {
  const before = r.geometry.before?.figures.value;
  const after = r.after?.figures.value;
  const lower = before === undefined || after === undefined ? undefined : before.bb_height_mm - after.bb_height_mm;
  const band = r.after?.figures.bands.bb_height_mm;
  const over =
    after === undefined || band === undefined
      ? undefined
      : { value: after.bb_height_mm, half: (band.high - band.low) / 2 };
  const cranks =
    lower === undefined
      ? ""
      : say("web.bicycle-picture.the-cranks-mm-than-today", {
          byMm: Math.abs(lower).toFixed(0),
          lowerOrHigher: lower > 0 ? say("web.bicycle-picture.lower") : say("web.bicycle-picture.higher"),
          over:
            over === undefined
              ? ""
              : say("web.bicycle-picture.standing-over-the-ground", {
                  over: showNumber(over.value, 0),
                  half: showNumber(over.half, 1),
                }),
        });
  return say("web.bicycle-picture.side-view-to-scale-the-donor", { cranks });
}

/** What the sheet leaves for the drawing: border and margins off, and the board's left column where there is one. */
function displayWidth(windowPx: number, besideColumn: boolean): number {
  const inside = Math.min(windowPx, 1280) - 112;
  return besideColumn && windowPx > 1100 ? inside - 360 : Math.min(inside, 960);
}

/** The words are answered first; the drawing follows in the next frame. */
export function BicyclePicture(props: { readonly r: Reckoning; readonly board?: readonly BoardRow[] }) {
  const r = useDeferredValue(props.r);
  const board = useDeferredValue(props.board);
  return <Bicycle r={r} board={board} figures={false} />;
}

const NO_BALLOONS: readonly BoardRow[] = [];

/** Before and after on a question's page: with the figures of the frame, or with the contact points alone. */
export function BicycleOfQuestion(props: { readonly r: Reckoning; readonly figures: boolean }) {
  const r = useDeferredValue(props.r);
  return <Bicycle r={r} board={NO_BALLOONS} figures={props.figures} />;
}

const Bicycle = memo(BicycleNow);

function BicycleNow(props: {
  readonly r: Reckoning;
  readonly board: readonly BoardRow[] | undefined;
  readonly figures: boolean;
}) {
  const { r, board, figures } = props;
  const balloons = board !== undefined && board.length > 0;
  const wide = useWide();
  const windowPx = useWindowWidth();
  const made = useMemo(() => {
    const input = pictureInput(r, board, wide, figures);
    return input === undefined ? undefined : { input, text: JSON.stringify(input) };
  }, [r, board, wide, figures]);
  if (made === undefined) return null;
  const answer = beforeAfter(made.input);
  if (answer.kind === "refused") return <p className="soft">{answer.refusals.map((x) => x.message).join(" ")}</p>;
  const caption = [
    made.input.before !== undefined
      ? say("web.bicycle-picture.ink-as-it-will-stand-grey")
      : board === undefined
        ? say("web.bicycle-picture.as-all-readings-together-say-bands", {
            setAside:
              r.geometry.setAside === undefined
                ? ""
                : say("web.bicycle-picture.without-the", { setAside: readingWords(r.geometry.setAside) }),
          })
        : say("web.bicycle-picture.as-it-stands"),
    board === undefined
      ? ""
      : wide && balloons
        ? say("web.bicycle-picture.numbers-are-the-questions-below-crosses")
        : say("web.bicycle-picture.crosses-where-the-rider-wants-saddle"),
    ...answer.cautions.map((c) => c.message),
  ];
  return (
    <figure>
      <Picture
        of={`bicycle ${made.text}`}
        make={() => answer.value.drawing}
        widthPx={wide ? displayWidth(windowPx, balloons) : Math.min(560, windowPx - 30)}
        className={wide ? "pic wide" : "pic narrow"}
        lengths
      />
      <figcaption className="cap">{caption.filter((c) => c !== "").join(" ")}</figcaption>
    </figure>
  );
}
