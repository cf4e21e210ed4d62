/** How are the figures that decide a question changed, right there on its page? The answer above follows each keystroke. */

import type { BoardRow, Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { type DecidingField, decidingFields } from "../measure/deciding-fields.js";
import { EntryField } from "../measure/entry-field.js";
import { linkTo } from "../state/route.js";
import { useWorkshop } from "../state/workshop.js";

/** So many stand open; a longer list is a long way to what was not checked. */
const OPEN_AT_ONCE = 6;

export function DecidingFigures({ r, row }: { readonly r: Reckoning; readonly row: BoardRow }) {
  const docs = useWorkshop((w) => w.docs);
  const fields = decidingFields(r, row, docs);
  const build = r.resolved.build.id;
  const parts = row.joints.length > 0 || row.n === 14;
  if (fields.length === 0 && !parts) return null;
  const first = fields.slice(0, OPEN_AT_ONCE);
  const rest = fields.slice(OPEN_AT_ONCE);
  return (
    <section aria-labelledby="deciding">
      <h2 className="sec" id="deciding">
        {say("web.deciding-figures.what-decides-it")}
      </h2>
      <div className="words">
        <p>
          {fields.length === 0 ? "" : say("web.deciding-figures.change-a-figure-here-and-the")}
          {parts ? (
            <>
              {say("web.deciding-figures.other-parts-are-chosen")}
              <a href={`${linkTo.fit(build)}#choose`}>{say("web.deciding-figures.on-the-fit-sheet")}</a>.
            </>
          ) : null}
        </p>
      </div>
      <Grid fields={first} />
      {rest.length === 0 ? null : (
        <details className="more">
          <summary>
            {rest.length}
            {say("web.deciding-figures.more")}
            {rest.length === 1 ? say("web.deciding-figures.figure") : say("web.deciding-figures.figures")}
            {say("web.deciding-figures.that-it-reads")}
          </summary>
          <Grid fields={rest} />
        </details>
      )}
    </section>
  );
}

function Grid({ fields }: { readonly fields: readonly DecidingField[] }) {
  return fields.length === 0 ? null : (
    <div className="grid">
      {fields.map((f) => (
        <EntryField key={f.at} info={f.info} target={f.target} at={f.at} read={undefined} />
      ))}
    </div>
  );
}
