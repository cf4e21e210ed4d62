/** What has been reckoned of a build? One plain value that the command, the page and the book all print. */
import type { ToeFigure } from "../fit/front-and-wheels/toe-of.js";
import type { CandidateAnswer, FitView, JointsAnswer } from "../fit/index.js";
import type { BicyclePoints, ForkSwapValue } from "../geometry/index.js";
import type { Answered, NextStep } from "../quantity/index.js";
import type { FiredRule } from "../safety/index.js";
import type { Part, Place, ResolvedBuild } from "../workshop/index.js";
import type { BoardRow } from "./board.js";
import type { CockpitOfBuild } from "./cockpit-of-build.js";
import type { DonorGeometry } from "./donor-geometry.js";
import type { LedgerOfBuild } from "./ledger-of-build.js";
import type { PlanOfBuild } from "./plan-of-build.js";

export interface ForkCandidate {
  readonly part: Part & { readonly kind: "fork" };
  readonly chosen: boolean;
  readonly figures?: Answered<ForkSwapValue>;
  readonly toe: ToeFigure;
  readonly answer: CandidateAnswer;
}

export interface OtherCandidate {
  readonly place: Place;
  readonly part: Part;
  readonly answer: CandidateAnswer;
}

export interface Reckoning {
  readonly resolved: ResolvedBuild;
  readonly geometry: DonorGeometry;
  readonly after?: { readonly figures: Answered<ForkSwapValue>; readonly points: BicyclePoints };
  readonly cockpit: CockpitOfBuild;
  readonly view: FitView;
  readonly joints: JointsAnswer;
  readonly toe: ToeFigure;
  readonly forks: readonly ForkCandidate[];
  readonly others: readonly OtherCandidate[];
  readonly rules: readonly FiredRule[];
  readonly ledger: LedgerOfBuild;
  readonly plan: PlanOfBuild;
  /** The twenty questions, ranked by stake, open ones first. */
  readonly board: readonly BoardRow[];
  /** What to measure next, the step that settles most first. */
  readonly next: readonly (NextStep & { readonly settles: readonly string[] })[];
}
