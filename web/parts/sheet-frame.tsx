/** What stands round every page? The sheet's border with the stations of the job, the light, and the title block. */
import { STANDING_TEXT } from "@coldset/core/safety";
import { type ReactNode, useEffect, useRef } from "react";
import { linkTo } from "../state/route.js";
import { type Light, setKeys, setLight, useSettings } from "../state/settings.js";
import { HatchDefs } from "./residual-bar.js";

export type Station = "Ask" | "Measure" | "Fit" | "Do";
const STATIONS: readonly { readonly name: Station; readonly href: (build: string) => string }[] = [
  { name: "Ask", href: linkTo.ask },
  { name: "Measure", href: linkTo.measure },
  { name: "Fit", href: linkTo.fit },
  { name: "Do", href: linkTo.do },
];

export interface FrameProps {
  readonly title: string;
  readonly sheet: string;
  readonly build?: string;
  readonly job?: string;
  readonly revision?: string;
  readonly station?: Station;
  readonly said?: string;
  readonly children: ReactNode;
}

export function SheetFrame(props: FrameProps) {
  const { light, keys } = useSettings();
  const { build } = props;
  useEffect(() => {
    document.title = `${props.title} · Coldset`;
  }, [props.title]);
  return (
    <>
      <HatchDefs />
      <a className="skip" href="#main">
        Skip to the sheet
      </a>
      <div className="sheet">
        <div className="frame">
          <header className="zones">
            <a className="name" href="/">
              Coldset
            </a>
            {build === undefined ? (
              <span className="fill" />
            ) : (
              <nav aria-label="Stations">
                <ul>
                  {STATIONS.map((s) => (
                    <li key={s.name}>
                      <a href={s.href(build)} aria-current={props.station === s.name ? "page" : undefined}>
                        {s.name}
                      </a>
                    </li>
                  ))}
                </ul>
              </nav>
            )}
            <label className="lamp">
              <span className="word">Light</span>
              <select
                aria-label="Light"
                value={light}
                onChange={(event) => setLight(event.currentTarget.value as Light)}
              >
                <option value="device">as the device</option>
                <option value="day">day</option>
                <option value="dim">dim shop</option>
              </select>
            </label>
          </header>
          <main id="main" tabIndex={-1}>
            {props.children}
            {build === undefined ? null : (
              <p className="foot-keys">
                <span>
                  Single keys: 1 to 20 open a question, n the next step, u takes back. They are off inside fields.
                </span>
                <button type="button" className="btn" aria-pressed={keys} onClick={() => setKeys(!keys)}>
                  {keys ? "Keys are on" : "Keys are off"}
                </button>
              </p>
            )}
          </main>
          <p className="hide" role="status" aria-live="polite">
            {props.said ?? ""}
          </p>
          <footer className="block">
            <p className="law">{STANDING_TEXT}</p>
            <p>
              job<b>{props.job ?? "all"}</b>
            </p>
            <p>
              sheet<b>{props.sheet}</b>
            </p>
            <p>
              {props.revision === undefined ? "kept" : "revision"}
              <b>{props.revision ?? "on this machine"}</b>
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
