/** The command as a person starts it: a process with real files, real pipes and a real Ctrl-C. */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

const BIN = fileURLToPath(new URL("./bin/coldset.mjs", import.meta.url));
const QUAYSIDE = fileURLToPath(new URL("../demo/quayside.yaml", import.meta.url));
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
    const check = (await (await fetch(`${url}api/check/quayside`)).json()) as { kind: string };
    expect(check.kind).toBe("answered");
    const book = await fetch(`${url}api/book/quayside.pdf`);
    expect(book.headers.get("content-type")).toBe("application/pdf");
    expect((await book.arrayBuffer()).byteLength).toBeGreaterThan(10_000);
    const second = run(["serve", "--port", "0", "--data", data]);
    expect(second.status).toBe(2);
    child.kill("SIGINT");
    expect(await ended).toBe(0);
    expect(existsSync(path.join(data, "workshop.sqlite"))).toBe(true);
  });
});
