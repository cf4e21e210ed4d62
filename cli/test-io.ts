/** A machine made of nothing, for tests: files in memory, output kept. What is not given is read from the real disk. */
import { type FileFacts, type Io, processIo } from "./io.js";

export interface TestIo extends Io {
  readonly out: () => string;
  readonly err: () => string;
  readonly written: ReadonlyMap<string, Uint8Array>;
}

export interface TestIoOptions {
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  readonly stdin?: string;
  readonly columns?: number;
  readonly colour?: boolean;
  readonly env?: Readonly<Record<string, string>>;
  readonly stop?: Promise<void>;
}

export function testIo(options: TestIoOptions = {}): TestIo {
  const real = processIo();
  const out: string[] = [];
  const err: string[] = [];
  const written = new Map<string, Uint8Array>();
  const bytes = (text: string | Uint8Array) => (typeof text === "string" ? new TextEncoder().encode(text) : text);
  const given = (file: string) => {
    const text = options.files?.[file];
    return text === undefined ? undefined : bytes(text);
  };
  return {
    stdout: (text) => void out.push(text),
    stderr: (text) => void err.push(text),
    columns: options.columns ?? 80,
    colour: options.colour ?? false,
    env: options.env ?? {},
    today: () => "2026-05-02",
    facts: async (file): Promise<FileFacts> => {
      const here = given(file);
      return here === undefined ? real.facts(file) : { kind: "file", bytes: here.length };
    },
    namesIn: real.namesIn,
    readFile: async (file, most) => given(file)?.subarray(0, most + 1) ?? real.readFile(file, most),
    readStdin: async (most) => bytes(options.stdin ?? "").subarray(0, most + 1),
    replaceFile: async (file, content) => void written.set(file, content),
    replaceFileFrom: async (file, chunks) => {
      const parts: Uint8Array[] = [];
      for await (const chunk of chunks) parts.push(chunk);
      const content = new Uint8Array(Buffer.concat(parts));
      written.set(file, content);
      return content.length;
    },
    stopAsked: () => options.stop ?? new Promise(() => {}),
    out: () => out.join(""),
    err: () => err.join(""),
    written,
  };
}
