/**
 * `coldset serve`: opens the workshop in the user's data folder, puts the demo in where nothing is there yet, prints the
 * answered board, and serves the page on this machine only. Opens no browser. Ctrl-C ends it cleanly.
 */

import { existsSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { homedir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { type Refused, refused } from "@coldset/core/quantity";
import { reckon } from "@coldset/core/questions";
import { standingRefusals } from "@coldset/core/safety";
import { ALL_SHEETS } from "@coldset/core/sheets";
import { say } from "@coldset/core/texts";
import { type AnyDoc, resolveBuild } from "@coldset/core/workshop";
import { EXIT } from "../exit-code.js";
import type { Io } from "../io.js";
import { readText } from "../read/read-text.js";
import { reckoner } from "../reckon/reckoner.js";
import { boardPage } from "../said/board-page.js";
import { refusalsPage, tellRefused } from "../said/refusals.js";
import { standingPage } from "../said/standing.js";
import { Page } from "../screen/page.js";

export interface ServeOptions {
  readonly data?: string;
  readonly port?: string;
}

export const DEFAULT_PORT = 4330;
/** Found beside this one: every build of the folder is put in, in order of its name. */
const DEMO_FILE = path.join("demo", "quayside.yaml");

export async function serve(io: Io, options: ServeOptions): Promise<number> {
  const port = options.port === undefined ? DEFAULT_PORT : readPort(options.port);
  if (typeof port !== "number") return tellRefused(io, port, false);
  const [{ dataFolder, openWorkshop }, { startServer }] = await Promise.all([
    import("@coldset/store"),
    import("@coldset/server"),
  ]);
  const folder =
    options.data === undefined || options.data === ""
      ? dataFolder(io.env, process.platform, homedir())
      : path.resolve(options.data);
  // Asked for before anything is opened, so that no Ctrl-C is missed.
  const stop = io.stopAsked();
  const opened = await openWorkshop(folder, { who: say("cli.serve.the-page") });
  if (opened.kind === "refused") return tellRefused(io, opened, false);
  const { workshop } = opened;
  const reckons = reckoner();
  try {
    if ((await workshop.listDocuments()).length === 0) {
      const demo = await putDemo(io, (text, label) => workshop.putText(text, label));
      if (demo !== undefined) return tellRefused(io, demo, false);
    }
    const docs = (await workshop.allDocuments()).flatMap((d): readonly AnyDoc[] => {
      // Read here, so that whoever opens a build first does not wait for it.
      const read = workshop.readText(d);
      return read.kind === "loaded" ? [read.loaded.doc] : [];
    });
    io.stdout(firstBoard(io, docs));
    const webRoot = path.join(repositoryRoot(), "web", "dist", "site");
    const server = await startServer({
      workshop,
      port,
      webRoot,
      sheets: new Map(ALL_SHEETS.map((sheet) => [sheet.id, sheet])),
      check: reckons.check,
      standing: reckons.standing,
      book: (all, id) => bookOf(io, all, id),
      log: (line) => io.stderr(`${line}\n`),
    });
    if (server.kind === "refused") return tellRefused(io, server, false);
    // So that a second start on this folder can say where this one is.
    workshop.sayWhere(server.url);
    const page = new Page(io.columns, io.colour)
      .text([say("cli.serve.your-workshop-is-kept-in"), folder])
      .text([say("cli.serve.open"), ["strong", server.url], say("cli.serve.in-a-browser-on-this-machine")]);
    if (!existsSync(path.join(webRoot, "index.html")))
      page.text([["open", say("cli.serve.the-page-itself-is-not-built")]]);
    if (opened.copy !== undefined) page.text([say("cli.serve.your-records-were-brought-to-a"), opened.copy]);
    io.stdout(`\n${page.toString()}`);
    await stop;
    io.stderr(say("cli.serve.closing-the-workshop"));
    await server.close();
    return EXIT.answered;
  } finally {
    await reckons.close();
    await workshop.close();
  }
}

function readPort(text: string): number | Refused {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (port <= 65_535) return port;
  const allowed = say("cli.serve.a-whole-number-from-0-to");
  return refused([
    {
      code: "bad-port",
      at: "--port",
      given: text,
      allowed,
      message: say("cli.serve.port-is-no-port-give", { text, allowed }),
    },
  ]);
}

/** The folder that holds cli/, whether this runs from the source or from what was built of it. */
function repositoryRoot(): string {
  let folder = path.dirname(fileURLToPath(import.meta.url));
  while (!existsSync(path.join(folder, DEMO_FILE)) && path.dirname(folder) !== folder) folder = path.dirname(folder);
  return folder;
}

type PutText = (text: string, label: string) => Promise<{ readonly kind: "put" } | Refused>;

async function putDemo(io: Io, putText: PutText): Promise<Refused | undefined> {
  const folder = path.dirname(path.join(repositoryRoot(), DEMO_FILE));
  const names = (await readdir(folder)).filter((name) => name.endsWith(".yaml")).sort();
  for (const name of names) {
    const demo = await readText(io, path.join(folder, name));
    if (demo.kind === "refused") return demo;
    const put = await putText(demo.text, name);
    if (put.kind === "refused") return put;
  }
  return undefined;
}

/** The board of the first demo where it is there, else of the first build by its id; what keeps a build from being reckoned is told, and serving goes on. */
function firstBoard(io: Io, docs: readonly AnyDoc[]): string {
  const page = new Page(io.columns, io.colour);
  const ids = docs
    .filter((d) => d.kind === "build")
    .map((d) => d.id)
    .sort();
  const shown = path.basename(DEMO_FILE, ".yaml");
  const first = ids.includes(shown) ? shown : ids[0];
  if (first === undefined) return page.text(say("cli.serve.there-is-no-build-in-this")).toString();
  const resolved = resolveBuild(docs, first);
  if (resolved.kind === "refused") return refusalsPage(resolved.refusals, page).toString();
  const r = reckon(resolved.resolved);
  const { build } = r.resolved;
  page.text([["strong", build.id], "–", build.title]);
  if (ids.length > 1)
    page.text(say("cli.serve.other-builds-here", { ids: ids.filter((id) => id !== first).join(", ") }));
  for (const f of standingRefusals(r.rules))
    page
      .blank()
      .text(
        [
          ["bad", say("cli.serve.refuse-on", { rule: f.rule, about: f.about })],
          f.here,
          say("cli.check-page.instead", { insteadDo: f.insteadDo }),
        ],
        0,
        2,
      );
  return standingPage(boardPage(r.board, page)).toString();
}

async function bookOf(io: Io, docs: readonly AnyDoc[], buildId: string) {
  const resolved = resolveBuild(docs, buildId);
  if (resolved.kind === "refused") return resolved;
  const [{ bookOfBuild }, { makeBook }] = await Promise.all([
    import("@coldset/drawing/build"),
    import("@coldset/drawing/book"),
  ]);
  return makeBook(bookOfBuild(reckon(resolved.resolved), { revision: io.today() }));
}
