/** Which page or file does any address lead to? One of ours, inside the page's folder, and our own links lead back. */
import fc from "fast-check";
import { partsOfPath } from "../../server/static-files.js";
import { linkTo, readRoute } from "../../web/state/route.js";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { oddText } from "../inputs/odd-text.js";
import { exchange, type FuzzServer, fuzzServer, SECRET } from "../served.js";

interface Address {
  /** The path as a browser could send it. */
  readonly path: string;
  /** A build's id of any letters, for the links that we make ourselves. */
  readonly build: string;
  readonly n: number;
  /** Also ask the running server: dearer, so not each time. */
  readonly ask: boolean;
}

const part = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.constantFrom(
      "b",
      "quayside",
      "q",
      "measure",
      "fit",
      "do",
      "1",
      "12",
      "20",
      "assets",
      "index.html",
      "main-Ab3dE_9-.js",
    ),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      "..",
      ".",
      "%2e%2e",
      "%2E%2e",
      "%252e%252e",
      "..%2f",
      "%5c..",
      "..\\",
      "%00",
      "%c0%ae%c0%ae",
      "%uff0e",
      "C:",
      "con",
      "nul.txt",
      ".hidden",
      ".env",
      "outside.txt",
      "link.txt",
      "~",
      "*",
      "?",
      "#",
      ";a=b",
      "%",
      "%zz",
      "%E2%80%AE",
      "x".repeat(300),
      "0",
      "-1",
      "1e1",
      "0x1",
      "٣",
    ),
  },
  { weight: 2, arbitrary: oddText.map((t) => encodeURIComponent(t.toWellFormed())) },
  { weight: 1, arbitrary: oddText },
);
const inputs: fc.Arbitrary<Address> = fc.record({
  path: fc.oneof(
    { weight: 2, arbitrary: fc.array(part, { maxLength: 6 }).map((parts) => `/${parts.join("/")}`) },
    {
      weight: 1,
      arbitrary: fc
        .tuple(part, fc.constantFrom("", "/measure", "/fit", "/do", "/q/3", "/q/21", "/q/0", "/q/1.5"))
        .map(([b, end]) => `/b/${b}${end}`),
    },
    { weight: 1, arbitrary: fc.constantFrom("/", "/index.html", "/assets/main-Ab3dE_9-.js", "/b/quayside", "//", "") },
  ),
  build: fc.oneof(
    fc.constantFrom("quayside", "moorside", "canalside"),
    oddText,
    fc.constantFrom("..", ".", "a/b", "a%2fb", "%", "?", "#", ""),
  ),
  n: fc.integer({ min: -2, max: 25 }),
  ask: fc.nat(3).map((k) => k === 0),
});

let server: FuzzServer | undefined;

async function put({ path, build, n, ask }: Address): Promise<Went> {
  const route = readRoute(path);
  if (route.page === "question")
    mustHold(Number.isInteger(route.n) && route.n >= 1 && route.n <= 20, () => `question ${route.n}`);
  linksLeadBack(build, n);
  const parts = partsOfPath(path);
  for (const p of parts ?? [])
    mustHold(
      p !== "" && p !== ".." && !p.startsWith(".") && !/[/\\:\p{Cc}]/u.test(p),
      () => `${JSON.stringify(p)} is a step of a path`,
    );
  if (!ask || server === undefined) return route.page === "nowhere" ? refusedAs("nowhere") : accepted(route.page);
  // Only what may stand in a request line; the rest is for the door of the API.
  const line = Buffer.from(path.replace(/[\s\p{Cc}]/gu, "") || "/", "utf8").toString("latin1");
  const said = (
    await exchange(
      server.port,
      Buffer.from(`GET ${line} HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nConnection: close\r\n\r\n`, "latin1"),
    )
  ).toString("latin1");
  mustHold(!said.includes(SECRET), () => "a file outside the page was given out");
  const status = Number(/^HTTP\/1\.1 (\d{3})/.exec(said)?.[1] ?? Number.NaN);
  mustHold(status >= 200 && status < 500, () => `status ${status}`);
  const faults = server.faults();
  mustHold(faults.length === 0, () => `a fault of the program: ${faults[0]?.slice(0, 300)}`);
  return status < 400 ? accepted(`asked ${status}`) : refusedAs(`asked ${status}`);
}

/** A link of ours, followed, is the page that was meant. An id that cannot be a path's step has no page. */
function linksLeadBack(build: string, n: number): void {
  let href: string;
  try {
    href = linkTo.measure(build);
  } catch (cause) {
    // Half a character pair: no text of ours can hold one, and there is no address for it.
    mustHold(cause instanceof URIError && !build.isWellFormed(), () => String(cause));
    return;
  }
  const route = readRoute(href);
  if (build !== "")
    mustHold(route.page === "measure" && route.build === build, () => `${href} leads to ${JSON.stringify(route)}`);
  const asked = readRoute(linkTo.question(build, n));
  const there = n >= 1 && n <= 20 && build !== "";
  mustHold(there === (asked.page === "question"), () => `question ${n} leads to ${JSON.stringify(asked)}`);
}

export const urls: Door<Address> = {
  name: "urls",
  holds: "every address leads to a page of ours or nowhere, never out of the page's folder, and our links lead back",
  inputs,
  open: async () => {
    server = await fuzzServer();
  },
  shut: async () => {
    await server?.end();
    server = undefined;
  },
  put,
};
