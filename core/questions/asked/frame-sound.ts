/** Question 2: is this frame and fork sound enough to spend on? From what was looked at; nothing is known by number. */
import { type Head, type Question, row } from "../question.js";

const HEAD: Head = { n: 2, question: "Is this frame and fork sound enough to spend on?", stake: "hurt" };

export const frameSound: Question = (r) => {
  const c = r.resolved.donor.condition;
  const s7 = r.rules.find((f) => f.rule === "S7");
  const looked = c.cracks === "none_seen";
  const words = [
    `Cracks: ${c.cracks.replaceAll("_", " ")}. Dents: ${(c.dents ?? "not_looked").replaceAll("_", " ")}. Rust: ${c.rust ?? "nothing written"}. Seatpost: ${(c.post ?? "not_tried").replaceAll("_", " ")}.`,
    "Hidden cracks, the depth of rust and the strength of a blade cannot be known from your measurements. Look at every joint bare and degreased, with a lamp and a magnet; use dye where you doubt. A person signs it, not a number.",
  ];
  return row(HEAD, {
    answer:
      s7 !== undefined
        ? s7.here
        : looked
          ? `No problem found where you looked${c.rust === undefined ? "" : `; ${c.rust}`}.`
          : "Nobody has looked for cracks yet.",
    verdict:
      s7 !== undefined
        ? "refuse"
        : looked
          ? c.rust === undefined
            ? "no problem found"
            : "measure first"
          : "measure first",
    about: s7 !== undefined ? "frame" : c.rust !== undefined ? "rust" : undefined,
    next:
      s7 !== undefined
        ? { kind: "do", what: "Stop here: scrap it, or ask a frame builder about repair" }
        : looked
          ? c.rust === undefined
            ? undefined
            : {
                kind: "measure",
                what: `Scribe the rust and read the pit's depth (${c.rust})`,
                at: "donor.condition.rust",
                tool: "scribe and depth gauge",
                accuracy: "± 0.1 mm",
              }
          : {
              kind: "measure",
              what: "Look for cracks at every joint, bare and degreased",
              at: "donor.condition.cracks",
              tool: "lamp, loupe, magnet",
            },
    words,
    notChecked: ["The zone-by-zone map is not in this version yet.", "Fatigue, hidden cracks and inside rust."],
    sources: ["wear-practice"],
  });
};
