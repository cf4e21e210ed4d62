/** Which inputs have failed at this door before? Each is a file with its story; all of them stay as tests. */
import fs from "node:fs";
import path from "node:path";
import { PLACE } from "./place.js";

export interface Kept {
  readonly file: string;
  /** One line: what went wrong, and what was mended. */
  readonly story: string;
  readonly input: unknown;
}

export function keptInputs(door: string): readonly Kept[] {
  const folder = path.join(PLACE, "fuzz", "kept", door);
  if (!fs.existsSync(folder)) return [];
  return fs
    .readdirSync(folder)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .map((file) => {
      const read: unknown = JSON.parse(fs.readFileSync(path.join(folder, file), "utf8"));
      if (read === null || typeof read !== "object" || !("story" in read) || !("input" in read))
        throw new Error(`${file}: a kept input has a story and an input`);
      if (typeof read.story !== "string" || read.story.trim() === "") throw new Error(`${file} has no story`);
      return { file, story: read.story, input: read.input };
    });
}
