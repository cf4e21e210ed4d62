/** Sums and clock worked by hand beside each case; no outside source is needed for them. */
import { describe, expect, it } from "vitest";
import { makeCalendar } from "./calendar.js";
import { intoSessions } from "./into-sessions.js";
import { meantSessions } from "./meant-sessions.js";
import type { Operation } from "./plan-types.js";

const op = (
  id: string,
  handsOnH: number,
  session: number | undefined,
  after: string[] = [],
  waitDays = 0,
): Operation => ({
  id,
  what: id,
  handsOnH,
  waitDays,
  needs: [],
  after,
  ...(session === undefined ? {} : { session }),
});
const WEEKLY = makeCalendar([0, 7, 14], 2.5);

describe("the sessions that the builder means", () => {
  it("nothing is said where no session is named, or where all fits", () => {
    expect(meantSessions([op("a", 9, undefined)], WEEKLY, "evening")).toEqual([]);
    // 1.5 + 1.0 = 2.5: full to the minute
    expect(meantSessions([op("a", 1.5, 1), op("b", 1, 1)], WEEKLY, "evening")).toEqual([]);
  });
  it("1.5 + 1.25 = 2.75 in 2.5: 0.25 over, evening 2 has 2.5 - 2.0 = 0.5 free", () => {
    const [first, ...rest] = meantSessions([op("a", 1.5, 1), op("b", 1.25, 1), op("c", 2, 2)], WEEKLY, "evening");
    expect(rest).toEqual([]);
    expect(first).toMatchObject({ code: "session-too-full", at: "a" });
    expect(first?.message).toMatch(/Evening 1 holds 2\.8 h of tasks \(a, b\) in 2\.5 h/);
    expect(first?.wayOut).toMatch(/evening 2 has 0\.5 h/);
  });
  it("one task longer than a session is another finding's business", () => {
    expect(meantSessions([op("a", 4, 1)], WEEKLY, "evening")).toEqual([]);
  });
  it("ends 2.0 h into evening 1, 7 days later it is 2.0 h into evening 2: 0.5 h fits, 0.6 h does not", () => {
    const with_ = (h: number) => meantSessions([op("a", 2, 1, [], 7), op("b", h, 2, ["a"])], WEEKLY, "evening");
    expect(with_(0.5)).toEqual([]);
    expect(with_(0.6)).toMatchObject([{ code: "meant-too-soon", at: "b" }]);
    // 8 days: not ready before day 8, a day after evening 2
    expect(meantSessions([op("a", 2, 1, [], 8), op("b", 0.1, 2, ["a"])], WEEKLY, "evening")[0]?.message).toMatch(
      /not ready on that evening at all/,
    );
  });
});

describe("ways into the sessions there are", () => {
  it("2 h, a week's wait, 2 h, 1 h on three evenings of 2.5: 3 by the calendar day, and by the clock one more", () => {
    const list = [op("a", 2, undefined, [], 7), op("b", 2, undefined, ["a"]), op("c", 1, undefined, ["b"])];
    // Clock: a on day 0, ready on day 7 at 2.0 h, so b on day 14 and c on day 21: 4. Calendar: b on day 7, c on day 14: 3.
    // Cut: b 0.5 on day 7 and 1.5 on day 14, c the hour that is left there: 3.
    expect(intoSessions(list, WEEKLY)).toMatchObject([
      { sessions: 3, fits: true },
      { sessions: 3, fits: true },
      { sessions: 3, fits: true },
    ]);
    // Without a wait only the cutting is tried.
    expect(intoSessions([op("a", 2, undefined)], WEEKLY).map((w) => w.what)).toEqual(["work cut at closing time"]);
  });
});
