/** What stands round every page? The sheet's border with the stations of the job, the light, and the title block. */

import { STANDING_TEXT } from "@coldset/core/safety";
import { say } from "@coldset/core/texts";
import { type ReactNode, useEffect, useRef } from "react";
import { linkTo } from "../state/route.js";
import { type Light, setLight, useSettings } from "../state/settings.js";
import { HealthLine } from "./health-line.js";
import { HatchDefs } from "./residual-bar.js";
import { SettingsLine } from "./settings-line.js";

export type Station = "ask" | "measure" | "fit" | "do";
export const STATION_NAMES: Readonly<Record<Station, string>> = {
  ask: say("web.sheet-frame.ask"),
  measure: say("web.sheet-frame.measure"),
  fit: say("web.sheet-frame.fit"),
  do: say("web.sheet-frame.do"),
};
const STATIONS = ["ask", "measure", "fit", "do"] as const;

const WORKSHOP = [
  { name: say("web.sheet-frame.builds"), href: "/" },
  { name: say("web.sheet-frame.a-new-build"), href: "/new" },
] as const;

export interface FrameProps {
  readonly title: string;
  readonly sheet: string;
  readonly build?: string;
  readonly job?: string;
  readonly revision?: string;
  readonly station?: Station;
  /** Which page of the workshop this is, where it is none of a build. */
  readonly here?: "/" | "/new";
  readonly said?: string;
  readonly children: ReactNode;
}

export function SheetFrame(props: FrameProps) {
  const light = useSettings((s) => s.light);
  const { build } = props;
  useEffect(() => {
    document.title = say("web.sheet-frame.coldset", { title: props.title });
  }, [props.title]);
  return (
    <>
      <HatchDefs />
      <a className="skip" href="#main">
        {say("web.sheet-frame.skip-to-the-sheet")}
      </a>
      <div className="sheet">
        <div className="frame">
          <header className="zones">
            <a className="name" href="/">
              {say("web.sheet-frame.coldset-2")}
            </a>
            {build === undefined ? (
              <nav aria-label={say("web.sheet-frame.workshop")}>
                <ul>
                  {WORKSHOP.map((s) => (
                    <li key={s.name}>
                      <a href={s.href} aria-current={props.here === s.href ? "page" : undefined}>
                        {s.name}
                      </a>
                    </li>
                  ))}
                </ul>
              </nav>
            ) : (
              <nav aria-label={say("web.sheet-frame.stations")}>
                <ul>
                  {STATIONS.map((s) => (
                    <li key={s}>
                      <a href={linkTo[s](build)} aria-current={props.station === s ? "page" : undefined}>
                        {STATION_NAMES[s]}
                      </a>
                    </li>
                  ))}
                </ul>
              </nav>
            )}
            <label className="lamp">
              <span className="word">{say("web.sheet-frame.light")}</span>
              <select
                aria-label={say("web.sheet-frame.light")}
                value={light}
                onChange={(event) => setLight(event.currentTarget.value as Light)}
              >
                <option value="device">{say("web.sheet-frame.as-the-device")}</option>
                <option value="day">{say("web.sheet-frame.day")}</option>
                <option value="dim">{say("web.sheet-frame.dim-shop")}</option>
              </select>
            </label>
          </header>
          <main id="main" tabIndex={-1}>
            <HealthLine />
            {props.children}
            {build === undefined ? null : (
              <p className="links">
                <a className="btn" href={linkTo.history(build)}>
                  {say("web.sheet-frame.history")}
                </a>
              </p>
            )}
            <SettingsLine single={build !== undefined} />
          </main>
          <p className="hide" role="status" aria-live="polite">
            {props.said ?? ""}
          </p>
          <footer className="block">
            <p className="law">{STANDING_TEXT}</p>
            <p>
              {say("web.sheet-frame.job")}
              <b>{props.job ?? say("web.sheet-frame.all")}</b>
            </p>
            <p>
              {say("web.sheet-frame.sheet")}
              <b>{props.sheet}</b>
            </p>
            <p>
              {props.revision === undefined ? say("web.sheet-frame.kept") : say("web.sheet-frame.revision")}
              <b>{props.revision ?? say("web.sheet-frame.on-this-machine")}</b>
            </p>
          </footer>
        </div>
      </div>
    </>
  );
}

/** The heading that takes the focus when a page is opened, so that a screen reader starts there. */
export function PageTitle({ children, focus = true }: { readonly children: ReactNode; readonly focus?: boolean }) {
  const ref = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (focus && firstPage.done) ref.current?.focus({ preventScroll: true });
    firstPage.done = true;
  }, [focus]);
  return (
    <h1 ref={ref} tabIndex={-1}>
      {children}
    </h1>
  );
}
const firstPage = { done: false };
