/** How is a table shown? As a table; on a phone each row stands by itself, with the column's name before each value. */

import type { WorkingTable } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { useId } from "react";
import { capitalWord } from "../state/words.js";

export function TableView({ table, level = 3 }: { readonly table: WorkingTable; readonly level?: 2 | 3 }) {
  const title = useId();
  if (table.rows.length === 0) return null;
  const Title = level === 2 ? "h2" : "h3";
  // A column in which nothing stands says nothing; who signed is said even where nobody has.
  const kept = table.columns.flatMap((column, i) => {
    const signed = /^signed by$/i.test(column);
    return signed || table.rows.some((cells) => cells[i])
      ? [{ column, i, empty: signed ? say("web.table.nobody-yet") : "" }]
      : [];
  });
  // Nothing but short figures behind the name: on a phone they stand beside each other.
  const short =
    kept.length > 3 && table.rows.every((cells) => kept.slice(1).every(({ i }) => (cells[i] ?? "").length < 12));
  const seen = new Map<string, number>();
  const keyed = table.rows.map((cells) => {
    const text = cells.join("|");
    const count = (seen.get(text) ?? 0) + 1;
    seen.set(text, count);
    return { key: `${text} ${count}`, cells };
  });
  return (
    <section>
      <Title className={level === 2 ? "sec" : "sub"} id={title}>
        {table.title}
      </Title>
      {/* biome-ignore-start lint/a11y/noRedundantRoles: laid out as blocks on a phone, a table would lose its roles there. */}
      <table className={short ? "tbl short" : "tbl"} role="table" aria-labelledby={title}>
        <thead role="rowgroup">
          <tr role="row">
            {kept.map(({ column }) => (
              <th key={column} role="columnheader" scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {keyed.map(({ key, cells }) => (
            <tr key={key} role="row">
              {kept.map(({ column, i, empty }, at) => (
                <td
                  key={column}
                  role="cell"
                  data-head={column}
                  className={/^[−-]?\d[\d .,]*( [a-z%]+)?$/i.test(cells[i] ?? "") ? "num" : undefined}
                >
                  {cells[i] || empty ? <span>{at === 0 ? capitalWord(cells[i] ?? "") : cells[i] || empty}</span> : null}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {/* biome-ignore-end lint/a11y/noRedundantRoles: as above. */}
    </section>
  );
}
