/**
 * What does a browser get told about our pages? Nothing from elsewhere is loaded, no script stands in the page
 * itself, no style either, nobody may frame it, no address is passed on, no sensor is used.
 * Styles that a script sets on an element (`element.style`) are allowed by this policy; a `style="…"` in markup is not,
 * so drawings that are put into the page as text carry presentation attributes only.
 */
import type { MiddlewareHandler } from "hono";

export const CONTENT_SECURITY_POLICY = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
  "script-src 'self'",
  "style-src 'self'",
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
