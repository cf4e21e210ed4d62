/** Which reading is the suspect, what would explain it, and what settles it? Nothing is corrected for anybody. */

import type { Reckoning } from "@coldset/core/questions";
import { say as sayText } from "@coldset/core/texts";
import { NextLink } from "../parts/next-link.js";
import { Said } from "../parts/said.js";
import { Verdicts } from "../parts/verdict.js";
import { useNumbers } from "../state/numbers.js";
import { capital } from "../state/words.js";

export function Suspicion({ r }: { readonly r: Reckoning }) {
  const row = r.board.find((b) => b.n === 13);
  const numbers = useNumbers();
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
              <h3 className="sub">{sayText("web.suspicion.not-checked")}</h3>
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
          <h3 className="L">{sayText("asked.mis-measured.what-would-explain-it")}</h3>
          <ol className="try">
            {explanations.map((e, i) => {
              const left = e.largest_residual_after;
              const words = numbers.say(capital(e.sentence.replace(/^[^:]*: /, "")));
              return (
                <li key={e.sentence} className={i === 0 ? "hit" : undefined}>
                  <span>{i === 0 && e.explains ? <span className="swipe">{words}</span> : words}</span>
                  <b>
                    {left === null
                      ? sayText("web.suspicion.nothing-left-to-check-it")
                      : sayText("web.suspicion.leaves", { left: numbers.number(Math.abs(left.value), 1) })}
                  </b>
                </li>
              );
            })}
          </ol>
          <p className="cap">
            <Said text={sayText("web.suspicion.the-largest-residual")} />
            {sayText("web.suspicion.nothing-is-corrected-for-you")}
          </p>
        </div>
      )}
    </section>
  );
}
