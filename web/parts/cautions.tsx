/** Which cautions stand here? A strip with a hatched edge, above the thing to be done; it stays on every print. */
import type { Caution } from "@coldset/core/quantity";
import type { FiredRule } from "@coldset/core/safety";
import { capital } from "../state/words.js";

const LEVELS = { refuse: "Refused", gate: "Gate", flag: "Flag" } as const;

interface CautionsProps {
  readonly rules?: readonly FiredRule[];
  readonly cautions?: readonly Caution[];
  /** One line each; why and what instead stand on the sheet named here. */
  readonly brief?: { readonly href: string; readonly words: string };
}

export function Cautions({ rules = [], cautions = [], brief }: CautionsProps) {
  if (rules.length + cautions.length === 0) return null;
  return (
    <aside className="caution" aria-label="Cautions">
      <ul>
        {rules.map((r) => (
          <li key={`${r.rule} ${r.about} ${r.here}`}>
            <b>
              {LEVELS[r.level]}
              {r.onChosen ? "" : ` (${r.about} is only weighed)`}:
            </b>{" "}
            {r.here.replace(/\.$/, "")}.{" "}
            {brief === undefined ? (
              <>
                {r.why} Instead: {lower(r.insteadDo)}{" "}
                {r.level === "gate" && r.evidenceNeeded !== undefined
                  ? `What must be shown: ${r.evidenceNeeded}. `
                  : ""}
                <span className="soft">Rule {r.rule}.</span>
              </>
            ) : (
              <span className="soft">Rule {r.rule}.</span>
            )}
          </li>
        ))}
        {cautions.map((c) => (
          <li key={`${c.code} ${c.message}`}>{capital(c.message)}</li>
        ))}
        <li className="stays">
          {brief === undefined ? null : <a href={brief.href}>{brief.words}</a>}{" "}
          {rules.length > 0 ? "Nobody can switch a rule off. " : ""}These lines stay on every print of this sheet.
        </li>
      </ul>
    </aside>
  );
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);
