/** What does one joint say? Verdict, the numbers that decided it with their limits, remedies, and what to measure next. */
import type { DecidingNumber, JointAnswer, RemedyOffer } from "@coldset/core/fit";
import { showNumber } from "@coldset/core/questions";
import { linkTo } from "../state/route.js";
import { capital, capitalWord } from "../state/words.js";
import { useWorkshop } from "../state/workshop.js";
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
          Rule {x.rule}: {x.why}
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
  mm: " mm",
  deg: "°",
  N: " N",
  count: "",
  ratio: "",
  kg: " kg",
  bar: " bar",
};

function NumberLine({ n }: { readonly n: DecidingNumber }) {
  const half = n.band === undefined ? undefined : (n.band.high - n.band.low) / 2;
  const usual = n.unit === "N" || n.unit === "count" ? 0 : Math.abs(n.value) < 2 ? 2 : 1;
  // An exact whole number keeps no zeros behind its point; a narrow band is not rounded away.
  const exact = half === undefined && (Number.isInteger(n.value) || Math.abs(n.value) < 1e-9);
  const decimals = exact ? 0 : half !== undefined && half > 0 && half < 0.05 ? 2 : usual;
  const entered = half === undefined && n.unit !== "count" && n.unit !== "ratio";
  const notes = [
    n.limit === undefined ? "" : `${n.limit.kind === "hard" ? "Limit" : "Wanted"}: ${n.limit.words}`,
    entered ? (n.limit === undefined ? "As entered" : "as entered") : "",
  ].filter((w) => w !== "");
  return (
    <li>
      <span>{capitalWord(n.name)}</span>
      <b className="num">
        {showNumber(n.value, decimals)}
        {half === undefined ? "" : ` ± ${showNumber(half, Math.max(decimals, 1))}`}
        {UNITS[n.unit]}
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
      <h4 className="hide">What would close it</h4>
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

const RISKS = { L: "small", M: "middling", H: "great" } as const;

function Remedy(props: {
  readonly joint: string;
  readonly build: string;
  readonly offer: RemedyOffer;
  readonly taken: boolean;
  readonly first: boolean;
}) {
  const { offer } = props;
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
      words: `remedy at ${props.joint}`,
    });
  };
  const where = offer.here
    ? `in this shop${offer.conditions.length > 0 ? `: ${offer.conditions.join("; ")}` : ""}`
    : `ask a builder${offer.missing.length > 0 ? `: no ${offer.missing.join(", ").replaceAll("_", " ")} here` : ""}`;
  return (
    <li className={props.first ? "best" : undefined}>
      <p className="nm">
        {offer.what}
        <small>{where}</small>
      </p>
      <p className="k">
        {showNumber(offer.hours, offer.hours % 1 === 0 ? 0 : 1)} h<small>hands</small>
      </p>
      <p className="k">
        {showNumber(offer.cost, offer.cost % 1 === 0 ? 0 : 2)}
        <small>money</small>
      </p>
      <p className="k">
        {offer.reversible ? "can be undone" : "cannot be undone"}
        <small>risk {RISKS[offer.risk]}</small>
      </p>
      <p className="side">
        {offer.sideEffects
          .map(
            (s) =>
              `${s.words.replace(/\.$/, "")}${s.joints.length > 0 ? ` (look again at ${s.joints.join(", ")})` : ""}.`,
          )
          .join(" ")}
        {offer.rules.length > 0 ? ` Brings rule ${offer.rules.join(", ")}.` : ""}
        {offer.massG === 0 ? "" : ` ${offer.massG > 0 ? "+" : "−"}${Math.abs(offer.massG)} g.`}
      </p>
      {offer.refused !== undefined ? (
        <p className="side">
          <b>Refused:</b> {offer.refused}
        </p>
      ) : offer.replacesPart === true ? (
        <p className="side">
          Another part: <a href={`${linkTo.fit(props.build)}#choose`}>choose it on the Fit sheet</a>.
        </p>
      ) : (
        <button
          type="button"
          className={`btn${props.first ? " btn-mark" : ""}`}
          aria-pressed={props.taken}
          onClick={take}
        >
          {props.taken ? "Taken" : "Take it"}
        </button>
      )}
    </li>
  );
}
