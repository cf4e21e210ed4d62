/** Which builds are in this workshop? The first page: one line each. */
import { useEffect, useState } from "react";
import { PageTitle } from "../parts/sheet-frame.js";
import { type BuildLine, type Loaded, loadBuilds } from "../state/api.js";
import { linkTo } from "../state/route.js";
import { capital } from "../state/words.js";

export function BuildsPage() {
  const [builds, setBuilds] = useState<Loaded<readonly BuildLine[]>>();
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let gone = false;
    void loadBuilds().then((found) => {
      if (!gone) setBuilds(found);
    });
    return () => {
      gone = true;
    };
    // Asked again at every press of the button.
  }, []);
  return (
    <>
      <div className="pagehead">
        <div>
          <PageTitle>Builds in this workshop</PageTitle>
          <p>Each opens with its questions, what could hurt somebody first.</p>
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
                  {capital(b.id)}
                  <small>{b.title}</small>
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
            <button type="button" className="btn" onClick={() => setTries(tries + 1)}>
              Ask again
            </button>
          </div>
        </section>
      )}
    </>
  );
}
