/** Does the README still show what the command says? Every part of its example stands in today's output, in this order. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { main } from "./main.js";
import { testIo } from "./test-io.js";

const README = readFileSync(new URL("../README.md", import.meta.url), "utf8");
const DEMO = fileURLToPath(new URL("../demo/quayside.yaml", import.meta.url));

it("prints the README's example, part by part", async () => {
  const example = /```text\n([\s\S]*?)```/.exec(README)?.[1];
  if (example === undefined) throw new Error("the README shows no example");
  const parts = example
    .split(/\n *\.\.\.\n/)
    .map((part) => part.trim())
    .filter((part) => part !== "" && part !== "...");
  expect(parts.length).toBeGreaterThan(2);
  const io = testIo({ columns: 84 });
  expect(await main(["check", DEMO], io)).toBe(0);
  let from = 0;
  for (const part of parts) {
    const at = io.out().indexOf(part.replace(/\n *\.\.\.$/, ""), from);
    expect(at, `"${part.slice(0, 60)}" stands in the output`).toBeGreaterThanOrEqual(0);
    from = at;
  }
});
