/** What does the browser keep by itself? Entries that wait, texts that could not be read, light, units and keys. */

export interface Keep {
  readonly get: (name: string) => string | undefined;
  /** False where it could not be kept: storage is forbidden, or full. */
  readonly set: (name: string, value: string | undefined) => boolean;
  /** All names that begin like this. */
  readonly names: (prefix: string) => readonly string[];
}

const PREFIX = "coldset.";

/** The browser's own storage. Where it is switched off nothing is kept over a reload, and nothing breaks. */
export const browserKeep: Keep = {
  get: (name) => {
    try {
      return globalThis.localStorage?.getItem(PREFIX + name) ?? undefined;
    } catch {
      // Storage may be forbidden by the browser; the page then lives from visit to visit.
      return undefined;
    }
  },
  set: (name, value) => {
    try {
      if (globalThis.localStorage === undefined) return false;
      if (value === undefined) globalThis.localStorage.removeItem(PREFIX + name);
      else globalThis.localStorage.setItem(PREFIX + name, value);
      return true;
    } catch {
      // As above: forbidden or full. Who must not lose it says so.
      return false;
    }
  },
  names: (prefix) => {
    try {
      const all = globalThis.localStorage === undefined ? [] : Object.keys(globalThis.localStorage);
      return all.filter((n) => n.startsWith(PREFIX + prefix)).map((n) => n.slice(PREFIX.length));
    } catch {
      // As above.
      return [];
    }
  },
};

/** Tells when another window of this browser wrote or took out a name that begins like this. Gives the way to stop. */
export function heardElsewhere(prefix: string, tell: () => void): () => void {
  const hear = (event: StorageEvent) => {
    if (event.key === null || event.key.startsWith(PREFIX + prefix)) tell();
  };
  addEventListener("storage", hear);
  return () => removeEventListener("storage", hear);
}

/** What was kept as JSON, or `fallback` where nothing, or nothing readable, was kept. */
export function keptJson<T>(keep: Keep, name: string, looksRight: (v: unknown) => v is T, fallback: T): T {
  const text = keep.get(name);
  if (text === undefined) return fallback;
  try {
    const value: unknown = JSON.parse(text);
    return looksRight(value) ? value : fallback;
  } catch {
    // Half a text from an old visit: it is not ours to guess at.
    return fallback;
  }
}
