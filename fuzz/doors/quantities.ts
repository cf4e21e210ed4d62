/** What comes of any written figure? A finite number that a second, slow reading agrees with, or a described refusal. */
import { readQuantity, UNREADABLE_CODES, type Unreadable, writeQuantity } from "@coldset/core/quantity";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { factorOf, plainReading } from "../inputs/plain-reading.js";
import { type Figure, figure } from "../inputs/written-figure.js";

/** Both readings reckon in doubles by different ways; this is far below any caliper and far above rounding. */
const NEAR = 1e-11;
const near = (a: number, b: number) => Math.abs(a - b) <= NEAR * Math.max(Math.abs(a), Math.abs(b)) + 1e-15;

function put(f: Figure): Went {
  const options = {
    ...(f.bareUnit === "" ? {} : { bareUnit: f.bareUnit }),
    ...(f.into === "" ? {} : { into: f.into }),
  };
  const read = readQuantity(f.text, f.want, options);
  if (read.kind === "unreadable") {
    mustHold(
      f.means === null || Math.abs(f.means) > 1e9,
      () => `${JSON.stringify(f.text)} is a plain figure and was refused: ${read.code}`,
    );
    described(read, f);
    return refusedAs(read.code);
  }
  const into = f.into === "" ? 1 : (factorOf(f.want, f.into) ?? Number.NaN);
  const bare = f.bareUnit === "" ? 1 : (factorOf(f.want, f.bareUnit) ?? Number.NaN);
  mustHold(Number.isFinite(read.value), () => `read as ${read.value}`);
  mustHold(Math.abs(read.value * into) <= 1e9 * (1 + NEAR), () => `${read.value} lies outside the limits`);
  mustHold(read.written === f.text.trim(), () => `written as ${JSON.stringify(read.written)}`);
  mustHold(!Object.is(read.value, -0), () => "a minus before a zero");
  const said = plainReading(f.text, f.want, bare);
  mustHold(said !== undefined, () => `accepted as ${read.value}; a plain reading finds signs that say nothing`);
  mustHold(near(read.value * into, said.value), () => `read as ${read.value * into}, plainly it is ${said.value}`);
  if (f.means !== null) {
    const { means } = f;
    mustHold(near(read.value * into, means), () => `read as ${read.value * into}, meant was ${means}`);
  }
  const half = read.plusMinus;
  mustHold((half === undefined) === (said.plusMinus === undefined), () => "one of the two readings has no half-width");
  if (half !== undefined && said.plusMinus !== undefined) {
    mustHold(Number.isFinite(half) && half >= 0, () => `a half-width of ${half}`);
    const plainHalf = said.plusMinus;
    mustHold(near(half * into, plainHalf), () => `half-width ${half * into}, plainly ${plainHalf}`);
  }
  if (f.into === "" && f.want !== "count") backAgain(read.value, f);
  return accepted(f.want);
}

/** What is shown can be typed in again: the same text comes out, and the value within what the decimals leave. */
function backAgain(value: number, { want }: Figure): void {
  if (want === "count") return;
  // A double holds 15 digits: more decimals than those would show its last bit, not the figure.
  const decimals = Math.abs(value) < 1e4 ? 6 : 2;
  for (const system of ["metric", "inch"] as const) {
    const shown = writeQuantity(value, want, system, { decimals });
    const again = readQuantity(shown, want);
    mustHold(again.kind === "read", () => `${shown} was written by us and cannot be read`);
    const once = writeQuantity(again.value, want, system, { decimals });
    mustHold(once === shown, () => `${shown} is written ${once} the second time`);
    // Half the last decimal of the largest unit shown: 1 in2 is 645.16 mm2.
    const most = 0.5 * 10 ** -decimals * 645.16 * 1.0001 + Math.abs(value) * 1e-14;
    mustHold(Math.abs(again.value - value) <= most, () => `${value} is shown as ${shown} and read as ${again.value}`);
  }
}

export function described(read: Unreadable, f: { readonly text: string; readonly want: string }): void {
  mustHold(UNREADABLE_CODES.includes(read.code), () => `unknown code ${read.code}`);
  mustHold(/^.{3,}\.$/s.test(read.reason), () => `the reason is "${read.reason}"`);
  mustHold(read.written.length <= 65, () => `shown at a length of ${read.written.length}`);
  mustHold(!/[\p{Cc}\p{Cf}\p{Cs}]/u.test(read.written + read.reason), () => "hidden signs are shown back");
  mustHold(read.ways.length === 3 && read.allowed !== "", () => "no three ways to write it");
  for (const way of read.ways) {
    const better = readQuantity(way, f.want as Figure["want"]);
    mustHold(better.kind === "read", () => `${JSON.stringify(f.text)} is answered with "${way}", which cannot be read`);
  }
}

export const quantities: Door<Figure> = {
  name: "quantities",
  holds: "a written figure becomes the finite number that a plain second reading finds, or a described refusal",
  inputs: figure,
  put,
};
