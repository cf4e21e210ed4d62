/**
 * Two people wrote into the same place, or the records refused a text: what can the person do? Both values are kept and
 * shown, one choice after the other; what was entered into that document after it waits.
 */
import { say } from "@coldset/core/texts";
import type { MouseEvent } from "react";
import { bothAtPlace } from "../state/both-readings.js";
import type { Entry } from "../state/entry-shelf.js";
import type { Choice, Conflict } from "../state/queue-types.js";
import { capital } from "../state/words.js";
import { useWorkshop } from "../state/workshop.js";
import { shown } from "./shown.js";

export function Choices() {
  const conflicts = useWorkshop((w) => w.queue.conflicts);
  const notSaved = useWorkshop((w) => w.queue.notSaved);
  const [first] = conflicts;
  return (
    <>
      {first === undefined ? null : <ChoiceBox key={first.entry.key} conflict={first} more={conflicts.length - 1} />}
      {notSaved.map((entry) => (
        <NotSaved key={entry.key} entry={entry} />
      ))}
    </>
  );
}

/** Said where the entry was made on the page of another build. */
function useWhere(entry: Entry): string {
  const open = useWorkshop((w) => w.buildId);
  return entry.build === open ? "" : ` in ${capital(entry.build)}`;
}

function ChoiceBox({ conflict, more }: { readonly conflict: Conflict; readonly more: number }) {
  const { entry, mine, theirs, gone } = conflict;
  const settle = useWorkshop((w) => w.settle);
  const plain = useWorkshop((w) => w.docs.find((d) => d.kind === entry.kind && d.id === entry.id)?.plain);
  const where = useWhere(entry);
  const both = gone || plain === undefined ? undefined : bothAtPlace({ ...entry, plain }, mine, theirs);
  // The second press of a double one would fall on the choice that comes after this.
  const choose = (choice: Choice) => (event: MouseEvent) => {
    if (event.detail < 2) settle(conflict, choice);
  };
  const rest =
    more === 0
      ? ""
      : say("web.choices.more-after-this-one", {
          more,
          choicesCome: more === 1 ? say("web.choices.choice-comes") : say("web.choices.choices-come"),
        });
  if (gone)
    return (
      <section className="trouble" role="alert" data-entry={entry.key}>
        <h2>
          {say("web.choices.the-place-of")}
          {entry.words}
          {where}
          {say("web.choices.is-gone")}
        </h2>
        <p>
          {say("web.choices.you-wrote")}
          {shown(mine)}
          {say("web.choices.meanwhile-somebody-else-took-the-row")}
          {rest}
        </p>
        <div className="acts">
          <button type="button" className="btn" onClick={choose("theirs")}>
            {say("web.choices.leave-mine-out")}
            {shown(mine)}
          </button>
        </div>
      </section>
    );
  return (
    <section className="trouble" role="alert" data-entry={entry.key}>
      <h2>
        {say("web.choices.two-values-for")}
        {entry.words}
        {where}
      </h2>
      <p>
        {say("web.choices.you")}
        {mine === undefined ? say("web.choices.took-it-out") : say("web.choices.wrote", { mine: shown(mine) })}
        {say("web.choices.meanwhile-somebody-else")}{" "}
        {theirs === undefined || theirs === null
          ? say("web.choices.took-it-out")
          : say("web.choices.wrote-2", { theirs: shown(theirs) })}
        {say("web.choices.both-are-kept-until-you-choose")}
        {both === undefined ? "" : say("web.choices.both-as-readings-are-the-average", { both })}
        {rest}
      </p>
      <div className="acts">
        <button type="button" className="btn" onClick={choose("mine")}>
          {mine === undefined ? say("web.choices.take-it-out") : say("web.choices.keep-yours", { mine: shown(mine) })}
        </button>
        <button type="button" className="btn" onClick={choose("theirs")}>
          {theirs === undefined || theirs === null
            ? say("web.choices.leave-it-out")
            : say("web.choices.take-the-other", { theirs: shown(theirs) })}
        </button>
        {both === undefined ? null : (
          <button type="button" className="btn" onClick={choose({ value: both })}>
            {say("web.choices.use-both-as-readings")}
            {both}
          </button>
        )}
      </div>
    </section>
  );
}

function NotSaved({ entry }: { readonly entry: Entry }) {
  const sendAgain = useWorkshop((w) => w.sendAgain);
  const letGo = useWorkshop((w) => w.letGo);
  const where = useWhere(entry);
  return (
    <section className="trouble" role="alert" data-entry={entry.key}>
      <h2>
        {say("web.choices.could-not-be-saved")}
        {entry.words}
        {where}
      </h2>
      <p>
        {(entry.refused ?? []).join(" ")}
        {say("web.choices.your-text-is-kept-here")}
        <b>{shown(entry.value)}</b>.
      </p>
      <div className="acts">
        <button type="button" className="btn" onClick={() => sendAgain(entry.key)}>
          {say("web.choices.try-again")}
        </button>
        <button type="button" className="btn" onClick={() => letGo(entry.key)}>
          {say("web.choices.leave-it-out")}
        </button>
      </div>
    </section>
  );
}
