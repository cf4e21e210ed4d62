/**
 * What does a browser get told about our pages? Nothing from elsewhere is loaded, no script stands in the page
 * itself, no style but two that are known word for word, nobody may frame it, no address is passed on, no sensor is used.
 * Styles that a script sets on an element (`element.style`) are allowed by this policy; a `style="…"` in markup is not,
 * so drawings that are put into the page as text carry presentation attributes only.
 */
import { createHash } from "node:crypto";
import type { MiddlewareHandler } from "hono";

/** The two style rules that react-aria adds to a page by itself, word for word; these alone are let through. */
export const LIBRARY_STYLES = [
  "@layer {\n  [data-react-aria-pressable] {\n    touch-action: pan-x pan-y pinch-zoom;\n  }\n}",
  "@layer {\n  * {\n    overscroll-behavior: contain;\n  }\n}",
] as const;

const libraryHashes = LIBRARY_STYLES.map((s) => `'sha256-${createHash("sha256").update(s).digest("base64")}'`).join(
  " ",
);

export const CONTENT_SECURITY_POLICY = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
  "script-src 'self'",
  `style-src 'self' ${libraryHashes}`,
].join("; ");

const HEADERS: Readonly<Record<string, string>> = {
  "Content-Security-Policy": CONTENT_SECURITY_POLICY,
  "X-Content-Type-Options": "nosniff",
  "X-Frame-Options": "DENY",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy":
    "accelerometer=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), magnetometer=(), microphone=(), payment=(), usb=()",
};

/** A write turned away before its body was read: the connection is not used again. */
const BODY_LEFT_UNREAD = new Set([403, 405, 413, 415, 421]);

export const securityHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(HEADERS)) c.res.headers.set(name, value);
  if (!c.res.headers.has("Cache-Control")) c.res.headers.set("Cache-Control", "no-store");
  const read = c.req.method === "GET" || c.req.method === "HEAD";
  if (!read && BODY_LEFT_UNREAD.has(c.res.status)) c.res.headers.set("Connection", "close");
};
