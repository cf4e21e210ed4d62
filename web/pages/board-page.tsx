/** The board: the twenty questions, ranked by what is at stake, each with today's answer and one next step. */

import type { BoardRow, Figure, Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { BicyclePicture } from "../parts/bicycle-picture.js";
import { Cautions } from "../parts/cautions.js";
import { EditBar } from "../parts/edit-line.js";
import { FigureText } from "../parts/figure.js";
import { NextLink } from "../parts/next-link.js";
import { hasPicture, RowPicture } from "../parts/row-picture.js";
import { PageTitle } from "../parts/sheet-frame.js";
import { Verdicts } from "../parts/verdict.js";
import { Wall } from "../parts/wall.js";
import type { Moved } from "../state/moved-rows.js";
import { linkTo } from "../state/route.js";
import { capital, capitalWord } from "../state/words.js";

const STAKES = [
  { stake: "hurt", className: "safety", title: say("cli.board-page.somebody-could-be-hurt") },
  { stake: "money", className: "money", title: say("cli.board-page.money-could-be-lost") },
  { stake: "time", className: "time", title: say("cli.board-page.weeks-could-be-lost") },
] as const;

/** Which advert, what did I measure, is it sound: what a first job begins with. */
const FIRST_JOB = [3, 13, 2] as const;

interface BoardProps {
  readonly r: Reckoning;
  readonly moved: ReadonlyMap<number, Moved>;
}

export function BoardPage({ r, moved }: BoardProps) {
  const { build, donor, intent } = r.resolved;
  // A first job, nothing chosen yet: three questions large, the others as a list.
  const first =
    Object.keys(build.chosen).length > 0 ? [] : FIRST_JOB.flatMap((n) => r.board.filter((row) => row.n === n));
  return (
    <>
      <div className="head">
        <div>
          <PageTitle>{capital(build.id)}</PageTitle>
          <p className="sub">
            {build.title.replace(/\.$/, "")}
            {say("web.board-page.for")}
            {r.resolved.rider.name ?? say("web.board-page.rider", { rider: r.resolved.rider.id })}, {intent.purpose}
            {intent.surface === undefined ? "" : `, ${intent.surface}`}.{" "}
            <span className="from">
              {say("web.board-page.from")}
              {donor.label}.
            </span>
          </p>
          <Tally r={r} />
          <First r={r} />
        </div>
        <BicyclePicture r={r} board={r.board} />
      </div>
      <EditBar moved={moved} board={r.board} />
      <Cautions
        rules={r.rules.filter((f) => f.onChosen)}
        brief={{ href: linkTo.fit(build.id), words: say("web.board-page.why-and-what-instead") }}
      />
      {first.length === 0 ? null : (
        <section className="money">
          <div className="stake">
            <h2>{say("web.board-page.before-anything-is-bought")}</h2>
          </div>
          {first.map((row) => (
            <OpenRow key={row.n} row={row} r={r} lead moved={moved.get(row.n)} />
          ))}
        </section>
      )}
      {STAKES.map(({ stake, className, title }) => {
        const rows = r.board.filter((row) => row.stake === stake && !first.includes(row));
        const open = rows.filter((row) => row.open && first.length === 0);
        const unasked = rows.filter((row) => !row.open && row.verdict === "not checked yet");
        const settled = rows.filter((row) => !open.includes(row) && row.verdict !== "not checked yet");
        return rows.length === 0 ? null : (
          <section key={stake} className={className}>
            <div className="stake">
              <h2>{title}</h2>
            </div>
            {open.map((row, i) => (
              <OpenRow key={row.n} row={row} r={r} lead={i === 0} moved={moved.get(row.n)} />
            ))}
            {settled.length === 0 ? null : (
              <ul className="settled">
                {settled.map((row) => (
                  <SettledRow key={row.n} row={row} build={build.id} moved={moved.get(row.n)} />
                ))}
              </ul>
            )}
            {unasked.length === 0 ? null : (
              <ul className="settled unasked">
                {unasked.map((row) => (
                  <UnaskedRow key={row.n} row={row} build={build.id} moved={moved.get(row.n)} />
                ))}
              </ul>
            )}
          </section>
        );
      })}
      <section className="take">
        <h2 className="sec">{say("web.board-page.take-it-with-you")}</h2>
        <p className="links">
          <a className="btn" href={`/api/book/${encodeURIComponent(build.id)}.pdf`} target="_blank" rel="noreferrer">
            {say("web.board-page.print-the-book-pdf")}
          </a>
        </p>
        <details className="more">
          <summary>{say("web.board-page.export-the-files-behind-it-yaml")}</summary>
          <p className="links">
            {(["build", "donor", "rider", "intent", "shop", "bin", "prices"] as const).map((kind) => (
              <a
                key={kind}
                className="btn"
                download
                href={`/api/documents/${kind}/${encodeURIComponent(r.resolved[kind].id)}/export`}
              >
                {capital(kind)}
              </a>
            ))}
          </p>
        </details>
      </section>
    </>
  );
}

/** How many answers are still open, and where does the hand go first? */
function First({ r }: { readonly r: Reckoning }) {
  const order = STAKES.flatMap(({ stake }) => r.board.filter((row) => row.stake === stake && row.open));
  const row = order.find((o) => o.next !== undefined);
  const hurt = order.filter((o) => o.stake === "hurt").length;
  if (row?.next === undefined) return null;
  return (
    <div className="first">
      <p>
        {order.length}
        {say("web.board-page.of")}
        {r.board.length}
        {say("web.board-page.questions-are-open")}
        {hurt === 0
          ? "."
          : say("web.board-page.of-them-about-somebody-being-hurt", {
              hurt,
              isOrAre: hurt === 1 ? say("web.board-page.is") : say("web.board-page.are"),
            })}
        {say("web.board-page.first")}
      </p>
      <NextLink step={row.next} build={r.resolved.build.id} n={row.n} />
    </div>
  );
}

function Tally({ r }: { readonly r: Reckoning }) {
  const { money, hours } = r.ledger;
  const plan = r.plan.plan;
  const figures: Figure[] = [];
  if (money.kind === "answered")
    figures.push(
      limited(say("web.board-page.money"), money.value.total, "", 0, money.value.budget, say("web.board-page.budget")),
    );
  if (plan.kind === "answered")
    figures.push(
      plan.value.sessionsListed === undefined
        ? limited(
            say("web.board-page.days"),
            plan.value.onePiece.days,
            "",
            0,
            plan.value.deadlineDays,
            say("web.board-page.deadline"),
          )
        : limited(
            `${plan.value.sessionWord}s`,
            plan.value.onePiece.sessions,
            "",
            0,
            plan.value.sessionsListed,
            say("web.board-page.all-there-are"),
          ),
    );
  if (hours.kind === "answered")
    figures.push(
      limited(
        say("web.board-page.hours"),
        hours.value.handsOnH,
        "",
        1,
        hours.value.hoursMax,
        say("web.board-page.hours-to-give"),
      ),
    );
  return (
    <ul className="tally">
      {figures.map((f) => (
        <li key={f.name}>
          <div className="k">
            <b className="num">
              <FigureText figure={f} />
            </b>
            <span>
              {f.name}
              {f.limit === undefined
                ? say("web.board-page.no-limit-entered")
                : `, ${f.limit.high !== undefined && f.value > f.limit.high ? say("web.board-page.over") : say("web.board-page.of-word")} ${f.limit.high}`}
            </span>
          </div>
          <Wall figure={f} />
        </li>
      ))}
    </ul>
  );
}

function limited(
  name: string,
  value: number,
  unit: string,
  decimals: number,
  high: number | undefined,
  words: string,
): Figure {
  return { name, value, unit, decimals, ...(high === undefined ? {} : { limit: { high, words } }) };
}

function Was({ moved }: { readonly moved: Moved | undefined }) {
  if (moved === undefined) return null;
  const old = [moved.answer, moved.verdict, moved.figure].filter((w) => w !== undefined);
  return (
    <span className="was">
      {say("web.board-page.was")}
      <s>{old.join("; ")}</s>
    </span>
  );
}

interface RowProps {
  readonly row: BoardRow;
  readonly moved: Moved | undefined;
}

function OpenRow({ row, r, lead, moved }: RowProps & { readonly r: Reckoning; readonly lead: boolean }) {
  const build = r.resolved.build.id;
  const why = row.working.words[0];
  const bare = row.figure === undefined && !hasPicture(row, r);
  return (
    <article
      className={`row${lead ? " lead" : ""}${bare ? " bare" : ""}${moved === undefined ? "" : " moved"}`}
      id={`q${row.n}`}
    >
      {moved === undefined ? null : <span className="bar" />}
      <p className="no num">
        <span className="hide">{say("web.board-page.question")}</span>
        {row.n}
      </p>
      <div className="tx">
        <a className="q" href={linkTo.question(build, row.n)}>
          {row.question}
        </a>
        <h3 className="a">{row.answer}</h3>
        {why === undefined || why === row.answer ? null : <p className="why">{why}</p>}
        <Was moved={moved} />
      </div>
      {bare ? null : (
        <div className="fig">
          {row.figure === undefined ? null : (
            <p className="key num">
              <FigureText figure={row.figure} />
            </p>
          )}
          {row.figure === undefined ? null : (
            <p className="cap">
              {capitalWord(row.figure.name)}
              {row.figure.band === undefined && ["mm", "°", "N"].includes(row.figure.unit)
                ? say("web.board-page.as-entered")
                : ""}
            </p>
          )}
          <RowPicture row={row} r={r} />
        </div>
      )}
      <div className="do">
        <Verdicts verdict={row.verdict} about={row.about} also={row.also} />
        {row.next === undefined ? null : <NextLink step={row.next} build={build} n={row.n} />}
      </div>
    </article>
  );
}

const WEIGHED: Readonly<Record<string, string>> = {
  refuse: say("web.board-page.refused"),
  flag: say("web.board-page.flagged"),
  gate: say("web.board-page.behind-a-gate"),
};

function SettledRow({ row, build, moved }: RowProps & { readonly build: string }) {
  return (
    <li id={`q${row.n}`} className={moved === undefined ? undefined : "moved"}>
      {moved === undefined ? null : <span className="bar" />}
      <span className="no num">
        <span className="hide">{say("web.board-page.question")}</span>
        {row.n}
      </span>
      <a href={linkTo.question(build, row.n)}>
        <small>{row.question}</small> {row.answer}{" "}
        {row.also.length === 0 ? null : (
          <small>
            {say("web.board-page.weighed-too")}
            {row.also.map((v) => `${v.about} ${WEIGHED[v.verdict] ?? v.verdict}`).join(", ")}.
          </small>
        )}
        <Was moved={moved} />
      </a>
      <span className="key num">{row.figure === undefined ? null : <FigureText figure={row.figure} />}</span>
      <Verdicts verdict={row.verdict} about={row.about} />
    </li>
  );
}

/** What this version does not answer yet: one line, and what to keep to meanwhile where there is something. */
function UnaskedRow({ row, build, moved }: RowProps & { readonly build: string }) {
  const meanwhile = (row.working.notChecked[0] ?? "").split(/(?<=\.) /).filter((w) => !/not in this version/.test(w));
  return (
    <li id={`q${row.n}`} className={moved === undefined ? undefined : "moved"}>
      {moved === undefined ? null : <span className="bar" />}
      <span className="no num">
        <span className="hide">{say("web.board-page.question")}</span>
        {row.n}
      </span>
      <a href={linkTo.question(build, row.n)}>
        {row.question}
        {row.answer === "Not checked yet." ? null : <small>{row.answer}</small>}
        {meanwhile.length === 0 ? null : <small>{meanwhile.join(" ")}</small>}
        <Was moved={moved} />
      </a>
      <Verdicts verdict={row.verdict} about={row.about} />
    </li>
  );
}
