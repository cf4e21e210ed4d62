/** What did the last edit move, is it kept, and how is it taken back? */

import type { BoardRow } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { useEffect } from "react";
import { useHealth } from "../state/health.js";
import { useHistoryTop } from "../state/history.js";
import { listed, type Moved, movedWords } from "../state/moved-rows.js";
import { useWorkshop } from "../state/workshop.js";
import { Choices } from "./choices.js";
import { entriesWait } from "./health-line.js";
import { shown } from "./shown.js";
import { TurnButtons } from "./turn-buttons.js";

interface EditBarProps {
  readonly moved: ReadonlyMap<number, Moved>;
  readonly board: readonly BoardRow[];
  /** Say so where nothing was edited yet: the bar keeps its place, and nothing jumps at the first keystroke. */
  readonly idle?: boolean;
}

/** Stays in sight while the sheet is scrolled: what moved, what waits, what somebody has to decide. */
export function EditBar(props: EditBarProps) {
  useEffect(() => {
    useHealth.setState((h) => ({ bars: h.bars + 1 }));
    return () => useHealth.setState((h) => ({ bars: h.bars - 1 }));
  }, []);
  return (
    <div className="bar-top">
      <Choices />
      <EditLine {...props} />
    </div>
  );
}

function EditLine(props: EditBarProps) {
  const last = useWorkshop((w) => w.last);
  const said = useWorkshop((w) => w.said);
  // What was taken back or put back, or why it could not be, is said here too and not only aloud.
  const notice = useHistoryTop((h) => h.notice);
  const told = said.startsWith("Taken back") || said === notice ? said : "";
  if (last === undefined) {
    const words =
      told !== "" ? told : props.idle === true ? say("web.edit-line.nothing-edited-on-this-visit-each") : undefined;
    return words === undefined ? null : (
      <div className={told !== "" ? "edit idle" : "edit idle rest"}>
        <p>
          {words}
          <Kept />
        </p>
        <TurnButtons />
      </div>
    );
  }
  const { turned, parts } = movedWords(props.moved, last.before.board, props.board);
  return (
    <div className="edit">
      <p>
        <b>
          {last.elsewhere === true
            ? say("web.edit-line.changed-in-another-window")
            : say("web.edit-line.since-your-last-edit")}
        </b>{" "}
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
        {parts === "" ? "" : say("web.edit-line.changed-parts", { parts })}
        {props.moved.size === 0 ? (
          say("web.edit-line.nothing-on-the-board-moved")
        ) : (
          <span className="detail">{say("web.edit-line.nothing-else-moved")}</span>
        )}
        {told === "" ? null : <b className="bits">{told}</b>}
        <Kept />
      </p>
      <TurnButtons />
    </div>
  );
}

/** Is everything kept? Says how many entries wait and for what. */
function Kept() {
  const queue = useWorkshop((w) => w.queue);
  const reached = useHealth((h) => h.reached);
  const n = queue.waiting.length;
  const words =
    queue.conflicts.length > 0
      ? say("web.edit-line.waits-for-your-choice")
      : n === 0
        ? queue.lastSaved === undefined
          ? ""
          : say("web.edit-line.saved")
        : reached === false || queue.trouble !== undefined
          ? `${entriesWait(n)}.`
          : say("web.edit-line.saving");
  return (
    <span className="kept" role="status">
      {words}
    </span>
  );
}
