/**
 * On which days is this shop open, counted from the first session?
 * Inputs: a week of opening days with a ceiling of hours, or a list of day numbers; hours a session; maybe the date
 *   of the first session. Answer: a calendar, or refusals; with what was assumed.
 * Where the ceiling allows fewer sessions than there are open days, the first ones in the week are used.
 */

import type { Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { at } from "./at.js";
import { type Calendar, CLOCK_EPS_H, makeCalendar } from "./calendar.js";
import { weekDayOf } from "./plan-date.js";
import { type Shop, WEEK_DAYS, type WeekDay } from "./plan-types.js";

export interface ShopCalendar {
  readonly calendar: Calendar;
  /** Sessions there really are: the list's length; a weekly shop stays open. */
  readonly sessionsListed: number;
  readonly startDay: WeekDay | undefined;
  readonly daysUsed: readonly WeekDay[];
}

export function shopCalendar(
  shop: Shop,
  startDate: string | undefined,
):
  | { readonly kind: "calendar"; readonly shop: ShopCalendar }
  | { readonly kind: "refused"; readonly refusals: Refusal[] } {
  const refusals: Refusal[] = [];
  const refuse = (code: string, place: string, given: unknown, allowed: string, message: string) =>
    refusals.push({ code, at: place, given, allowed, message });

  if (!(shop.sessionH > 0 && shop.sessionH <= 24)) {
    refuse(
      "session-length",
      "shop.sessionH",
      shop.sessionH,
      say("plan.shop-calendar.over-0-and-up-to-24"),
      say("plan.shop-calendar.a-session-of-h-cannot-be", { sessionH: shop.sessionH }),
    );
  }
  const dateDay = startDate === undefined ? undefined : weekDayOf(startDate);
  if (startDate !== undefined && dateDay === undefined) {
    refuse(
      "bad-date",
      "startDate",
      startDate,
      say("plan.shop-calendar.a-date-as-yyyy-mm-dd"),
      say("plan.shop-calendar.is-no-date-write-it-as", { startDate }),
    );
  }

  if (shop.kind === "listed") {
    if (shop.days.length === 0)
      refuse(
        "no-sessions",
        "shop.days",
        [],
        say("plan.shop-calendar.at-least-one-day"),
        say("plan.shop-calendar.no-session-is-listed"),
      );
    shop.days.forEach((day, i) => {
      const previous = shop.days[i - 1];
      const overlaps = previous !== undefined && (day - previous) * 24 < shop.sessionH - CLOCK_EPS_H;
      if (!Number.isFinite(day) || overlaps) {
        refuse(
          "bad-day",
          `shop.days[${i}]`,
          day,
          say("plan.shop-calendar.rising-day-numbers-each-once"),
          say("plan.shop-calendar.session-is-on-day-list-the", { session: i + 1, day }),
        );
      }
    });
    if (refusals.length > 0) return { kind: "refused", refusals };
    const calendar = makeCalendar(shop.days, shop.sessionH);
    return { kind: "calendar", shop: { calendar, sessionsListed: shop.days.length, startDay: dateDay, daysUsed: [] } };
  }

  const open = WEEK_DAYS.filter((d) => shop.openDays.includes(d));
  const sessions = Math.min(open.length, Math.floor(shop.hoursPerWeek / shop.sessionH + 1e-9));
  const used = open.slice(0, Math.max(sessions, 0));
  if (open.length === 0)
    refuse(
      "no-open-day",
      "shop.openDays",
      shop.openDays,
      say("plan.shop-calendar.at-least-one-week-day"),
      say("plan.shop-calendar.the-shop-has-no-open-day"),
    );
  else if (used.length === 0) {
    refuse(
      "no-whole-session",
      "shop.hoursPerWeek",
      shop.hoursPerWeek,
      say("plan.shop-calendar.at-least-one-session-of-h", { sessionH: shop.sessionH }),
      say("plan.shop-calendar.h-a-week-hold-no-whole", { hoursPerWeek: shop.hoursPerWeek, sessionH: shop.sessionH }),
    );
  }
  const startDay = shop.startDay ?? dateDay ?? used[0];
  if (startDay !== undefined && used.length > 0 && !used.includes(startDay)) {
    refuse(
      "closed-on-start-day",
      "shop.startDay",
      startDay,
      used.join(", "),
      say("plan.shop-calendar.the-first-session-is-on-a", { startDay, used: used.join(", ") }),
    );
  }
  if (shop.startDay !== undefined && dateDay !== undefined && shop.startDay !== dateDay) {
    refuse(
      "start-day-and-date-differ",
      "startDate",
      startDate,
      `a ${shop.startDay}`,
      say("plan.shop-calendar.is-a-but-the-first-session", { startDate, dateDay, startDay: shop.startDay }),
    );
  }
  if (refusals.length > 0 || startDay === undefined) return { kind: "refused", refusals };
  const from = WEEK_DAYS.indexOf(startDay);
  const days = used.map((d) => (WEEK_DAYS.indexOf(d) - from + 7) % 7).sort((a, b) => a - b);
  const gaps = days.map((d, i) => (i + 1 < days.length ? at(days, i + 1) : 7) - d);
  if (Math.min(...gaps) * 24 < shop.sessionH) throw new Error("sessions of one shop overlap");
  return {
    kind: "calendar",
    shop: {
      calendar: makeCalendar(days, shop.sessionH, { windows: days.length, days: 7 }),
      sessionsListed: Number.POSITIVE_INFINITY,
      startDay,
      daysUsed: used,
    },
  };
}
