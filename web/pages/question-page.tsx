/** One question with all its working: words, figures, tables, sources, cautions, what was not checked, joints behind it. */
import type { BoardRow, Reckoning } from "@coldset/core/questions";
import { Cautions } from "../parts/cautions.js";
import { EditBar } from "../parts/edit-line.js";
import { FigureText } from "../parts/figure.js";
import { GapPicture, isGap } from "../parts/gap-picture.js";
import { JointView } from "../parts/joint-view.js";
import { NextLink } from "../parts/next-link.js";
import { RowPicture } from "../parts/row-picture.js";
import { PageTitle } from "../parts/sheet-frame.js";
import { SourceList } from "../parts/source-list.js";
import { TableView } from "../parts/table.js";
import { Verdicts } from "../parts/verdict.js";
import { Wall } from "../parts/wall.js";
import { Ways } from "../parts/ways.js";
import type { Moved } from "../state/moved-rows.js";
import { linkTo } from "../state/route.js";

export function QuestionPage(props: {
  readonly r: Reckoning;
  readonly row: BoardRow;
  readonly moved: ReadonlyMap<number, Moved>;
}) {
  const { r, row } = props;
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
  const tables = working.tables.filter((t) => joints.length === 0 || !t.title.startsWith("Joints behind"));
  return (
    <>
      <a className="back" href={`${linkTo.ask(build)}#q${row.n}`}>
        ← All questions
      </a>
      <div className="pagehead">
        <div>
          <p className="q">
            <span className="no">{row.n}</span> {row.question}
          </p>
          <PageTitle>{row.answer}</PageTitle>
        </div>
        <Verdicts verdict={row.verdict} about={row.about} also={row.also} />
      </div>
      <EditBar moved={props.moved} board={r.board} />
      {row.next === undefined ? null : <NextLink step={row.next} build={build} long />}
      <Cautions rules={rules} cautions={cautions} />
      {row.n === 19 ? <Ways r={r} /> : null}
      <h2 className="sec">The working</h2>
      <div className="words">
        {working.words.map((w) => (
          <p key={w}>{w}</p>
        ))}
        {working.words.length === 0 ? <p>Nothing more than the tables below.</p> : null}
      </div>
      {bars ? <GapPicture figures={gaps} /> : null}
      <ul className="figs">
        {figures.map((f) => (
          <li key={`${f.name} ${f.value}`}>
            <p className="key num">
              <FigureText figure={f} />
            </p>
            <Wall figure={f} />
            <p className="cap">
              {f.name}
              {f.band === undefined
                ? ["mm", "°", "N", "h"].includes(f.unit)
                  ? ", as entered"
                  : ""
                : `, band ${f.band.means}`}
            </p>
          </li>
        ))}
      </ul>
      {[1, 13, 15].includes(row.n) ? <RowPicture row={row} r={r} /> : null}
      {tables.map((t) => (
        <TableView key={t.title} table={t} />
      ))}
      {working.notChecked.length === 0 ? null : (
        <>
          <h2 className="sec">Not checked</h2>
          <ul className="bullets">
            {working.notChecked.map((w) => (
              <li key={w}>{w}</li>
            ))}
          </ul>
        </>
      )}
      {joints.length === 0 ? null : (
        <>
          <h2 className="sec">Joints behind it</h2>
          {joints.map((j) => (
            <JointView key={j.id} joint={j} build={build} />
          ))}
        </>
      )}
      <h2 className="sec">Where it comes from</h2>
      {row.sources.length === 0 ? (
        <p className="words">Only from what you entered; no outside source is used.</p>
      ) : (
        <SourceList ids={row.sources} />
      )}
    </>
  );
}
