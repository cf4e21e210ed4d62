/** The plan: operations in order, evenings and waits, gates with their evidence, and what is to be ordered by when. */

import type { PlannedOperation } from "@coldset/core/plan";
import type { Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { Cautions } from "../parts/cautions.js";
import { EditBar } from "../parts/edit-line.js";
import { GateForm } from "../parts/gate-form.js";
import { useWide, useWindowWidth } from "../parts/picture.js";
import { PlanPicture } from "../parts/plan-picture.js";
import { PageTitle } from "../parts/sheet-frame.js";
import { TableView } from "../parts/table.js";
import { Verdict, Verdicts } from "../parts/verdict.js";
import { listed, type Moved } from "../state/moved-rows.js";
import { useNumbers } from "../state/numbers.js";
import { capital, capitalWord } from "../state/words.js";

export function DoPage({ r, moved }: { readonly r: Reckoning; readonly moved: ReadonlyMap<number, Moved> }) {
  const wide = useWide();
  const inside = Math.min(useWindowWidth(), 1280) - 112;
  const plan = r.plan.plan;
  const row = r.board.find((b) => b.n === 15);
  const buy = r.board.find((b) => b.n === 14);
  const { build } = r.resolved;
  const operations = build.operations.filter((o) => o.gate === true);
  // What cannot be taken back and comes before any dry fit waits for a name of its own.
  const risks =
    plan.kind === "refused"
      ? []
      : plan.value.operations.filter(
          (o) => !o.gate && (o.lockedBy.includes(o.id) || (build.evidence ?? []).some((e) => e.gate === o.id)),
        );
  const gateRules = r.rules.filter((f) => f.level === "gate" && f.onChosen);
  return (
    <>
      <div className="pagehead">
        <div>
          <PageTitle>{say("web.do-page.what-is-done-in-which-order")}</PageTitle>
          {row === undefined ? null : <p>{row.answer}</p>}
        </div>
        {row === undefined ? null : <Verdicts verdict={row.verdict} about={row.about} />}
      </div>
      <EditBar moved={moved} board={r.board} />
      {plan.kind === "refused" ? (
        <section className="trouble">
          <h2>{say("web.do-page.the-plan-cannot-be-laid-out")}</h2>
          {plan.refusals.map((x) => (
            <p key={x.message}>{x.message}</p>
          ))}
        </section>
      ) : (
        <>
          <figure>
            <PlanPicture plan={plan.value} version={wide ? "wide" : "narrow"} {...(wide ? { widthPx: inside } : {})} />
            <figcaption className="cap">{say("web.do-page.strokes-evenings-at-the-bench-dashed")}</figcaption>
          </figure>
          {row === undefined ? null : (
            <div className="words">
              {row.working.words.slice(0, 2).map((w) => (
                <p key={w}>{w}</p>
              ))}
            </div>
          )}
          <Cautions rules={r.rules.filter((f) => f.onChosen)} cautions={plan.cautions} />
          {plan.value.findings.length === 0 ? null : (
            <>
              <h2 className="sec">{say("web.do-page.found-in-the-order")}</h2>
              <ul className="bullets">
                {plan.value.findings.map((f) => (
                  <li key={`${f.code} ${f.at}`}>
                    {f.level === "advice" ? null : <b>{capital(f.level)}: </b>}
                    {f.message} {f.wayOut}
                  </li>
                ))}
              </ul>
            </>
          )}
        </>
      )}
      {plan.kind === "refused" ? null : (
        <>
          <h2 className="sec">{say("web.do-page.evenings")}</h2>
          <p className="words">
            <span>
              {say("web.do-page.what-is-locked-waits-for-a")}
              <a href="#gates">{say("web.do-page.to-the-gates")}</a>.
            </span>
          </p>
          <ol className="sessions">
            {sessionsOf(plan.value.operations).map(({ session, day, date, operations: list }) => (
              <li key={session}>
                <h3>
                  {say("web.do-page.evening")}
                  {session}
                  <small>{date === undefined ? say("web.do-page.day", { day }) : date}</small>
                </h3>
                <ol className="ops">
                  {list.map((o) => (
                    <OperationLine key={`${o.id} ${o.piece}`} o={o} />
                  ))}
                </ol>
              </li>
            ))}
          </ol>
        </>
      )}
      <section id="gates">
        <h2 className="sec">{say("web.do-page.gates")}</h2>
        <p className="words">{say("web.do-page.a-gate-opens-only-with-what")}</p>
        {operations.map((o) => (
          <GateForm key={o.id} gate={o.id} title={`${o.id} ${capitalWord(o.what)}`} build={build} />
        ))}
        {risks.map((o) => (
          <GateForm
            key={o.id}
            gate={o.id}
            title={say("web.do-page.before-any-dry-fit", { operation: o.id, what: capitalWord(o.what) })}
            build={build}
            needs={say("web.do-page.who-accepts-the-risk")}
          />
        ))}
        {gateRules.map((f) => (
          <GateForm
            key={f.rule}
            gate={f.rule}
            title={say("web.do-page.rule", { rule: f.rule, here: f.here })}
            build={build}
            {...(f.evidenceNeeded === undefined ? {} : { needs: f.evidenceNeeded })}
          />
        ))}
        {operations.length + risks.length + gateRules.length === 0 ? (
          <p className="words">{say("asked.before-it-goes-out.no-gate-is-entered-add-the")}</p>
        ) : null}
      </section>
      {(row?.working.tables ?? [])
        .filter((t) => !t.title.startsWith("Operations"))
        .map((t) => (
          <TableView key={t.title} table={t} level={2} />
        ))}
      {(buy?.working.tables ?? [])
        .filter((t) => !t.title.startsWith("Joints"))
        .map((t) => (
          <TableView key={t.title} table={t} level={2} />
        ))}
    </>
  );
}

function sessionsOf(operations: readonly PlannedOperation[]) {
  const sessions = new Map<number, PlannedOperation[]>();
  for (const o of operations) sessions.set(o.session, [...(sessions.get(o.session) ?? []), o]);
  return [...sessions].map(([session, list]) => ({
    session,
    day: list[0]?.day ?? 0,
    date: list[0]?.date,
    operations: list,
  }));
}

const daysOf = (n: number) =>
  `${n.toFixed(0)} ${Math.round(n) === 1 ? say("web.do-page.day-word") : say("web.board-page.days")}`;

const CANNOT = {
  bend: say("web.do-page.bends"),
  heat: say("web.do-page.heats"),
  drill: say("web.do-page.drills"),
  cut: say("web.do-page.cuts"),
  paint: say("web.do-page.paints"),
} as const;

function OperationLine({ o }: { readonly o: PlannedOperation }) {
  const numbers = useNumbers();
  const notes = [
    `${numbers.number(o.handsOnH, 1)} h`,
    o.waitDays > 0 ? say("web.do-page.then-wait", { waitDays: daysOf(o.waitDays) }) : "",
    o.irreversible === undefined ? "" : say("web.do-page.cannot-be-taken-back", { cannot: CANNOT[o.irreversible] }),
    o.missing.length > 0
      ? say("web.do-page.this-shop-lacks", { missing: o.missing.join(", ").replaceAll("_", " ") })
      : "",
    o.slackH > 0 && !o.critical ? say("web.do-page.may-start-later", { slackH: daysOf(o.slackH / 24) }) : "",
  ].filter((n) => n !== "");
  return (
    <li>
      <span className="no">{o.id}</span>
      <div className={o.locked ? "lock" : undefined}>
        <b>
          {capitalWord(o.what)}
          {o.piece === "" ? "" : ` (${o.piece})`}
        </b>
        <small>
          {notes.join("; ")}.
          {o.locked
            ? o.lockedBy.includes(o.id)
              ? say("web.do-page.locked-until-the-risk-is-accepted")
              : say("web.do-page.locked-until-signed", {
                  lockedBy: listed(o.lockedBy),
                  isOrAre: o.lockedBy.length === 1 ? say("web.board-page.is") : say("web.board-page.are"),
                })
            : ""}
        </small>
      </div>
      <div className="vs">{o.gate ? <Verdict verdict="gate" about={o.locked ? "shut" : undefined} /> : null}</div>
    </li>
  );
}
