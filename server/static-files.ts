/**
 * Which file of the built page answers this path? Only files inside the page's folder, whatever the path says.
 * Files in assets/ carry a hash in their name and may be kept for good; everything else is asked for again each time
 * and answered with "not changed" where it did not. A path without a file ending is a place in the page.
 */

import { createHash } from "node:crypto";
import fs from "node:fs/promises";
import path from "node:path";
import { say } from "@coldset/core/texts";
import type { Context } from "hono";
import { methodNotAllowed } from "./problem.js";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".map": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
  ".txt": "text/plain; charset=utf-8",
  ".pdf": "application/pdf",
};
const HASHED = /^assets\/.*-[A-Za-z0-9_-]{8,}\.[a-z0-9]+$/;
const FOR_GOOD = "public, max-age=31536000, immutable";

/** The parts of a path below the page's folder, or undefined where a part could lead out of it. */
export function partsOfPath(pathname: string): readonly string[] | undefined {
  const parts: string[] = [];
  for (const raw of pathname.split("/")) {
    if (raw === "") continue;
    let part: string;
    try {
      part = decodeURIComponent(raw);
    } catch (cause) {
      if (!(cause instanceof URIError)) throw cause;
      return undefined;
    }
    // No separators, no drive letters, no hidden files, no parent, no control characters.
    if (part.startsWith(".") || /[/\\:\p{Cc}]/u.test(part)) return undefined;
    parts.push(part);
  }
  return parts;
}

export function staticFiles(webRoot: string): (c: Context) => Promise<Response> {
  const tags = new Map<string, { readonly mtimeMs: number; readonly size: number; readonly tag: string }>();
  return async (c) => {
    if (c.req.method !== "GET" && c.req.method !== "HEAD") return methodNotAllowed(c, "GET");
    const parts = partsOfPath(new URL(c.req.url).pathname);
    if (parts === undefined) return c.text(say("server.static-files.no-such-file"), 404);
    const place = parts.join("/");
    const asked = place === "" ? "index.html" : place;
    const direct = await fileInside(webRoot, asked);
    const name = direct === undefined && path.posix.extname(asked) === "" ? "index.html" : asked;
    const file = direct ?? (name === asked ? undefined : await fileInside(webRoot, name));
    if (file === undefined) {
      const noPage = name === "index.html";
      return c.text(noPage ? say("server.static-files.not-built") : say("server.static-files.no-such-file"), 404);
    }
    const stat = await fs.stat(file);
    const known = tags.get(file);
    let body: Uint8Array<ArrayBuffer> | undefined;
    let tag = known?.mtimeMs === stat.mtimeMs && known.size === stat.size ? known.tag : undefined;
    if (tag === undefined) {
      body = new Uint8Array(await fs.readFile(file));
      tag = `"${createHash("sha256").update(body).digest("base64url").slice(0, 27)}"`;
      tags.set(file, { mtimeMs: stat.mtimeMs, size: stat.size, tag });
    }
    c.header("ETag", tag);
    c.header("Cache-Control", HASHED.test(name) ? FOR_GOOD : "no-cache");
    const held = (c.req.header("if-none-match") ?? "").split(",").map((t) => t.trim().replace(/^W\//, ""));
    if (held.includes(tag)) return c.body(null, 304);
    c.header("Content-Type", TYPES[path.extname(name).toLowerCase()] ?? "application/octet-stream");
    return c.body(body ?? new Uint8Array(await fs.readFile(file)));
  };
}

/** The real place of a file, followed through links, if it lies inside the folder. */
async function fileInside(root: string, place: string): Promise<string | undefined> {
  try {
    const realRoot = await fs.realpath(root);
    const real = await fs.realpath(path.join(realRoot, place));
    if (!real.startsWith(realRoot + path.sep)) return undefined;
    return (await fs.stat(real)).isFile() ? real : undefined;
  } catch (cause) {
    const code = (cause as NodeJS.ErrnoException).code;
    if (code === "ENOENT" || code === "ENOTDIR" || code === "ENAMETOOLONG") return undefined;
    throw cause;
  }
}
