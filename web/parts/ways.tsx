/** Which other set of parts was weighed for the money, and how is it taken? */

import type { Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { useNumbers } from "../state/numbers.js";
import { useWorkshop } from "../state/workshop.js";

export function Ways({ r }: { readonly r: Reckoning }) {
  const edit = useWorkshop((w) => w.edit);
  const { build } = r.resolved;
  const numbers = useNumbers();
  const ways = build.alternatives ?? [];
  if (ways.length === 0) return null;
  return (
    <fieldset className="choice">
      <legend>{say("web.ways.take-another-way")}</legend>
      <div className="acts">
        {ways.map((way) => {
          const cost = r.ledger.alternatives.find((a) => a.name === way.name);
          const take = () => {
            const chosen: Record<string, string> = { ...build.chosen };
            for (const [place, part] of Object.entries(way.change)) {
              if (part === null) delete chosen[place];
              else if (part !== undefined) chosen[place] = part;
            }
            edit({ kind: "build", id: build.id, path: ["chosen"], value: chosen, words: way.name });
          };
          return (
            <button key={way.name} type="button" className="btn" onClick={take}>
              <span>
                {way.name}{" "}
                <small>
                  {cost?.total === undefined
                    ? say("web.ways.price-not-known")
                    : say("web.ways.in-all", { total: numbers.number(cost.total, 0) })}
                </small>
              </span>
            </button>
          );
        })}
      </div>
    </fieldset>
  );
}
