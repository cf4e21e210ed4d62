import { inflateSync } from "node:zlib";

/**
 * What really stands in a PDF that this package made? Text runs with place and size, and straight strokes, in mm from the top left corner.
 * Made for checks; it reads only what our own typesetting writes (plain objects, Flate streams, two-byte fonts with ToUnicode).
 */
export interface ReadPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly runs: readonly {
    readonly text: string;
    readonly xMm: number;
    readonly yMm: number;
    readonly sizePt: number;
  }[];
  readonly strokes: readonly {
    readonly from: readonly [number, number];
    readonly to: readonly [number, number];
    readonly weightMm: number;
  }[];
}

const PT_MM = 25.4 / 72;
type Matrix = readonly [number, number, number, number, number, number];

export function readPdf(pdf: Uint8Array): readonly ReadPage[] {
  const bytes = Buffer.from(pdf);
  const raw = bytes.toString("latin1");
  const objects = new Map<number, { readonly head: string; readonly start: number }>();
  for (const match of raw.matchAll(/(?:^|\n)(\d+) 0 obj\n/g)) {
    const start = match.index + match[0].length;
    const end = raw.indexOf("\nendobj", start);
    const stream = raw.indexOf("stream\n", start);
    const head = raw.slice(start, stream >= 0 && stream < end ? stream : end);
    objects.set(Number(match[1]), { head, start: stream + 7 });
  }
  const headOf = (id: string | undefined) => objects.get(Number(id))?.head ?? "";
  const streamOf = (id: string | undefined): string => {
    const object = objects.get(Number(id));
    if (object === undefined) return "";
    const length = Number(/\/Length (\d+)/.exec(object.head)?.[1] ?? 0);
    const data = bytes.subarray(object.start, object.start + length);
    return (object.head.includes("/FlateDecode") ? inflateSync(data) : data).toString("latin1");
  };
  const kids = [...raw.matchAll(/\/Kids \[([^\]]*)\]/g)].flatMap((m) => [...(m[1] ?? "").matchAll(/(\d+) 0 R/g)]);
  const pages = kids.map((m) => headOf(m[1])).filter((head) => /\/Type \/Page\b/.test(head));
  return pages.map((head) => {
    const box = /\/MediaBox \[([^\]]*)\]/.exec(head)?.[1]?.split(" ").map(Number) ?? [];
    const fonts = new Map<string, ReadonlyMap<number, string>>();
    for (const m of head.matchAll(/\/(f\d+) (\d+) 0 R/g)) {
      const unicode = /\/ToUnicode (\d+) 0 R/.exec(headOf(m[2]))?.[1];
      fonts.set(m[1] ?? "", readMap(streamOf(unicode)));
    }
    const content = streamOf(/\/Contents (\d+) 0 R/.exec(head)?.[1]);
    return readContent(content, fonts, box[2] ?? 0, box[3] ?? 0);
  });
}

function readMap(cmap: string): ReadonlyMap<number, string> {
  const map = new Map<number, string>();
  const sign = (hex: string) =>
    String.fromCharCode(...(hex.match(/.{4}/g) ?? []).map((unit) => Number.parseInt(unit, 16)));
  for (const m of cmap.matchAll(/<([0-9A-F]{4})> <([0-9A-F]+)>/gi))
    map.set(Number.parseInt(m[1] ?? "", 16), sign(m[2] ?? ""));
  return map;
}

/** Cuts a content stream into operands and operators. Brackets inside a string may stand unescaped when they pair up. */
function* tokens(content: string): Generator<string> {
  const plain = /[^\s()[\]]+|[[\]]|\(/y;
  let here = 0;
  while (here < content.length) {
    if (/\s/.test(content[here] ?? "")) {
      here++;
      continue;
    }
    plain.lastIndex = here;
    const token = plain.exec(content)?.[0];
    if (token === undefined) throw new Error(`The content of this PDF cannot be read at ${here}.`);
    if (token !== "(") {
      here += token.length;
      yield token;
      continue;
    }
    let depth = 0;
    const start = here;
    do {
      const sign = content[here];
      if (sign === undefined) throw new Error("A string in this PDF has no end.");
      if (sign === "\\") here++;
      else if (sign === "(") depth++;
      else if (sign === ")") depth--;
      here++;
    } while (depth > 0);
    yield content.slice(start, here);
  }
}

function readContent(
  content: string,
  fonts: ReadonlyMap<string, ReadonlyMap<number, string>>,
  widthPt: number,
  heightPt: number,
): ReadPage {
  const runs: { text: string; xMm: number; yMm: number; sizePt: number }[] = [];
  const strokes: { from: [number, number]; to: [number, number]; weightMm: number }[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let textMatrix: Matrix = matrix;
  let font: ReadonlyMap<number, string> = new Map();
  let size = 0;
  let weight = 1;
  let path: (readonly [number, number])[] = [];
  const saved: { matrix: Matrix; weight: number }[] = [];
  let stack: string[] = [];
  const num = (fromEnd: number) => Number(stack.at(-fromEnd) ?? Number.NaN);
  const spot = (m: Matrix, x: number, y: number): [number, number] => [
    (m[0] * x + m[2] * y + m[4]) * PT_MM,
    (heightPt - (m[1] * x + m[3] * y + m[5])) * PT_MM,
  ];
  const times = (a: Matrix, b: Matrix): Matrix => [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
    a[4] * b[0] + a[5] * b[2] + b[4],
    a[4] * b[1] + a[5] * b[3] + b[5],
  ];
  const six = (): Matrix => [num(6), num(5), num(4), num(3), num(2), num(1)];
  for (const token of tokens(content)) {
    if (/^[-+.\d(/[\]]/.test(token)) {
      stack.push(token);
      continue;
    }
    if (token === "q") saved.push({ matrix, weight });
    else if (token === "Q") {
      const last = saved.pop();
      if (last !== undefined) ({ matrix, weight } = last);
    } else if (token === "cm") matrix = times(six(), matrix);
    else if (token === "w") weight = num(1);
    else if (token === "m") path = [spot(matrix, num(2), num(1))];
    else if (token === "l") path.push(spot(matrix, num(2), num(1)));
    else if (token === "S") {
      const [a, b] = path;
      if (path.length === 2 && a !== undefined && b !== undefined) {
        const scale = Math.sqrt(Math.abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]));
        strokes.push({ from: [...a], to: [...b], weightMm: weight * scale * PT_MM });
      }
    } else if (token === "Tf") {
      font = fonts.get((stack.at(-2) ?? "").slice(1)) ?? new Map();
      size = num(1);
    } else if (token === "Tm") textMatrix = six();
    else if (token === "Tj" || token === "TJ") {
      const all = times(textMatrix, matrix);
      const text = stack
        .filter((t) => t.startsWith("("))
        .map((t) => glyphs(t, font))
        .join("");
      const [xMm, yMm] = spot(all, 0, 0);
      runs.push({ text, xMm, yMm, sizePt: size * Math.hypot(all[2], all[3]) });
    }
    stack = [];
  }
  return { widthMm: widthPt * PT_MM, heightMm: heightPt * PT_MM, runs, strokes };
}

const ESCAPES: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", b: "\b", f: "\f" };

function glyphs(token: string, font: ReadonlyMap<number, string>): string {
  const data = token
    .slice(1, -1)
    .replace(/\\(\d{1,3}|[\s\S])/g, (_, e: string) =>
      /^\d/.test(e) ? String.fromCharCode(Number.parseInt(e, 8)) : (ESCAPES[e] ?? e),
    );
  let out = "";
  for (let i = 0; i + 1 < data.length; i += 2) {
    const glyph = (data.charCodeAt(i) << 8) | data.charCodeAt(i + 1);
    out += font.get(glyph) ?? "\ufffd";
  }
  return out;
}

/** All text of a page in the order it was set, spaces between runs left out: for "does it say this". */
export function pageText(page: ReadPage): string {
  return page.runs
    .map((run) => run.text)
    .join("")
    .replace(/\s+/g, "");
}
