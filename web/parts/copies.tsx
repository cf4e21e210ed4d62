/** How does somebody take a copy of everything, and bring one in? First it is shown what it would bring; then a person decides. */
import { say } from "@coldset/core/texts";
import { differenceWords } from "@coldset/core/workshop";
import { useId, useState } from "react";
import { bringIn, type Choice, type Plan, type PlanDocument } from "../state/archive.js";

const MOST_LINES = 12;

const HISTORIES = {
  "theirs-goes-on": say("cli.import-page.it-goes-on-from-what-is"),
  "mine-goes-on": say("cli.import-page.it-is-an-older-state-of"),
  apart: say("cli.import-page.both-were-changed-since-they-were"),
  "only-text": say("cli.import-page.it-comes-without-a-history"),
} as const;

const CHOICES: readonly (readonly [Choice, string])[] = [
  ["keep-mine", say("web.copies.keep-what-is-here")],
  ["take-theirs", say("web.copies.take-what-comes-what-is-here")],
  ["as-new", say("web.copies.take-it-in-beside-under-a")],
];

export function Copies({ changed }: { readonly changed: () => void }) {
  const id = useId();
  const [file, setFile] = useState<File>();
  const [plan, setPlan] = useState<Plan>();
  const [choices, setChoices] = useState<Readonly<Record<string, Choice>>>({});
  const [said, setSaid] = useState("");
  const [wrong, setWrong] = useState<readonly string[]>([]);
  const [busy, setBusy] = useState(false);
  const run = async (chosen: File, take?: Readonly<Record<string, Choice>>) => {
    setBusy(true);
    setSaid("");
    const answer = await bringIn(chosen, take);
    setBusy(false);
    if (answer.kind !== "done") {
      setPlan(undefined);
      setWrong(answer.kind === "refused" ? answer.messages : [say("web.copies.the-server-does-not-answer-nothing")]);
      return;
    }
    setWrong([]);
    if (take === undefined) {
      setPlan(answer.value);
      setChoices({});
      return;
    }
    setPlan(undefined);
    setSaid(say("web.copies.was-taken-in", { label: answer.value.label }));
    changed();
  };
  const open = (plan?.documents ?? []).filter((d) => d.change === "differs" && choices[nameOf(d)] === undefined);
  return (
    <section aria-labelledby={`${id}-title`} className="copies">
      <h2 className="sec" id={`${id}-title`}>
        {say("web.copies.copies")}
      </h2>
      <p className="words">{say("web.copies.a-copy-holds-everything-documents-as")}</p>
      <p className="acts">
        <a className="btn" href="/api/archive" download="workshop.zip">
          {say("web.copies.take-a-copy-of-everything")}
        </a>
      </p>
      <div className="field">
        <label htmlFor={`${id}-file`}>{say("web.copies.bring-in-a-copy")}</label>
        <div className="box">
          <input
            id={`${id}-file`}
            type="file"
            accept=".zip,.yaml,.yml,.json"
            aria-describedby={`${id}-as`}
            onChange={(event) => {
              const chosen = event.currentTarget.files?.[0];
              setFile(chosen);
              setPlan(undefined);
              if (chosen !== undefined) void run(chosen);
            }}
          />
        </div>
        <p className="as" id={`${id}-as`}>
          {say("web.copies.first-it-is-shown-what-it")}
        </p>
      </div>
      <p role="status" className={said === "" && !busy ? "hide" : "line"}>
        {busy ? say("web.copies.reading-it") : said}
      </p>
      {wrong.length === 0 ? null : (
        <div role="alert" className="trouble">
          <p className="bad">{say("web.copies.it-was-not-taken-in-nothing")}</p>
          <ul className="bullets">
            {wrong.map((w) => (
              <li key={w}>{w}</li>
            ))}
          </ul>
        </div>
      )}
      {plan === undefined || file === undefined ? null : (
        <section aria-labelledby={`${id}-plan`}>
          <h3 id={`${id}-plan`}>
            {say("web.copies.what")}
            {plan.label}
            {say("web.copies.would-bring")}
          </h3>
          <Listed plan={plan} change="new" words={say("web.copies.new-here")} />
          <Listed plan={plan} change="same" words={say("web.copies.the-same-here")} />
          <p>
            {say("web.copies.photos")}
            {plan.photos.fresh}
            {say("web.copies.new")}
            {plan.photos.there}
            {say("web.copies.here-already-named-versions")}
            {plan.versions.fresh} {say("web.copies.new-2")}
            {plan.versions.there}
            {say("web.copies.here-already")}
          </p>
          {plan.documents
            .filter((d) => d.change === "differs")
            .map((d) => (
              <Differs
                key={nameOf(d)}
                document={d}
                choice={choices[nameOf(d)]}
                choose={(choice) => setChoices({ ...choices, [nameOf(d)]: choice })}
              />
            ))}
          <p className="acts">
            <button
              type="button"
              className="btn btn-mark"
              aria-disabled={open.length > 0 || busy}
              onClick={() => {
                if (open.length === 0 && !busy) void run(file, choices);
              }}
            >
              {open.length > 0
                ? say("web.copies.waits-to-choose", { openCount: open.length })
                : say("web.copies.take-it-in")}
            </button>
          </p>
        </section>
      )}
    </section>
  );
}

const nameOf = (d: PlanDocument) => `${d.kind}/${d.id}`;

function Listed(props: { readonly plan: Plan; readonly change: "new" | "same"; readonly words: string }) {
  const names = props.plan.documents.filter((d) => d.change === props.change).map((d) => `${d.kind} ${d.id}`);
  return names.length === 0 ? null : (
    <p>
      {props.words}: {names.join(", ")}.
    </p>
  );
}

function Differs(props: {
  readonly document: PlanDocument;
  readonly choice: Choice | undefined;
  readonly choose: (choice: Choice) => void;
}) {
  const { document, choice, choose } = props;
  const lines = differenceWords(document.difference);
  return (
    <fieldset className="differs">
      <legend>
        {document.kind} {document.id}
        {say("web.copies.differs")}
      </legend>
      <ul className="bullets">
        {lines.slice(0, MOST_LINES).map((line) => (
          <li key={line}>{line}</li>
        ))}
        {lines.length > MOST_LINES ? (
          <li>
            {say("web.copies.and")}
            {lines.length - MOST_LINES}
            {say("web.copies.more")}
          </li>
        ) : null}
      </ul>
      <p>{HISTORIES[document.histories]}</p>
      <div className="acts">
        {CHOICES.map(([value, words]) => (
          <button
            key={value}
            type="button"
            className="btn"
            aria-pressed={choice === value}
            onClick={() => choose(value)}
          >
            {words}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
