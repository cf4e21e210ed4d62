/**
 * Is this window cut off, does anything wait or live in this window only, and is there a newer page? One line each. Those
 * that a person must not lose from sight stay at the head of the window, above the bar of the last edit.
 */
import { say } from "@coldset/core/texts";
import type { Entry } from "../state/entry-shelf.js";
import { useHealth } from "../state/health.js";
import { capital } from "../state/words.js";
import { useWorkshop } from "../state/workshop.js";
import { Choices } from "./choices.js";
import { shown } from "./shown.js";

export function entriesWait(n: number): string {
  return `${n} ${n === 1 ? say("web.health-line.entry-waits") : say("web.health-line.entries-wait")}`;
}

export function HealthLine() {
  const { reached, said, outdated, bars } = useHealth();
  const queue = useWorkshop((w) => w.queue);
  const n = queue.waiting.length;
  return (
    <>
      <p className="hide" role="status" aria-live="polite">
        {said}
      </p>
      {reached !== false && queue.trouble?.kind === "failed" ? (
        <p className="line">
          <b>
            {say("web.health-line.the-workshop-s-records-did-not")}
            {queue.trouble.reference}).
          </b>{" "}
          {entriesWait(n)}
          {say("web.health-line.in-this-browser")}
          {goOut(n)}
          {say("web.health-line.everything-still-reckons-here")}
        </p>
      ) : null}
      <Apart entries={queue.apart} />
      {queue.unkept === 0 ? null : (
        <p className="line" role="alert">
          <b>{say("web.health-line.this-browser-has-no-room-left")}</b> {queue.unkept}
          {say("web.health-line.of-the-entries-that-wait")}{" "}
          {queue.unkept === 1 ? say("web.board-page.is") : say("web.board-page.are")}
          {say("web.health-line.in-this-window-only-leave-it")}
        </p>
      )}
      {outdated ? <p className="line">{say("web.health-line.a-newer-page-was-taken-over")}</p> : null}
      <StandLines />
      {bars === 0 ? <Choices /> : null}
    </>
  );
}

const goOut = (n: number) =>
  n === 1 ? say("web.health-line.it-goes-out-by-itself") : say("web.health-line.they-go-out-by-themselves");

/** On a narrow screen each is one short line, and only the more pressing of the two is there. */
function StandLines() {
  const reached = useHealth((h) => h.reached);
  const newer = useHealth((h) => (h.outdated ? undefined : h.newer));
  const n = useWorkshop((w) => w.queue.waiting.length);
  if (reached !== false && newer === undefined) return null;
  return (
    <div className="in-sight">
      {reached === false ? (
        <p className="line stand offline">
          <b>
            {say("web.health-line.offline")}
            {n === 0 ? say("web.health-line.nothing-waits") : entriesWait(n)}.
          </b>{" "}
          <span className="detail">
            {say("web.health-line.all-sheets-still-reckon")}
            {n === 0 ? "" : say("web.health-line.when-the-server-answers-again", { entriesGoOut: goOut(n) })}
          </span>
        </p>
      ) : null}
      {newer === undefined ? null : (
        <div className="line stand newer">
          <p>
            {say("web.health-line.a-newer-version")}
            <span className="detail">{say("web.health-line.of-this-page")}</span>
            {say("web.health-line.is-ready")}{" "}
            <span className="detail">{say("web.health-line.what-you-entered-stays")}</span>
          </p>
          <button type="button" className="btn" onClick={newer}>
            {say("web.health-line.take-it-now")}
          </button>
        </div>
      )}
    </div>
  );
}

/** Another workshop is served at this address now. What was entered for the one before is kept for it. */
function Apart({ entries }: { readonly entries: readonly Entry[] }) {
  const letGo = useWorkshop((w) => w.letGo);
  const n = entries.length;
  if (n === 0) return null;
  return (
    <section className="line apart">
      <p>
        <b>{say("web.health-line.another-workshop-is-served-at-this")}</b> {entriesWait(n)}
        {say("web.health-line.in-this-browser-for-the-one")}{" "}
        {n === 1 ? say("web.health-line.it-is") : say("web.health-line.they-are")}
        {say("web.health-line.not-put-in-here")}
        {n === 1 ? say("web.health-line.it-goes") : say("web.health-line.they-go")}
        {say("web.health-line.out-by")} {n === 1 ? say("web.health-line.itself") : say("web.health-line.themselves")}
        {say("web.health-line.when-that-one-answers-here-again")}
      </p>
      <details>
        <summary>
          {say("web.health-line.show")}
          {n === 1 ? say("web.health-line.it") : say("web.health-line.them")}
        </summary>
        <ul>
          {entries.map((e) => (
            <li key={e.key}>
              {capital(e.build)}, {e.words}: <b>{shown(e.value)}</b>{" "}
              <button type="button" className="btn" onClick={() => letGo(e.key)}>
                {say("web.choices.leave-it-out")}
              </button>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}
