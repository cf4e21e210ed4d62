/** Every joint of the build, grouped by what it says: what will not fit first, what fits last. */

import type { JointAnswer } from "@coldset/core/fit";
import type { JointVerdict } from "@coldset/core/quantity";
import { portWords, type Reckoning } from "@coldset/core/questions";
import type { FiredRule } from "@coldset/core/safety";
import { say as sayText } from "@coldset/core/texts";
import type { Place } from "@coldset/core/workshop";
import { useState } from "react";
import { Cautions } from "../parts/cautions.js";
import { EditBar } from "../parts/edit-line.js";
import { JointView } from "../parts/joint-view.js";
import { PageTitle } from "../parts/sheet-frame.js";
import { Verdict } from "../parts/verdict.js";
import type { Moved } from "../state/moved-rows.js";
import { useNumbers } from "../state/numbers.js";
import { capital, placeWords } from "../state/words.js";
import { useWorkshop } from "../state/workshop.js";

const GROUPS: readonly { readonly verdict: JointVerdict; readonly title: string }[] = [
  { verdict: "will not fit", title: sayText("web.fit-page.will-not-fit") },
  { verdict: "measure first", title: sayText("web.fit-page.measure-first") },
  { verdict: "fits with work", title: sayText("web.fit-page.fits-with-work") },
  { verdict: "fits", title: sayText("web.fit-page.fits") },
  { verdict: "not checked yet", title: sayText("web.fit-page.not-checked-yet") },
];

export function FitPage({ r, moved }: { readonly r: Reckoning; readonly moved: ReadonlyMap<number, Moved> }) {
  const build = r.resolved.build.id;
  const groups = GROUPS.map((g) => ({ ...g, joints: r.joints.joints.filter((j) => j.verdict === g.verdict) }));
  const said = groups.filter((g) => g.joints.length > 0).map((g) => counted(g.joints.length, g.verdict));
  return (
    <>
      <div className="pagehead">
        <div>
          <PageTitle>{sayText("web.donor-fields.where-parts-meet")}</PageTitle>
          <p>
            {r.joints.joints.length}
            {sayText("web.fit-page.joints")}
            {said.join(", ")}
            {sayText("web.fit-page.each-is-judged-at-the-worst")}
          </p>
        </div>
      </div>
      <EditBar moved={moved} board={r.board} />
      <Cautions rules={r.rules} />
      <Choose r={r} />
      {groups.map((g) =>
        g.joints.length === 0 ? null : (
          <section key={g.verdict}>
            <h2 className="sec">{g.title}</h2>
            {g.verdict === "not checked yet" ? (
              <NotChecked joints={g.joints} />
            ) : (
              g.joints.map((j) => <JointView key={j.id} joint={j} build={build} folded={g.verdict === "fits"} />)
            )}
          </section>
        ),
      )}
    </>
  );
}

/** Parts that are weighed against each other for one place, and which of them is chosen. */
function Choose({ r }: { readonly r: Reckoning }) {
  const edit = useWorkshop((w) => w.edit);
  const say = useWorkshop((w) => w.say);
  const numbers = useNumbers();
  const [told, setTold] = useState<FiredRule>();
  const { build, parts } = r.resolved;
  const places = Object.entries(build.consider ?? {}) as [Place, readonly string[]][];
  if (places.length === 0) return null;
  return (
    <section id="choose">
      <h2 className="sec">{sayText("web.fit-page.choose")}</h2>
      {places.map(([place, ids]) => {
        const chosen = build.chosen[place];
        const all = [...new Set([...(chosen === undefined ? [] : [chosen]), ...ids])];
        return (
          <fieldset className="choice" key={place}>
            <legend>{capital(placeWords(place))}</legend>
            <div className="acts">
              {all.map((id) => {
                const part = parts.get(id);
                const refused = r.rules.find((f) => f.level === "refuse" && f.about === id);
                return (
                  <button
                    key={id}
                    type="button"
                    className="btn"
                    aria-pressed={id === chosen}
                    aria-disabled={refused !== undefined && id !== chosen}
                    onClick={() => {
                      if (refused !== undefined && id !== chosen) {
                        setTold(refused);
                        say(sayText("web.fit-page.refused-by-rule", { rule: refused.rule, here: refused.here }));
                        return;
                      }
                      edit({
                        kind: "build",
                        id: build.id,
                        path: ["chosen", place],
                        value: id === chosen ? undefined : id,
                        words: placeWords(place),
                      });
                    }}
                  >
                    <span>
                      {id} <small>{part === undefined ? "" : numbers.say(short(portWords(part)))}</small>
                    </span>
                    {refused === undefined ? null : <Verdict verdict="refuse" about={refused.rule} />}
                  </button>
                );
              })}
            </div>
            {told !== undefined && all.includes(told.about) ? (
              <p className="bad">
                {told.about}
                {sayText("web.fit-page.is-refused-by-rule")}
                {told.rule}: {told.here.replace(/\.$/, "")}
                {sayText("web.fit-page.instead")}
                {told.insteadDo}
              </p>
            ) : null}
          </fieldset>
        );
      })}
    </section>
  );
}

/** A reason that many share is said once; their names stand below it. */
function NotChecked({ joints }: { readonly joints: readonly JointAnswer[] }) {
  const reasons = new Map<string, JointAnswer[]>();
  for (const j of joints) reasons.set(j.reason, [...(reasons.get(j.reason) ?? []), j]);
  return [...reasons].map(([reason, same]) => (
    <div key={reason}>
      <p className="words">{reason}</p>
      <ul className="names">
        {same.map((j) => (
          <li key={j.id} id={j.id}>
            <span className="soft">{j.id}</span> {capital(j.title)}
          </li>
        ))}
      </ul>
    </div>
  ));
}

/** "2 to measure first", "26 that fit". */
function counted(n: number, verdict: JointVerdict): string {
  const one = n === 1;
  switch (verdict) {
    case "measure first":
      return sayText("web.fit-page.to-measure-first", { count: n });
    case "fits":
      return sayText("web.fit-page.that", {
        count: n,
        fits: one ? sayText("web.fit-page.fits-word") : sayText("web.fit-page.fit"),
      });
    case "fits with work":
      return sayText("web.fit-page.that-with-work", {
        count: n,
        fits: one ? sayText("web.fit-page.fits-word") : sayText("web.fit-page.fit"),
      });
    case "will not fit":
      return sayText("web.fit-page.that-will-not-fit", { count: n });
    default:
      return `${n} ${verdict}`;
  }
}

const short = (text: string) => text.split(", ").slice(0, 3).join(", ");
