/**
 * How does a newcomer with a tape make a build? One question a step, with a drawing of where the tape is held, what is
 * known so far beside it, and an end on the board. All but the name can be left out.
 */
import { say } from "@coldset/core/texts";
import { FIRST_BOARD_KEY, LENT_KINDS, NEW_BUILD_ENTRIES, type NewBuildEntry, readEntry } from "@coldset/core/workshop";
import { type FormEvent, useEffect, useState } from "react";
import { EntryStep, LentStep } from "../parts/new-build-step.js";
import { PageTitle } from "../parts/sheet-frame.js";
import { SoFar } from "../parts/so-far.js";
import { hasEntries, useNewBuild } from "../state/new-build.js";
import { type Lendable, loadLendable, makeBuild, type Problem } from "../state/new-build-calls.js";
import { go, linkTo } from "../state/route.js";

const LENT_STEP = "lent";

export function NewBuildPage() {
  const draft = useNewBuild();
  const [lendable, setLendable] = useState<readonly Lendable[]>([]);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [pressed, setPressed] = useState(false);
  const [making, setMaking] = useState(false);
  useEffect(() => {
    // Without an answer nothing can be taken over; everything else goes on.
    void loadLendable().then((answer) => setLendable(answer.kind === "loaded" ? answer.value : []));
  }, []);

  const steps = stepsOf(lendable, draft.lent);
  const at = Math.max(0, steps.indexOf(draft.step));
  const step = steps[at] ?? "name";
  const entry = NEW_BUILD_ENTRIES.find((e) => e.key === step);
  const reading = entry === undefined ? undefined : readEntry(entry, draft.entries);
  const last = at === steps.length - 1;
  const named = hasEntries({ name: draft.entries.name ?? "" });
  const answered = named && at >= steps.indexOf(FIRST_BOARD_KEY);
  const here = problems.filter((p) => p.at === step);

  const move = (to: number) => {
    const next = steps[to];
    if (next === undefined) return;
    setPressed(false);
    setProblems([]);
    draft.goTo(next);
    scrollTo(0, 0);
  };
  const make = async () => {
    if (making) return;
    setMaking(true);
    const filled = Object.fromEntries(Object.entries(draft.entries).filter(([, text]) => hasEntries({ text })));
    const made = await makeBuild(filled, draft.lent);
    setMaking(false);
    if (made.kind === "made") {
      go(linkTo.ask(made.id));
      draft.begin();
      return;
    }
    const found: readonly Problem[] =
      made.kind === "refused"
        ? made.problems
        : [
            {
              at: "",
              code: made.kind,
              allowed: "",
              message:
                made.kind === "unreachable"
                  ? say("web.new-build-page.the-workshop-s-server-does-not")
                  : say("web.new-build-page.a-fault-of-ours-your-entries", { reference: made.reference }),
            },
          ];
    setProblems(found);
    const place = steps.find((s) => found.some((p) => p.at === s));
    if (place !== undefined) draft.goTo(place);
  };
  const next = (event: FormEvent) => {
    event.preventDefault();
    const nameless = step === "name" && !named;
    if (reading?.kind === "refused" || nameless) {
      setPressed(true);
      document.getElementById(`new-${step}`)?.focus();
      return;
    }
    if (last) void make();
    else move(at + 1);
  };

  const bad =
    reading?.kind === "refused" && pressed
      ? reading.messages
      : step === "name" && pressed && !named
        ? [say("web.new-build-page.give-it-a-name-first-everything")]
        : [];
  const taken = here.find((p) => p.code === "name-taken");
  return (
    <>
      <div className="pagehead new">
        <div>
          <p className="q" id="new-count">
            {say("web.new-build-page.a-new-build-step")}
            {at + 1}
            {say("web.board-page.of")}
            {steps.length}
          </p>
          <PageTitle key={step}>
            {entry === undefined ? say("web.new-build-page.take-over-from-another-build") : entry.title}
          </PageTitle>
        </div>
      </div>
      <div className="newbuild">
        <form onSubmit={next} noValidate>
          {entry === undefined ? (
            <LentStep lendable={lendable} />
          ) : (
            <EntryStep key={step} entry={entry} reading={reading} bad={[...bad, ...here.map((p) => p.message)]} />
          )}
          {taken === undefined ? null : (
            <button
              type="button"
              className="btn"
              onClick={() => {
                draft.write("name", taken.allowed);
                setProblems([]);
              }}
            >
              {say("web.new-build-page.call-it")}
              {taken.allowed}
            </button>
          )}
          {problems
            .filter((p) => p.at !== step)
            .map((p) => (
              <p className="bad" role="alert" key={p.at + p.code}>
                {p.message}
              </p>
            ))}
          <div className="acts">
            {last ? null : (
              <button type="submit" className={`btn${answered ? "" : " btn-mark"}`}>
                {entry === undefined || reading?.kind !== "skipped" || step === "name"
                  ? say("web.new-build-page.next")
                  : skipWords(entry)}
              </button>
            )}
            {named ? (
              <button
                type={last ? "submit" : "button"}
                className={`btn${answered ? " btn-mark" : ""}`}
                disabled={making}
                onClick={last ? undefined : () => void make()}
              >
                {making ? say("web.new-build-page.making-it") : say("web.new-build-page.make-it-and-open-its-board")}
              </button>
            ) : null}
            {at === 0 ? null : (
              <button type="button" className="btn" onClick={() => move(at - 1)}>
                {say("web.new-build-page.back")}
              </button>
            )}
          </div>
          {answered && step === FIRST_BOARD_KEY ? (
            <p className="soft">{say("web.new-build-page.the-board-has-its-first-answers")}</p>
          ) : null}
        </form>
        <SoFar step={step} />
      </div>
      {hasEntries(draft.entries) ? (
        <p className="links">
          <button
            type="button"
            className="btn"
            onClick={() => {
              setProblems([]);
              draft.begin();
            }}
          >
            {say("web.new-build-page.forget-these-entries-and-begin-anew")}
          </button>
        </p>
      ) : null}
    </>
  );
}

const skipWords = (entry: NewBuildEntry) =>
  entry.sort.as === "length"
    ? say("web.new-build-page.skip-not-measured-yet")
    : say("web.new-build-page.skip-not-known-yet");

/** What another build lends is not asked for; whether one shall lend is asked only where there is one. */
function stepsOf(lendable: readonly Lendable[], lent: Readonly<Record<string, string | undefined>>): readonly string[] {
  const steps: string[] = [];
  for (const { key, kind } of NEW_BUILD_ENTRIES) {
    if (LENT_KINDS.some((k) => k === kind && lent[k] !== undefined)) continue;
    steps.push(key);
    if (key === "becomes" && lendable.length > 0) steps.push(LENT_STEP);
  }
  return steps;
}
