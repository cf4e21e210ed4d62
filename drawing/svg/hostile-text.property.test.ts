import fc from "fast-check";
import { expect, test } from "vitest";
import { at, type Drawing } from "../model/index.js";
import { codeWord } from "./escape.js";
import { toSvg } from "./to-svg.js";
import { xmlFault } from "./xml-fault.js";

const nasty = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.string({
    unit: fc.constantFrom(
      "<",
      ">",
      "&",
      '"',
      "'",
      "]",
      "]>",
      "</text>",
      "\u0000",
      "\u202e",
      "\ud800",
      "\uffff",
      "א",
      "🚲",
      "a",
      "-",
    ),
  }),
);

/** What a reader of XML makes of the five entities. */
const read = (xml: string) =>
  xml
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&amp;", "&");

test("any text whatever is shown as text, in letters, label and link", () => {
  fc.assert(
    fc.property(nasty, (text) => {
      const drawing: Drawing = {
        label: text,
        view: { xMm: 0, yMm: 0, widthMm: 10, heightMm: 10 },
        widthMm: 10,
        nominalWidthPx: 100,
        items: [
          { kind: "text", role: "body", at: at(1, 1), text: `[${text}]` },
          { kind: "dimension", role: "dimension", from: at(0, 0), to: at(5, 0), offsetMm: 1, text, was: text },
          { kind: "balloon", at: at(5, 5), text, outline: "measure", href: "#q1" },
          { kind: "group", name: text, items: [] },
        ],
      };
      const svg = toSvg(drawing, { mode: "screen", idPrefix: text });
      expect(xmlFault(svg)).toBeUndefined();
      const shown = /<text class="t-body"[^>]*>([^<]*)<\/text>/.exec(svg)?.[1];
      const expected = [...text]
        .map((sign) => {
          const code = sign.codePointAt(0) ?? 0;
          if (/[\n\r\t]/.test(sign)) return " ";
          const barred = /\p{Cc}|\p{Cs}|[\u202a-\u202e\u2066-\u2069]/u.test(sign) || (code & 0xfffe) === 0xfffe;
          return barred ? codeWord(code) : sign;
        })
        .join("");
      expect(read(shown ?? "nothing")).toBe(`[${expected}]`);
    }),
    { seed: 1406, numRuns: 500 },
  );
});
