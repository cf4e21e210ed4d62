/**
 * Predicts all measurements from the unknowns, and their slopes where `jacobian` (m × n, row after row) is given.
 * Says false where the unknowns lie outside what the model can be; then nothing is read.
 */
export type LeastSquaresModel = (
  unknowns: Float64Array,
  predicted: Float64Array,
  jacobian: Float64Array | undefined,
) => boolean;

export interface LeastSquaresProblem {
  /** Measured values, any units. */
  readonly measured: ArrayLike<number>;
  /** One standard deviation of each, > 0, in the unit of the measurement. Independent of each other. */
  readonly sd: ArrayLike<number>;
  readonly start: ArrayLike<number>;
  readonly model: LeastSquaresModel;
  /** Ends when a step changes the predictions by less than this, in standard deviations. Default 1e-8. */
  readonly tolerance?: number;
  /** Default 120. */
  readonly maxIterations?: number;
}

export interface LeastSquaresFit {
  readonly kind: "converged";
  readonly unknowns: Float64Array;
  readonly predicted: Float64Array;
  /** Measured − adjusted. */
  readonly residuals: Float64Array;
  /** Sum of (residual / sd)². */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** n × n, row after row; not scaled by chi-square. */
  readonly covariance: Float64Array;
  /** r_i = (R − A Cx Aᵀ)_ii / R_ii, between 0 (nothing checks it) and 1. */
  readonly redundancy: Float64Array;
  /** v_i / sqrt((R − A Cx Aᵀ)_ii); NaN where r_i < 1e-16, because nothing checks that measurement. */
  readonly normalised: Float64Array;
  /** I − J(JᵀJ)⁻¹Jᵀ of the slopes divided by sd, m × m, row after row. */
  readonly projection: Float64Array;
  /** m × n, row after row, in the units given. */
  readonly jacobian: Float64Array;
  readonly iterations: number;
}

/** The measurements leave some unknowns open. */
export interface RankDeficient {
  readonly kind: "rank-deficient";
  readonly unknowns: Float64Array;
  /** Changes of the unknowns that no measurement notices, each scaled to its largest part. */
  readonly openDirections: readonly Float64Array[];
  readonly jacobian: Float64Array;
  readonly chiSquare: number;
}

export interface NotConverged {
  readonly kind: "no-convergence";
  readonly iterations: number;
  readonly chiSquare: number;
}

export type LeastSquaresAnswer = LeastSquaresFit | RankDeficient | NotConverged;
