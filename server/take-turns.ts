/**
 * How do many requests at the same moment leave room for those who come just then? Each begins in a turn of the event loop
 * of its own: between two of them new connections are taken in (one a turn, by the loop's own rule), bodies read and
 * answers sent. Without it all that had arrived together would be worked off in one go, and whoever came meanwhile would
 * wait for the whole of it, a second for each ten newcomers.
 */
import type { MiddlewareHandler } from "hono";

export function takeTurns(): MiddlewareHandler {
  const waiting: (() => void)[] = [];
  const callNext = () => {
    const call = waiting.shift();
    if (call === undefined) return;
    call();
    // One that is asked for here comes after the next look at the network.
    if (waiting.length > 0) setImmediate(callNext);
  };
  return async (_, next) => {
    await new Promise<void>((turn) => {
      waiting.push(turn);
      if (waiting.length === 1) setImmediate(callNext);
    });
    return next();
  };
}
