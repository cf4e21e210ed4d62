import { capital } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";

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
  const said = settles.map((s) => (/^J\d+$/.test(s) ? say("web.words.joint", { id: s }) : s));
  return said.length < 2
    ? said.join("")
    : say("web.words.and", { allButLast: said.slice(0, -1).join(", "), last: said.at(-1) });
}

const PLACES: Readonly<Record<string, string>> = {
  bb: say("web.words.bottom-bracket"),
  wheel_front: say("web.words.front-wheel"),
  wheel_rear: say("web.words.rear-wheel"),
  tyre_front: say("web.words.front-tyre"),
  tyre_rear: say("web.words.rear-tyre"),
  caliper_front: say("web.words.front-caliper"),
  caliper_rear: say("web.words.rear-caliper"),
  rotor_front: say("web.words.front-rotor"),
  rotor_rear: say("web.words.rear-rotor"),
  hub_front: say("web.words.front-hub"),
  hub_rear: say("web.words.rear-hub"),
  ring_inner: say("web.words.small-ring"),
  cassette_spacer: say("fit.joint-definition.spacer-behind-the-cassette"),
};

/** "tyre_rear" as a builder says it. */
export function placeWords(place: string): string {
  return PLACES[place] ?? place.replaceAll("_", " ");
}
