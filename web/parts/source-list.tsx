/** Where does this answer come from? Title, kind and mark of each source; "from memory" is always said. */

import { type SourceRow, sourceById } from "@coldset/core/data";
import { say } from "@coldset/core/texts";

const MARKS: Readonly<Record<SourceRow["mark"], string>> = {
  read: say("web.source-list.read-for-this-program"),
  memory: say("web.source-list.from-memory-not-re-read"),
  "common practice": say("web.source-list.common-practice-no-source"),
  derived: say("web.source-list.derived-here"),
  "invented for the demo": say("web.source-list.invented-for-the-demo"),
};

export function SourceList({ ids }: { readonly ids: readonly string[] }) {
  return (
    <ul className="bullets sources">
      {ids.map((id) => {
        const row = sourceById(id);
        return row === undefined ? (
          <li key={id}>
            {id}
            {say("web.source-list.not-in-the-list-of-sources")}
          </li>
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
