/** For the doors of the server: a real one on a port of its own, with the demos, a page, and a file that nobody may see. */
import fs from "node:fs";
import net from "node:net";
import os from "node:os";
import path from "node:path";
import { ALL_SHEETS } from "@coldset/core/sheets";
import { reckonHere, startServer } from "@coldset/server";
import { openWorkshop, type Workshop } from "@coldset/store";
import { checkObject } from "../cli/said/check-object.js";
import { DEMOS } from "./place.js";

export const SECRET = "not-for-anybody-7c1f";

export interface FuzzServer {
  readonly port: number;
  readonly workshop: Workshop;
  /** What the program logged as its own faults since the last call. */
  readonly faults: () => readonly string[];
  readonly end: () => Promise<void>;
}

export async function fuzzServer(): Promise<FuzzServer> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-fuzz-"));
  const webRoot = path.join(folder, "page");
  fs.mkdirSync(path.join(webRoot, "assets"), { recursive: true });
  fs.writeFileSync(path.join(webRoot, "index.html"), "<!doctype html><title>Coldset</title>\n");
  fs.writeFileSync(path.join(webRoot, "assets", "main-Ab3dE_9-.js"), "export {};\n");
  fs.writeFileSync(path.join(webRoot, ".hidden"), SECRET);
  fs.writeFileSync(path.join(folder, "outside.txt"), SECRET);
  fs.symlinkSync(path.join(folder, "outside.txt"), path.join(webRoot, "assets", "link.txt"));
  const opened = await openWorkshop(path.join(folder, "records"));
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  const { workshop } = opened;
  for (const { id, text } of DEMOS) {
    const put = await workshop.putText(text, `${id}.yaml`);
    if (put.kind === "refused") throw new Error(JSON.stringify(put.refusals));
  }
  let logged: string[] = [];
  const server = await startServer({
    workshop,
    port: 0,
    webRoot,
    sheets: new Map(ALL_SHEETS.map((sheet) => [sheet.id, sheet])),
    ...reckonHere(checkObject),
    book: async () => new TextEncoder().encode("%PDF-1.7"),
    log: (line) => void logged.push(line),
  });
  if (server.kind === "refused") throw new Error(JSON.stringify(server.refusals));
  return {
    port: server.port,
    workshop,
    faults: () => {
      const now = logged;
      logged = [];
      return now;
    },
    end: async () => {
      await server.close();
      await workshop.close();
      fs.rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A request that asks for an open stream is closed by us after this. */
const ENOUGH_MS = 400;
const BROKEN_MS = 50;

/** A whole request is waited for as long as it takes; the watchdog sees to that. */
const WHOLE_MS = 15_000;

/**
 * Sends these bytes as they are and gives all that comes back. Where the request may be broken off (`broken`), our side is
 * closed soon, so that the server need not wait for the rest.
 */
export function exchange(port: number, bytes: Uint8Array, broken = false): Promise<Buffer> {
  return new Promise((resolve) => {
    const chunks: Buffer[] = [];
    const socket = net.connect({ port, host: "127.0.0.1" });
    const done = () => {
      socket.destroy();
      resolve(Buffer.concat(chunks));
    };
    socket.on("data", (chunk) => {
      chunks.push(chunk);
      // A stream of events has no end of its own.
      if (/content-type: text\/event-stream/i.test(chunk.toString("latin1"))) setTimeout(done, ENOUGH_MS).unref();
    });
    // A connection that is cut off is an answer, too.
    socket.on("error", done);
    socket.on("close", done);
    socket.write(bytes);
    setTimeout(() => socket.end(), broken ? BROKEN_MS : WHOLE_MS).unref();
  });
}
