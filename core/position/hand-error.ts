/**
 * How far may the hand stand from the calculated place, when the frame's measures are only known so well?
 * Inputs: the stem and spacers as in `barPlace`; standard deviations of stack and reach in mm and of the head angle in
 *   degrees, each >= 0; their correlations in -1..1, taken as 0 where not given (a survey knows them better).
 * Answer: standard deviations of hand x and y in mm, and a radius in mm that holds the true hand with at least 95 %.
 * Formula: first-order propagation. dx/dHA = h sin HA + L sin(a), dy/dHA = h cos HA - L cos(a), a = 90 - HA + stem angle;
 *   radius = sqrt(-2 ln 0.05) times the long half-axis of the hand's covariance, which is never too small.
 * Limits: stem, bar and spacers are taken as exact. Source: position-hand-error.
 */
export interface HandErrorInput {
  readonly headAngleDeg: number;
  readonly upAxisMm: number;
  readonly stemLengthMm: number;
  readonly stemAngleDeg: number;
  readonly stackSdMm: number;
  readonly reachSdMm: number;
  readonly headAngleSdDeg: number;
  readonly correlation?: { readonly stackReach: number; readonly stackHead: number; readonly reachHead: number };
}

export interface HandError {
  readonly xSdMm: number;
  readonly ySdMm: number;
  readonly radius95Mm: number;
}

const RAD = Math.PI / 180;
const ELLIPSE_95 = Math.sqrt(-2 * Math.log(0.05));

export function handError(q: HandErrorInput): HandError {
  const head = q.headAngleDeg * RAD;
  const stem = (90 - q.headAngleDeg + q.stemAngleDeg) * RAD;
  const dx = q.upAxisMm * Math.sin(head) + q.stemLengthMm * Math.sin(stem);
  const dy = q.upAxisMm * Math.cos(head) - q.stemLengthMm * Math.cos(stem);
  const sdHead = q.headAngleSdDeg * RAD;
  const c = q.correlation ?? { stackReach: 0, stackHead: 0, reachHead: 0 };
  const xx = q.reachSdMm ** 2 + (dx * sdHead) ** 2 + 2 * c.reachHead * q.reachSdMm * dx * sdHead;
  const yy = q.stackSdMm ** 2 + (dy * sdHead) ** 2 + 2 * c.stackHead * q.stackSdMm * dy * sdHead;
  const xy =
    c.stackReach * q.stackSdMm * q.reachSdMm +
    c.reachHead * q.reachSdMm * dy * sdHead +
    c.stackHead * q.stackSdMm * dx * sdHead +
    dx * dy * sdHead ** 2;
  const largest = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
  return { xSdMm: Math.sqrt(xx), ySdMm: Math.sqrt(yy), radius95Mm: ELLIPSE_95 * Math.sqrt(largest) };
}
