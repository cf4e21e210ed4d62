/** The readings of the side view, the worst first, each with its bar. The order stands still while somebody is writing. */

import { donorPath, type Reckoning, readingWords } from "@coldset/core/questions";
import { DONOR_NAMES, type ReadingCheck } from "@coldset/core/survey";
import { say as sayText } from "@coldset/core/texts";
import type { DonorDoc, Entered, MeasuredName } from "@coldset/core/workshop";
import { useState } from "react";
import { fieldId } from "../parts/next-link.js";
import { DUST_REACH, ResidualBar } from "../parts/residual-bar.js";
import { FLAG_LIMIT } from "../parts/row-picture.js";
import { type Numbers, useNumbers } from "../state/numbers.js";
import { type FieldInfo, READINGS } from "./donor-fields.js";
import { useEntry, useReadBack } from "./entry-field.js";

const surveyName = (info: FieldInfo) => DONOR_NAMES[info.path[1] ?? ""] ?? "";

export function ReadingList({ r }: { readonly r: Reckoning }) {
  const { survey, blunder, setAside, input } = r.geometry;
  const checks: readonly ReadingCheck[] =
    survey.kind === "answered" ? survey.value.readings : blunder.kind === "answered" ? blunder.value.readings : [];
  const byName = new Map(checks.map((c) => [c.measurement, c]));
  const spreads = new Map(input.measurements.map((m) => [m.name, m.sd]));
  const place = new Map(checks.map((c, i) => [c.measurement, i]));
  const now = [...READINGS].sort((a, b) => (place.get(surveyName(a)) ?? 99) - (place.get(surveyName(b)) ?? 99));
  const [held, setHeld] = useState<readonly FieldInfo[]>();
  const suspect = setAside === undefined ? undefined : byName.get(setAside);
  const hot = new Set(suspect === undefined ? [] : [suspect.measurement, ...suspect.shares_residual_with]);
  const span = Math.max(FLAG_LIMIT * 1.5, ...checks.map((c) => Math.abs(c.normalised_residual ?? 0) + DUST_REACH));
  const rows = held ?? now;
  return (
    <ol
      className="resid"
      onFocus={() => setHeld((order) => order ?? now)}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) setHeld(undefined);
      }}
    >
      {rows.map((info, i) => {
        const name = surveyName(info);
        const next = rows[i + 1];
        const isHot = hot.has(name);
        const pair = isHot && next !== undefined && hot.has(surveyName(next)) ? "high" : undefined;
        const prev = rows[i - 1];
        const low = isHot && prev !== undefined && hot.has(surveyName(prev)) ? "low" : undefined;
        return (
          <ReadingRow
            key={info.path.join(".")}
            info={info}
            donor={r.resolved.donor}
            check={byName.get(name)}
            sd={spreads.get(name)}
            span={span}
            hot={isHot}
            first={name === setAside}
            brace={pair ?? low}
            all={checks.length}
          />
        );
      })}
    </ol>
  );
}

function ReadingRow(props: {
  readonly info: FieldInfo;
  readonly donor: DonorDoc;
  readonly check: ReadingCheck | undefined;
  readonly sd: number | undefined;
  readonly span: number;
  readonly hot: boolean;
  readonly first: boolean;
  readonly brace: string | undefined;
  readonly all: number;
}) {
  const { info, donor, check, sd, hot } = props;
  const name = info.path[1] ?? "";
  const entry = useEntry({ kind: "donor", id: donor.id, path: info.path, words: info.title.toLowerCase() });
  const readBack = useReadBack();
  const numbers = useNumbers();
  const value = donor.measured[name as MeasuredName] as Entered | undefined;
  const id = fieldId(donorPath(surveyName(info)));
  const empty = entry.text.trim() === "";
  const w = check?.normalised_residual;
  const under = empty
    ? sayText("web.reading-list.not-measured")
    : entry.bad !== undefined
      ? entry.bad.join(" ")
      : entry.halfWritten
        ? sayText("web.entry-field.not-read-yet")
        : value === undefined
          ? sayText("web.joint-view.as-entered-2")
          : readBack(value.value, info.sort, sd);
  const said =
    check === undefined || empty
      ? ""
      : w === null || w === undefined
        ? sayText("web.reading-list.nothing-else-checks-it")
        : sayOf(props, check);
  return (
    <li className={hot ? "hot" : undefined}>
      {props.brace === undefined ? null : <span className={`brace ${props.brace}`} />}
      <div className="nm">
        <label htmlFor={id}>
          {info.title}
          {info.sub === undefined ? null : <small>{numbers.say(info.sub)}</small>}
        </label>
        {said === "" ? null : <p className="say">{said}</p>}
      </div>
      <div className="rd">
        <input
          id={id}
          className={empty ? "empty" : undefined}
          value={entry.text}
          placeholder="?"
          autoComplete="off"
          spellCheck={false}
          aria-describedby={empty && info.how !== undefined ? `${id}-as ${id}-how` : `${id}-as`}
          aria-invalid={entry.bad === undefined ? undefined : true}
          onChange={(event) => entry.change(event.currentTarget.value)}
          onBlur={entry.leave}
        />
        <small id={`${id}-as`} className={entry.bad === undefined ? undefined : "bad"}>
          {under}
          {entry.bad === undefined ? null : (
            <span className="kept">
              {sayText("web.entry-field.before-this")}
              {entry.kept === "" ? sayText("web.entry-field.not-measured-2") : entry.kept}
            </span>
          )}
        </small>
      </div>
      {check === undefined || empty ? (
        <p className="how soft" id={`${id}-how`}>
          {empty && info.how !== undefined ? numbers.say(info.how) : null}
        </p>
      ) : (
        <ResidualBar w={check.normalised_residual} limit={FLAG_LIMIT} span={props.span} hot={hot} />
      )}
      <p className="off num">
        {check === undefined || empty || w === null || w === undefined ? null : signed(w, numbers)}
      </p>
    </li>
  );
}

const signed = (w: number, numbers: Numbers) => `${w > 0 ? "+" : ""}${numbers.number(w, 1)}`;

function sayOf(props: { readonly first: boolean; readonly hot: boolean }, check: ReadingCheck): string {
  if (props.first) return sayText("web.reading-list.re-measure-this-one");
  if (props.hot) return sayText("web.reading-list.and-this-one-the-two-share");
  if (check.flagged) return sayText("web.reading-list.beyond-the-limit");
  return check.shares_residual_with.length > 0
    ? sayText("web.reading-list.shares-its-residual-with", {
        readingWords: check.shares_residual_with.map(readingWords).join(", "),
      })
    : "";
}
