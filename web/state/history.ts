/**
 * What can be taken back and put back, on this visit and after any restart? What this window made itself and what still
 * waits is taken back here at once, and works offline; everything before that the records take back.
 */
import { say as sayText } from "@coldset/core/texts";
import { differenceWords } from "@coldset/core/workshop";
import { useEffect } from "react";
import { create } from "zustand";
import { useHealth } from "./health.js";
import {
  type Asked,
  askHistory,
  sendRedo,
  sendRestore,
  sendUndo,
  type ToldDocument,
  type Written,
} from "./history-calls.js";
import { turnIds } from "./turn-ids.js";
import { turning } from "./turning.js";
import { useWorkshop } from "./workshop.js";

export interface HistoryTop {
  readonly build: string;
  /** The change that the records would take back, or put back, next. */
  readonly undo: number | null;
  readonly redo: number | null;
  /** Grows with each change of the records that this window has heard of. */
  readonly newest: number;
  /** What was last taken back or put back, or why it could not be. */
  readonly notice: string;
}

export const useHistoryTop = create<HistoryTop>()(() => ({ build: "", undo: null, redo: null, newest: 0, notice: "" }));

/** Keeps the above up to date while a page of the build is shown. */
export function useFollowHistory(build: string): void {
  const ready = useWorkshop((w) => w.buildId === build && w.status !== "loading");
  const revisions = useWorkshop((w) => w.docs.map((d) => d.revision).join());
  const waits = useWorkshop((w) => w.queue.waiting.length > 0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each new revision is a reason to ask again.
  useEffect(() => {
    if (ready && !waits) void askTop(build);
  }, [build, ready, revisions, waits]);
}

async function askTop(build: string): Promise<void> {
  const asked = await askHistory(build, 1);
  if (asked.kind !== "answered") return;
  const { undo, redo, newest } = asked.value;
  useHistoryTop.setState({ build, undo, redo, newest });
}

/** Takes back what was made last: on this page, else in the records. Given: that one change. */
export async function takeBack(build: string, change?: number): Promise<boolean> {
  const w = useWorkshop.getState();
  if (change === undefined && w.made.length > 0) {
    w.takeBack();
    return true;
  }
  return turn(build, sayText("web.history.taken-back"), sayText("web.history.take-anything-else-back"), () =>
    sendUndo(build, change, idFor(build, "undo", change)),
  );
}

export function putBack(build: string): Promise<boolean> {
  return turn(build, sayText("web.history.put-back"), sayText("web.history.put-anything-back"), () =>
    sendRedo(build, idFor(build, "redo")),
  );
}

export function restore(build: string, name: string, seen: number): Promise<boolean> {
  return turn(build, sayText("web.history.restored-to", { name }), sayText("web.history.restore-anything"), () =>
    sendRestore(build, name, seen),
  );
}

const ids = turnIds(() => crypto.randomUUID().replaceAll("-", ""));

function idFor(build: string, what: "undo" | "redo", change?: number): string {
  const top = useHistoryTop.getState();
  return ids.idFor({ build, what, change, newest: top.build === build ? top.newest : 0 });
}

/** Says why it cannot be done now, or does it in the records and shows them as they are then. */
function turn(build: string, done: string, todo: string, send: () => Promise<Asked<Written>>): Promise<boolean> {
  // Pressed twice is meant twice: the second waits for the first.
  const turned = turns.then(() => turnNow(build, done, todo, send));
  turns = turned.catch(() => false);
  return turned;
}

let turns: Promise<boolean> = Promise.resolve(true);

async function turnNow(
  build: string,
  done: string,
  todo: string,
  send: () => Promise<Asked<Written>>,
): Promise<boolean> {
  const w = useWorkshop.getState();
  const say = (words: string) => {
    useHistoryTop.setState({ notice: words });
    w.say(words);
    return false;
  };
  if (useHealth.getState().reached === false)
    return say(sayText("web.history.offline-only-the-server-can", { whatIsAsked: todo }));
  if (!(await allSaved())) return say(sayText("web.history.something-still-waits-to-be-saved", { whatIsAsked: todo }));
  turning.on = true;
  try {
    const asked = await send();
    if (asked.kind === "unreachable")
      return say(sayText("web.history.the-server-does-not-answer-only", { whatIsAsked: todo }));
    ids.answered();
    if (asked.kind === "no") return say(asked.messages.join(" "));
    await w.reload();
    if (asked.kind === "moved-on") return say(sayText("web.history.somebody-changed-the-build-meanwhile-so"));
    const words = `${done}: ${documentsWords(asked.value.documents)}.`;
    useHistoryTop.setState({ notice: words });
    w.turned(words);
    await askTop(build);
    return true;
  } finally {
    turning.on = false;
  }
}

/** What was just entered is on its way: so long it is waited for. */
const ON_ITS_WAY_MS = 3_000;

function allSaved(): Promise<boolean> {
  const saved = () => useWorkshop.getState().queue.waiting.length === 0;
  if (saved()) return Promise.resolve(true);
  return new Promise((done) => {
    const end = (all: boolean) => {
      clearTimeout(timer);
      stop();
      done(all);
    };
    const stop = useWorkshop.subscribe(() => {
      if (saved()) end(true);
    });
    const timer = setTimeout(() => end(false), ON_ITS_WAY_MS);
  });
}

const MOST_LINES = 3;

function documentsWords(documents: readonly ToldDocument[]): string {
  const lines = documents.flatMap((d) => differenceWords(d.difference).map((line) => `${d.kind} ${d.id}, ${line}`));
  if (lines.length === 0) return sayText("web.history.nothing-differs");
  const rest = lines.length - MOST_LINES;
  return rest > 0
    ? sayText("web.history.and-more", { mostLines: lines.slice(0, MOST_LINES).join("; "), rest })
    : lines.join("; ").replace(/\.$/, "");
}
