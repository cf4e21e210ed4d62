import { expect, test } from "vitest";
import { wrapped } from "./wrapped.js";

test("lines break at spaces, long words are cut, no letter is lost", () => {
  expect(wrapped("Tyre – brake bridge above", 12)).toEqual(["Tyre – brake", "bridge above"]);
  expect(wrapped("abcdefghij kl", 4)).toEqual(["abcd", "efgh", "ij", "kl"]);
  expect(wrapped("", 5)).toEqual([""]);
  expect(wrapped("abcd", 4)).toEqual(["abcd"]);
});
