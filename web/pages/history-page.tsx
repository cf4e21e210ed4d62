/** What was changed in this build, when, from what to what, and how does it come back? */
import { say } from "@coldset/core/texts";
import { changeWords } from "@coldset/core/workshop";
import { useCallback, useEffect, useState } from "react";
import { DifferenceList, moment } from "../parts/difference-list.js";
import { PageTitle } from "../parts/sheet-frame.js";
import { VersionList } from "../parts/version-list.js";
import { putBack, takeBack, useFollowHistory, useHistoryTop } from "../state/history.js";
import { type Asked, askHistory, type ToldChange, type ToldHistory } from "../state/history-calls.js";
import { useWorkshop } from "../state/workshop.js";

const PAGE = 30;

export function HistoryPage({ build }: { readonly build: string }) {
  useFollowHistory(build);
  const top = useHistoryTop();
  const made = useWorkshop((w) => w.made.length > 0);
  const [first, setFirst] = useState<Asked<ToldHistory>>();
  const [older, setOlder] = useState<readonly ToldHistory[]>([]);
  const newest = top.build === build ? top.newest : 0;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a newer change is the reason to ask again.
  useEffect(() => {
    void askHistory(build, PAGE).then((asked) => {
      setFirst(asked);
      setOlder([]);
    });
  }, [build, newest]);
  const history = first?.kind === "answered" ? first.value : undefined;
  const last = older.at(-1) ?? history;
  const more = useCallback(() => {
    if (last?.older === null || last === undefined) return;
    void askHistory(build, PAGE, last.older).then((asked) => {
      if (asked.kind === "answered") setOlder((pages) => [...pages, asked.value]);
    });
  }, [build, last]);
  const undo = made || (history !== undefined && history.undo !== null);
  const redo = history !== undefined && history.redo !== null;
  const changes = [history, ...older].flatMap((page) => page?.changes ?? []);
  return (
    <>
      <div className="pagehead">
        <div>
          <PageTitle>{say("web.history-page.what-was-changed-and-when")}</PageTitle>
          <p>{say("web.history-page.every-change-of-this-build-and")}</p>
        </div>
      </div>
      <div className="links">
        <button type="button" className="btn btn-mark" aria-disabled={!undo} onClick={() => void takeBack(build)}>
          {say("web.history-page.take-the-last-change-back")}
          {made || !undo ? null : (
            <small>
              {say("web.history-page.change")}
              {history?.undo}
            </small>
          )}
        </button>
        <button type="button" className="btn" aria-disabled={!redo} onClick={() => void putBack(build)}>
          {say("web.turn-buttons.put-it-back")}
          {redo ? (
            <small>
              {say("web.history-page.change")}
              {history?.redo}
            </small>
          ) : null}
        </button>
      </div>
      <Notice />
      {first === undefined ? null : history === undefined ? (
        <section className="trouble" role="alert">
          <h2>
            {first.kind === "unreachable"
              ? say("web.history-page.the-history-cannot-be-shown-now")
              : say("web.history-page.the-history-cannot-be-read")}
          </h2>
          <p>{first.kind === "no" ? first.messages.join(" ") : say("web.history-page.it-is-kept-by-the-server")}</p>
        </section>
      ) : (
        <>
          <VersionList build={build} newest={history.newest} />
          <section>
            <h2 className="sec">{say("web.history-page.changes-the-newest-first")}</h2>
            <ol className="past">
              {changes.map((change) => (
                <ChangeLine key={change.change} build={build} change={change} />
              ))}
            </ol>
            {last?.older === null ? null : (
              <div className="links">
                <button type="button" className="btn" onClick={more}>
                  {say("web.history-page.show-older-changes")}
                </button>
              </div>
            )}
          </section>
        </>
      )}
    </>
  );
}

/** What was just done, or why it could not be. Also said aloud by the frame. */
function Notice() {
  const said = useWorkshop((w) => w.said);
  const notice = useHistoryTop((h) => h.notice);
  return said === "" || (said !== notice && !said.startsWith("Taken back")) ? null : <p className="line">{said}</p>;
}

function ChangeLine({ build, change }: { readonly build: string; readonly change: ToldChange }) {
  // What came in new has nothing to be compared with; its name stands in the heading.
  const compared = change.documents.filter((d) => d.difference.kind !== "new");
  const taken = change.state === "taken-back";
  return (
    <li className={taken ? "taken" : undefined}>
      <span className="no">{change.change}</span>
      <div>
        <h3>{changeWords(change)}</h3>
        <p className="cap">
          {moment(change.at)}
          {change.who === null ? "" : `, ${change.who}`}
          {taken ? say("web.history-page.taken-back") : ""}
        </p>
        <DifferenceList documents={compared} named={change.documents.length > 1} />
      </div>
      {change.canTakeBack ? (
        <button type="button" className="btn" onClick={() => void takeBack(build, change.change)}>
          {say("web.history-page.take-this-back")}
          <span className="hide">
            {say("web.history-page.change-2")}
            {change.change}
          </span>
        </button>
      ) : null}
    </li>
  );
}
