/** What goes into the sheet `schedule` and what comes back, under the names of docs/methods/sheets.md. */
export interface ScheduleOperation {
  readonly id: number;
  readonly name?: string;
  readonly hands_on_h: number;
  readonly cure_after_h: number;
  readonly after: readonly number[];
}

export interface ScheduleInput {
  readonly evening_length_h: number;
  readonly evening_days: readonly number[];
  readonly builders?: number;
  readonly operations: readonly ScheduleOperation[];
}

export interface ScheduledOperation {
  readonly id: number;
  readonly start_clock_h: number;
  readonly end_clock_h: number;
  /** First evening = 1. */
  readonly evening: number;
  readonly day: number;
  readonly hours_into_that_evening: number;
  /** First builder = 1. */
  readonly builder: number;
}

interface CalendarFacts {
  /** No plan can end before this clock time; null where no plan exists at all. */
  readonly lower_bound_clock_h: number | null;
  readonly evenings_listed: number;
}

export interface PossiblePlan extends CalendarFacts {
  readonly possible: true;
  readonly earliest_finish_clock_h: number;
  readonly finish_evening: number;
  readonly hours_into_that_evening: number;
  readonly elapsed_days: number;
  readonly proven_optimal: boolean;
  readonly schedule: readonly ScheduledOperation[];
}

export interface ImpossiblePlan extends CalendarFacts {
  readonly possible: false;
  readonly why: "longer-than-an-evening" | "evenings-run-out";
  /** True where it is certain that no plan fits; false where the search found none in its budget. */
  readonly proven_impossible: boolean;
  /** Evenings it would take if they went on in the same rhythm; null where that would not help. */
  readonly evenings_needed: number | null;
  readonly earliest_finish_clock_h: null;
  readonly finish_evening: null;
  readonly hours_into_that_evening: null;
  readonly elapsed_days: null;
  readonly proven_optimal: false;
  readonly schedule: readonly ScheduledOperation[];
}

export interface ScheduleValue {
  readonly critical_path_h: number;
  readonly critical_operations: readonly number[];
  readonly earliest_start_h: Readonly<Record<string, number>>;
  readonly latest_start_h: Readonly<Record<string, number>>;
  readonly total_float_h: Readonly<Record<string, number>>;
  readonly hands_on_total_h: number;
  readonly cure_total_h: number;
  readonly one_builder: PossiblePlan | ImpossiblePlan;
}
