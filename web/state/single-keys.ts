/** Which key does what? Numbers open a question, n goes to the next step, u takes back, r puts back. Off inside fields. */
import { useEffect } from "react";
import { stepHref } from "../parts/next-link.js";
import { putBack, takeBack } from "./history.js";
import { go, linkTo } from "./route.js";
import { useSettings } from "./settings.js";
import { useWorkshop } from "./workshop.js";

/** So long a 1 or a 2 waits for its second figure. */
const SECOND_FIGURE_MS = 700;

/** The number meant so far, and whether another figure could still follow. */
export function numberTyped(before: string, key: string): { readonly text: string; readonly more: boolean } {
  const joined = Number(before + key);
  const text = joined >= 1 && joined <= 20 ? before + key : key;
  return { text, more: text === "1" || text === "2" };
}

function insideField(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest("input, textarea, select, [contenteditable]") !== null;
}

export function useSingleKeys(build: string): void {
  const on = useSettings((s) => s.keys);
  useEffect(() => {
    if (!on) return;
    let typed = "";
    let timer: ReturnType<typeof setTimeout> | undefined;
    const open = () => {
      const n = Number(typed);
      typed = "";
      if (n >= 1 && n <= 20) go(linkTo.question(build, n));
    };
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.repeat || insideField(event.target)) return;
      if (/^\d$/.test(event.key)) {
        clearTimeout(timer);
        const next = numberTyped(typed, event.key);
        typed = next.text;
        if (next.more) timer = setTimeout(open, SECOND_FIGURE_MS);
        else open();
      } else if (event.key === "u") {
        void takeBack(build);
      } else if (event.key === "r") {
        void putBack(build);
      } else if (event.key === "n") {
        const row = useWorkshop.getState().reckoning?.board.find((b) => b.open && b.next !== undefined);
        const href = row?.next === undefined ? undefined : stepHref(build, row.next, row.n);
        if (href !== undefined) go(href);
      }
    };
    document.addEventListener("keydown", press);
    return () => {
      clearTimeout(timer);
      document.removeEventListener("keydown", press);
    };
  }, [on, build]);
}
