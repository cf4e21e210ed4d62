import { describe, expect, it } from "vitest";
import { keptText } from "./kept-text.js";

const at = (revision: number) => [{ kind: "build", id: "b", revision }];

describe("an answer about a build", () => {
  it("is made once for each state of its documents", async () => {
    const kept = keptText();
    let made = 0;
    const make = () => {
      made += 1;
      return `made ${made}`;
    };
    expect(await kept("b", at(1), make)).toBe("made 1");
    expect(await kept("b", at(1), make)).toBe("made 1");
    expect(await kept("other", at(1), make)).toBe("made 2");
    expect(await kept("b", at(2), make)).toBe("made 3");
  });

  it("is shared while it is being made, and whoever asked about an earlier state still gets that one", async () => {
    const kept = keptText();
    const give: ((text: string) => void)[] = [];
    const make = () => new Promise<string>((resolve) => give.push(resolve));
    const [first, second] = [kept("b", at(1), make), kept("b", at(1), make)];
    const later = kept("b", at(2), make);
    expect(give).toHaveLength(2);
    give[1]?.("two");
    give[0]?.("one");
    expect(await Promise.all([first, second, later])).toEqual(["one", "one", "two"]);
    expect(await kept("b", at(2), () => "anew")).toBe("two");
  });

  it("is asked for again after it could not be made", async () => {
    const kept = keptText();
    const broken = () => Promise.reject(new Error("lamp fell over"));
    await expect(Promise.all([kept("b", at(1), broken), kept("b", at(1), broken)])).rejects.toThrow("lamp");
    await expect(
      kept("b", at(1), () => {
        throw new Error("at once");
      }),
    ).rejects.toThrow("at once");
    expect(await kept("b", at(1), () => "well")).toBe("well");
  });
});
