/** Which drawing goes with this question? Dust and wall where there is a limit; some questions have one of their own. */

import { type BoardRow, type Reckoning, showNumber } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { frontRetentionArrows, rearSpread, tabPlace } from "@coldset/drawing/bicycle";
import { sketchAfter, sketchBefore } from "@coldset/drawing/sketch";
import { Picture } from "./picture.js";
import { PlanPicture } from "./plan-picture.js";
import { ResidualStack } from "./residual-bar.js";
import { Said } from "./said.js";
import { Wall } from "./wall.js";

export const FLAG_LIMIT = 3.29;

/** Has this question a drawing besides dust and wall? */
export function hasPicture(row: BoardRow, r: Reckoning): boolean {
  return drawn(row, r) !== null;
}

export function RowPicture({ row, r }: { readonly row: BoardRow; readonly r: Reckoning }) {
  return drawn(row, r) ?? (row.figure === undefined ? null : <Wall figure={row.figure} />);
}

function drawn(row: BoardRow, r: Reckoning): React.ReactElement | null {
  switch (row.n) {
    case 1:
      return retention(r);
    case 7:
      return spread(r);
    case 9:
      return tab(row, r);
    case 12:
      return chainWindow(row, r);
    case 13:
      return residuals(r);
    case 15:
      return r.plan.plan.kind === "answered" ? (
        <PlanPicture plan={r.plan.plan.value} version="narrow" widthPx={264} />
      ) : null;
    case 20:
      return gates(row);
    default:
      return null;
  }
}

/** The rear ends from above, as they stand and as the hub asks for. */
function spread(r: Reckoning): React.ReactElement | null {
  const gapMm = r.resolved.donor.interfaces.rear_spacing;
  const wheel = r.resolved.at.wheel_rear;
  const hubMm = wheel?.kind === "wheel_rear" ? wheel.ports.width : undefined;
  if (gapMm === undefined || hubMm === undefined || hubMm <= gapMm) return null;
  const over = r.joints.joints.find((j) => j.id === "J9")?.numbers.find((n) => n.name === "hub wider than the gap");
  const input = { gapMm, hubMm, ...(over?.band === undefined ? {} : { overBand: over.band }) };
  return <Picture of={`spread ${JSON.stringify(input)}`} make={() => rearSpread(input)} className="pic keep" lengths />;
}

/** The two holes of a tab that is to be made, between the stays as the bicycle will stand. */
function tab(row: BoardRow, r: Reckoning): React.ReactElement | null {
  const numbers = r.joints.joints.find((j) => j.id === "J23")?.numbers ?? [];
  const mm = (start: string) => numbers.find((n) => n.unit === "mm" && n.name.startsWith(start))?.value;
  const [nearMm, farMm, apartMm] = [
    mm(say("web.row-picture.near-hole")),
    mm(say("web.row-picture.far-hole")),
    mm(say("web.row-picture.holes-apart")),
  ];
  const sketch = sketchAfter(r) ?? sketchBefore(r);
  if (row.verdict === "refuse" || sketch === undefined) return null;
  if (nearMm === undefined || farMm === undefined || apartMm === undefined) return null;
  const towards = (p: { readonly x: number; readonly y: number }) =>
    (Math.atan2(p.y - sketch.rearAxle.y, p.x - sketch.rearAxle.x) * 180) / Math.PI;
  // The angle itself has the tool's spread; the joint gives it with what lies over the tab's own angle, which is exact.
  const between = numbers.find((n) => n.name === "angle between the stays");
  const band = numbers.find((n) => n.name === "angle between the stays over the tab's")?.band;
  const half = band === undefined ? undefined : (band.high - band.low) / 2;
  const input = {
    nearMm,
    farMm,
    apartMm,
    ...(between === undefined || band === undefined || half === undefined
      ? {}
      : {
          between: {
            deg: between.value,
            band: { low: between.value - half, high: between.value + half, means: band.means },
          },
        }),
    chainstayDeg: towards(sketch.bb),
    seatstayDeg: towards(sketch.seatCluster),
    ...(sketch.tubesMm?.chainstay === undefined ? {} : { chainstayMm: sketch.tubesMm.chainstay }),
    ...(sketch.tubesMm?.seatstay === undefined ? {} : { seatstayMm: sketch.tubesMm.seatstay }),
  };
  return (
    <>
      <Picture of={`tab ${JSON.stringify(input)}`} make={() => tabPlace(input)} className="pic keep" lengths />
      <p className="cap">
        <Said text={say("web.row-picture.to-scale-the-holes-apart", { apartMm: showNumber(apartMm, 0) })} />
        {say("web.row-picture.the-turn-about-the-axle-is")}
        {half === undefined ? "" : say("web.row-picture.dust-at-the-stays-their-angle")}
      </p>
    </>
  );
}

/** Where the chainstay must lie for the pair to run without a tensioner, and how surely it is known. */
function chainWindow(row: BoardRow, r: Reckoning): React.ReactElement | null {
  const number = r.joints.joints
    .find((j) => j.id === "J42")
    ?.numbers.find((n) => n.name.startsWith("chainstay") && n.limit?.low !== undefined && n.limit.high !== undefined);
  const { limit } = number ?? {};
  if (number === undefined || limit?.low === undefined || limit.high === undefined) return null;
  return (
    <Wall
      figure={{
        name: row.figure?.name ?? number.name,
        value: number.value,
        unit: "mm",
        decimals: 2,
        ...(number.band === undefined ? {} : { band: number.band }),
        limit: { low: limit.low, high: limit.high, words: limit.words },
      }}
    />
  );
}

/** One pair of posts a gate; the bar lies across until somebody signed. */
function gates(row: BoardRow): React.ReactElement | null {
  const table = row.working.tables.find((t) => t.title === "Gates");
  const by = table?.columns.findIndex((c) => /^signed by$/i.test(c)) ?? -1;
  if (table === undefined || table.rows.length === 0 || by < 0) return null;
  const rows = table.rows.slice(0, 6);
  const step = 280 / Math.max(4, rows.length);
  const shut = rows.filter((cells) => (cells[by] ?? "") === "").length;
  return (
    <svg
      className="d"
      viewBox="0 0 280 62"
      width="280"
      role="img"
      aria-label={say("web.row-picture.of-gates-are-shut", {
        shut,
        rowsCount: rows.length,
        rows: rows.map((c) => c[0]).join(", "),
      })}
    >
      {rows.map((cells, i) => {
        const x = i * step + 6;
        const wide = step - 22;
        const open = (cells[by] ?? "") !== "";
        return (
          <g key={cells[0]}>
            <path className="l5" d={`M${x} 4V36M${x + wide} 4V36`} />
            <path className="l3" d={open ? `M${x} 20L${x + wide * 0.5} 2` : `M${x} 20H${x + wide}`} />
            <text x={x + wide / 2} y="56" textAnchor="middle" className="t2 small">
              {cells[0]}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

function residuals(r: Reckoning): React.ReactElement | null {
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
function retention(r: Reckoning): React.ReactElement | null {
  const pushed = r.forks.flatMap((f) => {
    const held = f.answer.joints.find((j) => j.id === "J12");
    const push = held?.numbers.find((n) => n.unit === "N" && /push/i.test(n.name));
    return push === undefined ? [] : [{ fork: f, push, held }];
  });
  const worst = pushed.sort((a, b) => b.push.value - a.push.value)[0];
  if (worst === undefined) return null;
  // What it is held against is the grip of the clamp, taken and not measured.
  const grip = worst.push.limit?.high;
  const input = {
    end: worst.fork.part.ports.end === "closed" ? "closed" : "open-down",
    pushOutN: worst.push.value,
    ...(worst.push.band === undefined ? { pushOutNote: "(no band)" } : { pushOutBand: worst.push.band }),
    ...(grip === undefined ? {} : { gripN: grip, gripNote: say("web.row-picture.taken-no-band") }),
  } as const;
  return (
    <>
      <Picture of={`retention ${JSON.stringify(input)}`} make={() => frontRetentionArrows(input)} className="pic" />
      <p className="cap">
        {say("web.row-picture.fork")}
        {worst.fork.part.id}
        {say("web.row-picture.of-those-weighed-the-one-that")}
        {worst.push.limit === undefined ? "" : say("web.row-picture.held-against", { limit: worst.push.limit.words })}
        {say("web.row-picture.the-pull-is-reckoned-for-a")}
      </p>
    </>
  );
}
