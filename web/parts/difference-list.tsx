/** How is what differs shown? A line for each value, old and new; comments and layout said in words. */
import { say } from "@coldset/core/texts";
import { type Difference, differenceWords } from "@coldset/core/workshop";

export interface ShownDocument {
  readonly kind: string;
  readonly id: string;
  readonly difference: Difference;
}

export function DifferenceList(props: {
  readonly documents: readonly ShownDocument[];
  /** Say before the lines of which document they are. */
  readonly named: boolean;
}) {
  return (
    <>
      {props.documents.map(({ kind, id, difference }) => (
        <div className="was-now" key={`${kind} ${id}`}>
          {props.named ? <h4>{`${kind} ${id}`}</h4> : null}
          <ul>
            {difference.values.map((v) => (
              <li key={v.place + v.kind}>
                <span className="place">{v.place}</span>{" "}
                {v.kind === "re-ordered" ? (
                  say("web.difference-list.the-same-entries-in-another-order")
                ) : (
                  <>
                    {v.was === null ? <span>{say("web.difference-list.added")}</span> : <s>{v.was}</s>}{" "}
                    <span aria-hidden="true">→</span>
                    <span className="hide">{say("web.difference-list.now")}</span>{" "}
                    {v.now === null ? <span>{say("web.difference-list.taken-out")}</span> : <b>{v.now}</b>}
                  </>
                )}
              </li>
            ))}
            {differenceWords({ ...difference, values: [] })
              .filter(() => difference.kind !== "values" || difference.more > 0 || comments(difference) > 0)
              .map((line) => (
                <li key={line}>{line}</li>
              ))}
          </ul>
        </div>
      ))}
    </>
  );
}

const comments = (d: Difference) => d.commentsIn.length + d.commentsOut.length;

/** The clock of this machine, to the minute: that is how a person remembers it. */
export function moment(at: string): string {
  const day = new Date(at);
  const two = (n: number) => String(n).padStart(2, "0");
  const date = `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
  return `${date} ${two(day.getHours())}:${two(day.getMinutes())}`;
}
