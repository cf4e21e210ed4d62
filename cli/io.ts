/** What does a command touch outside itself? All of it goes through this, so that a test can stand in for the machine. */
import { createReadStream, promises as fs } from "node:fs";
import path from "node:path";

export interface FileFacts {
  readonly kind: "file" | "folder" | "stream";
  readonly bytes: number;
}

export interface Io {
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
  /** Letters a line holds; 80 where nobody knows. */
  readonly columns: number;
  readonly colour: boolean;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly today: () => string;
  readonly facts: (file: string) => Promise<FileFacts>;
  readonly namesIn: (folder: string) => Promise<readonly string[]>;
  /** At most so many bytes; one more where there are more. */
  readonly readFile: (file: string, mostBytes: number) => Promise<Uint8Array>;
  readonly readStdin: (mostBytes: number) => Promise<Uint8Array>;
  /** Writes beside the file and puts it in its place in one step: the old one stands until the new one is whole. */
  readonly replaceFile: (file: string, bytes: Uint8Array) => Promise<void>;
  /** The same for what comes piece by piece; on the disk, name and all, before it says so. Gives the bytes written. */
  readonly replaceFileFrom: (file: string, chunks: AsyncIterable<Uint8Array>) => Promise<number>;
  /** Resolves when the person asks to stop (Ctrl-C). */
  readonly stopAsked: () => Promise<void>;
}

async function firstBytes(stream: AsyncIterable<Uint8Array | string>, most: number): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of stream) {
    const bytes = typeof chunk === "string" ? new TextEncoder().encode(chunk) : chunk;
    chunks.push(bytes);
    size += bytes.length;
    if (size > most) break;
  }
  return Buffer.concat(chunks).subarray(0, most + 1);
}

/** A reader that goes away (`| head`) is no fault: the rest is not wanted. */
function quietOnClosedPipe(stream: NodeJS.WriteStream): void {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
  });
}

/** So that a new name outlives a power cut. Windows opens no folder and keeps names by itself. */
async function syncFolder(folder: string): Promise<void> {
  if (process.platform === "win32") return;
  const handle = await fs.open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** What a process that was killed had begun to write beside this file. */
async function removeBrokenOff(file: string): Promise<void> {
  const stem = `${path.basename(file)}.`;
  for (const name of await fs.readdir(path.dirname(file))) {
    const pid = name.startsWith(stem) ? /^(\d+)\.part$/.exec(name.slice(stem.length))?.[1] : undefined;
    if (pid !== undefined && !isAlive(Number(pid))) await fs.rm(path.join(path.dirname(file), name), { force: true });
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return pid !== process.pid;
  } catch (cause) {
    // EPERM: it runs, as somebody else.
    return (cause as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** Written beside and put in place at the end, so that whoever reads the name finds the old or the new, whole. */
async function replaceFileFrom(
  file: string,
  chunks: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
): Promise<number> {
  const beside = `${file}.${process.pid}.part`;
  let bytes = 0;
  try {
    await removeBrokenOff(file);
    const handle = await fs.open(beside, "wx");
    try {
      for await (const chunk of chunks) {
        await handle.writeFile(chunk);
        bytes += chunk.length;
      }
      await handle.sync();
    } finally {
      await handle.close();
    }
    await fs.rename(beside, file);
  } catch (cause) {
    await fs.rm(beside, { force: true });
    throw cause;
  }
  await syncFolder(path.dirname(file));
  return bytes;
}

let piped = false;

export function processIo(): Io {
  if (!piped) {
    piped = true;
    quietOnClosedPipe(process.stdout);
    quietOnClosedPipe(process.stderr);
  }
  const { env } = process;
  const columns = process.stdout.columns ?? Number.parseInt(env.COLUMNS ?? "", 10);
  const wanted = env.FORCE_COLOR !== undefined && env.FORCE_COLOR !== "0";
  return {
    stdout: (text) => void process.stdout.write(text),
    stderr: (text) => void process.stderr.write(text),
    columns: Number.isFinite(columns) && columns > 0 ? columns : 80,
    colour: (env.NO_COLOR ?? "") === "" && env.TERM !== "dumb" && (process.stdout.isTTY === true || wanted),
    env,
    today: () => new Date().toLocaleDateString("sv-SE"),
    facts: async (file) => {
      const stat = await fs.stat(file);
      return { kind: stat.isDirectory() ? "folder" : stat.isFile() ? "file" : "stream", bytes: stat.size };
    },
    namesIn: (folder) => fs.readdir(folder),
    readFile: (file, most) => firstBytes(createReadStream(file), most),
    readStdin: (most) => firstBytes(process.stdin, most),
    replaceFile: async (file, bytes) => void (await replaceFileFrom(file, [bytes])),
    replaceFileFrom,
    stopAsked: () =>
      new Promise((resolve) => {
        for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
      }),
  };
}
