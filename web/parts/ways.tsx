/** Which other set of parts was weighed for the money, and how is it taken? */
import { type Reckoning, showNumber } from "@coldset/core/questions";
import { useWorkshop } from "../state/workshop.js";

export function Ways({ r }: { readonly r: Reckoning }) {
  const edit = useWorkshop((w) => w.edit);
  const { build } = r.resolved;
  const ways = build.alternatives ?? [];
  if (ways.length === 0) return null;
  return (
    <fieldset className="choice">
      <legend>Take another way</legend>
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
                <small>{cost?.total === undefined ? "price not known" : `${showNumber(cost.total, 0)} in all`}</small>
              </span>
            </button>
          );
        })}
      </div>
    </fieldset>
  );
}
