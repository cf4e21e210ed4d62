/** How is a difference said, line by line, for the command line and the page alike? */
import { say } from "../texts/say.js";
import type { Difference, ValueDifference } from "./difference.js";

/** "measured.top_tube_cc: 537 → 551". */
export function valueWords(d: ValueDifference): string {
  switch (d.kind) {
    case "changed":
      return `${d.place}: ${d.was} → ${d.now}`;
    case "added":
      return say("workshop.difference-words.added", { place: d.place, now: d.now });
    case "taken-out":
      return say("workshop.difference-words.taken-out-was", { place: d.place, was: d.was });
    case "re-ordered":
      return say("workshop.difference-words.the-same-entries-in-another-order", { place: d.place });
  }
}

const WHOLE = {
  same: "No difference.",
  layout: say("workshop.difference-words.only-the-layout-of-the-text"),
  comments: say("workshop.difference-words.only-comments-differ"),
  new: say("workshop.difference-words.the-document-was-put-in"),
  gone: say("workshop.difference-words.the-document-is-not-there"),
  unreadable: say("workshop.difference-words.one-of-the-two-texts-cannot"),
} as const;

/** All lines about one document, without its name. */
export function differenceWords(d: Difference): readonly string[] {
  const lines = d.kind === "values" ? d.values.map(valueWords) : [WHOLE[d.kind]];
  if (d.more > 0)
    lines.push(say("workshop.difference-words.and-more", { more: d.more, values: d.more === 1 ? "value" : "values" }));
  lines.push(...d.commentsOut.map((text) => say("workshop.difference-words.comment-taken-out", { text })));
  lines.push(...d.commentsIn.map((text) => say("workshop.difference-words.comment-added", { text })));
  return lines;
}
