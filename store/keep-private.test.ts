import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openWorkshop } from "./open-workshop.js";

let parent: string;
beforeEach(() => {
  parent = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-private-"));
});
afterEach(() => fs.rmSync(parent, { recursive: true, force: true }));

const modeOf = (place: string) => (fs.statSync(place).mode & 0o777).toString(8);
const open = async (folder: string) => {
  const opened = await openWorkshop(folder);
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  return opened.workshop;
};
/** Every file and folder in there, with the bits that others have. */
const openToOthers = (folder: string) =>
  fs
    .readdirSync(folder, { recursive: true })
    .map(String)
    .filter((name) => (fs.statSync(path.join(folder, name)).mode & 0o077) !== 0);

// Modes are POSIX, chapter 2.3 (file access permissions); on Windows there is nothing of this to look at.
describe.runIf(process.platform !== "win32")("the records are closed to others on this machine", () => {
  // Whoever starts the program may have any mask; the widest one is the hard case.
  let mask: number;
  beforeEach(() => {
    mask = process.umask(0);
  });
  afterEach(() => {
    process.umask(mask);
  });

  it("in a folder that we make: 0700, and 0600 for each file", async () => {
    const folder = path.join(parent, "above", "records");
    const workshop = await open(folder);
    await workshop.putText("kind: route\nversion: 1\nid: lane\nsections: [{km: 1, grade: 2}]\n", "lane.yaml");
    expect(modeOf(folder)).toBe("700");
    expect(modeOf(path.dirname(folder))).toBe("700");
    expect(modeOf(path.join(folder, "workshop.sqlite"))).toBe("600");
    expect(openToOthers(folder)).toEqual([]);
    await workshop.close();
    expect(openToOthers(folder)).toEqual([]);
  });

  it("in a folder of ours that an older version left open", async () => {
    const folder = path.join(parent, "records");
    await (await open(folder)).close();
    fs.chmodSync(folder, 0o755);
    fs.chmodSync(path.join(folder, "workshop.sqlite"), 0o644);
    const workshop = await open(folder);
    expect(modeOf(folder)).toBe("700");
    expect(openToOthers(folder)).toEqual([]);
    await workshop.close();
  });

  it("in a folder with other things in it: our files are closed, theirs and the folder left alone", async () => {
    const folder = path.join(parent, "mixed");
    fs.mkdirSync(folder);
    fs.chmodSync(folder, 0o755);
    fs.writeFileSync(path.join(folder, "letter.txt"), "mine\n", { mode: 0o644 });
    const workshop = await open(folder);
    expect(modeOf(folder)).toBe("755");
    expect(openToOthers(folder)).toEqual(["letter.txt"]);
    await workshop.close();
  });

  it("never in a folder into which everybody may write", async () => {
    const folder = path.join(parent, "open");
    fs.mkdirSync(folder);
    fs.chmodSync(folder, 0o777);
    const opened = await openWorkshop(folder);
    expect(opened.kind === "refused" && opened.refusals[0]?.code).toBe("store-open-to-all");
    expect(fs.readdirSync(folder)).toEqual([]);
  });

  it("never through a link that somebody put there, whether it leads to something or nowhere", async () => {
    const folder = path.join(parent, "linked");
    fs.mkdirSync(folder, { mode: 0o700 });
    const target = path.join(parent, "elsewhere.sqlite");
    fs.symlinkSync(target, path.join(folder, "workshop.sqlite"));
    for (const there of [false, true]) {
      if (there) fs.writeFileSync(target, "");
      const opened = await openWorkshop(folder);
      expect(opened.kind === "refused" && opened.refusals[0]?.code).toBe("store-is-a-link");
      expect(fs.existsSync(target) && fs.readFileSync(target).length > 0).toBe(false);
    }
  });
});
