/**
 * Does the server answer as it says it does? The description is read from the running server, requests are generated
 * from it, right ones and wrong ones, and every answer is held against it by a validator that is not ours (ajv, JSON
 * Schema 2020-12).
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { reckon } from "@coldset/core/questions";
import { ALL_SHEETS } from "@coldset/core/sheets";
import { resolveBuild } from "@coldset/core/workshop";
import { makeBook } from "@coldset/drawing/book";
import { bookOfBuild } from "@coldset/drawing/build";
import { reckonHere, type StartedServer, startServer } from "@coldset/server";
import { openWorkshop, type Workshop } from "@coldset/store";
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { checkObject } from "../cli/said/check-object.js";
import { LIMITS } from "../server/limits.js";
import { arbitraryOf, type Schema } from "./arbitrary-of-schema.js";
import { demoText } from "./web-workshop.js";

const REQUESTS = 1_000;
const SEED = 20_261_129;
/** Real names, so that about half of the requests reach something. */
const KNOWN: Readonly<Record<string, readonly string[]>> = {
  build: ["quayside"],
  file: ["quayside.pdf"],
  id: ["quayside", "q1", "harbour-road"],
};

interface Operation {
  readonly method: string;
  readonly path: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly in: string;
    readonly required?: boolean;
    readonly schema: Schema;
  }[];
  readonly body: readonly {
    readonly type: string;
    readonly schema: Schema | undefined;
    readonly passes: ValidateFunction | undefined;
  }[];
  readonly answers: ReadonlyMap<string, ReadonlyMap<string, ValidateFunction | undefined>>;
}

let workshop: Workshop;
let folder: string;
let server: Extract<StartedServer, { readonly kind: "serving" }>;
let operations: readonly Operation[];
let resolve: (ref: string) => Schema;
const logged: string[] = [];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "coldset-api-"));
  const opened = await openWorkshop(folder);
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  workshop = opened.workshop;
  const put = await workshop.putText(demoText(), "quayside.yaml");
  if (put.kind === "refused") throw new Error(JSON.stringify(put.refusals));
  const started = await startServer({
    port: 0,
    workshop,
    webRoot: join(folder, "no page"),
    sheets: new Map(ALL_SHEETS.map((sheet) => [sheet.id, sheet])),
    ...reckonHere(checkObject),
    book: async (docs, id) => {
      const found = resolveBuild(docs, id);
      return found.kind === "refused"
        ? found
        : makeBook(bookOfBuild(reckon(found.resolved), { revision: "2026-01-01" }));
    },
    log: (line) => logged.push(line),
    // The validators are compiled in this same thread; on a busy machine a connection is idle for longer than 5 s by it.
    limits: { ...LIMITS, keepAliveMs: 60_000 },
  });
  if (started.kind === "refused") throw new Error(JSON.stringify(started.refusals));
  server = started;
  const document = (await (await fetch(`${server.url}api/openapi.json`)).json()) as Schema;
  operations = operationsOf(document);
});
afterAll(async () => {
  await server?.close();
  await workshop?.close();
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
});

function operationsOf(document: Schema): readonly Operation[] {
  const ajv = new Ajv2020({ strict: false, validateFormats: false, allErrors: false });
  ajv.addSchema({ ...document, $id: "api" });
  const escaped = (key: string) => encodeURIComponent(key.replaceAll("~", "~0").replaceAll("/", "~1"));
  const validator = (...place: readonly string[]) => ajv.compile({ $ref: `api#/${place.map(escaped).join("/")}` });
  resolve = (ref) =>
    ref
      .slice(2)
      .split("/")
      .reduce((here, key) => here[key] as Schema, document);
  type Content = Readonly<Record<string, { readonly schema?: Schema }>>;
  const found: Operation[] = [];
  for (const [path, item] of Object.entries(document.paths as Readonly<Record<string, Schema>>))
    for (const [method, op] of Object.entries(item) as [string, Schema][]) {
      const at = ["paths", path, method];
      const bodies = Object.entries(((op.requestBody as Schema | undefined)?.content ?? {}) as Content);
      const responses = Object.entries(op.responses as Readonly<Record<string, { readonly content: Content }>>);
      found.push({
        method: method.toUpperCase(),
        path,
        parameters: (op.parameters ?? []) as Operation["parameters"],
        body: bodies.map(([type, { schema }]) => ({
          type,
          schema,
          passes: schema && validator(...at, "requestBody", "content", type, "schema"),
        })),
        answers: new Map(
          responses.map(([status, { content }]) => [
            status,
            new Map(
              Object.entries(content ?? {}).map(([type, { schema }]) => [
                type,
                schema && validator(...at, "responses", status, "content", type, "schema"),
              ]),
            ),
          ]),
        ),
      });
    }
  return found;
}

interface Request {
  readonly op: Operation;
  readonly place: string;
  readonly type: string | undefined;
  readonly body: string | Uint8Array<ArrayBuffer> | undefined;
  /** Whether the body is what the description says; undefined where there is none, or the place is a wild one. */
  readonly right: boolean | undefined;
}

const anyOf = <T>(usual: fc.Arbitrary<T>, odd: fc.Arbitrary<T>, weight = 6) =>
  fc.oneof({ weight, arbitrary: usual }, { weight: 1, arbitrary: odd });

function requestOf(op: Operation): fc.Arbitrary<Request> {
  const part = (name: string, schema: Schema) => {
    const known = KNOWN[name];
    const described = arbitraryOf(schema, resolve).map(String);
    const wild = fc.oneof(
      fc.string({ maxLength: 30 }),
      fc.constantFrom("..", "%00", "__proto__", "a".repeat(300), "\u202e"),
    );
    return anyOf(known === undefined ? described : anyOf(fc.constantFrom(...known), described, 3), wild);
  };
  const paths = op.parameters.filter((p) => p.in === "path");
  const queries = op.parameters.filter((p) => p.in === "query");
  const place = fc
    .tuple(
      fc.tuple(...paths.map((p) => part(p.name, p.schema))),
      fc.tuple(
        ...queries.map((p) => fc.option(part(p.name, p.schema), { nil: undefined, freq: p.required === true ? 9 : 1 })),
      ),
    )
    .map(([values, asked]) => {
      const path = paths.reduce(
        // A lone half of a character pair has no percent-encoding.
        (text, p, i) => text.replace(`{${p.name}}`, encodeURIComponent((values[i] ?? "").toWellFormed())),
        op.path,
      );
      const query = queries.flatMap((p, i) => {
        const value = asked[i];
        return value === undefined ? [] : [`${p.name}=${encodeURIComponent(value.toWellFormed())}`];
      });
      return query.length === 0 ? path : `${path}?${query.join("&")}`;
    });
  return fc.tuple(place, bodyOf(op)).map(([where, body]) => ({ op, place: where, ...body }));
}

type BodyOf = Pick<Request, "type" | "body" | "right">;

function bodyOf(op: Operation): fc.Arbitrary<BodyOf> {
  const [first] = op.body;
  if (first === undefined) return fc.constant({ type: undefined, body: undefined, right: undefined });
  if (first.schema === undefined) {
    const bytes = fc.uint8Array({ maxLength: 400 }).map((b) => new Uint8Array(b));
    const type = anyOf(
      fc.constantFrom(...op.body.map((b) => b.type)),
      fc.constantFrom("text/html", "image/svg+xml", ""),
    );
    return fc.record({ type, body: bytes, right: fc.constant(undefined) });
  }
  const { type, schema, passes } = first;
  const described = arbitraryOf(schema, resolve);
  const start = fc.constant(startOf(schema));
  const wrong = fc
    .tuple(
      fc.oneof(described, start),
      fc.jsonValue({ maxDepth: 2 }),
      fc.nat(),
      fc.constantFrom("drop", "change", "add", "other"),
    )
    .map(([value, odd, pick, how]) => spoiled(value, odd, pick, how));
  const json = fc.oneof(described, start, wrong).map((value): BodyOf => {
    const body = JSON.stringify(value);
    return { type, body, right: passes?.(JSON.parse(body)) === true };
  });
  const noJson = fc
    .constantFrom("", "{", "nul", '{"a":1}}', "[".repeat(100), "\u0000", '{"__proto__": {"a": 1}')
    .map((body): BodyOf => ({ type, body, right: false }));
  const noType = fc
    .constantFrom("text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=a", "")
    .map((other): BodyOf => ({ type: other, body: "{}", right: false }));
  return fc.oneof({ weight: 12, arbitrary: json }, { weight: 1, arbitrary: noJson }, { weight: 1, arbitrary: noType });
}

/** The worked example that a sheet's schema carries, or the demo's text where a text is asked for. */
function startOf(schema: Schema): unknown {
  const properties = Object.entries((schema.properties ?? {}) as Readonly<Record<string, Schema>>);
  return Object.fromEntries(
    properties.flatMap(([key, s]) => {
      if ("default" in s) return [[key, s.default]];
      if (key === "text") return [[key, demoText()]];
      return key === "path" ? [[key, ["title"]]] : key === "revision" ? [[key, 1]] : [];
    }),
  );
}

function spoiled(value: unknown, odd: unknown, pick: number, how: string): unknown {
  if (how === "other" || value === null || typeof value !== "object" || Array.isArray(value)) return odd;
  const keys = Object.keys(value);
  const key = keys[pick % Math.max(1, keys.length)] ?? "a";
  if (how === "drop") return Object.fromEntries(Object.entries(value).filter(([k]) => k !== key));
  return { ...value, [how === "add" ? `${key}_more` : key]: odd };
}

/** Sends it, and says what is not as described; undefined where all is. */
async function fault(request: Request): Promise<string | undefined> {
  const { op, place, type, body, right } = request;
  const stop = new AbortController();
  const response = await fetch(new URL(place, server.url), {
    method: op.method,
    headers: type === undefined || type === "" ? {} : { "content-type": type },
    body: body ?? null,
    signal: stop.signal,
  });
  seen.set(response.status, (seen.get(response.status) ?? 0) + 1);
  // A path with . or .. in it is another path by the time it is sent.
  if (new URL(place, server.url).pathname !== place.split("?")[0]) return response.status < 500 ? undefined : "500";
  const about = `${op.method} ${place} ${JSON.stringify(body)?.slice(0, 300)} -> ${response.status}`;
  const answers = op.answers.get(String(response.status));
  if (response.status >= 500 || answers === undefined) return `${about}: this status is not described, or a fault`;
  const media = (response.headers.get("content-type") ?? "").split(";")[0] ?? "";
  if (media === "text/event-stream") {
    stop.abort();
    return answers.has(media) ? undefined : `${about}: ${media}`;
  }
  const family = media.replace(/\/.*/, "/*");
  if (response.status !== 204 && !answers.has(media) && !answers.has(family))
    return `${about}: ${media} is not described`;
  const text = await response.text();
  const passes = answers.get(media);
  if (passes !== undefined && !passes(JSON.parse(text)))
    return `${about}: ${JSON.stringify(passes.errors?.slice(0, 3))} in ${text.slice(0, 300)}`;
  if (right === true && (response.status === 400 || response.status === 415)) return `${about}: it was right: ${text}`;
  if (right === false && response.status < 400) return `${about}: it was wrong, and was taken`;
  return undefined;
}

const seen = new Map<number, number>();

describe("the running server and its own description", () => {
  it("agree on 1000 generated requests, right and wrong", { timeout: 600_000 }, async () => {
    const request = fc.constantFrom(...operations).chain(requestOf);
    await fc.assert(
      fc.asyncProperty(request, async (asked) => {
        const wrong = await fault(asked);
        if (wrong !== undefined) throw new Error(wrong);
      }),
      { seed: SEED, numRuns: REQUESTS, endOnFailure: true },
    );
    // None of it was all of one sort.
    for (const status of [200, 400, 404, 415, 422]) expect(seen.get(status) ?? 0, String(status)).toBeGreaterThan(5);
    expect(logged).toEqual([]);
  });

  it("would be seen to differ", async () => {
    const health = operations.find((o) => o.path === "/api/health");
    if (health === undefined) throw new Error("no health");
    const ask = (answers: Operation["answers"]) =>
      fault({ op: { ...health, answers }, place: "/api/health", type: undefined, body: undefined, right: undefined });
    expect(await ask(health.answers)).toBeUndefined();
    expect(await ask(new Map())).toContain("not described");
    expect(await ask(new Map([["200", new Map([["text/plain", undefined]])]]))).toContain(
      "application/json is not described",
    );
    const other = new Ajv2020().compile({ type: "array" });
    expect(await ask(new Map([["200", new Map([["application/json", other]])]]))).toContain("must be array");
  });
});
