import { expect, it } from "vitest";
import { linkTo, readRoute } from "./route.js";
import { numberTyped } from "./single-keys.js";

it("reads the addresses that it makes", () => {
  const build = "a b/ü";
  expect(readRoute("/")).toEqual({ page: "builds" });
  expect(readRoute(linkTo.ask(build))).toEqual({ page: "ask", build });
  expect(readRoute(linkTo.question(build, 20))).toEqual({ page: "question", build, n: 20 });
  for (const page of ["measure", "fit", "do", "history"] as const)
    expect(readRoute(linkTo[page](build))).toEqual({ page, build });
});

it.each(["/x", "/b", "/b/q/q/0", "/b/q/q/21", "/b/q/q/1.5", "/b/q/q/x", "/b/q/look", "/b/q/q/1/2"])(
  "%s is no page",
  (path) => {
    expect(readRoute(path).page).toBe("nowhere");
  },
);

it("reads a broken escape without falling over", () => {
  expect(readRoute("/b/%E0%A4%A").page).toBe("ask");
});

it("waits for a second figure only after 1 and 2", () => {
  expect(numberTyped("", "1")).toEqual({ text: "1", more: true });
  expect(numberTyped("", "7")).toEqual({ text: "7", more: false });
  expect(numberTyped("1", "3")).toEqual({ text: "13", more: false });
  expect(numberTyped("2", "0")).toEqual({ text: "20", more: false });
  expect(numberTyped("2", "5")).toEqual({ text: "5", more: false });
});
