/** What becomes of the questions when the thread that reckons fails, dies, hangs or is closed? Threads of the test's own stand in. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, afterEach, expect, it } from "vitest";
import { type Reckoner, reckonInWorker } from "./in-worker.js";

const folder = mkdtempSync(path.join(tmpdir(), "coldset-in-worker-"));
const open: Reckoner[] = [];
afterEach(async () => {
  for (const reckoner of open.splice(0)) await reckoner.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const STAND_IN = `
import fs from "node:fs";
import { parentPort } from "node:worker_threads";
`;

let files = 0;
/** Each thread knows which one it is, by a file that it counts up, so that a new one can be told from the one before. */
function threads(onQuestion: string, options?: { readonly patienceMs: number }): Reckoner {
  files += 1;
  const counter = path.join(folder, `count-${files}`);
  writeFileSync(counter, "");
  const file = path.join(folder, `thread-${files}.mjs`);
  writeFileSync(
    file,
    `${STAND_IN}
fs.appendFileSync(${JSON.stringify(counter)}, "x");
const thread = fs.readFileSync(${JSON.stringify(counter)}).length;
const say = (number, value) => parentPort.postMessage({ kind: "answered", number, value });
parentPort.on("message", ({ number, buildId }) => { ${onQuestion} });
`,
  );
  const reckoner = reckonInWorker(pathToFileURL(file), options);
  open.push(reckoner);
  return reckoner;
}
const told = async (answers: readonly Promise<unknown>[]) =>
  (await Promise.allSettled(answers)).map((a) => (a.status === "fulfilled" ? a.value : (a.reason as Error).message));
const askAll = (reckoner: Reckoner, ids: readonly string[]) => told(ids.map(async (id) => reckoner.check([], id)));

it("gives each answer to whoever asked for it", async () => {
  const reckoner = threads("say(number, thread + buildId)");
  expect(await askAll(reckoner, ["a", "b", "c"])).toEqual(["1a", "1b", "1c"]);
});

it("a thread that dies takes only the question with it that it was at; a new one answers the others", async () => {
  const dies = threads('if (buildId === "bad") throw new Error("lamp fell over"); say(number, thread + buildId);');
  expect(await askAll(dies, ["a", "bad", "b", "bad", "c"])).toEqual([
    "1a",
    "lamp fell over",
    "2b",
    "lamp fell over",
    "3c",
  ]);
  expect(await askAll(dies, ["d"])).toEqual(["3d"]);
  const ends = threads('if (buildId === "bad") process.exit(7); say(number, thread + buildId);');
  expect(await askAll(ends, ["bad"])).toEqual(["the thread that reckons ended with 7"]);
  expect(await askAll(ends, ["a"])).toEqual(["2a"]);
});

it("a failure in the reckoning is told with its trace, and the thread goes on", async () => {
  const reckoner = threads(
    'if (buildId === "bad") parentPort.postMessage({ kind: "failed", number, message: "m", trace: "m\\n    at there" }); else say(number, thread + buildId);',
  );
  const failed: unknown = await Promise.resolve(reckoner.check([], "bad")).catch((cause: unknown) => cause);
  expect(failed).toBeInstanceOf(Error);
  expect((failed as Error).stack).toBe("m\n    at there");
  expect(await askAll(reckoner, ["a"])).toEqual(["1a"]);
});

it("a thread that is silent for too long is ended", async () => {
  const reckoner = threads('if (buildId === "bad") while (true) {} say(number, thread + buildId);', {
    patienceMs: 3_000,
  });
  expect(await askAll(reckoner, ["a", "bad", "b"])).toEqual(["1a", "nothing was reckoned within 3000 ms", "2b"]);
});

it("a thread that cannot even be started fails each question, and none waits for ever", async () => {
  const reckoner = reckonInWorker(pathToFileURL(path.join(folder, "no-such-file.mjs")));
  open.push(reckoner);
  const answers = await askAll(reckoner, ["a", "b"]);
  expect(answers).toHaveLength(2);
  for (const answer of answers) expect(answer).toMatch(/no-such-file/);
});

it("one that needs too much memory is ended, and begun anew", async () => {
  const greedy = `${STAND_IN}
parentPort.on("message", ({ number, buildId }) => {
  const held = [];
  while (buildId === "bad") held.push(Array.from({ length: 10_000 }, Math.random));
  parentPort.postMessage({ kind: "answered", number, value: buildId });
});`;
  const file = path.join(folder, "greedy.mjs");
  writeFileSync(file, greedy);
  const reckoner = reckonInWorker(pathToFileURL(file), { memoryMb: 32 });
  open.push(reckoner);
  const [bad, good] = await askAll(reckoner, ["bad", "good"]);
  expect(bad).toMatch(/memory limit/);
  expect(good).toBe("good");
});

it("closing fails what is under way at once, and nothing is asked after it", async () => {
  const reckoner = threads("while (true) {}");
  const under = askAll(reckoner, ["a", "b"]);
  await reckoner.close();
  expect(await under).toEqual(Array(2).fill("the workshop was closed before this was reckoned"));
  expect(await askAll(reckoner, ["c"])).toEqual(["nothing is reckoned any more: the workshop is closed"]);
});
