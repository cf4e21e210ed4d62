/** `coldset history [build]`: what was changed, and how is it taken back, put back, named, compared or restored? */

import { type Refused, refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { Workshop } from "@coldset/store";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { chosenBuild, openRecords } from "../read/open-records.js";
import { differencePage, historyPage, restoredPage, turnedPage } from "../said/history-page.js";
import { tellJson } from "../said/json-answer.js";
import { tellRefused } from "../said/refusals.js";
import { Page } from "../screen/page.js";

export interface HistoryOptions {
  readonly data?: string;
  readonly undo?: boolean | string;
  readonly redo?: boolean;
  readonly name?: string;
  readonly restore?: string;
  readonly difference?: readonly string[];
  readonly before?: string;
  readonly json?: boolean;
}

/** What is shown: an object for programs, a page for people. */
interface Told {
  readonly kind: "told";
  readonly object: object;
  readonly page: (page: Page) => Page;
}

export async function history(io: Io, build: string | undefined, options: HistoryOptions): Promise<number> {
  const json = options.json === true;
  const unfit = optionsRefusal(options);
  if (unfit !== undefined) return tellRefused(io, unfit, json);
  const opened = await openRecords(io, options.data, say("cli.export.the-command-line"));
  if (opened.kind === "refused") return tellRefused(io, opened, json);
  const { workshop } = opened;
  try {
    const id = await chosenBuild(workshop, build);
    if (typeof id !== "string") return tellRefused(io, id, json);
    const told = await answer(workshop, id, options);
    if (told.kind === "refused") return tellRefused(io, told, json);
    if (json) tellJson(io, told.object);
    else io.stdout(told.page(new Page(io.columns, io.colour)).toString());
    return EXIT.answered;
  } finally {
    await workshop.close();
  }
}

async function answer(workshop: Workshop, build: string, options: HistoryOptions): Promise<Told | Refused> {
  const { undo, redo, name, restore, difference } = options;
  if (undo !== undefined || redo === true) {
    const change = typeof undo === "string" ? { change: Number(undo) } : {};
    const turned = redo === true ? await workshop.redo(build) : await workshop.undo(build, change);
    if (turned.kind === "moved-on") throw new Error("nobody else could have changed it");
    return turned.kind === "refused" ? turned : { kind: "told", object: turned, page: (p) => turnedPage(turned, p) };
  }
  if (name !== undefined) {
    const named = await workshop.nameVersion(build, name);
    if (named.kind === "refused") return named;
    const words = say("cli.history.version-keeps-how-build-stands-now", { version: named.version.name, build });
    return { kind: "told", object: named, page: (p) => p.text(words) };
  }
  if (restore !== undefined) {
    const restored = await workshop.restoreVersion(build, restore);
    if (restored.kind === "moved-on") throw new Error("nobody else could have changed it");
    if (restored.kind === "refused") return restored;
    return { kind: "told", object: restored, page: (p) => restoredPage(restored, restore, p) };
  }
  if (difference !== undefined) {
    const [from = "", to = "now"] = difference;
    const found = await workshop.versionDifference(build, from, to);
    return found.kind === "refused" ? found : { kind: "told", object: found, page: (p) => differencePage(found, p) };
  }
  const before = options.before === undefined ? {} : { before: Number(options.before) };
  const list = await workshop.buildHistory(build, before);
  if (list.kind === "refused") return list;
  const named = await workshop.versions(build);
  if (named.kind === "refused") return named;
  const object = { ...list, versions: named.versions };
  return { kind: "told", object, page: (p) => historyPage(list, named.versions, p) };
}

const ONE_OF = ["undo", "redo", "name", "restore", "difference", "before"] as const;

function optionsRefusal(options: HistoryOptions): Refused | undefined {
  const given = ONE_OF.filter((key) => options[key] !== undefined);
  const no = (code: string, at: string, value: unknown, allowed: string, message: string) =>
    refused([{ code, at, given: value, allowed, message }]);
  if (given.length > 1) {
    const names = given.map((key) => `--${key}`).join(" and ");
    return no(
      "one-at-a-time",
      names,
      names,
      say("cli.history.one-of-them"),
      say("cli.history.cannot-be-done-at-once-give", { names }),
    );
  }
  for (const key of ["undo", "before"] as const) {
    const value = options[key];
    if (typeof value === "string" && !/^[1-9]\d{0,14}$/.test(value))
      return no(
        "bad-change",
        `--${key}`,
        value,
        say("cli.history.the-number-of-a-change"),
        say("cli.history.is-no-number-of-a-change", { key, value }),
      );
  }
  const { difference } = options;
  if (difference !== undefined && difference.length > 2) {
    const message = say("cli.history.difference-takes-two-names-at-most");
    return no(
      "two-names",
      "--difference",
      difference.join(" "),
      say("cli.history.one-or-two-names-of-versions"),
      message,
    );
  }
  return undefined;
}
