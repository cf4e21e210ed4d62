/** How do the bytes of a file go wrong? Parts changed, cut out, doubled, blown up, its length fields set to odd values. */
import fc from "fast-check";

export interface ByteStep {
  readonly does: "set" | "word" | "cut" | "end" | "double" | "insert" | "swap";
  /** Place, as a share of the length. */
  readonly at: number;
  readonly n: number;
}

const at = fc.oneof(
  { weight: 2, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }) },
  { weight: 2, arbitrary: fc.double({ min: 0, max: 0.06, noNaN: true }) },
  { weight: 2, arbitrary: fc.double({ min: 0.9, max: 1, noNaN: true }) },
);
export const byteStep: fc.Arbitrary<ByteStep> = fc.record({
  does: fc.constantFrom("set", "set", "set", "word", "cut", "end", "double", "insert", "swap"),
  at,
  n: fc.oneof(fc.nat(255), fc.constantFrom(0, 1, 0x7fffffff, 0x80000000, 0xffffffff, 0xffff, 65_536)),
});

export function mangledBytes(from: Uint8Array, steps: readonly ByteStep[]): Uint8Array {
  let bytes = new Uint8Array(from);
  for (const { does, at: share, n } of steps) {
    const i = Math.min(bytes.length, Math.floor(share * bytes.length));
    const length = n % 40;
    const parts = (...list: readonly Uint8Array[]) => new Uint8Array(Buffer.concat(list));
    if (does === "set" && i < bytes.length) bytes[i] = n & 0xff;
    else if (does === "word" && i + 4 <= bytes.length) new DataView(bytes.buffer).setUint32(i, n >>> 0, n % 2 === 0);
    else if (does === "cut") bytes = parts(bytes.subarray(0, i), bytes.subarray(i + length));
    else if (does === "end") bytes = bytes.slice(0, i);
    else if (does === "double") bytes = parts(bytes.subarray(0, i), bytes.subarray(i, i + length), bytes.subarray(i));
    else if (does === "insert")
      bytes = parts(bytes.subarray(0, i), new Uint8Array(length).fill(n & 0xff), bytes.subarray(i));
    else if (does === "swap" && i + 1 < bytes.length) bytes.subarray(i, i + 2).reverse();
  }
  return bytes;
}
