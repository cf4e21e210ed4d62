/** The donor's measurements: what was written, what was read, how far each is off, and what that moves. */

import type { Reckoning } from "@coldset/core/questions";
import { say as sayText } from "@coldset/core/texts";
import { useMemo } from "react";
import { askedFields } from "../measure/asked-fields.js";
import { FIELD_GROUPS, READINGS, stationFields } from "../measure/donor-fields.js";
import { EntryField } from "../measure/entry-field.js";
import { ReadingList } from "../measure/reading-list.js";
import { Suspicion } from "../measure/suspicion.js";
import { BicyclePicture } from "../parts/bicycle-picture.js";
import { EditBar } from "../parts/edit-line.js";
import { FigureText } from "../parts/figure.js";
import { Photos } from "../parts/photos.js";
import { FLAG_LIMIT } from "../parts/row-picture.js";
import { Said } from "../parts/said.js";
import { PageTitle } from "../parts/sheet-frame.js";
import { Verdicts } from "../parts/verdict.js";
import type { Moved } from "../state/moved-rows.js";
import { valueAt } from "../state/place.js";
import { linkTo } from "../state/route.js";
import { setUnits, useSettings } from "../state/settings.js";
import { settlesWords } from "../state/words.js";
import { useWorkshop } from "../state/workshop.js";

export function MeasurePage({ r, moved }: { readonly r: Reckoning; readonly moved: ReadonlyMap<number, Moved> }) {
  const { donor } = r.resolved;
  const docs = useWorkshop((w) => w.docs);
  const units = useSettings((s) => s.units);
  const asked = useMemo(() => askedFields(r, docs), [r, docs]);
  const stations = useMemo(() => stationFields(donor), [donor]);
  const taken = READINGS.filter((info) => valueAt(donor, info.path) !== undefined).length;
  const waits = new Map<string, string>();
  for (const step of r.next)
    if (step.at !== undefined)
      waits.set(step.at, sayText("web.asked-fields.it-settles", { settles: settlesWords(step.settles) }));
  const groups = [
    ...FIELD_GROUPS,
    ...(stations.length === 0 ? [] : [{ title: sayText("web.measure-page.gaps-at-the-rear-wheel"), fields: stations }]),
  ];
  return (
    <>
      <div className="pagehead">
        <div>
          <PageTitle>{sayText("web.measure-page.measure-the-donor")}</PageTitle>
          <p>
            {taken}
            {sayText("web.measure-page.readings-of")}
            {READINGS.length}
            {sayText("web.measure-page.more-than-are-needed-so-they")}
            {donor.label}.
          </p>
        </div>
      </div>
      <EditBar moved={moved} board={r.board} idle />
      <BicyclePicture r={r} />
      <Suspicion r={r} />
      <fieldset className="units">
        <legend className="hide">{sayText("web.measure-page.units-of-what-was-read")}</legend>
        <span>{sayText("web.measure-page.read-back-in")}</span>
        <button type="button" className="btn" aria-pressed={units === "metric"} onClick={() => setUnits("metric")}>
          {sayText("web.measure-page.mm")}
        </button>
        <button type="button" className="btn" aria-pressed={units === "inch"} onClick={() => setUnits("inch")}>
          {sayText("web.measure-page.inch")}
        </button>
        <span className="soft">
          {sayText("web.measure-page.write-in-any-unit-551-55")}
          <Said text="551 ± 0.5." />
        </span>
      </fieldset>
      <h2 className="sec">{sayText("web.measure-page.readings-worst-first")}</h2>
      <p className="words">
        {sayText("web.measure-page.the-bar-is-how-far-a")} <Said text={FLAG_LIMIT.toFixed(2)} />.
      </p>
      <ReadingList r={r} />
      <MovedList r={r} moved={moved} />
      {asked.length === 0 ? null : (
        <>
          <h2 className="sec">{sayText("web.measure-page.asked-of-the-parts")}</h2>
          <div className="grid">
            {asked.map((f) => (
              <EntryField key={f.at} info={f.info} target={f.target} at={f.at} read={undefined} waits={f.settles} />
            ))}
          </div>
        </>
      )}
      {groups.map((g) => (
        <section key={g.title}>
          <h2 className="sec">{g.title}</h2>
          <div className="grid">
            {g.fields.map((info) => {
              const at = `donor.${info.path.join(".")}`;
              return (
                <EntryField
                  key={at}
                  info={info}
                  at={at}
                  target={{ kind: "donor", id: donor.id, path: info.path, words: info.title.toLowerCase() }}
                  read={readValue(donor, info.path)}
                  waits={waits.get(at)}
                />
              );
            })}
          </div>
        </section>
      ))}
      <Photos kind="donor" id={donor.id} of={sayText("web.measure-page.the-donor")} />
    </>
  );
}

/** A station of a profile is a pair in the document; everything else stands under its path. */
function readValue(donor: Reckoning["resolved"]["donor"], path: readonly string[]): unknown {
  const [group, key, station] = path;
  if (group === "gaps_rear" && station !== undefined) {
    const rows = valueAt(donor, [group, key ?? ""]) as readonly (readonly [number, number])[] | undefined;
    return rows?.find(([at]) => String(at) === station)?.[1];
  }
  return valueAt(donor, path);
}

function MovedList({ r, moved }: { readonly r: Reckoning; readonly moved: ReadonlyMap<number, Moved> }) {
  const rows = r.board.filter((row) => moved.has(row.n));
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby="moved-title">
      <h2 className="sec" id="moved-title">
        {sayText("web.measure-page.moved")}
      </h2>
      <ul className="movedlist">
        {rows.map((row) => {
          const was = moved.get(row.n);
          const old = [was?.answer, was?.verdict, was?.figure].filter((w) => w !== undefined).join("; ");
          return (
            <li key={row.n}>
              <span className="no num">{row.n}</span>
              <div>
                <a href={linkTo.question(r.resolved.build.id, row.n)}>{row.answer}</a>
                {row.figure === undefined ? null : (
                  <b className="num">
                    <FigureText figure={row.figure} />
                  </b>
                )}
                <Verdicts verdict={row.verdict} about={row.about} />
              </div>
              <span className="was">
                {sayText("web.board-page.was")}
                <s>{old}</s>
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
