/** What does the browser keep by itself? Entries that wait, texts that could not be read, light, units and keys. */

export interface Keep {
  readonly get: (name: string) => string | undefined;
  readonly set: (name: string, value: string | undefined) => void;
}

/** The browser's own storage. Where it is switched off nothing is kept over a reload, and nothing breaks. */
export const browserKeep: Keep = {
  get: (name) => {
    try {
      return globalThis.localStorage?.getItem(`coldset.${name}`) ?? undefined;
    } catch {
      // Storage may be forbidden by the browser; the page then lives from visit to visit.
      return undefined;
    }
  },
  set: (name, value) => {
    try {
      if (value === undefined) globalThis.localStorage?.removeItem(`coldset.${name}`);
      else globalThis.localStorage?.setItem(`coldset.${name}`, value);
    } catch {
      // As above: forbidden or full. The entry still waits in memory and is sent.
    }
  },
};

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
