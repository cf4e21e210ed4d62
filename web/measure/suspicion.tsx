/** Which reading is the suspect, what would explain it, and what settles it? Nothing is corrected for anybody. */
import { type Reckoning, showNumber } from "@coldset/core/questions";
import { NextLink } from "../parts/next-link.js";
import { Verdicts } from "../parts/verdict.js";
import { capital } from "../state/words.js";

export function Suspicion({ r }: { readonly r: Reckoning }) {
  const row = r.board.find((b) => b.n === 13);
  const { blunder } = r.geometry;
  if (row === undefined) return null;
  if (!row.open)
    return (
      <section className="wrong">
        <div>
          <h2>{row.answer}</h2>
          {row.working.words.map((w) => (
            <p key={w}>{w}</p>
          ))}
        </div>
        <div>
          <Verdicts verdict={row.verdict} about={row.about} />
          {row.working.notChecked.length === 0 ? null : (
            <>
              <h3 className="sub">Not checked</h3>
              <ul className="bullets">
                {row.working.notChecked.map((w) => (
                  <li key={w}>{w}</li>
                ))}
              </ul>
            </>
          )}
        </div>
      </section>
    );
  const explanations = blunder.kind === "answered" ? blunder.value.explanations.slice(0, 6) : [];
  return (
    <section className="wrong">
      <div>
        <h2>{row.answer}</h2>
        {row.working.words.map((w) => (
          <p key={w}>{w}</p>
        ))}
        {row.next === undefined ? null : <NextLink step={row.next} build={r.resolved.build.id} n={13} long />}
      </div>
      {explanations.length === 0 ? null : (
        <div>
          <h3 className="L">What would explain it</h3>
          <ol className="try">
            {explanations.map((e, i) => {
              const left = e.largest_residual_after;
              const words = capital(e.sentence.replace(/^[^:]*: /, ""));
              return (
                <li key={e.sentence} className={i === 0 ? "hit" : undefined}>
                  <span>{i === 0 && e.explains ? <span className="swipe">{words}</span> : words}</span>
                  <b>{left === null ? "nothing left to check it" : `leaves ${showNumber(Math.abs(left.value), 1)}`}</b>
                </li>
              );
            })}
          </ol>
          <p className="cap">
            The largest residual in spreads after the correction; the limit is 3.29. Nothing is corrected for you.
          </p>
        </div>
      )}
    </section>
  );
}
