/**
 * What may become markup or a running script in this page? The server's policy asks the browser to refuse every text that
 * did not come through here (Trusted Types, W3C): drawings of our own writer, and the one script that keeps the page.
 */
interface TrustedPolicy {
  readonly createHTML: (text: string) => unknown;
  readonly createScriptURL: (address: string) => unknown;
}
interface TrustedTypes {
  readonly createPolicy: (name: string, rules: Readonly<Record<string, (text: string) => string>>) => TrustedPolicy;
}

/** The name that the server's policy allows. */
export const POLICY_NAME = "coldset";
const SCRIPTS: readonly string[] = ["/service-worker.js"];

/** What our writer makes of a drawing; it has no other elements. */
const ELEMENTS = /^\/?(svg|title|desc|defs|g|path|circle|rect|line|text|tspan|a)$/;
const TAG = /<((?:"[^"]*"|[^"<>])*)>/g;
const ATTRIBUTE = /\s([\w:-]+)="([^"]*)"/g;
const HERE = /^(#|\/(?!\/))/;

/**
 * The same text, if it is a drawing and nothing else; otherwise thrown, for that is a fault of ours. The writer makes
 * nothing that could run or load something: this is a second wall, should it ever forget to escape what a person wrote.
 */
export function onlyDrawing(text: string): string {
  const bare = text.replace(TAG, (_tag, inside: string) => {
    const rest = inside.replace(ATTRIBUTE, (_all, name: string, value: string) => {
      const elsewhere = /href$/i.test(name) ? !HERE.test(value) : /url\((?!#)|javascript:/i.test(value);
      if (/^(on|style$|src)/i.test(name) || elsewhere) throw notOurs(name);
      return "";
    });
    if (!ELEMENTS.test(rest.replace(/\s*\/?$/, ""))) throw notOurs(rest);
    return "";
  });
  // What is left are the texts between the tags, in which < stands as &lt;.
  if (!text.startsWith("<svg") || bare.includes("<")) throw notOurs(bare);
  return text;
}

const notOurs = (what: string) => new Error(`this is no drawing of ours: ${what.slice(0, 40)}`);

export function onlyOwnScript(address: string): string {
  if (!SCRIPTS.includes(address)) throw new Error("this is no script of ours");
  return address;
}

const types = (globalThis as { readonly trustedTypes?: TrustedTypes }).trustedTypes;
const policy = types?.createPolicy(POLICY_NAME, { createHTML: onlyDrawing, createScriptURL: onlyOwnScript });

/** For `dangerouslySetInnerHTML`. A browser that knows no trusted types gets the checked text itself. */
export function trustedDrawing(text: string): string {
  // The page's types know texts only; the browser takes the sealed one in its place.
  return (policy?.createHTML(text) ?? onlyDrawing(text)) as string;
}

export function trustedScript(address: string): string {
  return (policy?.createScriptURL(address) ?? onlyOwnScript(address)) as string;
}
