/** What does one joint say? Verdict, the numbers that decided it with their limits, remedies, and what to measure next. */
import type { DecidingNumber, JointAnswer, RemedyOffer } from "@coldset/core/fit";
import { showNumber } from "@coldset/core/questions";
import { capital } from "../state/words.js";
import { useWorkshop } from "../state/workshop.js";
import { NextLink } from "./next-link.js";
import { Verdicts } from "./verdict.js";

export function JointView({ joint, build }: { readonly joint: JointAnswer; readonly build: string }) {
  return (
    <article className="joint" id={joint.id}>
      <p className="no">{joint.id}</p>
      <div>
        <h3>{capital(joint.title)}</h3>
        <p className="why">{joint.reason}</p>
        <Verdicts verdict={joint.verdict} also={joint.rules.map((x) => ({ verdict: x.level, about: x.rule }))} />
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
        {joint.remedies.length === 0 ? null : <Remedies joint={joint} />}
      </div>
    </article>
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
  const decimals = n.unit === "N" || n.unit === "count" ? 0 : Math.abs(n.value) < 2 ? 2 : 1;
  const half = n.band === undefined ? undefined : (n.band.high - n.band.low) / 2;
  return (
    <li>
      <span>{n.name}</span>
      <b className="num">
        {showNumber(n.value, decimals)}
        {half === undefined ? "" : ` ± ${showNumber(half, Math.max(decimals, 1))}`}
        {UNITS[n.unit]}
      </b>
      <span>
        {n.limit === undefined ? "" : `${n.limit.kind === "hard" ? "must be" : "wanted"} ${n.limit.words}`}
        {half === undefined && n.unit !== "count" && n.unit !== "ratio"
          ? n.limit === undefined
            ? "as entered"
            : ", as entered"
          : ""}
      </span>
    </li>
  );
}

function Remedies({ joint }: { readonly joint: JointAnswer }) {
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
  readonly offer: RemedyOffer;
  readonly taken: boolean;
  readonly first: boolean;
}) {
  const { offer } = props;
  const edit = useWorkshop((w) => w.edit);
  const build = useWorkshop((w) => w.reckoning?.resolved.build);
  const take = () => {
    if (build === undefined) return;
    const rest = (build.remedies ?? []).filter((t) => t.joint !== props.joint);
    edit({
      kind: "build",
      id: build.id,
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
        {showNumber(offer.hours, 1)} h<small>hours</small>
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
          .map((s) => `${s.words}${s.joints.length > 0 ? ` (look again at ${s.joints.join(", ")})` : ""}`)
          .join(". ")}
        {offer.rules.length > 0 ? ` Brings rule ${offer.rules.join(", ")}.` : ""}
        {offer.massG === 0 ? "" : ` ${offer.massG > 0 ? "+" : "−"}${Math.abs(offer.massG)} g.`}
      </p>
      {offer.refused !== undefined ? (
        <p className="side">
          <b>Refused:</b> {offer.refused}
        </p>
      ) : offer.replacesPart === true ? (
        <p className="side">Another part: choose it on the Fit sheet.</p>
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
