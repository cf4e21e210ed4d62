/** How far is one reading off from what all say together, in its own spreads? Beyond the limit the ground is hatched. */
import { say as sayText } from "@coldset/core/texts";
import { dustDots } from "@coldset/drawing";
import { useNumbers } from "../state/numbers.js";

const WIDE = 320;
const HIGH = 40;
const MID = WIDE / 2;

const BOX_DUST = dustDots({
  kind: "dust",
  shape: "strip",
  at: { x: MID, y: HIGH / 2 },
  sdXMm: 34,
  sdYMm: 18,
  seed: 5,
  dots: 60,
})
  .map((p) => `M${p.x.toFixed(1)} ${p.y.toFixed(1)}h.01`)
  .join("");

/** So many spreads beyond its bar's end a dust may lie: of 36 dots none is further out. */
export const DUST_REACH = 2.3;

/** A residual in its own spreads has by its making one spread for its standard deviation: the bar ends in that dust. */
function endDust(atX: number, spreadPx: number, y: number, high: number, dots: number): string {
  return dustDots({
    kind: "dust",
    shape: "strip",
    at: { x: atX, y },
    sdXMm: spreadPx,
    sdYMm: high,
    seed: Math.round(y) + 1,
    dots,
  })
    .map((p) => `M${p.x.toFixed(1)} ${p.y.toFixed(1)}h.01`)
    .join("");
}

export function ResidualBar(props: {
  /** In spreads; null where nothing checks the reading. */
  readonly w: number | null;
  readonly limit: number;
  readonly span: number;
  readonly hot: boolean;
}) {
  const { w, limit, span, hot } = props;
  const numbers = useNumbers();
  const x = (v: number) => MID + (v / span) * (MID - 6);
  const label =
    w === null
      ? sayText("web.residual-bar.nothing-else-checks-this-reading")
      : sayText("web.residual-bar.of-its-spread-1-96-95", {
          times: w.toFixed(1).replace("-", "−"),
          limit: limit.toFixed(2),
        });
  return (
    <svg className="d" viewBox={`0 0 ${WIDE} ${HIGH}`} width={WIDE} role="img" aria-label={numbers.say(label)}>
      <rect x="4" y="2" width={x(-limit) - 4} height="36" fill="url(#h-short)" />
      <rect x={x(limit)} y="2" width={WIDE - 4 - x(limit)} height="36" fill="url(#h-short)" />
      <path className="l2" d={`M${MID} 0V${HIGH}`} />
      <path className="l3" d={`M${x(-limit)} 0V${HIGH}M${x(limit)} 0V${HIGH}`} />
      {w === null ? (
        <>
          <rect className="l3 da fp" x={x(-limit)} y="8" width={x(limit) - x(-limit)} height="24" />
          <path className="dust" strokeWidth="2.1" d={BOX_DUST} />
        </>
      ) : (
        <>
          <path className="halo-bar" d={`M${MID} 20H${x(w) + Math.sign(w) * 5}`} />
          <path className={hot ? "bar-m" : "bar-i"} d={`M${MID} 20H${Math.abs(x(w) - MID) < 2 ? MID + 2 : x(w)}`} />
          <path className="dust" strokeWidth="2.1" d={endDust(x(w), x(1) - x(0), 20, 22, 36)} />
        </>
      )}
    </svg>
  );
}

/** All bars under each other, without names: for the board. */
export function ResidualStack(props: {
  readonly rows: readonly { readonly w: number; readonly hot: boolean }[];
  readonly limit: number;
}) {
  const rows = props.rows.slice(0, 8);
  const numbers = useNumbers();
  const edge = numbers.number(props.limit, 2);
  const step = 16;
  const high = rows.length * step + 28;
  const span = Math.max(props.limit * 1.5, ...rows.map((r) => Math.abs(r.w) + DUST_REACH));
  const x = (v: number) => 140 + (v / span) * 132;
  const bottom = rows.length * step + 4;
  return (
    <svg
      className="d keep"
      viewBox={`0 0 280 ${high}`}
      width="280"
      role="img"
      aria-label={numbers.say(
        sayText("web.residual-bar.the-worst-readings-in-spreads-each", {
          rowsCount: rows.length,
          rows: rows.map((r) => r.w.toFixed(1).replace("-", "−")).join(", "),
          limit: props.limit,
        }),
      )}
    >
      <rect x="8" y="0" width={x(-props.limit) - 8} height={bottom} fill="url(#h-short)" />
      <rect x={x(props.limit)} y="0" width={272 - x(props.limit)} height={bottom} fill="url(#h-short)" />
      <path className="l2" d={`M140 0V${bottom}`} />
      <path className="l3" d={`M${x(-props.limit)} 0V${bottom}M${x(props.limit)} 0V${bottom}`} />
      {rows.map((r, i) => (
        <g key={`${r.w}`}>
          <path className={r.hot ? "bar-m thin" : "bar-i thin"} d={`M140 ${i * step + 10}H${x(r.w)}`} />
          <path className="dust" strokeWidth="2.1" d={endDust(x(r.w), x(1) - x(0), i * step + 10, 12, 24)} />
        </g>
      ))}
      <text x={x(-props.limit)} y={bottom + 20} textAnchor="middle" className="t2 small">
        −{edge}
      </text>
      <text x={x(props.limit)} y={bottom + 20} textAnchor="middle" className="t2 small">
        +{edge}
      </text>
    </svg>
  );
}

/** The hatches that bars are filled with; once on a page. */
export function HatchDefs() {
  return (
    <svg width="0" height="0" className="defs" aria-hidden="true" focusable="false">
      <defs>
        <pattern id="h-short" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="6" height="6" className="fs" />
          <path d="M0 0V6" className="hatch-close" />
        </pattern>
      </defs>
    </svg>
  );
}
