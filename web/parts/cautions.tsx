/** Which cautions stand here? A strip with a hatched edge, above the thing to be done; it stays on every print. */

import type { Caution } from "@coldset/core/quantity";
import type { FiredRule } from "@coldset/core/safety";
import { say } from "@coldset/core/texts";
import { capital } from "../state/words.js";

const LEVELS = {
  refuse: say("web.cautions.refused"),
  gate: say("web.cautions.gate"),
  flag: say("web.cautions.flag"),
} as const;

interface CautionsProps {
  readonly rules?: readonly FiredRule[];
  readonly cautions?: readonly Caution[];
  /** One line each; why and what instead stand on the sheet named here. */
  readonly brief?: { readonly href: string; readonly words: string };
}

export function Cautions({ rules = [], cautions = [], brief }: CautionsProps) {
  if (rules.length + cautions.length === 0) return null;
  return (
    <aside className="caution" aria-label={say("web.cautions.cautions")}>
      <ul>
        {rules.map((r) => (
          <li key={`${r.rule} ${r.about} ${r.here}`}>
            <b>
              {LEVELS[r.level]}
              {r.onChosen ? "" : say("web.cautions.is-only-weighed", { about: r.about })}:
            </b>{" "}
            {r.here.replace(/\.$/, "")}.{" "}
            {brief === undefined ? (
              <>
                {r.why}
                {say("web.cautions.instead")}
                {lower(r.insteadDo)}{" "}
                {r.level === "gate" && r.evidenceNeeded !== undefined
                  ? say("web.cautions.what-must-be-shown", { evidenceNeeded: r.evidenceNeeded })
                  : ""}
                <span className="soft">
                  {say("web.cautions.rule")}
                  {r.rule}.
                </span>
              </>
            ) : (
              <span className="soft">
                {say("web.cautions.rule")}
                {r.rule}.
              </span>
            )}
          </li>
        ))}
        {cautions.map((c) => (
          <li key={`${c.code} ${c.message}`}>{capital(c.message)}</li>
        ))}
        <li className="stays">
          {brief === undefined ? null : <a href={brief.href}>{brief.words}</a>}{" "}
          {rules.length > 0 ? say("web.cautions.nobody-can-switch-a-rule-off") : ""}
          {say("web.cautions.these-lines-stay-on-every-print")}
        </li>
      </ul>
    </aside>
  );
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);
