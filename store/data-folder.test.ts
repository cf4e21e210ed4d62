import { describe, expect, it } from "vitest";
import { dataFolder } from "./data-folder.js";

// The places are those of the XDG Base Directory Specification 0.8 and of the two systems' own guides.
describe("the data folder", () => {
  it.each([
    ["linux", {}, "/home/a", "/home/a/.local/share/coldset"],
    ["linux", { XDG_DATA_HOME: "/data" }, "/home/a", "/data/coldset"],
    ["linux", { XDG_DATA_HOME: "data" }, "/home/a", "/home/a/.local/share/coldset"],
    ["linux", { XDG_DATA_HOME: "" }, "/home/a", "/home/a/.local/share/coldset"],
    ["darwin", { XDG_DATA_HOME: "/data" }, "/Users/a", "/Users/a/Library/Application Support/Coldset"],
    [
      "win32",
      { LOCALAPPDATA: "C:\\Users\\a\\AppData\\Local" },
      "C:\\Users\\a",
      "C:\\Users\\a\\AppData\\Local\\Coldset",
    ],
    ["win32", {}, "C:\\Users\\a", "C:\\Users\\a\\AppData\\Local\\Coldset"],
    ["linux", { COLDSET_DATA: "/bench/records", XDG_DATA_HOME: "/data" }, "/home/a", "/bench/records"],
  ])("on %s with %j is in its place", (platform, env, home, expected) => {
    expect(dataFolder(env, platform, home)).toBe(expected);
  });
});
