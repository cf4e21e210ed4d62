import { capital } from "@coldset/core/quantity";

export { capital };

/** A line that begins with a plain word gets its capital; "q35 sprocket" and "t08" are names and stay. */
export function capitalWord(text: string): string {
  return /^\p{Ll}[\p{Ll}'-]*(?=$|[\s:,;.])/u.test(text) ? capital(text) : text;
}

/** "Sessions of 5 h" inside a sentence: "sessions of 5 h". A word in capitals stays. */
export function lower(text: string): string {
  return /^\p{Lu}\p{Ll}/u.test(text) || /^A /.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** "question 7, J9" as somebody says it: "question 7 and joint J9". */
export function settlesWords(settles: readonly string[]): string {
  const said = settles.map((s) => (/^J\d+$/.test(s) ? `joint ${s}` : s));
  return said.length < 2 ? said.join("") : `${said.slice(0, -1).join(", ")} and ${said.at(-1)}`;
}

const PLACES: Readonly<Record<string, string>> = {
  bb: "bottom bracket",
  wheel_front: "front wheel",
  wheel_rear: "rear wheel",
  tyre_front: "front tyre",
  tyre_rear: "rear tyre",
  caliper_front: "front caliper",
  caliper_rear: "rear caliper",
  rotor_front: "front rotor",
  rotor_rear: "rear rotor",
};

/** "tyre_rear" as a builder says it. */
export function placeWords(place: string): string {
  return PLACES[place] ?? place.replaceAll("_", " ");
}
