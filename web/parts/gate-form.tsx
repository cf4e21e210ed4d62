/** Who opens this gate, on which day, on what evidence? Typed by a person; the button explains itself while it waits. */
import { say as sayText } from "@coldset/core/texts";
import type { BuildDoc } from "@coldset/core/workshop";
import { type FormEvent, useId, useState } from "react";
import { listed } from "../state/moved-rows.js";
import { useWorkshop } from "../state/workshop.js";
import { Verdict } from "./verdict.js";

const DAY = /^\d{4}-\d{2}-\d{2}$/;

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
    by.trim() === "" ? sayText("web.gate-form.a-name") : "",
    DAY.test(on) ? "" : sayText("web.gate-form.a-day"),
    what.trim() === "" ? sayText("web.gate-form.what-was-seen") : "",
  ].filter((m) => m !== "");
  const marked = (bad: boolean) => ({
    "aria-invalid": told && bad ? true : undefined,
    "aria-describedby": told && bad ? `${id}-waits` : undefined,
  });
  const sign = (event: FormEvent) => {
    event.preventDefault();
    if (missing.length > 0) {
      setTold(true);
      say(sayText("web.gate-form.the-gate-waits-for", { missing: listed(missing) }));
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
      {props.needs === undefined ? null : (
        <p>
          {sayText("web.gate-form.what-must-be-shown")}
          {props.needs}.
        </p>
      )}
      {signed !== undefined ? (
        <p>
          {sayText("web.gate-form.signed-by")}
          <b>{signed.by}</b>
          {sayText("web.gate-form.on")}
          <b>{signed.on}</b>: {signed.what}
        </p>
      ) : (
        <form onSubmit={sign} noValidate>
          <div className="field">
            <label htmlFor={`${id}-by`}>{sayText("web.gate-form.by")}</label>
            <div className="box">
              <input
                id={`${id}-by`}
                value={by}
                autoComplete="off"
                {...marked(by.trim() === "")}
                onChange={(e) => setBy(e.currentTarget.value)}
              />
            </div>
          </div>
          <div className="field">
            <label htmlFor={`${id}-on`}>{sayText("web.gate-form.on-year-month-day")}</label>
            <div className="box">
              <input
                id={`${id}-on`}
                value={on}
                placeholder="2026-04-30"
                inputMode="numeric"
                autoComplete="off"
                {...marked(!DAY.test(on))}
                onChange={(e) => setOn(e.currentTarget.value)}
              />
            </div>
          </div>
          <div className="field wide2">
            <label htmlFor={`${id}-what`}>{sayText("web.gate-form.what-was-seen-2")}</label>
            <div className="box">
              <textarea
                id={`${id}-what`}
                value={what}
                rows={2}
                maxLength={400}
                {...marked(what.trim() === "")}
                onChange={(e) => setWhat(e.currentTarget.value)}
              />
            </div>
          </div>
          <div className="wide2 sign-row">
            <button type="submit" className="btn" aria-disabled={missing.length > 0} aria-describedby={`${id}-waits`}>
              {missing.length > 0
                ? sayText("web.gate-form.waits", {
                    missingCount: missing.length,
                    missingCount2:
                      missing.length === 1 ? sayText("web.gate-form.line") : sayText("web.gate-form.lines"),
                  })
                : sayText("web.gate-form.sign-it")}
            </button>
            <p className={told && missing.length > 0 ? "bad" : "soft"} id={`${id}-waits`}>
              {missing.length > 0
                ? sayText("web.gate-form.it-waits-for", { missing: listed(missing) })
                : sayText("web.gate-form.your-name-stands-on-every-print")}
            </p>
          </div>
        </form>
      )}
    </div>
  );
}
