/**
 * Where does the focus go when the thing that had it goes away: a choice that was made, a row that was taken out, a form
 * that was sent? To the nearest thing left, so that nobody who works by keyboard or by ear begins at the top again.
 */

const HEADINGS = "h1, h2, h3, h4";
/** A button is never taken: the next press of the same key would do something that nobody asked for. */
const ELSE = "a[href], p";

/** What is nearest: a heading, a link or a line inside the closest place that is still there. */
function nearest(path: readonly Element[]): HTMLElement | undefined {
  for (const place of path) {
    if (!place.isConnected) continue;
    const shown = (list: string) =>
      [...place.querySelectorAll<HTMLElement>(list)].find(
        (el) => el.checkVisibility() && !el.matches(".hide, .hide *"),
      );
    const found = shown(HEADINGS) ?? shown(ELSE);
    if (found !== undefined) return found;
  }
  return undefined;
}

function pathOf(target: Element): readonly Element[] {
  const path: Element[] = [];
  for (let el: Element | null = target; el !== null; el = el.parentElement) path.push(el);
  return path;
}

export function keepFocus(): void {
  let path: readonly Element[] = [];
  let waits = false;
  document.addEventListener("focusin", (event) => {
    if (event.target instanceof Element) path = pathOf(event.target);
  });
  // Somebody who leaves a thing by pointer, onto the bare sheet, has let go of it.
  document.addEventListener("pointerdown", () => {
    if (document.activeElement === document.body) path = [];
  });
  new MutationObserver(() => {
    const [last] = path;
    if (waits || last === undefined || last.isConnected) return;
    waits = true;
    // A page that opens, or an outcome that is shown, takes the focus itself: it comes first.
    setTimeout(() => {
      waits = false;
      if (path[0]?.isConnected !== false || document.activeElement !== document.body) return;
      const place = nearest(path);
      if (place === undefined) return;
      if (place.tabIndex < 0) place.tabIndex = -1;
      place.focus({ preventScroll: place.matches("h1") });
    });
  }).observe(document.body, { childList: true, subtree: true });
}
