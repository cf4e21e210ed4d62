/** How is a key number shown? With unit and band; without a band it says "as entered". */
import type { Figure } from "@coldset/core/questions";
import { showNumber } from "@coldset/core/questions";

export function FigureText({ figure }: { readonly figure: Figure }) {
  const { band, decimals, unit } = figure;
  const half = band === undefined ? "" : `± ${showNumber((band.high - band.low) / 2, Math.max(decimals, 1))}`;
  return (
    <>
      <span className="nb">
        {showNumber(figure.value, decimals)}
        {unit === "" ? null : unit === "°" ? "°" : <span className="u"> {unit}</span>}
        {half === "" ? null : <span className="b"> {half}</span>}
      </span>
      {figure.against === undefined ? null : (
        <span className={band === undefined ? "b wraps" : "against"}> {figure.against}</span>
      )}
    </>
  );
}
