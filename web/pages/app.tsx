/** Which page is shown? The address says it; the reckoning is the same for all of them. */
import { useEffect, useMemo } from "react";
import { useShallow } from "zustand/react/shallow";
import { PageTitle, SheetFrame, type Station } from "../parts/sheet-frame.js";
import { movedRows } from "../state/moved-rows.js";
import { lastStep, type Route, readRoute, useAddress } from "../state/route.js";
import { useSingleKeys } from "../state/single-keys.js";
import { capital } from "../state/words.js";
import { useWorkshop } from "../state/workshop.js";
import { BoardPage } from "./board-page.js";
import { BuildsPage } from "./builds-page.js";
import { DoPage } from "./do-page.js";
import { FitPage } from "./fit-page.js";
import { MeasurePage } from "./measure-page.js";
import { QuestionPage } from "./question-page.js";

export function App() {
  const address = useAddress();
  const [path = "/", hash = ""] = address.split("#");
  const route = readRoute(path);
  useGoTo(path, hash);
  switch (route.page) {
    case "builds":
      return (
        <SheetFrame title="Builds" sheet="0 · builds">
          <BuildsPage />
        </SheetFrame>
      );
    case "nowhere":
      return (
        <SheetFrame title="No such page" sheet="0 · builds">
          <div className="pagehead">
            <div>
              <PageTitle>There is no such page</PageTitle>
              <p>
                Nothing was lost. <a href="/">All builds are here.</a>
              </p>
            </div>
          </div>
        </SheetFrame>
      );
    default:
      return <BuildOf key={route.build} route={route} />;
  }
}

const SHEETS = {
  ask: "1 · questions",
  question: "1 · question",
  measure: "2 · survey",
  fit: "3 · joints",
  do: "4 · plan",
} as const;
const STATION: Readonly<Record<keyof typeof SHEETS, Station>> = {
  ask: "Ask",
  question: "Ask",
  measure: "Measure",
  fit: "Fit",
  do: "Do",
};

type BuildRoute = Exclude<Route, { readonly page: "builds" | "nowhere" }>;

function BuildOf({ route }: { readonly route: BuildRoute }) {
  const { status, problems, reckoning, last, docs, said, open, buildId } = useWorkshop(
    // Saving in the background draws nothing anew here.
    useShallow(({ status, problems, reckoning, last, docs, said, open, buildId }) => ({
      status,
      problems,
      reckoning,
      last,
      docs,
      said,
      open,
      buildId,
    })),
  );
  useEffect(() => void open(route.build), [open, route.build]);
  useSingleKeys(route.build);
  const moved = useMemo(
    () => (last === undefined || reckoning === undefined ? new Map() : movedRows(last.before.board, reckoning.board)),
    [last, reckoning],
  );
  const revision = docs.find((d) => d.kind === "build")?.revision;
  const row = route.page === "question" ? reckoning?.board.find((b) => b.n === route.n) : undefined;
  const title = row === undefined ? `${capital(route.build)}, ${route.page}` : `${row.n} ${row.question}`;
  const here = buildId === route.build;
  const spoken =
    said !== ""
      ? said
      : last === undefined
        ? ""
        : moved.size === 0
          ? "Nothing on the board moved."
          : `Moved: ${[...moved.keys()].join(", ")}.`;
  return (
    <SheetFrame
      title={title}
      build={route.build}
      job={capital(route.build)}
      sheet={SHEETS[route.page]}
      station={STATION[route.page]}
      said={spoken}
      {...(revision === undefined ? {} : { revision: String(revision) })}
    >
      {!here || status === "loading" ? null : reckoning === undefined || status !== "ready" ? (
        <NotReady status={status} problems={problems} build={route.build} />
      ) : route.page === "ask" ? (
        <BoardPage r={reckoning} moved={moved} />
      ) : route.page === "measure" ? (
        <MeasurePage r={reckoning} moved={moved} />
      ) : route.page === "fit" ? (
        <FitPage r={reckoning} moved={moved} />
      ) : route.page === "do" ? (
        <DoPage r={reckoning} moved={moved} />
      ) : row === undefined ? null : (
        <QuestionPage key={row.n} r={reckoning} row={row} moved={moved} />
      )}
    </SheetFrame>
  );
}

function NotReady(props: { readonly status: string; readonly problems: readonly string[]; readonly build: string }) {
  const open = useWorkshop((w) => w.open);
  const words =
    props.status === "missing"
      ? {
          title: `There is no build ${props.build} here`,
          text: "Nothing was lost. The list of all builds is behind the name at the top left.",
        }
      : props.status === "unreachable"
        ? {
            title: "The workshop's server does not answer",
            text: "Nothing you entered is lost: what was saved is on its disk, what waits is in this browser and will be sent.",
          }
        : props.status === "unreadable"
          ? {
              title: "These documents cannot be read together",
              text: "They are kept as they are. What stands in the way:",
            }
          : { title: "A fault of ours", text: "Nothing was changed by it. Quote this word if you tell somebody:" };
  return (
    <section className="trouble" role="alert">
      <PageTitle>{words.title}</PageTitle>
      <p>{words.text}</p>
      <ul className="bullets">
        {props.problems.map((p) => (
          <li key={p}>{p}</li>
        ))}
      </ul>
      <div className="acts">
        <button type="button" className="btn" onClick={() => void open(props.build)}>
          Ask again
        </button>
      </div>
    </section>
  );
}

/** A new page begins at its top, or at the place named behind the # of the address; a field there takes the focus. */
function useGoTo(path: string, hash: string): void {
  const ready = useWorkshop((w) => w.status === "ready");
  useEffect(() => {
    if (hash === "") {
      if (path !== "" && lastStep.forward) scrollTo(0, 0);
      return;
    }
    // The link that skips the header is the browser's own business.
    if (!ready || hash === "main") return;
    const target = document.getElementById(decodeURIComponent(hash));
    target?.scrollIntoView({ block: "center" });
    if (target?.matches("input, select, textarea") === true) target.focus({ preventScroll: true });
  }, [path, hash, ready]);
}
