/** Where does the hand go next? One step, with a link to the place where it is entered. */

import type { NextStep } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { linkTo } from "../state/route.js";
import { capital, lower } from "../state/words.js";

/** The id of the field in which the value at this path is written. */
export const fieldId = (at: string) => `f-${at}`;

/** The page on which this step is done: the field, the gate, or the question's own page. */
export function stepHref(build: string, step: NextStep, n?: number): string | undefined {
  const at = step.at ?? "";
  if (at.startsWith("build.evidence")) return `${linkTo.do(build)}#gates`;
  if (/^build\.(chosen|consider|remedies)/.test(at)) return `${linkTo.fit(build)}#choose`;
  if (/^(donor|rider|intent|shop|bin|prices)\./.test(at))
    return `${linkTo.measure(build)}#${encodeURIComponent(fieldId(at))}`;
  return n === undefined ? undefined : linkTo.question(build, n);
}

/** "Measure the chainstay, with trammel, to ± 0.3 mm". */
export function stepWords(step: NextStep): string {
  return [
    step.kind === "decide" ? say("web.next-link.decide", { what: lower(step.what) }) : capital(step.what),
    ...(step.tool === undefined ? [] : [say("web.next-link.with", { tool: step.tool })]),
    ...(step.accuracy === undefined
      ? []
      : [say("web.next-link.to", { accuracy: step.accuracy.replaceAll(" ", "\u00a0") })]),
  ].join(", ");
}

export function NextLink(props: {
  readonly step: NextStep;
  readonly build: string;
  readonly n?: number;
  readonly long?: boolean;
}) {
  const { step, long = false } = props;
  const words = stepWords(step);
  const href = stepHref(props.build, step, props.n);
  const inner = (
    <>
      {step.kind === "measure" ? <Jaws /> : step.kind === "decide" ? <Pencil /> : <Hand />}
      <span>{words}</span>
    </>
  );
  return (
    <>
      {href === undefined ? (
        <p className="next">{inner}</p>
      ) : (
        <a className="next" href={href}>
          {inner}
        </a>
      )}
      {long && step.how !== undefined ? <p className="soft how">{capital(step.how.replace(/\.?$/, "."))}</p> : null}
    </>
  );
}

const Jaws = () => (
  <svg viewBox="0 0 34 34" aria-hidden="true" focusable="false">
    <path className="l4" d="M3 8H31M8 8V27L12 22V8M26 8V27L22 22V8" />
    <path className="mk heavy" d="M14 18H20" />
  </svg>
);
const Pencil = () => (
  <svg viewBox="0 0 34 34" aria-hidden="true" focusable="false">
    <path className="l4" d="M6 28L9 19 22 6 28 12 15 25Z" />
    <path className="mk heavy" d="M6 31H28" />
  </svg>
);
const Hand = () => (
  <svg viewBox="0 0 34 34" aria-hidden="true" focusable="false">
    <path className="l4" d="M5 5V29M29 5V29M10 17H24" />
    <path className="mk heavy" d="M6 31H28" />
  </svg>
);
