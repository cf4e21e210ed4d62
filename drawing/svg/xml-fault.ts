/** For checks: is this text well-formed XML, as far as our drawings use it? Says what is wrong, or nothing. */
export function xmlFault(xml: string): string | undefined {
  const open: string[] = [];
  let rest = xml;
  while (rest !== "") {
    if (!rest.startsWith("<")) {
      const end = rest.indexOf("<") < 0 ? rest.length : rest.indexOf("<");
      const text = rest.slice(0, end);
      if (/&(?!(amp|lt|gt|quot|#39);)/.test(text) || text.includes("]]>"))
        return `bare sign in text: ${text.slice(0, 40)}`;
      rest = rest.slice(end);
      continue;
    }
    const close = /^<\/([a-z]+)>/.exec(rest);
    if (close !== null) {
      if (open.pop() !== close[1]) return `closed in the wrong order: ${close[0]}`;
      rest = rest.slice(close[0].length);
      continue;
    }
    const tag = /^<([a-zA-Z]+)((?:\s+[a-zA-Z:-]+="[^"<]*")*)\s*(\/?)>/.exec(rest);
    if (tag === null) return `not a tag: ${rest.slice(0, 60)}`;
    const names = [...(tag[2] ?? "").matchAll(/([a-zA-Z:-]+)="([^"]*)"/g)];
    if (new Set(names.map((n) => n[1])).size !== names.length) return `attribute twice: ${tag[0].slice(0, 80)}`;
    if (names.some((n) => /&(?!(amp|lt|gt|quot|#39);)/.test(n[2] ?? "")))
      return `bare sign in attribute: ${tag[0].slice(0, 80)}`;
    if (tag[3] === "") open.push(tag[1] ?? "");
    rest = rest.slice(tag[0].length);
  }
  const control = [...xml].find((sign) => (sign.codePointAt(0) ?? 0) < 0x20);
  if (control !== undefined) return "a control character";
  return open.length > 0 ? `never closed: ${open.join(" ")}` : undefined;
}
