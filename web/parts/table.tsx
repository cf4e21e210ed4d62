/** How is a table shown? As a table; on a phone each row stands by itself, with the column's name before each value. */
import type { WorkingTable } from "@coldset/core/questions";

export function TableView({ table, level = 3 }: { readonly table: WorkingTable; readonly level?: 2 | 3 }) {
  if (table.rows.length === 0) return null;
  const Title = level === 2 ? "h2" : "h3";
  const seen = new Map<string, number>();
  const keyed = table.rows.map((cells) => {
    const text = cells.join("|");
    const count = (seen.get(text) ?? 0) + 1;
    seen.set(text, count);
    return { key: `${text} ${count}`, cells };
  });
  return (
    <section>
      <Title className={level === 2 ? "sec" : "sub"}>{table.title}</Title>
      {/* biome-ignore-start lint/a11y/noRedundantRoles: laid out as blocks on a phone, a table would lose its roles there. */}
      <table className="tbl" role="table">
        <thead role="rowgroup">
          <tr role="row">
            {table.columns.map((c) => (
              <th key={c} role="columnheader" scope="col">
                {c}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {keyed.map(({ key, cells }) => (
            <tr key={key} role="row">
              {table.columns.map((column, i) => (
                <td
                  key={column}
                  role="cell"
                  data-head={column}
                  className={/^[−-]?\d[\d .,]*( [a-z%]+)?$/i.test(cells[i] ?? "") ? "num" : undefined}
                >
                  {cells[i] ? <span>{cells[i]}</span> : null}
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
