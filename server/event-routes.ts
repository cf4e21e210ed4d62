/**
 * How does a page hear at once that something was changed in another window, or by anybody else? A stream of events that
 * stays open (server-sent events, HTML Living Standard, section 9.2). It tells which documents changed, not what; the
 * page reads those anew. Streams are few, each says a sign of life, and all end when the server closes.
 */

import { setMaxListeners } from "node:events";
import { say } from "@coldset/core/texts";
import type { Commit, Workshop } from "@coldset/store";
import { streamSSE } from "hono/streaming";
import type { DescribedApi } from "./described-api.js";
import { problem } from "./problem.js";

export const BEAT_MS = 15_000;
/** A page hears of the first change at once; of those that follow, together after this. */
const TOGETHER_MS = 500;

/** @param most one browser listens once for all its windows */
export function eventRoutes(api: DescribedApi, workshop: Workshop, most: number, closing?: AbortSignal): void {
  let open = 0;
  if (closing !== undefined) setMaxListeners(most + 1, closing);
  api.route(
    {
      method: "get",
      path: "/api/events",
      summary: "Tells as it happens which documents have changed.",
      answers: {
        200: {
          means:
            'A stream: "began" once with the name of the workshop, "kept" with a JSON list of changed documents as "kind/id", "beat" every 15 s as a sign of life.',
          type: "text/event-stream",
        },
      },
      refuses: [503],
    },
    (c) => {
      if (open >= most || closing?.aborted === true) {
        c.header("Retry-After", "5");
        return problem(c, 503, {
          code: "too-many-streams",
          at: "/api/events",
          given: open,
          allowed: say("server.event-routes.at-once", { most }),
          message: say("server.event-routes.windows-listen-already-pages-still-work", { most }),
        });
      }
      // A question about the answer's head must not leave a stream open behind it.
      if (c.req.method === "HEAD") return c.body(null, 200, { "Content-Type": "text/event-stream" });
      open += 1;
      const response = streamSSE(c, async (stream) => {
        const told = new Told();
        const deaf = workshop.hearCommits((commits) => told.add(commits));
        const end = () => told.end();
        stream.onAbort(end);
        closing?.addEventListener("abort", end);
        try {
          await stream.writeSSE({ event: "began", data: workshop.name });
          while (!told.ended) {
            const documents = await told.next(BEAT_MS);
            if (told.ended) break;
            if (documents.length === 0) await stream.writeSSE({ event: "beat", data: "" });
            else {
              await stream.writeSSE({ event: "kept", data: JSON.stringify(documents) });
              await told.rest(TOGETHER_MS);
            }
          }
        } finally {
          deaf();
          closing?.removeEventListener("abort", end);
          open -= 1;
        }
      });
      // So that nothing is left standing of it when it ends, and a closing server does not wait for it.
      response.headers.set("Connection", "close");
      return response;
    },
  );
}

/** What a stream still has to tell. A page that reads slowly gets each document once, so this never grows past them. */
class Told {
  ended = false;
  readonly #waiting = new Set<string>();
  #wake = () => {};
  #endRest = () => {};

  add(commits: readonly Commit[]): void {
    for (const { kind, id } of commits) this.#waiting.add(`${kind}/${id}`);
    this.#wake();
  }

  end(): void {
    this.ended = true;
    this.#wake();
    this.#endRest();
  }

  /** So long at most, or until it ends. */
  async rest(restMs: number): Promise<void> {
    if (this.ended) return;
    await new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, restMs);
      this.#endRest = () => {
        clearTimeout(timer);
        resolve();
      };
    });
  }

  /** All that came in, or nothing where nothing did for so long. */
  async next(waitMs: number): Promise<readonly string[]> {
    if (this.#waiting.size === 0 && !this.ended) {
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, waitMs);
        this.#wake = () => {
          clearTimeout(timer);
          resolve();
        };
      });
    }
    const found = [...this.#waiting];
    this.#waiting.clear();
    return found;
  }
}
