/** Which drawing goes with this question? Dust and wall where there is a limit; three questions have one of their own. */
import type { BoardRow, Reckoning } from "@coldset/core/questions";
import { frontRetentionArrows } from "@coldset/drawing/bicycle";
import { Picture } from "./picture.js";
import { PlanPicture } from "./plan-picture.js";
import { ResidualStack } from "./residual-bar.js";
import { Wall } from "./wall.js";

export const FLAG_LIMIT = 3.29;

export function RowPicture({ row, r }: { readonly row: BoardRow; readonly r: Reckoning }) {
  if (row.n === 1) return <Retention r={r} />;
  if (row.n === 13) return <Residuals r={r} />;
  if (row.n === 15 && r.plan.plan.kind === "answered")
    return <PlanPicture plan={r.plan.plan.value} version="narrow" widthPx={280} />;
  return row.figure === undefined ? null : <Wall figure={row.figure} />;
}

function Residuals({ r }: { readonly r: Reckoning }) {
  const { survey, setAside } = r.geometry;
  if (survey.kind === "refused") return null;
  const suspect = survey.value.readings.find((c) => c.measurement === setAside);
  const rows = survey.value.readings.flatMap((c) =>
    c.normalised_residual === null
      ? []
      : [
          {
            w: c.normalised_residual,
            hot: c.measurement === setAside || (suspect?.shares_residual_with.includes(c.measurement) ?? false),
          },
        ],
  );
  return <ResidualStack rows={rows} limit={FLAG_LIMIT} />;
}

/** The fork that pushes its wheel out the most of those weighed, if one does. */
export function Retention({ r }: { readonly r: Reckoning }) {
  const pushed = r.forks.flatMap((f) => {
    const held = f.answer.joints.find((j) => j.id === "J12");
    const push = held?.numbers.find((n) => n.unit === "N" && /push/i.test(n.name));
    return push === undefined ? [] : [{ fork: f, push, held }];
  });
  const worst = pushed.sort((a, b) => b.push.value - a.push.value)[0];
  if (worst === undefined) return null;
  const grip = worst.held?.numbers.find((n) => n.unit === "N" && /hold|grip|clamp/i.test(n.name));
  const input = {
    end: worst.fork.part.ports.end === "closed" ? "closed" : "open-down",
    pushOutN: worst.push.value,
    ...(worst.push.band === undefined ? {} : { pushOutBand: worst.push.band }),
    ...(grip === undefined ? {} : { gripN: grip.value }),
  } as const;
  return (
    <>
      <Picture of={`retention ${JSON.stringify(input)}`} make={() => frontRetentionArrows(input)} className="pic" />
      <p className="cap">Fork {worst.fork.part.id}</p>
    </>
  );
}
