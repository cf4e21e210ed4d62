/** Question 2: is this frame and fork sound enough to spend on? From what was looked at; nothing is known by number. */
import { say } from "../../texts/say.js";
import { type Head, type Question, row } from "../question.js";

const HEAD: Head = { n: 2, question: say("asked.frame-sound.is-this-frame-and-fork-sound"), stake: "hurt" };

export const frameSound: Question = (r) => {
  const c = r.resolved.donor.condition;
  const s7 = r.rules.find((f) => f.rule === "S7");
  const looked = c.cracks === "none_seen";
  const words = [
    say("asked.frame-sound.cracks-dents-rust-seatpost", {
      cracks: c.cracks.replaceAll("_", " "),
      dents: (c.dents ?? "not_looked").replaceAll("_", " "),
      rust: c.rust ?? say("asked.frame-sound.nothing-written"),
      post: (c.post ?? "not_tried").replaceAll("_", " "),
    }),
    say("asked.frame-sound.hidden-cracks-the-depth-of-rust"),
  ];
  return row(HEAD, {
    answer:
      s7 !== undefined
        ? s7.here
        : looked
          ? say("asked.frame-sound.no-problem-found-where-you-looked", {
              rust: c.rust === undefined ? "" : say("asked.frame-sound.rust", { rust: c.rust }),
            })
          : say("asked.frame-sound.nobody-has-looked-for-cracks-yet"),
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
        ? { kind: "do", what: say("asked.frame-sound.stop-here-scrap-it-or-ask") }
        : looked
          ? c.rust === undefined
            ? undefined
            : {
                kind: "measure",
                what: say("asked.frame-sound.scribe-the-rust-and-read-the", { rust: c.rust }),
                at: "donor.condition.rust",
                tool: say("asked.frame-sound.scribe-and-depth-gauge"),
                accuracy: "± 0.1 mm",
              }
          : {
              kind: "measure",
              what: say("asked.frame-sound.look-for-cracks-at-every-joint"),
              at: "donor.condition.cracks",
              tool: say("asked.frame-sound.lamp-loupe-magnet"),
            },
    words,
    notChecked: [
      say("asked.frame-sound.the-zone-by-zone-map-is"),
      say("asked.frame-sound.fatigue-hidden-cracks-and-inside-rust"),
    ],
    sources: ["wear-practice"],
  });
};
