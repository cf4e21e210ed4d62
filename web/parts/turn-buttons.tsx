/** What can be taken back and put back here? Two large buttons; one that has nothing to do is not shown. */
import { say } from "@coldset/core/texts";
import { putBack, takeBack, useFollowHistory, useHistoryTop } from "../state/history.js";
import { useWorkshop } from "../state/workshop.js";

export function TurnButtons() {
  const build = useWorkshop((w) => w.buildId);
  const made = useWorkshop((w) => w.made.length > 0);
  useFollowHistory(build);
  const top = useHistoryTop();
  const known = top.build === build;
  return (
    <span className="turns">
      {made || (known && top.undo !== null) ? (
        <button className="btn" type="button" onClick={() => void takeBack(build)}>
          {say("web.turn-buttons.take-it-back")}
        </button>
      ) : null}
      {known && top.redo !== null ? (
        <button className="btn" type="button" onClick={() => void putBack(build)}>
          {say("web.turn-buttons.put-it-back")}
        </button>
      ) : null}
    </span>
  );
}
