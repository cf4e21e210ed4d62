/** The command as a person starts it: a process with real files, real pipes and a real Ctrl-C. */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { loadText } from "@coldset/core/workshop";
import { reckonHere } from "@coldset/server";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

const BIN = fileURLToPath(new URL("./bin/coldset.mjs", import.meta.url));
const QUAYSIDE = fileURLToPath(new URL("../demo/quayside.yaml", import.meta.url));
const DEMO = fileURLToPath(new URL("../demo/", import.meta.url));
/** In order of id, as the server lists them. */
const DEMOS = readdirSync(DEMO)
  .filter((name) => name.endsWith(".yaml"))
  .sort()
  .map((name) => {
    const file = path.join(DEMO, name);
    const loaded = loadText(readFileSync(file, "utf8"), name);
    if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
    return { id: path.basename(name, ".yaml"), file, docs: loaded.docs.map((d) => d.doc) };
  });
const folder = mkdtempSync(path.join(tmpdir(), "coldset-spawn-"));

const run = (argv: readonly string[], input = "", env: Readonly<Record<string, string>> = {}) =>
  spawnSync(process.execPath, [BIN, ...argv], {
    encoding: "utf8",
    input,
    cwd: folder,
    env: { ...process.env, ...env },
  });

// The first start may have to build what the sources have become since.
beforeAll(() => {
  expect(run(["--version"]).status).toBe(0);
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the bin", () => {
  test("checks the demo: 0, words on standard output, nothing on the error stream", () => {
    const { status, stdout, stderr } = run(["check", QUAYSIDE]);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toContain("The top tube disagrees with everything else by 14 mm.");
    expect(stdout).not.toContain("\u001b");
  });

  test("NO_COLOR wins over FORCE_COLOR", () => {
    expect(run(["sheet"], "", { FORCE_COLOR: "1", NO_COLOR: "" }).stdout).toContain("\u001b");
    expect(run(["sheet"], "", { FORCE_COLOR: "1", NO_COLOR: "1" }).stdout).not.toContain("\u001b");
  });

  test("answers a sheet through a pipe, whole, as one object", () => {
    const described = run(["sheet", "survey", "--describe", "--json"]);
    const { example } = JSON.parse(described.stdout) as { example: unknown };
    const { status, stdout } = run(["sheet", "survey", "--in", "-", "--json"], JSON.stringify(example));
    expect(status).toBe(0);
    expect((JSON.parse(stdout) as { kind: string }).kind).toBe("answered");
    expect(run(["sheet", "survey", "--in", "-", "--json"], "{").status).toBe(2);
  });

  test("prints the book where it is told to, and leaves nothing half-written", () => {
    writeFileSync(path.join(folder, "book.pdf"), "old");
    const { status } = run(["book", QUAYSIDE, "-o", "book.pdf"]);
    expect(status).toBe(0);
    expect(readFileSync(path.join(folder, "book.pdf")).subarray(0, 5).toString()).toBe("%PDF-");
    expect(readdirSync(folder).filter((name) => name.endsWith(".part"))).toEqual([]);
    expect(run(["book", QUAYSIDE, "-o", path.join("nowhere", "book.pdf")]).status).toBe(2);
  });

  test("serves the board, the page's address and the check, and ends cleanly on Ctrl-C", async () => {
    const data = path.join(folder, "data");
    // Before anything is asked of the server: it closes a connection that is idle for a few seconds.
    const expected = DEMOS.map(({ file }) => JSON.parse(run(["check", file, "--json"]).stdout) as unknown);
    const here = reckonHere(() => null);
    const standings = DEMOS.map(({ id, docs }) => ({ id, standing: here.standing(docs, id) }));
    const child = spawn(process.execPath, [BIN, "serve", "--port", "0", "--data", data], { cwd: folder });
    let out = "";
    child.stdout.on("data", (chunk: Buffer) => {
      out += chunk.toString();
    });
    const ended = new Promise<number | null>((resolve) => child.once("exit", resolve));
    const url = await new Promise<string>((resolve, reject) => {
      const look = setInterval(() => {
        const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(out);
        if (found !== null) {
          clearInterval(look);
          resolve(found[0]);
        }
      }, 50);
      void ended.then(() => {
        clearInterval(look);
        reject(new Error(`ended early: ${out}`));
      });
    });
    expect(out).toContain("The top tube disagrees with everything else by 14 mm.");
    // Reckoned in a thread of its own, which is there only where the program is built.
    expect(existsSync(fileURLToPath(new URL("./dist/reckon/worker.js", import.meta.url)))).toBe(true);
    const [lines, ...checks] = (await Promise.all(
      ["api/builds", ...DEMOS.map(({ id }) => `api/check/${id}`)].map(async (place) =>
        (await fetch(url + place)).json(),
      ),
    )) as [readonly { readonly id: string; readonly standing: unknown }[], ...unknown[]];
    expect(checks).toEqual(expected);
    expect(lines.map(({ id, standing }) => ({ id, standing }))).toEqual(standings);
    const book = await fetch(`${url}api/book/quayside.pdf`);
    expect(book.headers.get("content-type")).toBe("application/pdf");
    expect((await book.arrayBuffer()).byteLength).toBeGreaterThan(10_000);
    const second = run(["serve", "--port", "0", "--data", data]);
    expect(second.status).toBe(2);
    child.kill("SIGINT");
    expect(await ended).toBe(0);
    expect(existsSync(path.join(data, "workshop.sqlite"))).toBe(true);
  });

  test("reckons in its thread whatever options the process was started with, and ends by itself after it", () => {
    const built = (name: string) => JSON.stringify(new URL(`./dist/reckon/${name}`, import.meta.url).href);
    const code = `const { reckonInWorker } = await import(${built("in-worker.js")});
const reckons = reckonInWorker(new URL(${built("worker.js")}));
console.log(await reckons.check([], "none"), await reckons.standing([], "none"));`;
    const here = reckonHere(() => null);
    for (const end of ["", "await reckons.close();"]) {
      const { status, stdout, stderr } = spawnSync(process.execPath, ["--input-type=module", "-e", code + end], {
        encoding: "utf8",
        timeout: 60_000,
      });
      expect([status, stderr]).toEqual([0, ""]);
      expect(stdout).toBe(`${here.check([], "none")} null\n`);
    }
  });
});
