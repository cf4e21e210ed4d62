/**
 * What is a door? A place where something that a person, a file, a browser or another program wrote comes into the
 * workshop. Each has an arbitrary of inputs and a judge that says what became of one of them.
 * An input is plain JSON (a recipe where the thing itself could not be JSON), so that a failing one can be kept as a file.
 */
import type fc from "fast-check";

/** What became of an input that broke nothing. `how` is counted in the report: a refusal's code, a sheet's id. */
export interface Went {
  readonly went: "accepted" | "refused";
  readonly how: string;
}

export const accepted = (how = ""): Went => ({ went: "accepted", how });
export const refusedAs = (how: string): Went => ({ went: "refused", how });

export interface Door<T = unknown> {
  readonly name: string;
  /** What may never happen here, in one sentence. */
  readonly holds: string;
  readonly inputs: fc.Arbitrary<T>;
  /** Before the first input; what it leaves open is closed by `shut`. */
  readonly open?: () => Promise<void>;
  readonly shut?: () => Promise<void>;
  /** Throws `Broken`, or anything else, where the input broke a promise of ours. */
  readonly put: (input: T) => Went | Promise<Went>;
}

/** A promise of the door does not hold for this input. */
export class Broken extends Error {}

export function mustHold(holds: boolean, words: () => string): asserts holds {
  if (!holds) throw new Broken(words());
}

/** A door in a list of doors of different inputs. Only what its own arbitrary made, or a kept file, is put to it. */
export type AnyDoor = Omit<Door<never>, "inputs"> & { readonly inputs: fc.Arbitrary<unknown> };
