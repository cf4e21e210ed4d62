/** How is a key number shown? With unit and band, in the units that were chosen; a voice hears the units as words. */
import { speakFigures } from "@coldset/core/quantity";
import type { Figure } from "@coldset/core/questions";
import { type Numbers, useNumbers } from "../state/numbers.js";

interface Value {
  readonly value: number;
  readonly half?: number | undefined;
  /** As in an answer: "mm", "°", "". */
  readonly unit: string;
  readonly decimals: number;
}

/** "551.0 ± 0.6 mm" or "21.693 ± 0.024 in". */
export function valueWords(v: Value, numbers: Numbers): readonly [number: string, half: string, unit: string] {
  const { unit, decimals, times } = numbers.unit(v.unit, v.decimals);
  const more = decimals - v.decimals;
  const half = v.half === undefined ? "" : `± ${numbers.number(v.half * times, Math.max(v.decimals, 1) + more)}`;
  return [numbers.number(v.value * times, decimals), half, unit];
}

export function valueText(v: Value, numbers: Numbers): string {
  const [number, half, unit] = valueWords(v, numbers);
  return `${number}${half === "" ? "" : ` ${half}`}${unit === "" ? "" : unit === "°" ? "°" : ` ${unit}`}`;
}

export function FigureText({ figure }: { readonly figure: Figure }) {
  const numbers = useNumbers();
  const { band, decimals } = figure;
  const v = {
    value: figure.value,
    unit: figure.unit,
    decimals,
    half: band === undefined ? undefined : (band.high - band.low) / 2,
  };
  const [number, half, unit] = valueWords(v, numbers);
  const against = figure.against === undefined ? undefined : numbers.say(figure.against, { bareUnit: figure.unit });
  const inch = unit !== figure.unit;
  return (
    <>
      <span className="nb" aria-hidden="true">
        {number}
        {unit === "" ? null : unit === "°" ? "°" : <span className="u"> {unit}</span>}
        {half === "" ? null : <span className="b"> {half}</span>}
      </span>
      <span className="hide">{speakFigures(valueText(v, numbers))}</span>
      {inch ? <span className="b wraps metric"> ({valueText(v, numbers.metric)})</span> : null}
      {against === undefined ? null : <span className={band === undefined ? "b wraps" : "against"}> {against}</span>}
    </>
  );
}
