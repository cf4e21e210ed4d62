/** `coldset plan FILE`: in which order is it done, on which evenings, and by when must what be ordered? */

import { reckon } from "@coldset/core/questions";
import { type FiredRule, STANDING_TEXT, standingRefusals } from "@coldset/core/safety";
import { say } from "@coldset/core/texts";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { readBuild } from "../read/read-build.js";
import { tellJson } from "../said/json-answer.js";
import { planPage } from "../said/plan-page.js";
import { refusalsPage, tellRefused } from "../said/refusals.js";
import { jsonText } from "../screen/letters.js";
import { Page } from "../screen/page.js";
import type { BuildOptions } from "./check.js";

export async function plan(io: Io, file: string, options: BuildOptions): Promise<number> {
  const json = options.json === true;
  const read = await readBuild(io, file, options.build);
  if (read.kind === "refused") return tellRefused(io, read, json);
  const r = reckon(read.resolved);
  const standing = standingRefusals(r.rules);
  if (standing.length > 0) {
    const refusals = standing.map(asRefusal);
    if (json) io.stdout(`${jsonText({ kind: "refused", refusals })}\n`);
    const page = new Page(io.columns, io.colour).text([["bad", say("cli.plan.no-plan-is-made-while-a")]]).blank();
    io.stderr(refusalsPage(refusals, page).blank().text(STANDING_TEXT).toString());
    return EXIT.safetyRefusal;
  }
  const answer = r.plan.plan;
  if (answer.kind === "refused") return tellRefused(io, answer, json);
  if (json) tellJson(io, { ...answer, value: { ...answer.value, standing_text: STANDING_TEXT } });
  else io.stdout(planPage(r, answer.value, new Page(io.columns, io.colour)).toString());
  return EXIT.answered;
}

/** A standing rule in the form that programs read. */
export function asRefusal(f: FiredRule) {
  return {
    code: `safety-${f.rule.toLowerCase()}`,
    at: f.about,
    given: f.here,
    allowed: f.insteadDo,
    message: say("cli.plan.refuses-this-on-instead", {
      rule: f.rule,
      about: f.about,
      here: /[.!?]$/.test(f.here) ? f.here : `${f.here}.`,
      why: f.why,
      insteadDo: f.insteadDo,
    }),
  };
}
