/** Which versions have names, how do two of them differ, and how does one come back? A restore first says what it will change. */
import { say as sayText } from "@coldset/core/texts";
import { type FormEvent, useCallback, useEffect, useId, useRef, useState } from "react";
import { restore } from "../state/history.js";
import {
  type Asked,
  askDifference,
  askVersions,
  type NamedVersion,
  sendName,
  type VersionDifference,
} from "../state/history-calls.js";
import { useWorkshop } from "../state/workshop.js";
import { DifferenceList, moment } from "./difference-list.js";

const NOW = "now";

interface Shown {
  readonly difference: Asked<VersionDifference>;
  /** The version that is about to be restored. */
  readonly restoring?: string;
}

export function VersionList({ build, newest }: { readonly build: string; readonly newest: number }) {
  const [versions, setVersions] = useState<readonly NamedVersion[]>([]);
  const [shown, setShown] = useState<Shown>();
  const load = useCallback(async () => {
    const asked = await askVersions(build);
    if (asked.kind === "answered") setVersions(asked.value.versions);
  }, [build]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is shown was asked before the newest change.
  useEffect(() => {
    void load();
    setShown(undefined);
  }, [load, newest]);
  const compare = (from: string, to: string) =>
    void askDifference(build, from, to).then((difference) => setShown({ difference }));
  const prepare = (name: string) =>
    void askDifference(build, NOW, name).then((difference) => setShown({ difference, restoring: name }));
  return (
    <section>
      <h2 className="sec">{sayText("web.version-list.versions-with-a-name")}</h2>
      <p className="words">{sayText("web.version-list.before-a-step-that-cannot-be")}</p>
      <NameForm build={build} done={load} />
      {versions.length === 0 ? null : (
        <>
          <ul className="past versions">
            {versions.map((v) => (
              <li key={v.name}>
                <div>
                  <h3>{v.name}</h3>
                  <p className="cap">{moment(v.at)}</p>
                </div>
                <div className="acts">
                  <button type="button" className="btn" onClick={() => compare(v.name, NOW)}>
                    {sayText("web.version-list.compare-with-now")}
                    <span className="hide">: {v.name}</span>
                  </button>
                  <button type="button" className="btn" onClick={() => prepare(v.name)}>
                    {sayText("web.version-list.restore")}
                    <span className="hide"> {v.name}</span>
                  </button>
                </div>
              </li>
            ))}
          </ul>
          {versions.length < 2 ? null : <CompareForm versions={versions} compare={compare} />}
        </>
      )}
      {shown === undefined ? null : <Outcome build={build} shown={shown} close={() => setShown(undefined)} />}
    </section>
  );
}

function NameForm({ build, done }: { readonly build: string; readonly done: () => Promise<void> }) {
  const say = useWorkshop((w) => w.say);
  const [name, setName] = useState("");
  const [bad, setBad] = useState("");
  const id = useId();
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    const asked = await sendName(build, name);
    if (asked.kind === "answered") {
      setName("");
      setBad("");
      await done();
      say(sayText("web.version-list.kept-as", { version: asked.value.version.name }));
      return;
    }
    setBad(
      asked.kind === "no" ? asked.messages.join(" ") : sayText("web.version-list.the-server-does-not-answer-only"),
    );
  };
  return (
    <form className="ask" onSubmit={(event) => void keep(event)} noValidate>
      <div className="field">
        <label htmlFor={id}>{sayText("web.version-list.name-for-how-it-stands-now")}</label>
        <div className="box">
          <input
            id={id}
            value={name}
            maxLength={80}
            autoComplete="off"
            aria-describedby={`${id}-as`}
            aria-invalid={bad !== ""}
            onChange={(e) => setName(e.currentTarget.value)}
          />
        </div>
        <p className={bad === "" ? "as" : "as bad"} id={`${id}-as`} role={bad === "" ? undefined : "alert"}>
          {bad === "" ? sayText("web.version-list.as-you-will-look-for-it") : bad}
        </p>
      </div>
      <button type="submit" className="btn">
        {sayText("web.version-list.keep-under-this-name")}
      </button>
    </form>
  );
}

function CompareForm(props: {
  readonly versions: readonly NamedVersion[];
  readonly compare: (from: string, to: string) => void;
}) {
  const names = props.versions.map((v) => v.name);
  const [from, setFrom] = useState(names[1] ?? NOW);
  const [to, setTo] = useState(names[0] ?? NOW);
  const id = useId();
  const choice = (which: string, label: string, value: string, set: (name: string) => void) => (
    <div className="field">
      <label htmlFor={`${id}-${which}`}>{label}</label>
      <div className="box">
        <select id={`${id}-${which}`} value={value} onChange={(e) => set(e.currentTarget.value)}>
          {names.map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
          <option value={NOW}>{sayText("web.version-list.how-it-stands-now")}</option>
        </select>
      </div>
    </div>
  );
  return (
    <form
      className="ask"
      onSubmit={(event) => {
        event.preventDefault();
        props.compare(from, to);
      }}
    >
      {choice("from", sayText("web.version-list.compare"), from, setFrom)}
      {choice("to", sayText("web.version-list.with"), to, setTo)}
      <button type="submit" className="btn">
        {sayText("web.version-list.show-what-differs")}
      </button>
    </form>
  );
}

function Outcome(props: { readonly build: string; readonly shown: Shown; readonly close: () => void }) {
  const { difference, restoring } = props.shown;
  const heading = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each new outcome takes the focus, so that it is read out.
  useEffect(() => heading.current?.focus(), [props.shown]);
  const title = (words: string) => (
    <h3 ref={heading} tabIndex={-1}>
      {words}
    </h3>
  );
  if (difference.kind !== "answered") {
    const words =
      difference.kind === "no" ? difference.messages.join(" ") : sayText("web.version-list.the-server-does-not-answer");
    return (
      <section className="trouble" role="alert">
        {title(sayText("web.version-list.they-cannot-be-compared-now"))}
        <p>{words}</p>
      </section>
    );
  }
  const { from, to, documents, newest } = difference.value;
  const name = (version: string) => (version === NOW ? sayText("web.version-list.how-it-stands-now") : version);
  const nothing = documents.length === 0;
  return (
    <section className="trouble">
      {title(
        restoring === undefined
          ? sayText("web.version-list.from-to", { from: name(from), to: name(to) })
          : sayText("web.version-list.restore-2", { restoring }),
      )}
      <p>
        {nothing
          ? sayText("web.version-list.nothing-differs")
          : restoring === undefined
            ? `${documents.length} ${documents.length === 1 ? sayText("web.version-list.document-differs") : sayText("web.version-list.documents-differ")}.`
            : sayText("web.version-list.this-will-change-what-stands-below")}
      </p>
      <DifferenceList documents={documents} named={true} />
      <div className="acts">
        {restoring === undefined || nothing ? null : (
          <button type="button" className="btn btn-mark" onClick={() => void restore(props.build, restoring, newest)}>
            {sayText("web.version-list.restore-it")}
          </button>
        )}
        <button type="button" className="btn" onClick={props.close}>
          {restoring === undefined || nothing
            ? sayText("web.version-list.close")
            : sayText("web.version-list.leave-it-as-it-is")}
        </button>
      </div>
    </section>
  );
}
