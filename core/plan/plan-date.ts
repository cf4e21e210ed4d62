/**
 * Which date lies so many days after another, and which day of the week is it? Plain calendar arithmetic in the
 * Gregorian calendar; no clock is read.
 * Inputs: date as YYYY-MM-DD; days, whole, may be negative. Answer: YYYY-MM-DD or a week day; undefined where the
 * text is no date.
 */
import { at } from "./at.js";
import { WEEK_DAYS, type WeekDay } from "./plan-types.js";

/** Days from 1970-01-01; undefined where the text is no date. */
function dayNumber(text: string): number | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return undefined;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || day < 1 || day > 31) return undefined;
  // years start in March, so that the leap day is the last
  const y = month > 2 ? year : year - 1;
  const m = (month + 9) % 12;
  const days = 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  const number = days + Math.floor((153 * m + 2) / 5) + day - 1 - 719_468;
  return dateText(number) === text ? number : undefined;
}

function dateText(number: number): string {
  const z = number + 719_468;
  const era = Math.floor(z / 146_097);
  const inEra = z - era * 146_097;
  const y = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36_524) - Math.floor(inEra / 146_096)) / 365,
  );
  const inYear = inEra - (365 * y + Math.floor(y / 4) - Math.floor(y / 100));
  const m = Math.floor((5 * inYear + 2) / 153);
  const day = inYear - Math.floor((153 * m + 2) / 5) + 1;
  const month = m < 10 ? m + 3 : m - 9;
  const year = y + era * 400 + (month <= 2 ? 1 : 0);
  const two = (n: number) => String(n).padStart(2, "0");
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;
}

export function dateAfter(date: string, days: number): string | undefined {
  const start = dayNumber(date);
  return start === undefined ? undefined : dateText(start + Math.floor(days));
}

export function weekDayOf(date: string): WeekDay | undefined {
  const number = dayNumber(date);
  // 1970-01-01 was a Thursday
  return number === undefined ? undefined : at(WEEK_DAYS, (((number + 3) % 7) + 7) % 7);
}
