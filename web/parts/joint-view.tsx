/** What does one joint say? Verdict, the numbers that decided it with their limits, remedies, and what to measure next. */

import type { DecidingNumber, JointAnswer, RemedyOffer } from "@coldset/core/fit";
import { say } from "@coldset/core/texts";
import { useNumbers } from "../state/numbers.js";
import { linkTo } from "../state/route.js";
import { capital, capitalWord } from "../state/words.js";
import { useWorkshop } from "../state/workshop.js";
import { valueText } from "./figure.js";
import { NextLink } from "./next-link.js";
import { Verdicts } from "./verdict.js";

interface JointProps {
  readonly joint: JointAnswer;
  readonly build: string;
  /** What fits is one line; its numbers are behind it. */
  readonly folded?: boolean;
}

export function JointView({ joint, build, folded = false }: JointProps) {
  const more =
    joint.rules.length + joint.numbers.length + joint.remedies.length > 0 || joint.next !== undefined ? (
      <Behind joint={joint} build={build} />
    ) : null;
  const verdicts = (
    <Verdicts verdict={joint.verdict} also={joint.rules.map((x) => ({ verdict: x.level, about: x.rule }))} />
  );
  if (folded) {
    const line = (
      <>
        <span className="no">{joint.id}</span>
        <div>
          <h3>{capital(joint.title)}</h3> <span className="why">{joint.reason}</span>
        </div>
        {verdicts}
      </>
    );
    return more === null ? (
      <article className="line-joint" id={joint.id}>
        <div className="line-of">{line}</div>
      </article>
    ) : (
      <article className="line-joint" id={joint.id}>
        <details>
          <summary className="line-of">{line}</summary>
          <div className="behind">{more}</div>
        </details>
      </article>
    );
  }
  return (
    <article className="joint" id={joint.id}>
      <p className="no">{joint.id}</p>
      <div>
        <h3>{capital(joint.title)}</h3>
        <p className="why">{joint.reason}</p>
        {verdicts}
        {more}
      </div>
    </article>
  );
}

/** The rules, the numbers with their limits, the next step and the remedies of a joint. */
function Behind({ joint, build }: { readonly joint: JointAnswer; readonly build: string }) {
  return (
    <>
      {joint.rules.map((x) => (
        <p className="soft" key={`${x.rule} ${x.why}`}>
          {say("web.cautions.rule")}
          {x.rule}: {x.why}
        </p>
      ))}
      {joint.numbers.length === 0 ? null : (
        <ul className="nums">
          {joint.numbers.map((n) => (
            <NumberLine key={n.name} n={n} />
          ))}
        </ul>
      )}
      {joint.next === undefined ? null : <NextLink step={joint.next} build={build} long />}
      {joint.remedies.length === 0 ? null : <Remedies joint={joint} build={build} />}
    </>
  );
}

const UNITS: Readonly<Record<DecidingNumber["unit"], string>> = {
  mm: "mm",
  deg: "°",
  N: "N",
  count: "",
  ratio: "",
  kg: "kg",
  bar: "bar",
};

function NumberLine({ n }: { readonly n: DecidingNumber }) {
  const numbers = useNumbers();
  const half = n.band === undefined ? undefined : (n.band.high - n.band.low) / 2;
  const usual = n.unit === "N" || n.unit === "count" ? 0 : Math.abs(n.value) < 2 ? 2 : 1;
  // An exact whole number keeps no zeros behind its point; a narrow band is not rounded away.
  const exact = half === undefined && (Number.isInteger(n.value) || Math.abs(n.value) < 1e-9);
  const decimals = exact ? 0 : half !== undefined && half > 0 && half < 0.05 ? 2 : usual;
  const v = { value: n.value, half, unit: UNITS[n.unit], decimals };
  const entered = half === undefined && n.unit !== "count" && n.unit !== "ratio";
  const notes = [
    n.limit === undefined
      ? ""
      : `${n.limit.kind === "hard" ? say("web.joint-view.limit") : say("web.joint-view.wanted")}: ${numbers.say(n.limit.words, { bareUnit: v.unit })}`,
    entered ? (n.limit === undefined ? say("web.joint-view.as-entered") : say("web.joint-view.as-entered-2")) : "",
  ].filter((w) => w !== "");
  return (
    <li>
      <span>{capitalWord(n.name)}</span>
      <b className="num">
        {valueText(v, numbers)}
        {numbers.unit(v.unit, 0).unit === v.unit ? null : (
          <small className="soft metric"> ({valueText(v, numbers.metric)})</small>
        )}
      </b>
      <span>{notes.join("; ")}</span>
    </li>
  );
}

function Remedies({ joint, build }: { readonly joint: JointAnswer; readonly build: string }) {
  const taken = useWorkshop((w) => w.reckoning?.resolved.build.remedies?.find((t) => t.joint === joint.id)?.remedy);
  const firstOffered = joint.remedies.find((o) => o.refused === undefined && o.replacesPart !== true);
  return (
    <>
      <h4 className="hide">{say("web.joint-view.what-would-close-it")}</h4>
      <ul className="rem">
        {joint.remedies.map((offer) => (
          <Remedy
            key={offer.id}
            joint={joint.id}
            build={build}
            offer={offer}
            taken={taken === offer.id}
            first={taken === undefined && offer === firstOffered}
          />
        ))}
      </ul>
    </>
  );
}

const RISKS = {
  L: say("web.joint-view.small"),
  M: say("web.joint-view.middling"),
  H: say("web.joint-view.great"),
} as const;

function Remedy(props: {
  readonly joint: string;
  readonly build: string;
  readonly offer: RemedyOffer;
  readonly taken: boolean;
  readonly first: boolean;
}) {
  const { offer } = props;
  const numbers = useNumbers();
  const edit = useWorkshop((w) => w.edit);
  const doc = useWorkshop((w) => w.reckoning?.resolved.build);
  const take = () => {
    if (doc === undefined) return;
    const rest = (doc.remedies ?? []).filter((t) => t.joint !== props.joint);
    edit({
      kind: "build",
      id: doc.id,
      path: ["remedies"],
      value: props.taken ? rest : [...rest, { joint: props.joint, remedy: offer.id }],
      words: say("web.joint-view.remedy-at", { joint: props.joint }),
    });
  };
  const where = offer.here
    ? say("web.joint-view.in-this-shop", {
        conditionsCount: offer.conditions.length > 0 ? `: ${offer.conditions.join("; ")}` : "",
      })
    : say("web.joint-view.ask-a-builder", {
        missingCount:
          offer.missing.length > 0
            ? say("web.joint-view.no-here", { missing: offer.missing.join(", ").replaceAll("_", " ") })
            : "",
      });
  return (
    <li className={props.first ? "best" : undefined}>
      <p className="nm">
        {offer.what}
        <small>{where}</small>
      </p>
      <p className="k">
        {numbers.number(offer.hours, offer.hours % 1 === 0 ? 0 : 1)} h<small>{say("web.joint-view.hands")}</small>
      </p>
      <p className="k">
        {numbers.number(offer.cost, offer.cost % 1 === 0 ? 0 : 2)}
        <small>{say("web.joint-view.money")}</small>
      </p>
      <p className="k">
        {offer.reversible ? say("web.joint-view.can-be-undone") : say("web.joint-view.cannot-be-undone")}
        <small>
          {say("web.joint-view.risk")}
          {RISKS[offer.risk]}
        </small>
      </p>
      <p className="side">
        {offer.sideEffects
          .map(
            (s) =>
              `${s.words.replace(/\.$/, "")}${s.joints.length > 0 ? say("web.joint-view.look-again-at", { joints: s.joints.join(", ") }) : ""}.`,
          )
          .join(" ")}
        {offer.rules.length > 0 ? say("web.joint-view.brings-rule", { rules: offer.rules.join(", ") }) : ""}
        {offer.massG === 0 ? "" : ` ${offer.massG > 0 ? "+" : "−"}${Math.abs(offer.massG)} g.`}
      </p>
      {offer.refused !== undefined ? (
        <p className="side">
          <b>{say("web.joint-view.refused")}</b> {offer.refused}
        </p>
      ) : offer.replacesPart === true ? (
        <p className="side">
          {say("web.joint-view.another-part")}
          <a href={`${linkTo.fit(props.build)}#choose`}>{say("web.joint-view.choose-it-on-the-fit-sheet")}</a>.
        </p>
      ) : (
        <button
          type="button"
          className={`btn${props.first ? " btn-mark" : ""}`}
          aria-pressed={props.taken}
          onClick={take}
        >
          {props.taken ? say("web.joint-view.taken") : say("web.joint-view.take-it")}
        </button>
      )}
    </li>
  );
}
