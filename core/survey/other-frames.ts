import { element } from "../numeric/index.js";
import type { Caution } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { fitFrom, predictFromFit, type SurveyFit } from "./fit-survey.js";
import { MEASUREMENT_KINDS } from "./measurement-kinds.js";
import { DEGREES, U } from "./side-model.js";
import { startGeometry } from "./start-geometry.js";

/** With more degrees of freedom than this a second frame hardly ever fits, and it is not looked for. */
const LOOK_UP_TO = 3;
/** Turns of the start, in degrees: slope, seat angle, head angle. */
const TURNS: readonly (readonly [slope: number, seat: number, head: number])[] = [
  [0, 0, 0],
  [14, 0, 0],
  [-10, 0, 0],
  [0, 10, 0],
  [0, -12, 0],
  [0, 0, -14],
  [8, -8, -8],
];

/**
 * Do these few measurements fit a second frame too? Lengths alone close two triangles, one each way.
 *
 * The search is begun from other frames as well, where there are at most three more measurements than needed. The one
 * with the clearly smaller chi-square is taken; of equals the one nearest to an ordinary frame.
 * @returns the frame to take, and a caution that names the other one and the measurement that would decide.
 */
export function otherFrames(fitted: SurveyFit): { readonly fitted: SurveyFit; readonly cautions: readonly Caution[] } {
  if (fitted.fit.degreesOfFreedom > LOOK_UP_TO) return { fitted, cautions: [] };
  const { read } = fitted;
  const found: SurveyFit[] = [fitted];
  for (const [slope, seat, head] of TURNS) {
    const start = startGeometry(read, [], true);
    start[U.slope] = element(start, U.slope) + slope / DEGREES;
    start[U.seatAngle] = element(start, U.seatAngle) + seat / DEGREES;
    start[U.headAngle] = element(start, U.headAngle) + head / DEGREES;
    const other = fitFrom(read, {}, start);
    if (other.kind === "fitted" && found.every((f) => apart(f, other) > 1)) found.push(other);
  }
  found.sort((a, b) => {
    const gap = a.fit.chiSquare - b.fit.chiSquare;
    return Math.abs(gap) > 4 ? gap : strangeness(a) - strangeness(b);
  });
  const best = found[0] ?? fitted;
  const rival = found.find((f) => f !== best && f.fit.chiSquare < best.fit.chiSquare + 4 && strangeness(f) < 60);
  if (rival === undefined) return { fitted: best, cautions: [] };
  const { top } = rival.model;
  return {
    fitted: best,
    cautions: [
      {
        code: "second-frame-fits",
        at: "measurements",
        message: say("survey.other-frames.a-second-frame-fits-these-measurements", {
          stackMm: top.y.toFixed(0),
          reachMm: top.x.toFixed(0),
          best: decider(best, rival),
        }),
      },
    ],
  };
}

/** Largest distance between points of the two frames, mm. */
function apart(a: SurveyFit, b: SurveyFit): number {
  const points = ["rear", "cluster", "joint", "top", "bottom", "front"] as const;
  return Math.max(...points.map((p) => Math.hypot(a.model[p].x - b.model[p].x, a.model[p].y - b.model[p].y)));
}

/** How far is this frame from an ordinary one, in degrees of its three tubes? */
function strangeness(f: SurveyFit): number {
  const degrees = (place: number): number => element(f.model.u, place) * DEGREES;
  const upsideDown = f.model.top.x < 0 || f.model.rear.x > 0 || f.model.top.y < 0 ? 90 : 0;
  return (
    Math.abs(degrees(U.headAngle) - 71) +
    Math.abs(degrees(U.seatAngle) - 73) +
    Math.abs(degrees(U.slope) - 3) / 2 +
    upsideDown
  );
}

/** The further measurement whose two predictions lie furthest apart for its sd. */
function decider(a: SurveyFit, b: SurveyFit): string {
  let name = "";
  let most = 0;
  MEASUREMENT_KINDS.forEach((kind, index) => {
    if (a.read.kinds.includes(index) || kind.name.startsWith("down_tube")) return;
    const gap = Math.abs(predictFromFit(a, index).value - predictFromFit(b, index).value) / kind.sd;
    if (gap > most) {
      most = gap;
      name = kind.name;
    }
  });
  return name;
}
