/**
 * Which thread is written here?
 * Takes M12x1.5 · M12 × 1,5 · M5 · 10x1 · 1.37x24 · 1.37"×24 tpi · 9/16 in x 20 tpi · 36 mm x 24 tpi, each with LH or RH
 * behind it. M5 leaves the pitch open: the coarse pitch is not filled in. Without marks, a second number of 8 to 80 is
 * threads per inch where the first is at most 2, and one of 0.2 to 6 is a pitch in mm; all else is refused.
 * Sources: iso-metric-thread-marks, inch-thread-habit, yard-and-pound-1959.
 */
import { say } from "../texts/say.js";
import { exactFromDecimal, exactOver, exactTimes, exactToNumber } from "./exact-number.js";
import { readNumber } from "./read-number.js";
import { type Fault, fault, type ThreadSize } from "./reading.js";

const INCH = exactFromDecimal("25.4");
/** Widest thread that we take for one, mm: past any bottom bracket or headset. */
const MAX_MAJOR_MM = 100;

export interface ThreadHit {
  readonly kind: "thread";
  readonly thread: ThreadSize;
  readonly unit: string;
}

export function readThread(tidy: string): ThreadHit | Fault {
  const handed = /^(.*\d.*?)[ ,]*\b(LH|RH|left|right)(?:[ -]?hand(?:ed)?)?$/i.exec(tidy);
  const word = handed?.[2]?.toLowerCase();
  const hand = word === undefined ? {} : { hand: word.startsWith("l") ? ("left" as const) : ("right" as const) };
  const body = (handed?.[1] ?? tidy).trim();
  const metric = /^M ?(?=\d)/i.exec(body);
  const first = readNumber(metric === null ? body : body.slice(metric[0].length));
  if (first.kind === "fault") return bad(first);
  const afterFirst = /^ ?(mm(?![a-wyz])|"|in(?:ch)?(?![a-wyz])\.?)?/i.exec(first.rest) ?? [""];
  const firstUnit = afterFirst[1] ?? "";
  const inches = firstUnit !== "" && firstUnit.toLowerCase() !== "mm";
  if (metric !== null && inches) return fault("bad-thread", say("quantity.read-thread.a-thread-with-m-is-in"));
  const tail = first.rest.slice(afterFirst[0].length);
  if (tail === "") {
    if (metric === null) return fault("bad-thread", say("quantity.read-thread.a-thread-needs-its-pitch-or"));
    return size(exactToNumber(first.value), { form: "metric", ...hand }, "M");
  }
  const times = /^ ?[x×✕✖*\u0445] ?/iu.exec(tail);
  if (times === null) return fault("bad-thread", say("quantity.read-thread.after-the-diameter-comes-x-and"));
  const second = readNumber(tail.slice(times[0].length));
  if (second.kind === "fault") return bad(second);
  const secondUnit = (/^ ?(mm|tpi|t\.p\.i\.?)?$/i.exec(second.rest) ?? [undefined, "?"])[1] ?? "";
  if (secondUnit === "?")
    return fault(
      "trailing-text",
      say("quantity.read-thread.behind-the-thread-cannot-be-read", { rest: second.rest.trim() }),
    );
  const saysTpi = secondUnit.toLowerCase().startsWith("t");
  const saysMm = secondUnit.toLowerCase() === "mm";
  const a = exactToNumber(first.value);
  const b = exactToNumber(second.value);
  if (b === 0) return fault("bad-thread", say("quantity.read-thread.a-pitch-of-zero-is-no"));
  const unit = [metric === null ? firstUnit : "M", secondUnit].filter((u) => u !== "").join(" ");

  const perInch = saysTpi || (!saysMm && metric === null && (inches ? b >= 8 : firstUnit === "" && a <= 2 && b >= 8));
  if (perInch) {
    if (metric !== null) return fault("bad-thread", say("quantity.read-thread.a-thread-with-m-has-its"));
    if (b < 4 || b > 80)
      return fault("bad-thread", say("quantity.read-thread.threads-per-inch-lies-outside-4", { threadsPerInch: b }));
    const majorInInches = inches || (firstUnit === "" && a <= 4);
    const major = majorInInches ? exactTimes(first.value, INCH) : first.value;
    const pitchMm = exactToNumber(exactOver(INCH, second.value));
    return size(exactToNumber(major), { form: "threads per inch", tpi: b, pitchMm, ...hand }, unit);
  }
  if (inches) return fault("bad-thread", say("quantity.read-thread.an-inch-thread-has-8-or"));
  if (b < 0.2 || b > 6)
    return fault("ambiguous-thread", say("quantity.read-thread.could-be-a-pitch-of-mm", { body, number: b }));
  return size(a, { form: "metric", pitchMm: b, ...hand }, unit);
}

function size(majorMm: number, rest: Omit<ThreadSize, "majorMm">, unit: string): ThreadHit | Fault {
  if (majorMm < 1 || majorMm > MAX_MAJOR_MM) {
    return fault(
      "bad-thread",
      say("quantity.read-thread.a-diameter-of-mm-lies-outside", {
        majorMm: Number(majorMm.toPrecision(6)),
        maxMajorMm: MAX_MAJOR_MM,
      }),
    );
  }
  if (rest.pitchMm !== undefined && rest.pitchMm > majorMm / 2) {
    return fault(
      "bad-thread",
      say("quantity.read-thread.a-pitch-of-mm-is-more", { pitchMm: Number(rest.pitchMm.toPrecision(4)) }),
    );
  }
  return { kind: "thread", thread: { majorMm, ...rest }, unit };
}

/** Number faults keep their code, but the ways of a plain number do not help with a thread. */
function bad(f: Fault): Fault {
  return f.code === "not-a-number"
    ? fault("bad-thread", say("quantity.read-thread.a-thread-starts-with-m-or"))
    : fault(f.code, f.reason);
}
