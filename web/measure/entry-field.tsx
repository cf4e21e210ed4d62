/**
 * How is one value typed in? Every keystroke that can be read is answered at once; a text that cannot be read stays as
 * typed, with what was expected and three ways to write it, and the last good value stays beside it in pencil.
 */

import { writeQuantity } from "@coldset/core/quantity";
import { say as sayText } from "@coldset/core/texts";
import { type EditPath, scalarOf } from "@coldset/core/workshop";
import { memo, useEffect, useRef, useState } from "react";
import { fieldId } from "../parts/next-link.js";
import { useNumbers } from "../state/numbers.js";
import { valueAt } from "../state/place.js";
import { useWorkshop } from "../state/workshop.js";
import { draftKey } from "../state/workshop-types.js";
import type { FieldInfo, FieldSort } from "./donor-fields.js";

export interface EntryTarget {
  readonly kind: string;
  readonly id: string;
  readonly path: EditPath;
  /** Said in the line "since your last edit". */
  readonly words: string;
}

/** As long as somebody is typing, half a figure is no mistake yet. */
const PAUSE_MS = 900;

export function useEntry(target: EntryTarget) {
  const { kind, id, path, words } = target;
  const written = useWorkshop((w) => {
    const doc = w.docs.find((d) => d.kind === kind && d.id === id);
    return doc === undefined ? undefined : valueAt(doc.plain, path);
  });
  const draft = useWorkshop((w) => w.drafts[draftKey(kind, id, path)]);
  const edit = useWorkshop((w) => w.edit);
  const [typed, setTyped] = useState<string>();
  const [paused, setPaused] = useState(true);
  const going = useRef(false);
  /** What stood in the field when the typing began: another value that comes in meanwhile was not seen. */
  const seen = useRef<{ readonly value: unknown }>(undefined);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);

  const kept = written === undefined || written === null || written === "?" ? "" : String(written);
  const change = (text: string) => {
    setTyped(text);
    setPaused(false);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => setPaused(true), PAUSE_MS);
    const value = text.trim() === "" ? "?" : scalarOf(text);
    seen.current ??= { value: draft === undefined ? written : draft.seen };
    if (edit({ kind, id, path, value, words }, going.current, seen.current)) going.current = true;
  };
  const leave = () => {
    setTyped(undefined);
    setPaused(true);
    going.current = false;
    seen.current = undefined;
  };
  return {
    text: typed ?? draft?.text ?? kept,
    kept,
    bad: draft !== undefined && (paused || typed === undefined) ? draft.messages : undefined,
    halfWritten: draft !== undefined,
    change,
    leave,
    choose: (value: unknown) => edit({ kind, id, path, value, words }),
  };
}

/** What was read from the text, in the units that the reader wants. */
export function useReadBack() {
  const { way, say } = useNumbers();
  const { units } = way;
  return (value: number, sort: FieldSort, spread?: number): string => {
    const dimension = sort.as === "angle" ? "angle" : "length";
    const figure = writeQuantity(value, dimension, units, units === "metric" && value % 1 !== 0 ? { decimals: 2 } : {});
    if (spread === undefined) return say(sayText("web.entry-field.read-as-entered", { figure: tidy(figure) }));
    return say(
      sayText("web.entry-field.read-spread", {
        figure: tidy(figure),
        spread: tidy(writeQuantity(spread, dimension, units)),
      }),
    );
  };
}

const tidy = (figure: string) => figure.replace(/(\.\d*?)0+(?=\s|°|$)/, "$1").replace(/\.(?=\s|°|$)/, "");

/** A field in the grid: label, what was written, below it what was read. */
interface FieldProps {
  readonly info: FieldInfo;
  readonly target: EntryTarget;
  readonly at: string;
  /** The value as read, where it is a number of a length or an angle. */
  readonly read: unknown;
  readonly waits?: string | undefined;
}

/** An edit elsewhere leaves this field as it is: only its own text, draft or value draws it anew. */
export const EntryField = memo(
  EntryFieldNow,
  (a, b) =>
    a.at === b.at &&
    a.read === b.read &&
    a.waits === b.waits &&
    a.info.title === b.info.title &&
    a.target.id === b.target.id,
);

function EntryFieldNow(props: FieldProps) {
  const { info, target, at } = props;
  const entry = useEntry(target);
  const readBack = useReadBack();
  const { say } = useNumbers();
  const id = fieldId(at);
  const empty = entry.text.trim() === "";
  const under =
    entry.bad !== undefined
      ? entry.bad.join(" ")
      : empty
        ? say(sayText("web.entry-field.not-measured", { waits: props.waits ?? "" }).trim())
        : entry.halfWritten
          ? sayText("web.entry-field.not-read-yet")
          : typeof props.read === "number" && (info.sort.as === "length" || info.sort.as === "angle")
            ? readBack(props.read, info.sort)
            : "";
  const described = {
    "aria-describedby": `${id}-as`,
    "aria-invalid": entry.bad === undefined ? undefined : true,
  } as const;
  return (
    <div className="field">
      <label htmlFor={id}>
        {say(info.title)}
        {info.sub === undefined ? null : <small className="soft"> {say(info.sub)}</small>}
      </label>
      <div className={`box${empty ? " empty" : ""}`}>
        {info.sort.as === "choice" || info.sort.as === "yes or no" ? (
          <ChoiceOf id={id} sort={info.sort} value={entry.kept} choose={entry.choose} described={described} />
        ) : info.sort.as === "long text" ? (
          <textarea
            id={id}
            rows={Math.min(6, Math.max(2, Math.ceil(entry.text.length / 24)))}
            value={entry.text}
            placeholder="?"
            onChange={(event) => entry.change(event.currentTarget.value)}
            onBlur={entry.leave}
            {...described}
          />
        ) : (
          <input
            id={id}
            value={entry.text}
            placeholder="?"
            autoComplete="off"
            spellCheck={false}
            onChange={(event) => entry.change(event.currentTarget.value)}
            onBlur={entry.leave}
            {...described}
          />
        )}
      </div>
      <p className={`as${entry.bad === undefined ? "" : " bad"}`} id={`${id}-as`}>
        {under}
        {entry.bad !== undefined ? (
          <span className="kept">
            {sayText("web.entry-field.before-this")}
            {entry.kept === "" ? sayText("web.entry-field.not-measured-2") : entry.kept}
          </span>
        ) : null}
        {info.how === undefined || (!empty && /^As /.test(info.how)) ? null : (
          <span className="kept">{say(info.how)}</span>
        )}
      </p>
    </div>
  );
}

function ChoiceOf(props: {
  readonly id: string;
  readonly sort: FieldSort;
  readonly value: string;
  readonly choose: (value: unknown) => unknown;
  readonly described: Readonly<Record<string, unknown>>;
}) {
  const { sort } = props;
  const yesNo = sort.as === "yes or no";
  const words = sort.as === "choice" ? sort.words : ["true", "false"];
  const shown = (w: string) =>
    yesNo ? (w === "true" ? sayText("web.entry-field.yes") : sayText("web.entry-field.no")) : w.replaceAll("_", " ");
  return (
    <select
      id={props.id}
      value={props.value}
      {...props.described}
      onChange={(event) => {
        const w = event.currentTarget.value;
        props.choose(w === "" ? "?" : yesNo ? w === "true" : w);
      }}
    >
      <option value="">?</option>
      {words.map((w) => (
        <option key={w} value={w}>
          {shown(w)}
        </option>
      ))}
    </select>
  );
}
