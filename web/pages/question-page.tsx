/** One question with all its working: words, figures, tables, sources, cautions, what was not checked, joints behind it. */

import type { BoardRow, Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { Cautions } from "../parts/cautions.js";
import { DecidingFigures } from "../parts/deciding-figures.js";
import { EditBar } from "../parts/edit-line.js";
import { FigureText } from "../parts/figure.js";
import { GapPicture, isGap } from "../parts/gap-picture.js";
import { JointView } from "../parts/joint-view.js";
import { NextLink } from "../parts/next-link.js";
import { useWide, useWindowWidth } from "../parts/picture.js";
import { PlanPicture } from "../parts/plan-picture.js";
import { QuestionPicture } from "../parts/question-picture.js";
import { hasPicture, RowPicture } from "../parts/row-picture.js";
import { PageTitle } from "../parts/sheet-frame.js";
import { SourceList } from "../parts/source-list.js";
import { TableView } from "../parts/table.js";
import { Verdicts } from "../parts/verdict.js";
import { Wall } from "../parts/wall.js";
import { Ways } from "../parts/ways.js";
import type { Moved } from "../state/moved-rows.js";
import { linkTo } from "../state/route.js";
import { capitalWord } from "../state/words.js";

export function QuestionPage(props: {
  readonly r: Reckoning;
  readonly row: BoardRow;
  readonly moved: ReadonlyMap<number, Moved>;
}) {
  const { r, row } = props;
  const wide = useWide();
  const inside = Math.min(useWindowWidth(), 1280) - 112;
  const build = r.resolved.build.id;
  const { working } = row;
  const joints = r.joints.joints.filter((j) => row.joints.includes(j.id));
  const ids = new Set(joints.flatMap((j) => j.rules.map((x) => x.rule)));
  const rules = r.rules.filter(
    (f) =>
      ids.has(f.rule) || f.rule === row.about || row.also.some((v) => v.about === f.about && v.verdict === f.level),
  );
  const all = [
    ...(row.figure === undefined ? [] : [row.figure]),
    ...working.figures.filter((f) => f.name !== row.figure?.name || f.value !== row.figure.value),
  ];
  const gaps = all.filter(isGap);
  const bars = gaps.length > 2;
  const figures = bars ? all.filter((f) => !isGap(f)) : all;
  // What nothing checks stands below under "Not checked", in fewer words.
  const cautions = row.cautions.filter((c) => c.code !== "uncheckable" || working.notChecked.length === 0);
  // The figures above stand with their bands already.
  const tables = working.tables.filter(
    (t) => (joints.length === 0 || !t.title.startsWith("Joints behind")) && !t.title.startsWith("Bands"),
  );
  const picture = hasPicture(row, r);
  // A band that means the same for all figures is explained once, below them.
  const means = new Set(figures.flatMap((f) => (f.band === undefined ? [] : [f.band.means])));
  const oneMeaning = figures.length > 2 && means.size === 1 ? [...means][0] : undefined;
  if (row.verdict === "not checked yet" && figures.length === 0)
    return (
      <>
        <Back build={build} n={row.n} />
        <div className="pagehead">
          <div>
            <p className="q">
              <span className="no">{row.n}</span>
              {say("web.question-page.not-checked-yet")}
            </p>
            <PageTitle>{row.question}</PageTitle>
          </div>
        </div>
        <EditBar moved={props.moved} board={r.board} />
        <div className="words">
          {[...new Set([...working.words, ...working.notChecked])].map((w) => (
            <p key={w}>{w}</p>
          ))}
        </div>
        {row.next === undefined ? null : <NextLink step={row.next} build={build} long />}
        <Cautions rules={rules} cautions={cautions} />
        <Onward r={r} row={row} />
      </>
    );
  return (
    <>
      <Back build={build} n={row.n} />
      <div className="pagehead">
        <div>
          <p className="q" aria-hidden="true">
            <span className="no">{row.n}</span> {row.question}
          </p>
          <PageTitle>
            <span className="hide">{row.question} </span>
            {row.answer}
          </PageTitle>
        </div>
        <Verdicts verdict={row.verdict} about={row.about} also={row.also} />
      </div>
      <EditBar moved={props.moved} board={r.board} />
      {row.next === undefined ? null : <NextLink step={row.next} build={build} long />}
      <Cautions rules={rules} cautions={cautions} />
      {row.n === 19 ? <Ways r={r} /> : null}
      <h2 className="sec">{say("web.question-page.the-working")}</h2>
      <div className="words">
        {working.words.map((w) => (
          <p key={w}>{w}</p>
        ))}
        {working.words.length === 0 ? <p>{wordless(row, joints.length, tables.length)}</p> : null}
      </div>
      <QuestionPicture row={row} r={r} />
      {bars ? <GapPicture figures={gaps} /> : null}
      <div className={picture && figures.length > 0 ? "beside" : undefined}>
        <div>
          <ul className="figs">
            {figures.map((f) => (
              <li key={`${f.name} ${f.value}`}>
                <p className="key num">
                  <FigureText figure={f} />
                </p>
                {picture && f.name === row.figure?.name ? null : <Wall figure={f} />}
                <p className="cap">
                  {capitalWord(f.name)}
                  {f.band === undefined
                    ? ["mm", "°", "N", "h"].includes(f.unit) && f.against?.includes("to be made") !== true
                      ? say("web.board-page.as-entered")
                      : ""
                    : oneMeaning === undefined
                      ? say("web.question-page.band", { means: f.band.means })
                      : ""}
                </p>
              </li>
            ))}
          </ul>
          {oneMeaning === undefined ? null : (
            <p className="cap means">
              {say("web.question-page.bands")}
              {oneMeaning}.
            </p>
          )}
        </div>
        {picture && row.n !== 15 ? (
          <div>
            <RowPicture row={row} r={r} />
          </div>
        ) : null}
      </div>
      {row.n === 15 && r.plan.plan.kind === "answered" ? (
        <figure>
          <PlanPicture
            plan={r.plan.plan.value}
            version={wide ? "wide" : "narrow"}
            {...(wide ? { widthPx: inside } : {})}
          />
          <figcaption className="cap">{say("web.do-page.strokes-evenings-at-the-bench-dashed")}</figcaption>
        </figure>
      ) : null}
      {tables.map((t) => (
        <TableView key={t.title} table={t} />
      ))}
      <DecidingFigures key={row.n} r={r} row={row} />
      {working.notChecked.length === 0 ? null : (
        <>
          <h2 className="sec">{say("web.suspicion.not-checked")}</h2>
          <ul className="bullets">
            {working.notChecked.map((w) => (
              <li key={w}>{capitalWord(w)}</li>
            ))}
          </ul>
        </>
      )}
      {joints.length === 0 ? null : (
        <>
          <h2 className="sec">{say("web.question-page.joints-behind-it")}</h2>
          {joints.map((j) => (
            <JointView key={j.id} joint={j} build={build} folded={j.verdict === "fits"} />
          ))}
        </>
      )}
      <h2 className="sec">{say("web.question-page.where-it-comes-from")}</h2>
      {row.sources.length === 0 ? (
        <p className="words">{say("web.question-page.only-from-what-you-entered-no")}</p>
      ) : (
        <SourceList ids={row.sources} />
      )}
      <Onward r={r} row={row} />
    </>
  );
}

/** Where the working has no words of its own: what stands there instead, and where. */
function wordless(row: BoardRow, joints: number, tables: number): string {
  const number =
    row.figure === undefined ? "" : say("web.question-page.the-answer-hangs-on", { figure: row.figure.name });
  const where = [
    ...(tables > 0 ? [say("web.question-page.in-the-tables-below")] : []),
    ...(joints > 0
      ? [
          say("web.question-page.in-the-behind-it-below", {
            joints: joints === 1 ? say("web.question-page.joint") : say("web.question-page.joints", { joints }),
          }),
        ]
      : []),
  ].join(say("web.question-page.and"));
  return `${number}${where === "" ? say("web.question-page.nothing-more-was-reckoned") : say("web.question-page.what-was-reckoned-stands", { where })}`;
}

function Back({ build, n }: { readonly build: string; readonly n: number }) {
  return (
    <a className="back" href={`${linkTo.ask(build)}#q${n}`}>
      {say("web.question-page.all-questions")}
    </a>
  );
}

/** The question that comes after this one on the board. */
function Onward({ r, row }: { readonly r: Reckoning; readonly row: BoardRow }) {
  const next = r.board[r.board.findIndex((b) => b.n === row.n) + 1];
  if (next === undefined) return null;
  return (
    <nav className="links" aria-label={say("web.question-page.next-question")}>
      <a className="btn" href={linkTo.question(r.resolved.build.id, next.n)}>
        <span>
          <small>{say("web.question-page.next-on-the-board")}</small> {next.n} {next.question} →
        </span>
      </a>
    </nav>
  );
}
