/** Where does this answer come from? Title, kind and mark of each source; "from memory" is always said. */
import { type SourceRow, sourceById } from "@coldset/core/data";

const MARKS: Readonly<Record<SourceRow["mark"], string>> = {
  read: "read for this program",
  memory: "from memory, not re-read",
  "common practice": "common practice, no source",
  derived: "derived here",
  "invented for the demo": "invented for the demo",
};

export function SourceList({ ids }: { readonly ids: readonly string[] }) {
  return (
    <ul className="bullets">
      {ids.map((id) => {
        const row = sourceById(id);
        return row === undefined ? (
          <li key={id}>{id}: not in the list of sources, an error of ours.</li>
        ) : (
          <li key={id}>
            {row.title}
            {row.where === undefined ? "" : `, ${row.where}`}{" "}
            <span className="soft">
              (
              {/^(common practice|our derivation)$/.test(row.kind)
                ? MARKS[row.mark]
                : `${row.kind}; ${MARKS[row.mark]}`}
              )
            </span>
          </li>
        );
      })}
    </ul>
  );
}
