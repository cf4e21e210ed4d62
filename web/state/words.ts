/** "quayside" as a heading: "Quayside". */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
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
