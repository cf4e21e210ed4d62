/**
 * What do people do at the workshop, all at the same time? Each opens a build, and then goes on thinking (a time drawn anew each time) and
 * doing one thing: edit a value, look at the build or at its answers, at the list of builds, at the history, take something
 * back. An edit that meets somebody else's change reads the document anew and is sent again under the same id, as the page
 * does it. Some listen to the events all the while and read their build anew when it changed. A seed decides everything.
 */
import http from "node:http";
import { chance } from "../../scripts/chance.mjs";

/**
 * @typedef {{ kind: string, id: string, path: (string | number)[], value: unknown, revision: number, editId: string }} Kept
 * @typedef {{ documents: readonly { kind: string, id: string, revision: number }[] }} TurnedBack
 * @typedef {{ arriving: number[], times: Record<string, number[]>, failures: string[], kept: Kept[], turned: TurnedBack[], conflicts: number,
 *   again: number, listening: number, heard: number }} Told
 * @typedef {{ url: string, builds: readonly string[], users: number, seconds: number, seed: number, thinkMs: number, bare: boolean }} Work
 */

/** Everybody has come by then, one after the other; what is asked until then is told apart from what is asked after. */
const ARRIVING_MS = 5_000;
/** One in so many listens. */
const LISTENS = 4;
const MOST_TRIES = 30;
/** What was told to wait for longer than this has failed. */
const MOST_WAIT_MS = 5_000;

/** @type {Told} */
const told = {
  arriving: [],
  times: {},
  failures: [],
  kept: [],
  turned: [],
  conflicts: 0,
  again: 0,
  listening: 0,
  heard: 0,
};

let arrived = 0;

process.on("message", (/** @type {Work} */ work) => {
  arrived = performance.now() + ARRIVING_MS;
  const until = Date.now() + ARRIVING_MS + work.seconds * 1000;
  const all = Array.from({ length: work.users }, (_, n) => user(work, n, until));
  void Promise.all(all).then(() => process.send?.({ what: "told", ...told }));
});
process.send?.({ what: "ready" });

const pause = (/** @type {number} */ ms) => new Promise((resolve) => setTimeout(resolve, ms));

/** @param {Work} work @param {number} n @param {number} until */
async function user(work, n, until) {
  const { url, builds, bare, thinkMs } = work;
  const draw = chance(work.seed * 100_003 + n);
  const think = () => pause(Math.min(-Math.log(1 - draw()) * thinkMs, Math.max(0, until - Date.now())));
  const agent = new http.Agent({ keepAlive: true, maxSockets: 2 });
  const ask = askOver(url, agent, until);
  const build = builds[Math.floor(draw() * builds.length)] ?? "";
  /** @type {{ docs: any[], tag: string | undefined }} */
  const known = { docs: [], tag: undefined };
  const open = async () => {
    const answer = await ask("open a build", `api/workshop/${build}`, undefined, known.tag);
    if (answer?.status !== 200) return;
    known.tag = answer.tag;
    if (!bare) known.docs = answer.body;
  };
  await pause(draw() * ARRIVING_MS);
  await open();
  const stream = n % LISTENS === 0 ? listen(url, known, open) : undefined;
  for (let step = 0; Date.now() < until; step += 1) {
    await think();
    if (Date.now() >= until) break;
    const turn = draw();
    if (turn < 0.5) await edit(ask, known, draw, { n, step, build, bare });
    else if (turn < 0.87) await open();
    else if (turn < 0.9) await ask("read the answers", `api/check/${build}`);
    else if (turn < 0.91) await ask("list the builds", "api/builds");
    else if (turn < 0.97) await ask("read the history", `api/history/${build}`);
    else {
      const answer = await ask("take something back", `api/history/${build}/undo`, {});
      if (answer?.status === 200 && !bare) told.turned.push({ documents: answer.body.documents });
    }
  }
  stream?.destroy();
  agent.destroy();
}

/** @param {ReturnType<typeof askOver>} ask @param {{ docs: any[] }} known @param {() => number} draw @param {{ n: number, step: number, build: string, bare: boolean }} who */
async function edit(ask, known, draw, { n, step, build, bare }) {
  const { doc, path, value } = bare
    ? { doc: { kind: "donor", id: build, revision: 1 }, path: ["price"], value: 100 }
    : choose(known.docs, draw, `${n}.${step}`, (n * 1000 + step) / 1e9);
  if (doc === undefined) return;
  const editId = `user-${n}-step-${step}`;
  const place = `api/documents/${doc.kind}/${doc.id}`;
  let revision = doc.revision;
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const answer = await ask("edit a value", `${place}/edits`, { path, value, revision, editId });
    if (answer === undefined) return;
    if (answer.status === 200) {
      if (!bare) told.kept.push({ kind: doc.kind, id: doc.id, path, value, revision: answer.body.revision, editId });
      doc.revision = answer.body.revision;
      return;
    }
    told.conflicts += 1;
    const now = await ask("read a document", place);
    if (now === undefined) return;
    revision = now.body.revision;
  }
  told.failures.push(`edit ${editId} met another one ${MOST_TRIES} times`);
}

/** A place that everybody might write into, and a value that nobody else writes. @param {any[]} docs @param {() => number} draw @param {string} word @param {number} little */
function choose(docs, draw, word, little) {
  const by = (/** @type {string} */ kind) => docs.find((d) => d.kind === kind);
  const turn = draw();
  const pick = draw();
  if (turn < 0.15) return { doc: by("build"), path: ["title"], value: `Wanted by ${word}` };
  if (turn < 0.4) {
    const bin = by("bin");
    const parts = (bin?.plain.parts ?? []).length;
    return {
      doc: bin,
      path: ["parts", Math.floor(pick * parts), "cost"],
      value: Number((10 + pick * 40 + little).toFixed(9)),
    };
  }
  const donor = by("donor");
  const places = Object.entries(donor?.plain.measured ?? {}).filter(([, v]) => typeof v === "number" && v > 20);
  const [key, was] = places[Math.floor(pick * places.length)] ?? ["", 0];
  if (key === "") return { doc: undefined, path: [], value: 0 };
  return {
    doc: donor,
    path: ["measured", key],
    value: Number((Number(was) * (0.998 + 0.004 * draw()) + little).toFixed(9)),
  };
}

/** @param {string} url @param {http.Agent} agent @param {number} until */
function askOver(url, agent, until) {
  /** @param {string} what @param {string} place @param {unknown} [body] @param {string} [tag] @returns {Promise<{ status: number, body: any, tag: string | undefined } | undefined>} */
  return async (what, place, body, tag) => {
    const from = performance.now();
    for (let tries = 0; ; tries += 1) {
      let answer;
      try {
        answer = await send(url + place, agent, body, tag);
      } catch (cause) {
        // An open connection that the server closed at the same moment is opened anew; every call may be made twice.
        const code = cause instanceof Error && "code" in cause ? cause.code : undefined;
        const closed = code === "ECONNRESET" && tries === 0;
        if (closed) {
          told.again += 1;
          continue;
        }
        told.failures.push(`${what}: ${String(cause)}`);
        return undefined;
      }
      if (answer.status === 503 && answer.retryAfter !== undefined && performance.now() - from < MOST_WAIT_MS) {
        told.again += 1;
        await pause(answer.retryAfter * 1000);
        if (Date.now() < until + MOST_WAIT_MS) continue;
      }
      told.times[what] ??= [];
      const times = from < arrived ? told.arriving : told.times[what];
      times?.push(performance.now() - from);
      const nothingToTakeBack = what === "take something back" && (answer.status === 422 || answer.status === 409);
      const fine = [200, 304].includes(answer.status) || (what === "edit a value" && answer.status === 409);
      if (!fine && !nothingToTakeBack) {
        told.failures.push(`${what}: ${answer.status} ${answer.text.slice(0, 200)}`);
        return undefined;
      }
      return {
        status: answer.status,
        tag: answer.tag,
        body: answer.status === 304 ? undefined : JSON.parse(answer.text),
      };
    }
  };
}

/**
 * @param {string} address @param {http.Agent} agent @param {unknown} body @param {string | undefined} tag
 * @returns {Promise<{ status: number, text: string, tag: string | undefined, retryAfter: number | undefined }>}
 */
function send(address, agent, body, tag) {
  return new Promise((resolve, reject) => {
    const sent = body === undefined ? undefined : JSON.stringify(body);
    const headers = {
      ...(sent === undefined ? {} : { "content-type": "application/json", "content-length": Buffer.byteLength(sent) }),
      ...(tag === undefined ? {} : { "if-none-match": tag }),
    };
    const request = http.request(
      address,
      { agent, headers, method: sent === undefined ? "GET" : "POST" },
      (response) => {
        /** @type {Buffer[]} */
        const chunks = [];
        response.on("data", (chunk) => chunks.push(chunk));
        response.on("error", reject);
        response.on("end", () => {
          const after = response.headers["retry-after"];
          resolve({
            status: response.statusCode ?? 0,
            text: Buffer.concat(chunks).toString("utf8"),
            tag: response.headers.etag,
            retryAfter: after === undefined ? undefined : Number(after),
          });
        });
      },
    );
    request.on("error", reject);
    request.end(sent);
  });
}

/** @param {string} url @param {{ docs: any[] }} known @param {() => Promise<void>} open */
function listen(url, known, open) {
  let reading = false;
  let again = false;
  const readSoon = async () => {
    again = true;
    if (reading) return;
    reading = true;
    while (again) {
      again = false;
      await open();
    }
    reading = false;
  };
  const request = http.get(`${url}api/events`, (response) => {
    if (response.statusCode !== 200) {
      told.failures.push(`listen: ${response.statusCode}`);
      response.resume();
      return;
    }
    told.listening += 1;
    response.setEncoding("utf8");
    response.on("data", (text) => {
      for (const line of String(text).split("\n")) {
        if (!line.startsWith("data: [")) continue;
        told.heard += 1;
        const changed = JSON.parse(line.slice("data: ".length));
        if (known.docs.some((d) => changed.includes(`${d.kind}/${d.id}`))) void readSoon();
      }
    });
    // It is cut when the user leaves.
    response.on("error", () => {});
  });
  request.on("error", () => {});
  return request;
}
