/** Which page is shown? The address says it; the reckoning is the same for all of them. */
import { say } from "@coldset/core/texts";
import { useEffect, useMemo } from "react";
import { useShallow } from "zustand/react/shallow";
import { PageTitle, SheetFrame, type Station } from "../parts/sheet-frame.js";
import { type Moved, movedRows } from "../state/moved-rows.js";
import { toldBoard, toldReckoning, useNumbers } from "../state/numbers.js";
import { lastStep, type Route, readRoute, useAddress } from "../state/route.js";
import { useSingleKeys } from "../state/single-keys.js";
import { capital } from "../state/words.js";
import { useWorkshop } from "../state/workshop.js";
import { BoardPage } from "./board-page.js";
import { BuildsPage } from "./builds-page.js";
import { DoPage } from "./do-page.js";
import { FitPage } from "./fit-page.js";
import { HistoryPage } from "./history-page.js";
import { MeasurePage } from "./measure-page.js";
import { NewBuildPage } from "./new-build-page.js";
import { QuestionPage } from "./question-page.js";

export function App() {
  const address = useAddress();
  const [path = "/", hash = ""] = address.split("#");
  const route = readRoute(path);
  useGoTo(path, hash);
  switch (route.page) {
    case "builds":
      return (
        <SheetFrame title={say("web.app.builds")} sheet={say("web.app.0-builds")} here="/">
          <BuildsPage />
        </SheetFrame>
      );
    case "new":
      return (
        <SheetFrame title={say("web.builds-page.a-new-build")} sheet={say("web.app.0-new-build")} here="/new">
          <NewBuildPage />
        </SheetFrame>
      );
    case "nowhere":
      return (
        <SheetFrame title={say("web.app.no-such-page")} sheet={say("web.app.0-builds")}>
          <div className="pagehead">
            <div>
              <PageTitle>{say("web.app.there-is-no-such-page")}</PageTitle>
              <p>
                {say("web.app.nothing-was-lost")}
                <a href="/">{say("web.app.all-builds-are-here")}</a>
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
  ask: say("web.app.1-questions"),
  question: say("web.app.1-question"),
  measure: say("web.app.2-survey"),
  fit: say("web.app.3-joints"),
  do: say("web.app.4-plan"),
  history: say("web.app.history"),
} as const;
const STATION: Readonly<Partial<Record<keyof typeof SHEETS, Station>>> = {
  ask: "ask",
  question: "ask",
  measure: "measure",
  fit: "fit",
  do: "do",
};

type BuildRoute = Exclude<Route, { readonly page: "builds" | "new" | "nowhere" }>;

function BuildOf({ route }: { readonly route: BuildRoute }) {
  const {
    status,
    problems,
    reckoning: made,
    last,
    docs,
    said,
    open,
    buildId,
  } = useWorkshop(
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
  const numbers = useNumbers();
  const reckoning = useMemo(() => (made === undefined ? undefined : toldReckoning(made, numbers)), [made, numbers]);
  const moved = useMemo(() => {
    if (last === undefined || reckoning === undefined) return new Map<number, Moved>();
    const rows = movedRows(toldBoard(last.before.board, numbers), reckoning.board);
    return new Map([...rows].map(([n, row]) => [n, numbers.told(row)]));
  }, [last, reckoning, numbers]);
  const revision = docs.find((d) => d.kind === "build")?.revision;
  const row = route.page === "question" ? reckoning?.board.find((b) => b.n === route.n) : undefined;
  const title = row === undefined ? `${capital(route.build)}, ${route.page}` : `${row.n} ${row.question}`;
  const here = buildId === route.build;
  const station = STATION[route.page];
  const spoken =
    said !== ""
      ? said
      : last === undefined
        ? ""
        : moved.size === 0
          ? say("web.app.nothing-on-the-board-moved")
          : say("web.app.moved", { questions: [...moved.keys()].join(", ") });
  return (
    <SheetFrame
      title={title}
      build={route.build}
      job={capital(route.build)}
      sheet={SHEETS[route.page]}
      {...(station === undefined ? {} : { station })}
      said={spoken}
      {...(revision === undefined ? {} : { revision: String(revision) })}
    >
      {!here || status === "loading" ? null : route.page === "history" && status !== "missing" ? (
        <HistoryPage build={route.build} />
      ) : reckoning === undefined || status !== "ready" ? (
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
          title: say("web.app.there-is-no-build-here", { build: props.build }),
          text: say("web.app.nothing-was-lost-the-list-of"),
        }
      : props.status === "unreachable"
        ? {
            title: say("web.builds-page.the-workshop-s-server-does-not"),
            text: say("web.app.nothing-you-entered-is-lost-what"),
          }
        : props.status === "unreadable"
          ? {
              title: say("web.app.these-documents-cannot-be-read-together"),
              text: say("web.app.they-are-kept-as-they-are"),
            }
          : { title: say("web.app.a-fault-of-ours"), text: say("web.app.nothing-was-changed-by-it-quote") };
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
          {say("web.builds-page.ask-again")}
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
