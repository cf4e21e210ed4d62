/**
 * Which documents does the thread that reckons have already? Both sides keep this list, one the documents it has sent, the
 * other those it was given. They take the same steps in the same order and forget by the same rule, so that they agree
 * without asking each other. Bounded by the bytes that were sent; those not asked for the longest time go first.
 */

/** Some hundred builds; a document of the demo is 1 to 20 kB. */
const MOST_BYTES = 32_000_000;

export interface KeptDocuments<T> {
  /** Counts as asked for. */
  readonly get: (key: string) => T | undefined;
  readonly put: (key: string, value: T, bytes: number) => void;
  /** To be called after each question, never inside one. */
  readonly forget: () => void;
}

export function keptDocuments<T>(mostBytes = MOST_BYTES): KeptDocuments<T> {
  const kept = new Map<string, { readonly value: T; readonly bytes: number }>();
  let sum = 0;
  const remove = (key: string) => {
    sum -= kept.get(key)?.bytes ?? 0;
    kept.delete(key);
  };
  return {
    get: (key) => {
      const hit = kept.get(key);
      if (hit === undefined) return undefined;
      kept.delete(key);
      kept.set(key, hit);
      return hit.value;
    },
    put: (key, value, bytes) => {
      remove(key);
      kept.set(key, { value, bytes });
      sum += bytes;
    },
    forget: () => {
      for (const key of kept.keys()) {
        if (sum <= mostBytes) break;
        remove(key);
      }
    },
  };
}
