/** What did the last edit move, is it kept, and how is it taken back? */

import type { BoardRow } from "@coldset/core/questions";
import { listed, type Moved, movedWords } from "../state/moved-rows.js";
import { useWorkshop } from "../state/workshop.js";

interface EditBarProps {
  readonly moved: ReadonlyMap<number, Moved>;
  readonly board: readonly BoardRow[];
  /** Say so where nothing was edited yet: the bar keeps its place, and nothing jumps at the first keystroke. */
  readonly idle?: boolean;
}

/** Stays in sight while the sheet is scrolled: what moved, what waits, what somebody has to decide. */
export function EditBar(props: EditBarProps) {
  return (
    <div className="bar-top">
      <Trouble />
      <EditLine {...props} />
    </div>
  );
}

function EditLine(props: EditBarProps) {
  const last = useWorkshop((w) => w.last);
  const said = useWorkshop((w) => w.said);
  const takeBack = useWorkshop((w) => w.takeBack);
  if (last === undefined) {
    const words = said.startsWith("Taken back")
      ? said
      : props.idle === true
        ? "Nothing edited on this visit. Each figure is answered as soon as it can be read, and saved at once."
        : undefined;
    return words === undefined ? (
      <Kept alone />
    ) : (
      <div className={said.startsWith("Taken back") ? "edit idle" : "edit idle rest"}>
        <p>
          {words}
          <Kept />
        </p>
      </div>
    );
  }
  const { turned, parts } = movedWords(props.moved, last.before.board, props.board);
  return (
    <div className="edit">
      <p>
        <b>Since your last edit</b>{" "}
        <span className="detail">
          ({last.edit.words}: {shown(last.was)} → {shown(last.edit.value)})
        </span>{" "}
        {turned.length > 0 ? (
          <>
            <span className="swipe">{turned[0]}</span>
            {turned.length > 1 ? `, ${listed(turned.slice(1))}` : ""}
            {parts === "" ? ". " : ", "}
          </>
        ) : null}
        {parts === "" ? "" : `${parts} changed parts. `}
        {props.moved.size === 0 ? "nothing on the board moved." : <span className="detail">Nothing else moved.</span>}
        <Kept />
      </p>
      <button className="btn" type="button" onClick={takeBack}>
        Take it back
      </button>
    </div>
  );
}

function shown(value: unknown): string {
  if (value === undefined || value === null || value === "?") return "not measured";
  if (Array.isArray(value)) return `${value.length} ${value.length === 1 ? "entry" : "entries"}`;
  if (typeof value === "object") return "another choice";
  const text = String(value);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

/** Is everything kept? Says how many entries wait and for what. */
function Kept({ alone = false }: { readonly alone?: boolean }) {
  const queue = useWorkshop((w) => w.queue);
  const n = queue.waiting.length;
  const entries = `${n} ${n === 1 ? "entry waits" : "entries wait"}`;
  if (queue.trouble !== undefined && queue.trouble.kind !== "conflict")
    return alone ? (
      <p className="line">
        <Unreached entries={entries} n={n} />
      </p>
    ) : (
      <span className="kept">
        <Unreached entries={entries} n={n} />
      </span>
    );
  if (alone) return null;
  return (
    <span className="kept" role="status">
      {queue.trouble?.kind === "conflict"
        ? "Waits for your choice."
        : n > 0
          ? "Saving."
          : queue.lastSaved === undefined
            ? ""
            : "Saved."}
    </span>
  );
}

function Unreached({ entries, n }: { readonly entries: string; readonly n: number }) {
  const trouble = useWorkshop((w) => w.queue.trouble);
  return trouble?.kind === "failed" ? (
    <>
      The workshop's records did not take the last entry ({trouble.reference}). {entries} in this browser and will be
      sent again by themselves. Everything still reckons here.
    </>
  ) : (
    <>
      The server does not answer: {entries} here and {n === 1 ? "goes" : "go"} out by{" "}
      {n === 1 ? "itself" : "themselves"}. All sheets still reckon.
    </>
  );
}

/** Two people wrote into the same place, or the records refused a text: both are shown, and a person chooses. */
function Trouble() {
  const queue = useWorkshop((w) => w.queue);
  const settle = useWorkshop((w) => w.settle);
  const sendAgain = useWorkshop((w) => w.sendAgain);
  const { trouble } = queue;
  return (
    <>
      {trouble?.kind === "conflict" ? (
        <section className="trouble" role="alert">
          <h2>Two values for {trouble.entry.words}</h2>
          <p>
            You wrote {shown(trouble.entry.value)}. Meanwhile somebody else wrote {shown(trouble.theirs)}. Both are kept
            until you choose; what you entered after it waits.
          </p>
          <div className="acts">
            <button type="button" className="btn" onClick={() => settle(true)}>
              Keep yours: {shown(trouble.entry.value)}
            </button>
            <button type="button" className="btn" onClick={() => settle(false)}>
              Take the other: {shown(trouble.theirs)}
            </button>
          </div>
        </section>
      ) : null}
      {queue.notSaved.map(({ entry, messages }, i) => (
        <section className="trouble" role="alert" key={`${entry.kind} ${entry.path.join(".")} ${String(entry.value)}`}>
          <h2>Could not be saved: {entry.words}</h2>
          <p>
            {messages.join(" ")} Your text is kept here: <b>{shown(entry.value)}</b>.
          </p>
          <div className="acts">
            <button type="button" className="btn" onClick={() => sendAgain(i)}>
              Try again
            </button>
          </div>
        </section>
      ))}
    </>
  );
}
