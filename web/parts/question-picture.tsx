/** Which large drawing stands on a question's own page, where people would rather look than read? */

import type { BoardRow, Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { whatToMeasure } from "@coldset/drawing/bicycle";
import { BicycleOfQuestion } from "./bicycle-picture.js";
import { Picture, useWide } from "./picture.js";

export function QuestionPicture({ row, r }: { readonly row: BoardRow; readonly r: Reckoning }) {
  switch (row.n) {
    case 2:
      return <WhereToLook />;
    case 4:
      return <BicycleOfQuestion r={r} figures={false} />;
    case 5:
      return <BicycleOfQuestion r={r} figures />;
    default:
      return null;
  }
}

const WHERE = say("web.question-picture.where-to-look-for-cracks-on");

function WhereToLook() {
  const version = useWide() ? "wide" : "narrow";
  return (
    <figure>
      <Picture
        of={`where to look ${version}`}
        make={() => {
          const drawing = whatToMeasure("cracks", WHERE, version);
          if (drawing === undefined) throw new Error("the drawing of where to look for cracks is not there");
          return drawing;
        }}
        className={`pic ${version}`}
      />
      <figcaption className="cap">{say("web.question-picture.where-to-look-first-every-ringed")}</figcaption>
    </figure>
  );
}
