/**
 * How are builds reckoned while the server goes on answering? In one thread beside it, which is asked one question after
 * the other. Where the thread ends, or is silent for too long, the question that it was at fails as a fault of ours, and
 * the others are put to a new one. See docs/decisions/0008-one-thread-reckons.md.
 */
import { Worker } from "node:worker_threads";
import type { BuildStanding } from "@coldset/core/questions";
import type { BuildWork } from "@coldset/server";
import { type Answer, type Asked, asker, type Question } from "./question.js";

/** Far above the longest reckoning that we know, and below the time after which the server gives up an answer. */
const PATIENCE_MS = 30_000;
/** For its documents and the 32 builds that it remembers. One that needs more is ended by the system, and begun anew. */
const MEMORY_MB = 512;

export interface Reckoner extends Pick<BuildWork, "check" | "standing"> {
  /** Ends the thread at once. What was asked and not answered fails. */
  readonly close: () => Promise<void>;
}

interface Waiting extends Asked {
  readonly resolve: (value: never) => void;
  readonly reject: (cause: Error) => void;
}

interface Thread {
  readonly worker: Worker;
  readonly question: (asked: Asked) => Question;
}

/** @param file the built worker.ts */
export function reckonInWorker(file: URL, { patienceMs = PATIENCE_MS, memoryMb = MEMORY_MB } = {}): Reckoner {
  let thread: Thread | undefined;
  let closed = false;
  let asked = 0;
  let late: NodeJS.Timeout | undefined;
  /** In the order in which they were put, which is that of the answers. */
  const waiting: Waiting[] = [];

  const start = (): Thread => {
    // Options of the process (`-e`, `--input-type`) are not meant for a file of its own, and would keep it from starting.
    const worker = new Worker(file, { execArgv: [], resourceLimits: { maxOldGenerationSizeMb: memoryMb } });
    const started: Thread = { worker, question: asker() };
    worker.on("message", (answer: Answer) => hear(started, answer));
    let why: Error | undefined;
    worker.on("error", (cause) => {
      why = cause instanceof Error ? cause : new Error(String(cause));
    });
    // Comes after everything that the thread had said, so that the first one waiting is the one that it was at.
    worker.on("exit", (code) => lose(started, why ?? new Error(`the thread that reckons ended with ${code}`)));
    // It keeps the process from ending only while it is waited for. After the listeners, which would take that back.
    worker.unref();
    thread = started;
    return started;
  };
  const put = ({ number, asks, docs, buildId }: Waiting) => {
    const { worker, question } = thread ?? start();
    worker.postMessage(question({ number, asks, docs, buildId }));
  };
  /** The time of a question begins when it is the first. */
  const waitForFirst = () => {
    clearTimeout(late);
    const at = thread;
    if (at === undefined || waiting.length === 0) return void at?.worker.unref();
    at.worker.ref();
    late = setTimeout(() => lose(at, new Error(`nothing was reckoned within ${patienceMs} ms`)), patienceMs);
    late.unref();
  };
  const hear = (from: Thread, answer: Answer) => {
    if (from !== thread) return;
    const first = waiting[0];
    if (first?.number !== answer.number) return lose(from, new Error(`answer ${answer.number} was not waited for`));
    waiting.shift();
    waitForFirst();
    if (answer.kind === "answered") first.resolve(answer.value as never);
    else first.reject(Object.assign(new Error(answer.message), { stack: answer.trace }));
  };
  const lose = (lost: Thread, cause: Error) => {
    // One that we ended ourselves tells its end, too.
    if (lost !== thread) return;
    thread = undefined;
    void lost.worker.terminate();
    waiting.shift()?.reject(cause);
    for (const other of waiting) put(other);
    waitForFirst();
  };
  const ask = <T>(asks: Asked["asks"], docs: Asked["docs"], buildId: string): Promise<T> =>
    new Promise<T>((resolve, reject) => {
      if (closed) throw new Error("nothing is reckoned any more: the workshop is closed");
      asked += 1;
      const question: Waiting = { number: asked, asks, docs, buildId, resolve, reject };
      put(question);
      waiting.push(question);
      if (waiting.length === 1) waitForFirst();
    });
  // So that the first question does not wait for the start.
  start();
  return {
    check: (docs, buildId) => ask<string>("check", docs, buildId),
    standing: (docs, buildId) => ask<BuildStanding | null>("standing", docs, buildId),
    close: async () => {
      closed = true;
      clearTimeout(late);
      const ended = thread;
      thread = undefined;
      for (const { reject } of waiting.splice(0)) reject(new Error("the workshop was closed before this was reckoned"));
      await ended?.worker.terminate();
    },
  };
}
