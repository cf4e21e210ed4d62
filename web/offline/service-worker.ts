/**
 * How does the page open when its server is gone? From this device: all files of one build of the page are kept together,
 * each checked against the hash that it was built with, so that old and new never mix. Records are not its business; the
 * page keeps those itself (state/kept-records.ts), and nothing under /api/ passes through here.
 */

export type {};

/** Put before this file when the page is built (build-service-worker.ts). */
declare const PAGE_OF_THIS_BUILD: {
  readonly version: string;
  /** Address and integrity of each file. */
  readonly files: readonly (readonly [string, string])[];
};

interface Waiting extends Event {
  readonly waitUntil: (work: Promise<unknown>) => void;
}
interface Asked extends Waiting {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}
interface OwnScope {
  readonly location: Location;
  readonly registration: { readonly waiting: { readonly postMessage: (word: string) => void } | null };
  readonly clients: {
    readonly claim: () => Promise<void>;
    readonly matchAll: (which: { readonly type: "window" }) => Promise<readonly unknown[]>;
  };
  readonly skipWaiting: () => Promise<void>;
  readonly addEventListener: {
    (what: "install" | "activate", hear: (event: Waiting) => void): void;
    (what: "fetch", hear: (event: Asked) => void): void;
    (what: "message", hear: (event: MessageEvent) => void): void;
  };
}
const worker = self as unknown as OwnScope;

const PREFIX = "coldset-page-";
const NOW = PREFIX + PAGE_OF_THIS_BUILD.version;
const PAGE = "/index.html";
const OWN = new Set(PAGE_OF_THIS_BUILD.files.map(([address]) => address));
const TAKE_OVER = "take over";

async function keepAll(): Promise<void> {
  const cache = await caches.open(NOW);
  // One file that is not of this build, or not there, and the whole is not installed: the old one goes on.
  try {
    await cache.addAll(
      PAGE_OF_THIS_BUILD.files.map(([address, integrity]) => new Request(address, { integrity, cache: "reload" })),
    );
  } catch (cause) {
    await caches.delete(NOW);
    throw cause;
  }
}

/** The files of the page before this one stay: a window that still runs it may yet ask for one. */
async function clearOlder(): Promise<void> {
  const old = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== NOW);
  for (const name of old.slice(0, -1)) await caches.delete(name);
}

/** A newer page that is ready is taken when a person loads the page and no other window runs the old one. */
async function newerInstead(): Promise<Response | undefined> {
  const { waiting } = worker.registration;
  if (waiting === null || (await worker.clients.matchAll({ type: "window" })).length > 1) return undefined;
  waiting.postMessage(TAKE_OVER);
  return new Response("", { headers: { Refresh: "0", "Content-Type": "text/html" } });
}

async function page(request: Request): Promise<Response> {
  const cache = await caches.open(NOW);
  return (await newerInstead()) ?? (await cache.match(PAGE)) ?? fetch(request);
}

async function file(request: Request, pathname: string): Promise<Response> {
  const cache = await caches.open(NOW);
  // Files in assets/ carry their hash in their name, so one from the page before is the right one, too.
  return (await cache.match(pathname)) ?? (await caches.match(pathname)) ?? fetch(request);
}

worker.addEventListener("install", (event) => event.waitUntil(keepAll()));
worker.addEventListener("activate", (event) => event.waitUntil(clearOlder().then(() => worker.clients.claim())));
worker.addEventListener("message", (event) => {
  if (event.data === TAKE_OVER) void worker.skipWaiting();
});
worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== worker.location.origin) return;
  if (pathname === "/api" || pathname.startsWith("/api/")) return;
  const namesFile = /\.[A-Za-z0-9]+$/.test(pathname);
  if (request.mode === "navigate" && !namesFile) event.respondWith(page(request));
  else if (OWN.has(pathname) || pathname.startsWith("/assets/")) event.respondWith(file(request, pathname));
});
