/** Does `coldset new` write a file that `coldset check` reads, and nothing over a file that is there? */
import { describe, expect, test } from "vitest";
import { main } from "./main.js";
import { type TestIoOptions, testIo } from "./test-io.js";

async function run(argv: readonly string[], options: TestIoOptions = {}) {
  const io = testIo(options);
  const code = await main([...argv], io);
  return { code, out: io.out(), err: io.err(), written: io.written };
}

describe("coldset new", () => {
  test("writes a file that is checked without a refusal, with what was entered as it was written", async () => {
    const made = await run([
      "new",
      "Old blue",
      "--set",
      "chainstay=44,2 cm",
      "--set",
      "becomes=two bags = one hill",
      "-o",
      "old-blue.yaml",
    ]);
    expect([made.code, made.err]).toEqual([0, ""]);
    const text = new TextDecoder().decode(made.written.get("old-blue.yaml"));
    expect(text).toContain("chainstay: 44,2 cm");
    expect(text).toContain("two bags = one hill");
    expect(text).toContain('wheelbase: "?"');
    const checked = await run(["check", "old-blue.yaml", "--json"], { files: { "old-blue.yaml": text } });
    expect(checked.code).toBe(0);
    expect(JSON.parse(checked.out).value.board).toHaveLength(20);
  });

  test("writes to standard output where no file is named", async () => {
    const made = await run(["new", "Old blue"]);
    expect(made.code).toBe(0);
    expect(made.out).toContain("kind: build");
    expect(made.written.size).toBe(0);
  });

  test.each([
    [["new", "Old blue", "--set", "chainstey=442"], "did you mean chainstay"],
    [["new", "Old blue", "--set", "chainstay"], "write it as chainstay=442"],
    [["new", "Old blue", "--set", "chainstay=442", "--set", "chainstay=443"], "given twice"],
    [["new", "Old blue", "--set", "chainstay=about so long"], "Cranks' axis to rear axle"],
    [["new", "…"], "in words"],
  ])("%j is refused", async (argv, words) => {
    const made = await run(argv);
    expect([made.code, made.out]).toEqual([2, ""]);
    expect(made.err.replace(/\s+/g, " ")).toContain(words);
  });

  test("writes over nothing", async () => {
    const made = await run(["new", "Old blue", "-o", "there.yaml"], { files: { "there.yaml": "kept" } });
    expect(made.code).toBe(2);
    expect(made.written.size).toBe(0);
  });
});
