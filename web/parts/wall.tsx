/** Where does this number stand against its limit? Dust and wall. */
import type { Figure } from "@coldset/core/questions";
import { cloudAndWall } from "@coldset/drawing/bicycle";
import { Picture } from "./picture.js";

export function Wall({ figure }: { readonly figure: Figure }) {
  const { limit } = figure;
  const edge = limit?.low ?? limit?.high;
  if (limit === undefined || edge === undefined) return null;
  const input = {
    what: figure.name,
    value: figure.value,
    ...(figure.band === undefined ? {} : { band: figure.band }),
    unit: figure.unit,
    limit: edge,
    limitIs: limit.low === undefined ? "most" : "least",
    ...(limit.low !== undefined && limit.high !== undefined ? { most: limit.high } : {}),
    decimals: figure.decimals,
  } as const;
  return <Picture of={`wall ${JSON.stringify(input)}`} make={() => cloudAndWall(input)} className="pic keep" />;
}
