/** How is one entry of a new build asked? A large field in any unit, what was read below it, and a drawing of where to measure. */
import { say as sayText } from "@coldset/core/texts";
import { type EntryReading, LENT_KINDS, type LentKind, type NewBuildEntry } from "@coldset/core/workshop";
import { whatToMeasure } from "@coldset/drawing/bicycle";
import { useNewBuild } from "../state/new-build.js";
import type { Lendable } from "../state/new-build-calls.js";
import { useNumbers } from "../state/numbers.js";
import { Picture, useWide } from "./picture.js";

export function EntryStep(props: {
  readonly entry: NewBuildEntry;
  readonly reading: EntryReading | undefined;
  readonly bad: readonly string[];
}) {
  const { entry, reading } = props;
  const id = `new-${entry.key}`;
  const text = useNewBuild((d) => d.entries[entry.key] ?? "");
  const write = useNewBuild((d) => d.write);
  const wide = useWide(701);
  const numbers = useNumbers();
  const version = wide ? "wide" : "narrow";
  const label = sayText("web.new-build-step.where-to-measure-on-an-example", { entry: entry.title, how: entry.how });
  const drawing = whatToMeasure(entry.key, label, version);
  const read =
    reading?.kind === "read" && reading.words !== ""
      ? numbers.say(sayText("web.new-build-step.read-as", { reading: reading.words }))
      : "";
  const described = {
    "aria-describedby": `${id}-how ${id}-as${props.bad.length > 0 ? ` ${id}-bad` : ""}`,
    "aria-invalid": props.bad.length > 0 ? true : undefined,
  };
  return (
    <>
      <p className="how" id={`${id}-how`}>
        {numbers.say(entry.how)}
        {entry.tool === undefined ? null : (
          <>
            {" "}
            <span className="nb">
              {sayText("web.new-build-step.with")}
              {numbers.say(entry.tool)}.
            </span>
          </>
        )}
      </p>
      {drawing === undefined ? null : (
        <Picture of={`measure ${entry.key} ${version}`} make={() => drawing} className="pic what" />
      )}
      {entry.sort.as === "choice" ? (
        <fieldset className="choice" aria-describedby={`${id}-how`}>
          <legend className="hide">{entry.title}</legend>
          {entry.sort.choices.map(([value, words], i) => (
            <label key={value} className="pickone">
              <input
                type="radio"
                name={id}
                id={i === 0 ? id : undefined}
                value={value}
                checked={text === value}
                onChange={() => write(entry.key, value)}
              />
              <span>{words}</span>
            </label>
          ))}
        </fieldset>
      ) : (
        <div className="field large">
          <label htmlFor={id}>{FIELD_WORDS[entry.sort.as]}</label>
          <div className={`box${text.trim() === "" ? " empty" : ""}`}>
            <input
              id={id}
              value={text}
              placeholder={entry.key === "name" ? "" : "?"}
              autoComplete="off"
              spellCheck={entry.sort.as === "words"}
              onChange={(event) => write(entry.key, event.currentTarget.value)}
              {...described}
            />
          </div>
          <p className="as" id={`${id}-as`} aria-live="polite">
            {read}
          </p>
        </div>
      )}
      <div role="alert" id={`${id}-bad`}>
        {props.bad.map((message) => (
          <p className="bad" key={message}>
            {message}
          </p>
        ))}
      </div>
      <p className="soft">
        <b>{sayText("web.new-build-step.what-it-settles")}</b> {numbers.say(entry.settles)}
      </p>
    </>
  );
}

const FIELD_WORDS = {
  words: sayText("web.new-build-step.in-your-words"),
  length: sayText("web.new-build-step.your-reading-in-any-unit-491"),
  "two lengths": sayText("web.new-build-step.forward-up"),
  sum: sayText("web.new-build-step.a-sum"),
  hours: sayText("web.new-build-step.hours"),
  tyre: sayText("web.new-build-step.two-number-marking"),
  days: sayText("web.new-build-step.days"),
} as const;

const LENT_WORDS: Readonly<Record<LentKind, readonly [title: string, none: string]>> = {
  rider: [sayText("web.new-build-step.rider"), sayText("web.new-build-step.a-new-rider")],
  shop: [sayText("web.new-build-step.shop"), sayText("web.new-build-step.a-new-shop")],
  bin: [sayText("web.new-build-step.bin-of-parts"), sayText("web.new-build-step.a-new-empty-bin")],
  prices: [sayText("web.new-build-step.prices"), sayText("web.new-build-step.new-prices")],
};

/** Rider, shop, bin and prices of the workshop's other builds. What is taken over is shared: a change shows in both. */
export function LentStep({ lendable }: { readonly lendable: readonly Lendable[] }) {
  const lent = useNewBuild((d) => d.lent);
  const lend = useNewBuild((d) => d.lend);
  return (
    <>
      <p className="how">{sayText("web.new-build-step.what-is-taken-over-is-shared")}</p>
      {LENT_KINDS.map((kind) => {
        const ids = lendable.filter((l) => l.kind === kind).map((l) => l.id);
        const [title, none] = LENT_WORDS[kind];
        return ids.length === 0 ? null : (
          <div className="field" key={kind}>
            <label htmlFor={`lent-${kind}`}>{title}</label>
            <div className="box">
              <select
                id={`lent-${kind}`}
                value={lent[kind] ?? ""}
                onChange={(event) => lend(kind, event.currentTarget.value || undefined)}
              >
                <option value="">{none}</option>
                {ids.map((id) => (
                  <option key={id}>{id}</option>
                ))}
              </select>
            </div>
          </div>
        );
      })}
    </>
  );
}
