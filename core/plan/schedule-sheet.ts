/**
 * The sheet `schedule`: in which order, on which evenings, and when is it finished? One description for web form,
 * command and call; the answer comes from `schedule`.
 */
import type { Sheet } from "../sheet/index.js";
import { MOST_OPERATIONS } from "./network.js";
import { MOST_BUILDERS, schedule } from "./schedule.js";
import type { ScheduleInput, ScheduleValue } from "./schedule-types.js";

export const scheduleSheet: Sheet<ScheduleInput, ScheduleValue> = {
  id: "schedule",
  question: "In which order, on which evenings, and when is it finished?",
  notes:
    "Times in hours. The critical path takes unlimited hands and works round the clock; a cure holds up every successor, and the cure of an operation that nothing follows does not count. " +
    "The evening plan takes the builders and evenings given: each operation in one piece inside one evening, also one with no hands-on time. Clock zero is the start of the first evening; elapsed days are clock hours / 24. " +
    "The plan shown is one of those with the earliest finish where proven_optimal is true.",
  fields: [
    {
      kind: "number",
      key: "evening_length_h",
      label: "Length of an evening",
      help: "Hours in which the builder can work in one go.",
      unit: "h",
      min: 0.1,
      max: 24,
      start: 3,
    },
    {
      kind: "numbers",
      key: "evening_days",
      label: "Evenings, as day numbers",
      help: "Day 0 is the first evening; tue, thu, sat is 0, 2, 4, 7, 9, 11 and so on.",
      unit: "day",
      min: 0,
      max: 3650,
      minItems: 1,
      maxItems: 1000,
      start: [0, 2, 4, 7, 9, 11, 14],
    },
    {
      kind: "number",
      key: "builders",
      label: "Builders at the same time",
      help: "Each works on an operation of his own.",
      unit: "count",
      min: 1,
      max: MOST_BUILDERS,
      integer: true,
      start: 1,
      optional: true,
    },
    {
      kind: "list",
      key: "operations",
      label: "Operations",
      minItems: 1,
      maxItems: MOST_OPERATIONS,
      of: [
        { kind: "number", key: "id", label: "Number", unit: "count", min: 0, max: 1_000_000, integer: true, start: 1 },
        { kind: "text", key: "name", label: "What is done", maxLength: 200, start: "strip and bag", optional: true },
        {
          kind: "number",
          key: "hands_on_h",
          label: "Hands-on time",
          help: "Hours the builder is busy with it.",
          unit: "h",
          min: 0,
          max: 10_000,
          start: 2.5,
        },
        {
          kind: "number",
          key: "cure_after_h",
          label: "Wait after it",
          help: "Clock hours from its end before anything that follows may start: paint, glue, oil, post.",
          unit: "h",
          min: 0,
          max: 100_000,
          start: 0,
        },
        {
          kind: "numbers",
          key: "after",
          label: "Comes after",
          help: "Numbers of the operations that must be finished before.",
          unit: "count",
          min: 0,
          max: 1_000_000,
          integer: true,
          minItems: 0,
          maxItems: MOST_OPERATIONS,
          start: [],
        },
      ],
      start: [
        { id: 1, name: "strip and bag", hands_on_h: 2.5, cure_after_h: 0, after: [] },
        { id: 2, name: "dry fit", hands_on_h: 3, cure_after_h: 0, after: [1] },
        { id: 3, name: "prime and colour", hands_on_h: 3, cure_after_h: 24, after: [2] },
        { id: 4, name: "assemble", hands_on_h: 2.5, cure_after_h: 0, after: [3] },
      ],
    },
  ],
  gives: [
    { key: "critical_path_h", means: "length of the plain critical path, hours" },
    { key: "critical_operations", means: "numbers of the operations without float, first to last" },
    { key: "earliest_start_h", means: "earliest start of each operation, hours from the start" },
    { key: "latest_start_h", means: "latest start that does not lengthen the path, hours" },
    { key: "total_float_h", means: "hours each operation may slip" },
    { key: "hands_on_total_h", means: "sum of the hands-on times, hours" },
    { key: "cure_total_h", means: "sum of the waits, hours" },
    {
      key: "one_builder",
      means:
        "the plan on the evenings given, with any number of builders: possible or not, finish in clock hours, evening number, hours into it, days, whether proven the earliest, and the start of every operation",
    },
  ],
  run: (input) => schedule(input),
};
