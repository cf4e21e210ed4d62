/** Which builds are in this workshop, what does each become and where does it stand? The first page, and the way to a new one. */
import { say } from "@coldset/core/texts";
import { useCallback, useEffect, useState } from "react";
import { BuildRow } from "../parts/build-row.js";
import { Copies } from "../parts/copies.js";
import { PageTitle, STATION_NAMES } from "../parts/sheet-frame.js";
import { type BuildLine, type Loaded, loadBuilds } from "../state/api.js";
import { hasEntries, useNewBuild } from "../state/new-build.js";

export function BuildsPage() {
  const [builds, setBuilds] = useState<Loaded<readonly BuildLine[]>>();
  const [said, setSaid] = useState("");
  const ask = useCallback(() => void loadBuilds().then(setBuilds), []);
  useEffect(ask, [ask]);
  const begun = useNewBuild((d) => hasEntries(d.entries));
  const lines = builds?.kind === "loaded" ? builds.value : [];
  const here = lines.filter((b) => !b.putAway);
  const away = lines.filter((b) => b.putAway);
  const changed = (words: string) => {
    setSaid(words);
    ask();
  };
  return (
    <>
      <div className="pagehead">
        <div>
          <PageTitle>{say("web.builds-page.builds-in-this-workshop")}</PageTitle>
          <p>{say("web.builds-page.an-old-steel-bicycle-becomes-a")}</p>
        </div>
      </div>
      <p className="acts">
        <a className="btn btn-mark" href="/new">
          {begun ? say("web.builds-page.go-on-with-the-new-build") : say("web.builds-page.a-new-build")}
        </a>
      </p>
      <p role="status" className={said === "" ? "hide" : "line"}>
        {said}
      </p>
      {builds === undefined ? null : builds.kind === "loaded" ? (
        here.length === 0 ? (
          <p className="words">{say("web.builds-page.there-is-no-build-here-yet")}</p>
        ) : (
          <ul className="list builds">
            {here.map((b) => (
              <BuildRow key={b.id} line={b} changed={changed} />
            ))}
          </ul>
        )
      ) : (
        <section className="trouble" role="alert">
          <h2>{say("web.builds-page.the-workshop-s-server-does-not")}</h2>
          <p>
            {say("web.builds-page.nothing-you-entered-is-lost-what")}
            {builds.kind === "failed" ? say("web.builds-page.reference", { reference: builds.reference }) : ""}
          </p>
          <div className="acts">
            <button type="button" className="btn" onClick={ask}>
              {say("web.builds-page.ask-again")}
            </button>
          </div>
        </section>
      )}
      {away.length === 0 ? null : (
        <details className="away">
          <summary>
            {say("web.builds-page.put-away")}
            {away.length === 1
              ? say("web.builds-page.one-build")
              : say("web.builds-page.builds", { awayCount: away.length })}
            {say("web.builds-page.all-kept")}
          </summary>
          <ul className="list builds">
            {away.map((b) => (
              <BuildRow key={b.id} line={b} changed={changed} />
            ))}
          </ul>
        </details>
      )}
      <Copies changed={ask} />
      <section>
        <h2 className="sec">{say("web.builds-page.how-a-build-goes")}</h2>
        <ul className="way">
          {STATIONS.map(([name, words]) => (
            <li key={name}>
              <b>{name}</b>
              <span>{words}</span>
            </li>
          ))}
        </ul>
        <p className="words">{say("web.builds-page.your-figures-stay-on-this-machine")}</p>
      </section>
    </>
  );
}

const STATIONS = [
  [STATION_NAMES.ask, say("web.builds-page.the-twenty-questions-with-today-s")],
  [STATION_NAMES.measure, say("web.builds-page.write-what-the-tape-says-in")],
  [STATION_NAMES.fit, say("web.builds-page.every-place-where-two-parts-meet")],
  [STATION_NAMES.do, say("web.builds-page.the-evenings-in-their-order-the")],
] as const;
