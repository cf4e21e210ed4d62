/** Where does this number stand against its limit? Dust and wall. */
import type { Figure } from "@coldset/core/questions";
import { cloudAndWall } from "@coldset/drawing/bicycle";
import { useNumbers } from "../state/numbers.js";
import { Picture } from "./picture.js";

export function Wall({ figure }: { readonly figure: Figure }) {
  const { unit, decimals, times } = useNumbers().unit(figure.unit, figure.decimals);
  const { limit, band } = figure;
  const edge = limit?.low ?? limit?.high;
  if (limit === undefined || edge === undefined) return null;
  const input = {
    what: figure.name,
    value: figure.value * times,
    ...(band === undefined ? {} : { band: { ...band, low: band.low * times, high: band.high * times } }),
    unit,
    limit: edge * times,
    limitIs: limit.low === undefined ? "most" : "least",
    ...(limit.low !== undefined && limit.high !== undefined ? { most: limit.high * times } : {}),
    decimals,
  } as const;
  return <Picture of={`wall ${JSON.stringify(input)}`} make={() => cloudAndWall(input)} className="pic keep" />;
}
