/** What does the server answer to any bytes on its port? Its own words, never a fault of the program, never a changed record. */
import { ALL_SHEETS } from "@coldset/core/sheets";
import fc from "fast-check";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { HOSTILE_KEYS, isWhole, mangled, mangledText } from "../inputs/mangled-text.js";
import { inputSteps, oddInput } from "../inputs/odd-input.js";
import { ODD_NUMBERS, oddText, type Slip, slip, slipped } from "../inputs/odd-text.js";
import { exchange, type FuzzServer, fuzzServer, SECRET } from "../served.js";

export interface Request {
  readonly method: string;
  readonly path: string;
  readonly headers: readonly (readonly [string, string])[];
  /** Text of the body; null: none. */
  readonly body: string | null;
  readonly framing: "length" | "chunked" | "short" | "long" | "both" | "none";
  /** Slips in the whole of it, as latin1. */
  readonly slips: readonly Slip[];
}

const id = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.constantFrom("quayside", "moorside", "canalside", "q1", "m1", "c1", "r1", "commute", "harbour"),
  },
  { weight: 1, arbitrary: oddText.map((t) => encodeURIComponent(t.toWellFormed())) },
);
const GETS = [
  "/api/health",
  "/api/openapi.json",
  "/api/documents",
  "/api/builds",
  "/api/sheets",
  "/",
  "/index.html",
  "/assets/main-Ab3dE_9-.js",
  "/b/quayside",
  "/b/canalside",
  "/api/archive",
  "/assets/link.txt",
];
const SHEETS = ["dish", "chainline", "steerer", "tyre-gap", "hose-length", "no-such"];

const get = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...GETS) },
  {
    weight: 3,
    arbitrary: fc
      .tuple(
        fc.constantFrom("donor", "build", "rider", "bin", "nothing"),
        id,
        fc.constantFrom("", "/export", "/edits", "/photos"),
      )
      .map(([k, i, end]) => `/api/documents/${k}/${i}${end}`),
  },
  {
    weight: 2,
    arbitrary: fc
      .tuple(
        fc.constantFrom("workshop", "history", "versions", "book", "events", "archive"),
        id,
        fc.constantFrom("", ".pdf", "/undo", "?limit=5", "?limit=-1", "?before=x"),
      )
      .map(([w, i, end]) => `/api/${w}/${i}${end}`),
  },
  { weight: 2, arbitrary: fc.constantFrom(...SHEETS).map((s) => `/api/sheets/${s}`) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom("/", "/api/", "/assets/", "/../", "//", "/%2e%2e/", "*", "http://x/"), oddText)
      .map((t) => t.join("").replace(/[\r\n]/g, "")),
  },
);

const json = fc.oneof(
  fc.record({ length_mm: fc.constantFrom<unknown>(1, "x", null) }).map((v) => JSON.stringify(v)),
  fc.json({ maxDepth: 3 }),
  fc
    .record({
      text: fc.oneof(oddText, fc.constant("kind: rider\nversion: 1\nid: r9\n")),
      label: fc.oneof(fc.constant("a.yaml"), oddText),
    })
    .map((v) => JSON.stringify(v)),
  fc
    .record({
      path: fc.oneof<fc.Arbitrary<unknown>[]>(
        fc.constantFrom<unknown>(["id"], ["measured", "chainstay"], ["kind"], []),
        fc.array(fc.oneof<fc.Arbitrary<unknown>[]>(fc.constantFrom(...HOSTILE_KEYS), fc.nat(20), fc.constant(null)), {
          maxLength: 14,
        }),
      ),
      value: fc.oneof<fc.Arbitrary<unknown>[]>(fc.constantFrom(...ODD_NUMBERS), fc.jsonValue({ maxDepth: 2 })),
      revision: fc.constantFrom<unknown>(99, -1, 1.5, "1", null, 1e308),
    })
    .map((v) => JSON.stringify(v)),
  oddText,
  fc.constantFrom(
    "",
    "[".repeat(2000),
    '{"a":'.repeat(300),
    '{"__proto__":{"x":1}}',
    '"\\ud800"',
    "1e999",
    "{",
    "\u0000",
    "null",
  ),
);

const header = fc.oneof<fc.Arbitrary<readonly [string, string]>[]>(
  fc.constantFrom<readonly [string, string]>(
    ["Origin", "http://elsewhere.example"],
    ["Origin", "null"],
    ["Sec-Fetch-Site", "cross-site"],
    ["Accept-Encoding", "gzip, br"],
    ["If-None-Match", "*"],
    ["Range", "bytes=0-99999999999"],
    ["Expect", "100-continue"],
    ["Upgrade", "websocket"],
    ["Connection", "upgrade"],
    ["Content-Encoding", "gzip"],
    ["X-Forwarded-Host", "elsewhere.example"],
    ["X-HTTP-Method-Override", "DELETE"],
    ["Cookie", "a=b"],
    ["Last-Event-ID", "1"],
    ["Authorization", "Basic Og=="],
  ),
  fc.tuple(
    fc.constantFrom("X-A", "Accept", "Referer"),
    oddText.map((t) => t.replace(/[\r\n\0]/g, "")),
  ),
);

const shape = fc.record({
  headers: fc.oneof(
    { weight: 2, arbitrary: fc.constant<Request["headers"]>([]) },
    { weight: 1, arbitrary: fc.array(header, { maxLength: 3 }) },
  ),
  slips: fc.oneof(
    { weight: 6, arbitrary: fc.constant<Slip[]>([]) },
    { weight: 1, arbitrary: fc.array(slip, { minLength: 1, maxLength: 3 }) },
  ),
});
const reading: fc.Arbitrary<Request> = fc
  .tuple(
    get,
    fc.constantFrom(
      ...Array<string>(14).fill("GET"),
      "HEAD",
      "HEAD",
      "OPTIONS",
      "DELETE",
      "TRACE",
      "CONNECT",
      "BREW",
      "get",
    ),
    shape,
  )
  .map(([path, method, more]) => ({ path, method, body: null, framing: "none" as const, ...more }));
/** Writes that mostly get through to the core and the records: sheets, texts put in, edits on some revision. */
const sheetWrite = fc.tuple(fc.constantFrom(...ALL_SHEETS), inputSteps).map(([sheet, steps]) => ({
  path: `/api/sheets/${sheet.id}`,
  body: JSON.stringify(jsonOnly(oddInput(sheet, steps))),
}));
const textWrite = mangled
  .filter((m) => !isWhole(m.base))
  .map((m) => ({
    path: "/api/documents",
    body: JSON.stringify({ text: mangledText(m).toWellFormed(), label: "a.yaml" }),
  }));
const editWrite = fc
  .tuple(
    fc.constantFrom(
      ["donor/q1", "measured", "chainstay"],
      ["donor/m1", "measured", "chainstay"],
      ["donor/c1", "measured", "chainstay"],
      ["rider/r1", "inseam"],
      ["rider/rider-c1", "inseam"],
      ["donor/q1", "price"],
      ["donor/m1", "price"],
    ),
    fc.oneof<fc.Arbitrary<unknown>[]>(fc.integer({ min: 300, max: 600 }), fc.constantFrom(...ODD_NUMBERS)),
    fc.integer({ min: 1, max: 3 }),
  )
  .map(([[document, ...path], value, revision]) => ({
    path: `/api/documents/${document}/edits`,
    body: JSON.stringify({ path, value, revision }),
  }));
const deep: fc.Arbitrary<Request> = fc
  .tuple(
    fc.oneof(
      { weight: 5, arbitrary: sheetWrite },
      { weight: 2, arbitrary: textWrite },
      { weight: 2, arbitrary: editWrite },
    ),
    fc.constantFrom("length", "length", "length", "chunked"),
    shape,
  )
  .map(([{ path, body }, framing, more]) => ({
    path,
    body,
    method: "POST",
    framing: framing as Request["framing"],
    ...more,
    headers: [["Content-Type", "application/json"] as const, ...more.headers],
  }));

const writing: fc.Arbitrary<Request> = fc
  .tuple(
    fc.oneof(
      fc.constantFrom(
        "/api/documents",
        "/api/documents/donor/q1/edits",
        "/api/documents/bin/harbour-bin/edits",
        "/api/documents/bin/canal-bin/edits",
        "/api/history/quayside/undo",
        "/api/history/moorside/undo",
        "/api/archive?label=a.zip",
        "/api/import",
        "/api/photos",
      ),
      fc.constantFrom(...SHEETS).map((s) => `/api/sheets/${s}`),
      get,
    ),
    fc.constantFrom("POST", "POST", "POST", "POST", "PUT", "PATCH", "DELETE"),
    json,
    fc.constantFrom("length", "length", "length", "length", "chunked", "short", "long", "both", "none"),
    fc.constantFrom(
      "application/json",
      "application/json",
      "application/json",
      "application/json; charset=utf-8",
      "text/plain",
      "multipart/form-data; boundary=x",
      "",
    ),
    shape,
  )
  .map(([path, method, body, framing, type, more]) => ({
    path,
    method,
    body,
    framing: framing as Request["framing"],
    ...more,
    headers: [["Content-Type", type] as const, ...more.headers],
  }));
const inputs = fc.oneof(
  { weight: 3, arbitrary: reading },
  { weight: 3, arbitrary: deep },
  { weight: 2, arbitrary: writing },
);

/** What JSON can say of an input: the rest is left out, or stands as a word. */
function jsonOnly(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (_key, inner: unknown) => (typeof inner === "bigint" ? String(inner) : inner)) ?? "null",
  );
}

let server: FuzzServer | undefined;
let before = "";

function bytesOf(r: Request, port: number): Uint8Array {
  const body = r.body === null ? Buffer.alloc(0) : Buffer.from(r.body, "utf8");
  const length = {
    length: body.length,
    short: Math.max(0, body.length - 3),
    long: body.length + 5,
    both: body.length,
    chunked: -1,
    none: -1,
  }[r.framing];
  const chunked = r.framing === "chunked" || r.framing === "both";
  const head = [
    `${r.method} ${r.path} HTTP/1.1`,
    `Host: 127.0.0.1:${port}`,
    "Connection: close",
    ...(length >= 0 ? [`Content-Length: ${length}`] : []),
    ...(chunked ? ["Transfer-Encoding: chunked"] : []),
    ...r.headers.filter(([, value]) => value !== "").map(([name, value]) => `${name}: ${value}`),
  ].join("\r\n");
  const framed = chunked
    ? Buffer.concat([Buffer.from(`${body.length.toString(16)}\r\n`), body, Buffer.from("\r\n0\r\n\r\n")])
    : body;
  const whole = Buffer.concat([Buffer.from(`${head}\r\n\r\n`, "utf8"), framed]);
  return r.slips.length === 0 ? whole : Buffer.from(slipped(whole.toString("latin1"), r.slips), "latin1");
}

const brokenOff = (r: Request) => r.framing === "long" || r.slips.length > 0 || r.method === "CONNECT";

async function put(request: Request): Promise<Went> {
  if (server === undefined) throw new Error("the server is not open");
  const answer = (await exchange(server.port, bytesOf(request, server.port), brokenOff(request))).toString("latin1");
  const faults = server.faults();
  mustHold(faults.length === 0, () => `a fault of the program: ${faults[0]?.slice(0, 300)}`);
  mustHold(!answer.includes(SECRET), () => "a file outside the page was given out");
  if (answer === "") return refusedAs("cut off");
  const [head = "", ...rest] = answer.split("\r\n\r\n");
  const status = Number(/^HTTP\/1\.1 (\d{3}) /.exec(head)?.[1] ?? Number.NaN);
  mustHold(Number.isInteger(status), () => `no status line: ${answer.slice(0, 80)}`);
  mustHold(status < 500 || status === 503, () => `status ${status}`);
  // Somebody was faster: told with how it stands now.
  if (status === 409) return accepted("409");
  if (status >= 300 || status === 204 || status < 200) {
    if (status >= 400 && /^content-type: application\/json/im.test(head) && request.method !== "HEAD")
      wellRefused(rest.join("\r\n\r\n"));
    if (status >= 200)
      mustHold(
        /^x-content-type-options: nosniff/im.test(head),
        () => `${status} without its headers: ${head.slice(0, 200)}`,
      );
    return refusedAs(String(status));
  }
  mustHold(/^content-security-policy:/im.test(head), () => `${status} without its headers`);
  mustHold(!/^access-control-/im.test(head), () => "a header for foreign pages");
  const well = await exchange(
    server.port,
    Buffer.from(`GET /api/documents HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nConnection: close\r\n\r\n`),
  );
  const now = well.toString("utf8").split("\r\n\r\n").slice(1).join("");
  const write = request.method === "POST" || request.slips.length > 0;
  mustHold(write || before === "" || now === before, () => "reading changed the records");
  before = now;
  return accepted(request.method);
}

function wellRefused(body: string): void {
  const text = /^[0-9a-f]+\r\n/.test(body) ? body.replace(/(?:^|\r\n)[0-9a-f]+\r\n/g, "") : body;
  const read: unknown = JSON.parse(Buffer.from(text, "latin1").toString("utf8"));
  const refusals = (read as { refusals?: unknown }).refusals;
  mustHold(Array.isArray(refusals) && refusals.length > 0, () => `refused without reasons: ${body.slice(0, 200)}`);
  for (const r of refusals as { code?: unknown; message?: unknown; allowed?: unknown }[])
    mustHold(
      [r.code, r.message, r.allowed].every((w) => typeof w === "string" && w !== ""),
      () => JSON.stringify(r),
    );
}

export const api: Door<Request> = {
  name: "api",
  holds:
    "any bytes on the port are answered in our own words or cut off; no fault, no file from outside, no changed record by reading",
  inputs,
  open: async () => {
    server = await fuzzServer();
    before = "";
  },
  shut: async () => {
    await server?.end();
    server = undefined;
  },
  put,
};
