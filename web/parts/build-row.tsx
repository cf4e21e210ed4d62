/** How does one build stand in the list? Its name, what it becomes, where it stands in words, and when it was last touched. */
import { say } from "@coldset/core/texts";
import { useState } from "react";
import type { BuildLine } from "../state/api.js";
import { changeBuildLine } from "../state/new-build-calls.js";
import { linkTo } from "../state/route.js";
import { capital } from "../state/words.js";

export function BuildRow(props: { readonly line: BuildLine; readonly changed: (words: string) => void }) {
  const { line: b, changed } = props;
  const [renaming, setRenaming] = useState<string>();
  const name = capital(b.id);
  const save = async (key: "title" | "put_away", value: string | boolean, words: string) => {
    changed((await changeBuildLine(b.id, b.revision, key, value)) ?? words);
    setRenaming(undefined);
  };
  return (
    <li>
      <a href={linkTo.ask(b.id)}>
        {name} →<small>{b.title}</small>
      </a>
      <p className="stands">
        {b.standing === undefined ? (
          <span>{say("web.build-row.its-documents-cannot-be-read-together")}</span>
        ) : (
          <>
            {b.standing.refused.length === 0 ? null : (
              <span className="plateword">
                {b.standing.refused.length === 1
                  ? say("web.build-row.refused")
                  : say("web.build-row.refusals", { refusedCount: b.standing.refused.length })}{" "}
                {b.standing.refused.map((r) => r.split(",")[0]).join(", ")}
              </span>
            )}
            <span>
              {questions(b.standing.open)}
              {say("web.build-row.open")}
              {b.standing.settled}
              {say("web.build-row.settled")}
              {b.standing.notChecked}
              {say("web.build-row.not-checked-yet")}
            </span>
            <span>
              {say("web.build-row.to-become")}
              {b.standing.becomes}.
            </span>
          </>
        )}
        <span>
          {say("web.build-row.last-touched")}
          {dayWords(b.updatedAt)}.
        </span>
      </p>
      {renaming === undefined ? (
        <p className="acts small">
          <button
            type="button"
            className="btn"
            onClick={() => setRenaming(b.title)}
            aria-label={say("web.build-row.rename", { name })}
          >
            {say("web.build-row.rename-2")}
          </button>
          <button
            type="button"
            className="btn"
            aria-label={
              b.putAway ? say("web.build-row.take-out-again", { name }) : say("web.build-row.put-away", { name })
            }
            onClick={() =>
              void save(
                "put_away",
                !b.putAway,
                b.putAway
                  ? say("web.build-row.is-in-the-list-again", { name })
                  : say("web.build-row.is-put-away-and-kept", { name }),
              )
            }
          >
            {b.putAway ? say("web.build-row.take-out-again-2") : say("web.build-row.put-away-2")}
          </button>
        </p>
      ) : (
        <form
          className="rename"
          onSubmit={(event) => {
            event.preventDefault();
            if (renaming.trim() !== "")
              void save("title", renaming.trim(), say("web.build-row.has-a-new-title", { name }));
          }}
        >
          <div className="field">
            <label htmlFor={`title-${b.id}`}>
              {say("web.build-row.title-of")}
              {name}
            </label>
            <div className="box">
              <input
                id={`title-${b.id}`}
                value={renaming}
                maxLength={200}
                onChange={(event) => setRenaming(event.currentTarget.value)}
              />
            </div>
          </div>
          <p className="acts small">
            <button type="submit" className="btn">
              {say("web.build-row.save-the-title")}
            </button>
            <button type="button" className="btn" onClick={() => setRenaming(undefined)}>
              {say("web.build-row.leave-it")}
            </button>
          </p>
        </form>
      )}
    </li>
  );
}

const questions = (n: number) => `${n} ${n === 1 ? say("web.build-row.question") : say("web.build-row.questions")}`;

/** "29 November 2026, 18:24", in this device's own time. */
function dayWords(iso: string): string {
  const at = new Date(iso);
  return Number.isNaN(at.getTime())
    ? say("web.build-row.on-a-day-that-is-not")
    : new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeStyle: "short" }).format(at);
}
