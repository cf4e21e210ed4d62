/** Which files make up this build of the page? Listed with their hashes at the head of the service worker. */
import { createHash } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";

const WORKER = "service-worker.js";

export function buildServiceWorker(): Plugin {
  let publicDir = "";
  return {
    name: "coldset-service-worker",
    apply: "build",
    // After the page itself has been written.
    enforce: "post",
    configResolved: (config) => {
      publicDir = config.publicDir;
    },
    buildStart() {
      this.emitFile({
        type: "chunk",
        id: fileURLToPath(new URL("./service-worker.ts", import.meta.url)),
        fileName: WORKER,
      });
    },
    generateBundle: {
      order: "post",
      handler(_, bundle) {
        const worker = bundle[WORKER];
        if (worker?.type !== "chunk") throw new Error("the service worker was not built");
        if (worker.imports.length > 0 || worker.exports.length > 0)
          throw new Error("the service worker must stand alone: it is loaded as a plain script");
        const files = [
          ...Object.values(bundle)
            .filter((f) => f.fileName !== WORKER && !f.fileName.endsWith(".map"))
            .map((f) => [`/${f.fileName}`, integrityOf(f.type === "chunk" ? f.code : f.source)] as const),
          ...filesIn(publicDir).map((f) => [`/${f}`, integrityOf(fs.readFileSync(path.join(publicDir, f)))] as const),
        ].sort(([a], [b]) => (a < b ? -1 : 1));
        const version = createHash("sha256")
          .update(JSON.stringify([files, worker.code]))
          .digest("hex")
          .slice(0, 16);
        worker.code = `const PAGE_OF_THIS_BUILD=${JSON.stringify({ version, files })};\n${worker.code}`;
      },
    },
  };
}

const integrityOf = (content: string | Uint8Array) => `sha256-${createHash("sha256").update(content).digest("base64")}`;

function filesIn(folder: string): readonly string[] {
  if (folder === "" || !fs.existsSync(folder)) return [];
  return fs
    .readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).split(path.sep).join("/"));
}
