/** Which builds are in this workshop? The first page: one line each. */
import { useCallback, useEffect, useState } from "react";
import { PageTitle } from "../parts/sheet-frame.js";
import { type BuildLine, type Loaded, loadBuilds } from "../state/api.js";
import { linkTo } from "../state/route.js";
import { capital } from "../state/words.js";

export function BuildsPage() {
  const [builds, setBuilds] = useState<Loaded<readonly BuildLine[]>>();
  const ask = useCallback(() => void loadBuilds().then(setBuilds), []);
  useEffect(ask, [ask]);
  return (
    <>
      <div className="pagehead">
        <div>
          <PageTitle>Builds in this workshop</PageTitle>
          <p>
            An old steel bicycle becomes a wanted one. Each build opens with its twenty questions, what could hurt
            somebody first, and one next step for each.
          </p>
        </div>
      </div>
      {builds === undefined ? null : builds.kind === "loaded" ? (
        builds.value.length === 0 ? (
          <p className="words">
            There is no build here yet. Put in a file with a document of kind build, as in the demo: in the terminal,
            coldset import and the name of the file.
          </p>
        ) : (
          <ul className="list">
            {builds.value.map((b) => (
              <li key={b.id}>
                <a href={linkTo.ask(b.id)}>
                  {capital(b.id)} →<small>{b.title}</small>
                </a>
              </li>
            ))}
          </ul>
        )
      ) : (
        <section className="trouble" role="alert">
          <h2>The workshop's server does not answer</h2>
          <p>
            Nothing you entered is lost: what was saved is on its disk, what waits is in this browser.
            {builds.kind === "failed" ? ` Reference: ${builds.reference}.` : ""}
          </p>
          <div className="acts">
            <button type="button" className="btn" onClick={ask}>
              Ask again
            </button>
          </div>
        </section>
      )}
      <section>
        <h2 className="sec">How a build goes</h2>
        <ul className="way">
          {STATIONS.map(([name, words]) => (
            <li key={name}>
              <b>{name}</b>
              <span>{words}</span>
            </li>
          ))}
        </ul>
        <p className="words">
          Your figures stay on this machine. Nothing is corrected for you, and no gate opens by itself.
        </p>
      </section>
    </>
  );
}

const STATIONS = [
  ["Ask", "The twenty questions with today's answers: what fits, what is over, what has to be measured first."],
  ["Measure", "Write what the tape says, in any unit. The readings check each other, and a slip is named."],
  ["Fit", "Every place where two parts meet, with the numbers that decide it and what would make it fit."],
  ["Do", "The evenings in their order, the waits, the gates that somebody signs, and what to buy."],
] as const;
