/** How is a verdict shown? Word, mark and outline together, so that it reads without colour and from across the room. */
import type { BoardVerdict } from "@coldset/core/quantity";

const CLASSES: Readonly<Record<BoardVerdict, string>> = {
  fits: "v-fits",
  within: "v-fits",
  "no problem found": "v-fits",
  "fits with work": "v-work",
  "measure first": "v-measure",
  "will not fit": "v-no",
  over: "v-no",
  refuse: "v-refuse",
  gate: "v-gate",
  flag: "v-flag",
  "not checked yet": "v-none",
};

export function Verdict({ verdict, about }: { readonly verdict: BoardVerdict; readonly about?: string | undefined }) {
  const kind = CLASSES[verdict];
  const small = about === undefined ? null : <small>{about}</small>;
  if (kind === "v-gate")
    return (
      <span className="v v-gate">
        <span>{verdict}</span>
        {small}
      </span>
    );
  return (
    <span className={`v ${kind}`}>
      <Mark kind={kind} />
      <span>
        {verdict} {small}
      </span>
    </span>
  );
}

function Mark({ kind }: { readonly kind: string }) {
  const paths = MARKS[kind];
  return paths === undefined ? null : (
    <svg
      viewBox="0 0 30 22"
      aria-hidden="true"
      focusable="false"
      fill="none"
      stroke="currentColor"
      strokeLinecap="round"
    >
      {paths}
    </svg>
  );
}

const MARKS: Readonly<Record<string, React.ReactNode>> = {
  "v-fits": (
    <>
      <path strokeWidth="2.8" d="M6 3V19M24 3V19" />
      <path strokeWidth="2" d="M10 11H20M10 11l3-3M10 11l3 3M20 11l-3-3M20 11l-3 3" />
    </>
  ),
  "v-work": (
    <>
      <path strokeWidth="2.8" d="M5 3V19M25 3V19" />
      <path stroke="none" fill="currentColor" d="M9 18L21 18L21 5Z" />
    </>
  ),
  "v-measure": (
    <>
      <path strokeWidth="2" d="M4 3H4V19M26 3V19M4 3H9M26 3H21" />
      <path
        strokeWidth="2.2"
        d="M10 8h.01M13 13h.01M15 9h.01M17 14h.01M19 10h.01M14 17h.01M12 16h.01M18 6h.01M15 12h.01M20 16h.01M11 11h.01"
      />
    </>
  ),
  "v-no": (
    <>
      <path strokeWidth="2.8" d="M15 3V19" />
      <path strokeWidth="2" d="M2 5H15V17H2Z" />
      <path strokeWidth="2" fill="currentColor" d="M15 5H28V17H15Z" />
      <path strokeWidth="2" d="M6 11H14M10 7l4 4-4 4" />
    </>
  ),
};

/** The main verdict first, then the small ones beside it. */
export function Verdicts(props: {
  readonly verdict: BoardVerdict;
  readonly about?: string | undefined;
  readonly also?: readonly { readonly verdict: BoardVerdict; readonly about: string }[];
}) {
  return (
    <div className="vs">
      <Verdict verdict={props.verdict} about={props.about} />
      {(props.also ?? []).map((v) => (
        <Verdict key={`${v.verdict} ${v.about}`} verdict={v.verdict} about={v.about} />
      ))}
    </div>
  );
}
