/**
 * The sheet `schedule`: in which order, on which evenings, and when is it finished? One description for web form,
 * command and call; the answer comes from `schedule`.
 */

import type { Sheet } from "../sheet/index.js";
import { say } from "../texts/say.js";
import { MOST_OPERATIONS } from "./network.js";
import { MOST_BUILDERS, schedule } from "./schedule.js";
import type { ScheduleInput, ScheduleValue } from "./schedule-types.js";

export const scheduleSheet: Sheet<ScheduleInput, ScheduleValue> = {
  id: "schedule",
  question: say("plan.schedule-sheet.in-which-order-on-which-evenings"),
  notes: say("plan.schedule-sheet.times-in-hours-the-critical-path"),
  fields: [
    {
      kind: "number",
      key: "evening_length_h",
      label: say("plan.schedule-sheet.length-of-an-evening"),
      help: say("plan.schedule-sheet.hours-in-which-the-builder-can"),
      unit: "h",
      min: 0.1,
      max: 24,
      start: 3,
    },
    {
      kind: "numbers",
      key: "evening_days",
      label: say("plan.schedule-sheet.evenings-as-day-numbers"),
      help: say("plan.schedule-sheet.day-0-is-the-first-evening"),
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
      label: say("plan.schedule-sheet.builders-at-the-same-time"),
      help: say("plan.schedule-sheet.each-works-on-an-operation-of"),
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
        {
          kind: "text",
          key: "name",
          label: say("plan.schedule-sheet.what-is-done"),
          maxLength: 200,
          start: say("plan.schedule-sheet.strip-and-bag"),
          optional: true,
        },
        {
          kind: "number",
          key: "hands_on_h",
          label: say("plan.schedule-sheet.hands-on-time"),
          help: say("plan.schedule-sheet.hours-the-builder-is-busy-with"),
          unit: "h",
          min: 0,
          max: 10_000,
          start: 2.5,
        },
        {
          kind: "number",
          key: "cure_after_h",
          label: say("plan.schedule-sheet.wait-after-it"),
          help: say("plan.schedule-sheet.clock-hours-from-its-end-before"),
          unit: "h",
          min: 0,
          max: 100_000,
          start: 0,
        },
        {
          kind: "numbers",
          key: "after",
          label: say("plan.schedule-sheet.comes-after"),
          help: say("plan.schedule-sheet.numbers-of-the-operations-that-must"),
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
        { id: 1, name: say("plan.schedule-sheet.strip-and-bag"), hands_on_h: 2.5, cure_after_h: 0, after: [] },
        { id: 2, name: say("plan.schedule-sheet.dry-fit"), hands_on_h: 3, cure_after_h: 0, after: [1] },
        { id: 3, name: say("plan.schedule-sheet.prime-and-colour"), hands_on_h: 3, cure_after_h: 24, after: [2] },
        { id: 4, name: "assemble", hands_on_h: 2.5, cure_after_h: 0, after: [3] },
      ],
    },
  ],
  gives: [
    { key: "critical_path_h", means: say("plan.schedule-sheet.length-of-the-plain-critical-path") },
    { key: "critical_operations", means: say("plan.schedule-sheet.numbers-of-the-operations-without-float") },
    { key: "earliest_start_h", means: say("plan.schedule-sheet.earliest-start-of-each-operation-hours") },
    { key: "latest_start_h", means: say("plan.schedule-sheet.latest-start-that-does-not-lengthen") },
    { key: "total_float_h", means: say("plan.schedule-sheet.hours-each-operation-may-slip") },
    { key: "hands_on_total_h", means: say("plan.schedule-sheet.sum-of-the-hands-on-times") },
    { key: "cure_total_h", means: say("plan.schedule-sheet.sum-of-the-waits-hours") },
    {
      key: "one_builder",
      means: say("plan.schedule-sheet.the-plan-on-the-evenings-given"),
    },
  ],
  run: (input) => schedule(input),
};
