import type { NextStep } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { BlunderExplanation, Explanation } from "./explain-blunder.js";
import { measurementKind } from "./measurement-kinds.js";
import type { Suspect } from "./slip-trials.js";
import type { ReadSurvey } from "./survey-input.js";

/** Explanations further behind the first than this are not in the running. */
const IN_THE_RUNNING = 9;

/**
 * Which one re-measurement proves or disproves the likeliest explanation, and how exact must it be?
 *
 * The reading of the first explanation, with the readings that share its residual. Exact enough is a third of the gap
 * between what the first explanation expects and the nearest other value still in the running (the old reading, or
 * another slip's value more than one sd away), at most 2 sd.
 */
export function nextReading(
  read: ReadSurvey,
  explanations: readonly Explanation[],
  suspects: readonly Suspect[],
): BlunderExplanation["next"] {
  const best = explanations.find((e) => e.explains);
  if (best === undefined) {
    const suspect = suspects[0];
    if (suspect === undefined) return null;
    return build(read, [suspect.measurement], [suspect.predicted_by_others], [suspect.measured], "");
  }
  const others: number[] = [best.read[0] ?? 0];
  for (const other of explanations) {
    if (other === best) continue;
    if (other.score > best.score + IN_THE_RUNNING || other.measurements[0] !== best.measurements[0]) continue;
    others.push(other.corrected[0] ?? 0);
  }
  const names = [...best.measurements, ...best.shares_residual_with];
  const expected = names.map((name, k) => best.corrected[k] ?? readingOf(read, name));
  const pair =
    best.shares_residual_with.length === 0
      ? ""
      : say("survey.next-reading.the-numbers-cannot-tell-it-from", {
          sharesResidualWith: best.shares_residual_with.join(", "),
        });
  return build(read, names, expected, others, pair);
}

function readingOf(read: ReadSurvey, key: string): number {
  return read.values[read.keys.indexOf(key)] ?? 0;
}

function build(
  read: ReadSurvey,
  names: readonly string[],
  expected: readonly number[],
  others: readonly number[],
  pair: string,
): BlunderExplanation["next"] {
  const kinds = names.map((name) => measurementKind(plainName(name)));
  const first = kinds[0];
  const wanted = expected[0] ?? 0;
  const sd = first?.sd ?? 1;
  const gaps = others.map((value) => Math.abs(value - wanted)).filter((gap) => gap > sd);
  const half = Math.min(2 * sd, ...gaps.map((gap) => gap / 3));
  const unit = first?.unit ?? "mm";
  const index = read.keys.indexOf(names[0] ?? "");
  const step: NextStep = {
    kind: "measure",
    what: say("survey.next-reading.measure-again-expected", {
      kinds: kinds.map((kind, k) => kind?.label ?? names[k]).join("; "),
      pair,
      wanted: Number(wanted.toFixed(1)),
      unit,
    }),
    at: `measurements[${index}].value`,
    accuracy: `± ${half.toFixed(1)} ${unit}`,
    ...(first === undefined ? {} : { how: first.how }),
  };
  return { measure: names, expected, step };
}

function plainName(key: string): string {
  return key.replace(/#\d+$/, "");
}
