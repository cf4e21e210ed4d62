/** Who opens this gate, on which day, on what evidence? Typed by a person; the button explains itself while it waits. */
import type { BuildDoc } from "@coldset/core/workshop";
import { type FormEvent, useId, useState } from "react";
import { listed } from "../state/moved-rows.js";
import { useWorkshop } from "../state/workshop.js";
import { Verdict } from "./verdict.js";

export function GateForm(props: {
  readonly gate: string;
  readonly title: string;
  readonly build: BuildDoc;
  readonly needs?: string;
}) {
  const { gate, build } = props;
  const edit = useWorkshop((w) => w.edit);
  const say = useWorkshop((w) => w.say);
  const [by, setBy] = useState("");
  const [on, setOn] = useState("");
  const [what, setWhat] = useState("");
  const [told, setTold] = useState(false);
  const id = useId();
  const signed = (build.evidence ?? []).find((e) => e.gate === gate);
  const missing = [
    by.trim() === "" ? "a name" : "",
    /^\d{4}-\d{2}-\d{2}$/.test(on) ? "" : "a day",
    what.trim() === "" ? "what was seen" : "",
  ].filter((m) => m !== "");
  const sign = (event: FormEvent) => {
    event.preventDefault();
    if (missing.length > 0) {
      setTold(true);
      say(`The gate waits for ${listed(missing)}.`);
      return;
    }
    const row = { gate, by: by.trim(), on, what: what.trim() };
    edit({
      kind: "build",
      id: build.id,
      path: ["evidence"],
      value: [...(build.evidence ?? []), row],
      words: `gate ${gate}`,
    });
  };
  return (
    <div className="gate">
      <div className="gatehead">
        <h3>{props.title}</h3>
        {signed === undefined ? <Verdict verdict="gate" about="shut" /> : null}
      </div>
      {props.needs === undefined ? null : <p>What must be shown: {props.needs}.</p>}
      {signed !== undefined ? (
        <p>
          Signed by <b>{signed.by}</b> on <b>{signed.on}</b>: {signed.what}
        </p>
      ) : (
        <form onSubmit={sign} noValidate>
          <div className="field">
            <label htmlFor={`${id}-by`}>By</label>
            <div className="box">
              <input id={`${id}-by`} value={by} autoComplete="off" onChange={(e) => setBy(e.currentTarget.value)} />
            </div>
          </div>
          <div className="field">
            <label htmlFor={`${id}-on`}>On (year-month-day)</label>
            <div className="box">
              <input
                id={`${id}-on`}
                value={on}
                placeholder="2026-04-30"
                inputMode="numeric"
                autoComplete="off"
                onChange={(e) => setOn(e.currentTarget.value)}
              />
            </div>
          </div>
          <div className="field wide2">
            <label htmlFor={`${id}-what`}>What was seen</label>
            <div className="box">
              <textarea
                id={`${id}-what`}
                value={what}
                rows={2}
                maxLength={400}
                onChange={(e) => setWhat(e.currentTarget.value)}
              />
            </div>
          </div>
          <div className="wide2 sign-row">
            <button type="submit" className="btn" aria-disabled={missing.length > 0} aria-describedby={`${id}-waits`}>
              {missing.length > 0 ? `Waits: ${missing.length} ${missing.length === 1 ? "line" : "lines"}` : "Sign it"}
            </button>
            <p className={told && missing.length > 0 ? "bad" : "soft"} id={`${id}-waits`}>
              {missing.length > 0 ? `It waits for ${listed(missing)}.` : "Your name stands on every print."}
            </p>
          </div>
        </form>
      )}
    </div>
  );
}
