/**
 * How does a document's text become numbers? Every field reads what people write ("1 1/8\"", "49,1 cm", 442) into the
 * base unit of its dimension, and refuses the rest with the three ways to write it. "?" means: not measured yet.
 */

import { z } from "zod";
import { type NumberDimension, nearestName, readQuantity } from "../quantity/index.js";
import { say } from "../texts/say.js";

/** A number a person entered, with the spread that stands beside it where one was written ("442 ± 0.3"). */
export interface Entered {
  readonly value: number;
  /** Half-width as written after ±, in the same unit. */
  readonly plusMinus?: number;
  /** Exactly what the person wrote. */
  readonly written: string;
}

function entered(dimension: NumberDimension, min: number, max: number, unit: string) {
  return z.unknown().transform((given, ctx): Entered => {
    if (typeof given !== "number" && typeof given !== "string") {
      const message =
        given === undefined
          ? say("workshop.fields.missing-write-a-number-with-its")
          : say("workshop.fields.write-a-number-with-its-unit");
      ctx.addIssue({
        code: "custom",
        input: given,
        message,
        params: {
          code: given === undefined ? "missing" : "not-text",
          allowed: say("workshop.fields.a-number-with-its-unit"),
        },
      });
      return z.NEVER;
    }
    // A bare number is in the base unit already; most fields are, and this is read at every keystroke.
    if (typeof given === "number" && given >= min && given <= max) return { value: given, written: String(given) };
    const reading = readQuantity(given, dimension);
    if (reading.kind !== "read") {
      ctx.addIssue({
        code: "custom",
        input: given,
        message: say("workshop.fields.write-it-as", {
          reason: reading.reason,
          ways: reading.ways.join(say("workshop.fields.or")),
        }),
        params: { code: reading.code, allowed: reading.allowed },
      });
      return z.NEVER;
    }
    if (!(reading.value >= min && reading.value <= max)) {
      ctx.addIssue({
        code: "custom",
        input: given,
        message: say("workshop.fields.is-outside-to", { written: reading.written, min, max, unit }).trim(),
        params: { code: "out-of-range", allowed: say("workshop.fields.to", { min, max, unit }).trim() },
      });
      return z.NEVER;
    }
    const spread = reading.plusMinus;
    return { value: reading.value, written: String(given), ...(spread === undefined ? {} : { plusMinus: spread }) };
  });
}

const plain = (dimension: NumberDimension, min: number, max: number, unit: string) =>
  entered(dimension, min, max, unit).transform((e) => e.value);

/** Length in mm. */
export const mm = (min = 0, max = 5000) => plain("length", min, max, "mm");
/** Length in mm together with what was written. */
export const mmEntered = (min = 0, max = 5000) => entered("length", min, max, "mm");
/** Angle in degrees. */
export const deg = (min = -360, max = 360) => plain("angle", min, max, "°");
export const degEntered = (min = -360, max = 360) => entered("angle", min, max, "°");
/** Mass in grams: a bare number is grams. */
export const grams = (max = 300_000) =>
  z.union([z.number(), z.string()]).transform((given, ctx): number => {
    if (typeof given === "number" && Number.isFinite(given) && given >= 0 && given <= max) return given;
    const reading = readQuantity(given, "mass", { bareUnit: "g", into: "g" });
    const value = reading.kind === "read" ? reading.value : Number.NaN;
    if (reading.kind === "read" && value >= 0 && value <= max) return value;
    ctx.addIssue({
      code: "custom",
      input: given,
      message:
        reading.kind === "read"
          ? say("workshop.fields.is-outside-0-to-g", { given: String(given), max })
          : say("workshop.fields.write-it-as", {
              reason: reading.reason,
              ways: reading.ways.join(say("workshop.fields.or")),
            }),
    });
    return z.NEVER;
  });
/** Mass of people and loads in kg. */
export const kg = (max = 300) => plain("mass", 0, max, "kg");
/** Hands-on or clock time in hours. */
export const hours = (max = 2000) => plain("time", 0, max, "h");
/** A sum in the workshop's own currency unit. */
export const money = () =>
  z
    .number({ error: say("workshop.fields.write-a-plain-sum-such-as") })
    .min(0)
    .max(1_000_000);
export const count = (min: number, max: number) => z.number().int().min(min).max(max);
export const ratio = (min: number, max: number) => z.number().min(min).max(max);

/** "?" stands for "not measured"; it is kept in the text and read as absent. */
export const unknownable = <T extends z.ZodType>(inner: T) =>
  z
    .union([z.literal("?"), z.null(), inner])
    .optional()
    .transform((v): z.output<T> | undefined => (v === "?" || v === null ? undefined : (v as z.output<T> | undefined)));

const quoted = (given: unknown) => JSON.stringify(given) ?? String(given);

/** Unknown keys named one by one, at most. */
const MOST_KEYS_TOLD = 12;

/** A record with fixed keys; an unknown key is refused with the nearest known one. */
export function fixed<S extends z.ZodRawShape>(shape: S) {
  const known = Object.keys(shape);
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === "unrecognized_keys") {
        const keys = (issue as unknown as { keys: string[] }).keys;
        const told = keys.slice(0, MOST_KEYS_TOLD);
        const more =
          keys.length > told.length ? say("workshop.fields.and-more", { keysCount: keys.length - told.length }) : "";
        return `${told
          .map((key) => {
            const near = nearestName(key, known);
            return near === undefined
              ? say("workshop.fields.unknown-key-known-here", {
                  key: quoted(key),
                  known: known.slice(0, 12).join(", "),
                })
              : say("workshop.fields.unknown-key-did-you-mean", { key: quoted(key), near: quoted(near) });
          })
          .join("; ")}${more}`;
      }
      if (issue.code === "invalid_type")
        return say("workshop.fields.expected-a-group-of-keys", {
          known: known.slice(0, 8).join(", "),
          knownCount: known.length > 8 ? ", …" : "",
        });
      return undefined;
    },
  });
}

/**
 * One word of a closed list; a wrong word is refused with the nearest. A word that looks like a number, such as the "9" of a
 * chain, is also taken where it was read as one: a table and a text without quotes cannot tell.
 */
export function word<const W extends readonly [string, ...string[]]>(words: W) {
  return z.preprocess((given) => (typeof given === "number" ? numericWord(given, words) : given), listed(words));
}

const numericWord = (given: number, words: readonly string[]) =>
  words.includes(String(given)) ? String(given) : given;

function listed<const W extends readonly [string, ...string[]]>(words: W) {
  return z.enum(words, {
    error: (issue) => {
      if (issue.input === undefined) return say("workshop.fields.missing-write-one-of", { words: words.join(", ") });
      const near = typeof issue.input === "string" ? nearestName(issue.input, words) : undefined;
      return say("workshop.fields.is-not-one-of", {
        input: quoted(issue.input),
        words: words.join(", "),
        near: near === undefined ? "" : say("workshop.fields.did-you-mean", { near: quoted(near) }),
      });
    },
  });
}

export const text = (max = 400) =>
  z.string().max(max, { error: say("workshop.fields.keep-it-under-letters", { max }) });
/** Text that must say something: one letter or digit at least. */
export const saidText = (max = 400) =>
  text(max).regex(/[\p{L}\p{N}]/u, { error: say("workshop.fields.write-it-in-words-left-empty") });
export const id = () =>
  z
    .union([z.string(), z.number()])
    .transform((v) => String(v))
    .pipe(z.string().regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/, { error: say("workshop.fields.an-id-is-1-to-40") }));

/** Tyre or rim marking by ISO 5775: width-BSD on the tyre wall; here written BSD-width as in `584-47`, or `47-584`. */
export const tyreSize = () =>
  z
    .string({ error: say("workshop.fields.write-the-two-number-marking-such") })
    .transform((given, ctx): { readonly bsdMm: number; readonly widthMm: number } => {
      const match = /^\s*(\d{2,3})\s*[-–]\s*(\d{2,3})\s*$/.exec(given);
      const a = Number(match?.[1]);
      const b = Number(match?.[2]);
      const bsdMm = Math.max(a, b);
      const widthMm = Math.min(a, b);
      if (!match || bsdMm < 200 || bsdMm > 700 || widthMm < 15 || widthMm > 130) {
        ctx.addIssue({
          code: "custom",
          input: given,
          message: say("workshop.fields.is-not-a-two-number-marking", { given: quoted(given) }),
        });
        return z.NEVER;
      }
      return { bsdMm, widthMm };
    });

const isDistance = (key: string) => /^\d+(?:\.\d+)?$/.test(key) && Number(key) <= 1000;

/**
 * A measured profile: distance → reading, e.g. {"300": 64, "315.5": 60}; sorted by distance. Every key is looked at before
 * the library reads any: it leaves some names out without a word.
 */
export const profile = () =>
  z.preprocess(
    (given, ctx) => {
      const keys = given !== null && typeof given === "object" ? Object.keys(given) : [];
      if (keys.every(isDistance)) return given;
      ctx.addIssue({ code: "custom", input: given, message: say("workshop.fields.each-key-is-a-distance-in") });
      return z.NEVER;
    },
    z.record(z.string(), mm(0, 400)).transform((given): readonly (readonly [number, number])[] =>
      Object.entries(given)
        .map(([at, value]) => [Number(at), value] as const)
        .sort((p, q) => p[0] - q[0]),
    ),
  );
