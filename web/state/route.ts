/** Which page is asked for? Every page has an address of its own that can be kept and sent. */
import { useSyncExternalStore } from "react";

export type Route =
  | { readonly page: "builds" }
  | { readonly page: "new" }
  | { readonly page: "history"; readonly build: string }
  | { readonly page: "ask" | "measure" | "fit" | "do"; readonly build: string }
  | { readonly page: "question"; readonly build: string; readonly n: number }
  | { readonly page: "nowhere" };

export function readRoute(path: string): Route {
  const [first, build, station, n, more] = path
    .split("/")
    .filter((p) => p !== "")
    .map(decoded);
  if (first === undefined) return { page: "builds" };
  if (first === "new" && build === undefined) return { page: "new" };
  if (first !== "b" || build === undefined || more !== undefined) return { page: "nowhere" };
  if (station === undefined) return { page: "ask", build };
  if ((station === "measure" || station === "fit" || station === "do") && n === undefined)
    return { page: station, build };
  if (station === "history" && n === undefined) return { page: "history", build };
  const number = Number(n);
  if (station === "q" && Number.isInteger(number) && number >= 1 && number <= 20)
    return { page: "question", build, n: number };
  return { page: "nowhere" };
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    // A broken escape is shown as it stands; the build will simply not be found.
    return part;
  }
}

export const linkTo = {
  ask: (build: string) => `/b/${encodeURIComponent(build)}`,
  question: (build: string, n: number) => `/b/${encodeURIComponent(build)}/q/${n}`,
  measure: (build: string) => `/b/${encodeURIComponent(build)}/measure`,
  fit: (build: string) => `/b/${encodeURIComponent(build)}/fit`,
  do: (build: string) => `/b/${encodeURIComponent(build)}/do`,
  history: (build: string) => `/b/${encodeURIComponent(build)}/history`,
};

const listeners = new Set<() => void>();
const back = () => {
  lastStep.forward = false;
  changed();
};
const changed = () => {
  for (const listen of listeners) listen();
};

/** Was the last step a new page? Going back is none: the browser puts the sheet where it was. */
export const lastStep = { forward: false };

export function go(href: string): void {
  lastStep.forward = true;
  history.pushState(null, "", href);
  changed();
}

function subscribe(listen: () => void): () => void {
  if (listeners.size === 0) addEventListener("popstate", back);
  listeners.add(listen);
  return () => {
    listeners.delete(listen);
    if (listeners.size === 0) removeEventListener("popstate", back);
  };
}

const here = () => location.pathname + location.hash;

/** Path and fragment of the address, as one text that changes with every step. */
export function useAddress(): string {
  return useSyncExternalStore(subscribe, here);
}

/** A plain click on a link inside the page is a step without loading anything anew. */
export function followInside(event: MouseEvent): void {
  if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey)
    return;
  const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
  const href = link?.getAttribute("href");
  if (href === null || href === undefined || link?.hasAttribute("download") || link?.hasAttribute("target")) return;
  if (href === "/" || href === "/new" || href.startsWith("/b/")) {
    event.preventDefault();
    go(href);
  }
}
