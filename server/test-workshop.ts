/** For tests: a workshop with the demo in a folder of its own, and an app on it. */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { answered, refused } from "@coldset/core/quantity";
import type { AnySheet, Sheet } from "@coldset/core/sheet";
import { openWorkshop } from "@coldset/store";
import { type AppOptions, createApp } from "./create-app.js";
import { reckonHere } from "./reckon/index.js";

export const QUAYSIDE = fs.readFileSync(new URL("../demo/quayside.yaml", import.meta.url), "utf8");
export const PORT = 4173;
export const ORIGIN = `http://127.0.0.1:${PORT}`;

const halved: Sheet<{ readonly length_mm: number }, { readonly half_mm: number }> = {
  id: "halved",
  question: "How long is half of it?",
  notes: "For tests only.",
  fields: [{ key: "length_mm", label: "length", kind: "number", unit: "mm", min: 0, max: 1000, start: 100 }],
  gives: [{ key: "half_mm", means: "half of the length" }],
  run: ({ length_mm }) => {
    if (length_mm === 13) throw new Error("secret at /home/somebody/records");
    if (length_mm === 7) {
      return refused([{ code: "odd", at: "length_mm", given: 7, allowed: "even", message: "7 is odd" }]);
    }
    return answered({ half_mm: length_mm / 2 });
  },
};

export async function testWorkshop(change: Partial<AppOptions> = {}) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-server-"));
  const webRoot = path.join(folder, "page");
  fs.mkdirSync(path.join(webRoot, "assets"), { recursive: true });
  fs.writeFileSync(path.join(webRoot, "index.html"), "<!doctype html><title>Coldset</title>\n");
  fs.writeFileSync(path.join(webRoot, "assets", "main-Ab3dE_9-.js"), "export {};\n");
  fs.writeFileSync(path.join(webRoot, "assets", "plain.css"), "p { margin: 0 }\n");
  fs.writeFileSync(path.join(webRoot, ".env"), "hidden\n");
  fs.writeFileSync(path.join(folder, "outside.txt"), "not for the page\n");
  const opened = await openWorkshop(path.join(folder, "records"));
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  const { workshop } = opened;
  const put = await workshop.putText(QUAYSIDE, "quayside.yaml");
  if (put.kind === "refused") throw new Error(JSON.stringify(put.refusals));
  const logged: string[] = [];
  const options: AppOptions = {
    workshop,
    webRoot,
    sheets: new Map<string, AnySheet>([["halved", halved]]),
    check: (docs, buildId) => JSON.stringify({ buildId, kinds: docs.map((d) => d.kind) }),
    standing: reckonHere(() => ({})).standing,
    book: async (docs, buildId) => new TextEncoder().encode(`%PDF-1.7 ${buildId} ${docs.length}`),
    log: (line) => logged.push(line),
    ...change,
  };
  const app = createApp(options, () => PORT);
  const host = `127.0.0.1:${PORT}`;
  const ask = (place: string, init: RequestInit = {}) =>
    app.request(`${ORIGIN}${place}`, { ...init, headers: { host, ...(init.headers as Record<string, string>) } });
  const post = (place: string, body: unknown, headers: Record<string, string> = {}) =>
    ask(place, {
      method: "POST",
      body: typeof body === "string" ? body : JSON.stringify(body),
      headers: { "content-type": "application/json", ...headers },
    });
  const end = async () => {
    await workshop.close();
    fs.rmSync(folder, { recursive: true, force: true });
  };
  return { folder, webRoot, workshop, options, logged, ask, post, end };
}
