/** Is this request short enough, and is there time for it? Looked at before anything of it is acted on. */
import { say } from "@coldset/core/texts";
import type { Context, MiddlewareHandler } from "hono";
import { HTTPException } from "hono/http-exception";
import { timeout } from "hono/timeout";
import type { Limits } from "./limits.js";
import { problem } from "./problem.js";

/** Address, path and headers. */
export function limitLength(limits: Limits): MiddlewareHandler {
  return async (c, next) => {
    const { pathname, search } = new URL(c.req.url);
    const letters = pathname.length + search.length;
    if (letters > limits.urlLetters) {
      return problem(c, 414, {
        code: "url-too-long",
        at: "path",
        given: letters,
        allowed: say("server.limit-request.letters-at-most", { urlLetters: limits.urlLetters }),
        message: say("server.limit-request.the-address-has-letters-at-most", {
          letters,
          urlLetters: limits.urlLetters,
        }),
      });
    }
    const steps = pathname.split("/").length - 1;
    if (steps > limits.pathSteps) {
      return problem(c, 414, {
        code: "path-too-deep",
        at: "path",
        given: steps,
        allowed: say("server.limit-request.steps-at-most", { pathSteps: limits.pathSteps }),
        message: say("server.limit-request.the-path-has-steps-at-most", { steps, pathSteps: limits.pathSteps }),
      });
    }
    const headers = [...c.req.raw.headers].length;
    if (headers > limits.headerCount) {
      return problem(c, 431, {
        code: "too-many-headers",
        at: "headers",
        given: headers,
        allowed: say("server.limit-request.at-most", { headerCount: limits.headerCount }),
        message: say("server.limit-request.the-request-has-headers-at-most", {
          headers,
          headerCount: limits.headerCount,
        }),
      });
    }
    return next();
  };
}

/**
 * How many are answered at once? A body that is still coming in counts, too. More than that wait for their turn, in the
 * order they came; where too many wait already, or for too long, the answer is that.
 */
export function limitAtOnce(
  limits: Pick<Limits, "atOnce"> & Partial<Pick<Limits, "waiting" | "waitingMs">>,
): MiddlewareHandler {
  const { atOnce, waiting: mostWaiting = 0, waitingMs = 0 } = limits;
  /** Each is called with whether its turn has come. */
  const waiting = new Set<(turn: boolean) => void>();
  let underWay = 0;
  const turn = () =>
    new Promise<boolean>((resolve) => {
      const called = (come: boolean) => {
        clearTimeout(late);
        waiting.delete(called);
        resolve(come);
      };
      const late = setTimeout(() => called(false), waitingMs);
      waiting.add(called);
    });
  return async (c, next) => {
    if (underWay >= atOnce) {
      if (waiting.size >= mostWaiting || !(await turn()))
        return tooBusy(c, say("server.limit-request.requests-at-once", { atOnce }));
      // The place of the one that called was handed on.
    } else underWay += 1;
    try {
      await next();
    } finally {
      const [first] = waiting;
      if (first === undefined) underWay -= 1;
      else first(true);
    }
  };
}

export function tooBusy(c: Context, allowed: string): Response {
  c.header("Retry-After", "1");
  c.header("Connection", "close");
  const message = say("server.limit-request.the-workshop-answers-at-most-try", { allowed });
  return problem(c, 503, { code: "too-busy", at: "", given: null, allowed, message });
}

export function limitTime(limits: Limits): MiddlewareHandler {
  return timeout(limits.answerMs, (c) => {
    const seconds = limits.answerMs / 1000;
    c.header("Connection", "close");
    const res = problem(c, 503, {
      code: "too-slow",
      at: "",
      given: null,
      allowed: say("server.limit-request.s-at-most", { seconds }),
      message: say("server.limit-request.the-answer-was-not-there-after", { seconds }),
    });
    return new HTTPException(503, { res });
  });
}
