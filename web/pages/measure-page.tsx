/** The donor's measurements: what was written, what was read, how far each is off, and what that moves. */
import type { Reckoning } from "@coldset/core/questions";
import { useMemo } from "react";
import { askedFields } from "../measure/asked-fields.js";
import { FIELD_GROUPS, READINGS, stationFields } from "../measure/donor-fields.js";
import { EntryField } from "../measure/entry-field.js";
import { ReadingList } from "../measure/reading-list.js";
import { Suspicion } from "../measure/suspicion.js";
import { BicyclePicture } from "../parts/bicycle-picture.js";
import { EditBar } from "../parts/edit-line.js";
import { FigureText } from "../parts/figure.js";
import { FLAG_LIMIT } from "../parts/row-picture.js";
import { PageTitle } from "../parts/sheet-frame.js";
import { Verdicts } from "../parts/verdict.js";
import type { Moved } from "../state/moved-rows.js";
import { linkTo } from "../state/route.js";
import { valueAt } from "../state/save-queue.js";
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
  for (const step of r.next) if (step.at !== undefined) waits.set(step.at, `It settles ${settlesWords(step.settles)}.`);
  const groups = [
    ...FIELD_GROUPS,
    ...(stations.length === 0 ? [] : [{ title: "Gaps at the rear wheel", fields: stations }]),
  ];
  return (
    <>
      <div className="pagehead">
        <div>
          <PageTitle>Measure the donor</PageTitle>
          <p>
            {taken} readings of {READINGS.length}; more than are needed, so they check each other. {donor.label}.
          </p>
        </div>
      </div>
      <EditBar moved={moved} board={r.board} idle />
      <BicyclePicture r={r} />
      <Suspicion r={r} />
      <fieldset className="units">
        <legend className="hide">Units of what was read</legend>
        <span>Read back in</span>
        <button type="button" className="btn" aria-pressed={units === "metric"} onClick={() => setUnits("metric")}>
          mm
        </button>
        <button type="button" className="btn" aria-pressed={units === "inch"} onClick={() => setUnits("inch")}>
          inch
        </button>
        <span className="soft">Write in any unit: 551, 55,1 cm, 21 11/16", 551 ± 0.5.</span>
      </fieldset>
      <h2 className="sec">Readings, worst first</h2>
      <p className="words">
        The bar is how far a reading is off from what all say together, in its own spreads; hatched ground begins at{" "}
        {FLAG_LIMIT}.
      </p>
      <ReadingList r={r} />
      <MovedList r={r} moved={moved} />
      {asked.length === 0 ? null : (
        <>
          <h2 className="sec">Asked of the parts</h2>
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
        Moved
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
                was <s>{old}</s>
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
