/**
 * What does a browser get told about our pages? Nothing from elsewhere is loaded, no script stands in the page
 * itself, no style either, nobody may frame it, no address is passed on, no sensor is used.
 * Styles that a script sets on an element (`element.style`) are allowed by this policy; a `style="…"` in markup is not,
 * so drawings that are put into the page as text carry presentation attributes only.
 */
import type { MiddlewareHandler } from "hono";

export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  // A picture that was just chosen is shown from memory before it is sent.
  "img-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  // The page kept on the device, and its place among the programs of a tablet.
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  // Text becomes markup or a script in one place of the page only: web/parts/trusted.ts.
  "require-trusted-types-for 'script'",
  "trusted-types coldset",
].join("; ");

export const HEADERS: Readonly<Record<string, string>> = {
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
const BODY_LEFT_UNREAD = new Set([400, 403, 404, 405, 412, 413, 414, 415, 421, 431, 503]);

export const securityHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(HEADERS)) {
    // A photo has a stricter policy of its own.
    if (name !== "Content-Security-Policy" || !c.res.headers.has(name)) c.res.headers.set(name, value);
  }
  if (!c.res.headers.has("Cache-Control")) c.res.headers.set("Cache-Control", "no-store");
  // Opened by itself, an answer of the interface is a file, never a page (OWASP ASVS 4.0.3, 14.4.2).
  const json = c.res.headers.get("Content-Type")?.startsWith("application/json") === true;
  if (json && c.req.path.startsWith("/api/") && !c.res.headers.has("Content-Disposition"))
    c.res.headers.set("Content-Disposition", 'attachment; filename="api.json"');
  const read = c.req.method === "GET" || c.req.method === "HEAD";
  if (!read && BODY_LEFT_UNREAD.has(c.res.status)) c.res.headers.set("Connection", "close");
  if (c.req.method === "HEAD") {
    // The answer to HEAD is made of this one by copying what it began with; headers set since then would be left out.
    const whole = new Response(null, { status: c.res.status, headers: new Headers(c.res.headers) });
    c.res = undefined;
    c.res = whole;
  }
};
