/** `coldset check FILE`: what are today's answers for this build? */
import { reckon } from "@coldset/core/questions";
import { standingRefusals } from "@coldset/core/safety";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { readBuild } from "../read/read-build.js";
import { checkObject } from "../said/check-object.js";
import { checkPage } from "../said/check-page.js";
import { tellJson } from "../said/json-answer.js";
import { tellRefused } from "../said/refusals.js";
import { Page } from "../screen/page.js";

export interface BuildOptions {
  readonly build?: string;
  readonly json?: boolean;
}

export interface CheckOptions extends BuildOptions {
  readonly working?: boolean;
}

export async function check(io: Io, file: string, options: CheckOptions): Promise<number> {
  const json = options.json === true;
  const read = await readBuild(io, file, options.build);
  if (read.kind === "refused") return tellRefused(io, read, json);
  const r = reckon(read.resolved);
  if (json) tellJson(io, checkObject(r));
  else io.stdout(checkPage(r, new Page(io.columns, io.colour), options.working === true).toString());
  return standingRefusals(r.rules).length > 0 ? EXIT.safetyRefusal : EXIT.answered;
}
