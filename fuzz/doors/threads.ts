/** What comes of any written thread? Diameter and pitch as meant, or a described refusal; never a pitch that nobody wrote. */
import { readQuantity, writeThread } from "@coldset/core/quantity";
import fc from "fast-check";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { oddText, slip, slipped } from "../inputs/odd-text.js";
import { described } from "./quantities.js";

interface WrittenThread {
  readonly text: string;
  /** [diameter mm, pitch mm or threads per inch or 0 for none, per inch?, hand]; null where nobody knows. */
  readonly means: readonly [number, number, boolean, string] | null;
}

const hand = fc.constantFrom("", "", "", "LH", "RH", "left", "left-hand", "right handed");
const times = fc.constantFrom("x", " x ", "×", " × ", "X", "*");
const comma = fc.constantFrom(".", ",");

const metric: fc.Arbitrary<WrittenThread> = fc
  .tuple(fc.integer({ min: 3, max: 60 }), fc.constantFrom(0.5, 0.75, 1, 1.25, 1.5), times, hand, comma, fc.nat(2))
  .map(([d, p, x, h, sign, way]) => {
    const pitch = String(p).replace(".", sign);
    const text = way === 0 ? `M${d}` : way === 1 ? `M${d}${x}${pitch}` : `${d} mm${x}${pitch} mm`;
    return {
      text: h === "" ? text : `${text} ${h}`,
      means: [d, way === 0 ? 0 : p, false, h.slice(0, 1).toLowerCase()],
    };
  });

const inch: fc.Arbitrary<WrittenThread> = fc
  .tuple(
    fc.constantFrom<readonly [string, number]>(
      ["1.37", 1.37],
      ["9/16", 0.5625],
      ["1", 1],
      ["1 1/8", 1.125],
      ["1.375", 1.375],
    ),
    fc.constantFrom(20, 24, 26, 28),
    times,
    fc.constantFrom(" in", '"', " inch"),
    hand,
    fc.constantFrom("", " tpi", " TPI"),
  )
  .map(([[size, inches], tpi, x, unit, h, per]) => ({
    text: `${size}${unit}${x}${tpi}${per}${h === "" ? "" : ` ${h}`}`,
    means: [inches * 25.4, tpi, true, h.slice(0, 1).toLowerCase()],
  }));

const good = fc.oneof(metric, inch);
const inputs: fc.Arbitrary<WrittenThread> = fc.oneof(
  { weight: 3, arbitrary: good },
  {
    weight: 3,
    arbitrary: fc
      .tuple(good, fc.array(slip, { minLength: 1, maxLength: 2 }))
      .map(([t, slips]) => ({ text: slipped(t.text, slips), means: null })),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom("M", "M1", "M12x", "1.37x", "x24", "BSA ", "M12 x 1.5 x "), oddText)
      .map((t) => ({ text: t.join(""), means: null })),
  },
);

const near = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * Math.abs(b);

function put({ text, means }: WrittenThread): Went {
  const read = readQuantity(text, "thread");
  if (read.kind === "unreadable") {
    // A pitch of more than half the diameter is no thread, however well it is written.
    const wanted = means !== null && !(means[1] !== 0 && !means[2] && means[1] > means[0] / 2);
    mustHold(!wanted, () => `${JSON.stringify(text)} is a plain thread and was refused: ${read.code}`);
    described(read, { text, want: "thread" });
    return refusedAs(read.code);
  }
  const t = read.thread;
  mustHold(Number.isFinite(t.majorMm) && t.majorMm >= 1 && t.majorMm <= 100, () => `a diameter of ${t.majorMm}`);
  mustHold(read.value === t.majorMm, () => "value and diameter differ");
  mustHold(t.pitchMm === undefined || (Number.isFinite(t.pitchMm) && t.pitchMm > 0), () => `a pitch of ${t.pitchMm}`);
  const numbers = text.normalize("NFKC").match(/\d+/gu)?.length ?? 0;
  mustHold(numbers > 1 || t.pitchMm === undefined, () => `a pitch of ${t.pitchMm} that nobody wrote`);
  if (means !== null) {
    const [major, pitch, perInch, side] = means;
    mustHold(near(t.majorMm, major), () => `diameter ${t.majorMm}, meant ${major}`);
    if (perInch) mustHold(t.tpi === pitch, () => `${t.tpi} per inch, meant ${pitch}`);
    else mustHold((t.pitchMm ?? 0) === pitch && t.tpi === undefined, () => `pitch ${t.pitchMm}, meant ${pitch}`);
    mustHold((t.hand ?? "").slice(0, 1) === side, () => `hand ${t.hand}`);
  }
  const shown = writeThread(t);
  const again = readQuantity(shown, "thread");
  mustHold(again.kind === "read", () => `${shown} was written by us and cannot be read`);
  mustHold(near(again.thread.majorMm, t.majorMm) && again.thread.hand === t.hand, () => `${shown} reads differently`);
  const pitchBack = again.thread.pitchMm ?? 0;
  mustHold(pitchBack === (t.pitchMm ?? 0) || near(pitchBack, t.pitchMm ?? 0), () => `${shown}: pitch ${pitchBack}`);
  return accepted(t.form);
}

export const threads: Door<WrittenThread> = {
  name: "threads",
  holds: "a written thread becomes the diameter and pitch that were meant, or a described refusal",
  inputs,
  put,
};
