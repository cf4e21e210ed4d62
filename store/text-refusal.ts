/** Can this text be kept and given back unchanged? Not where it holds a NUL or half a character pair. */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";

const LABEL_LIMIT = 300;

export function textRefusal(text: string, label: string): Refusal | undefined {
  const wrong = text.includes("\0")
    ? say("store.text-refusal.a-nul-character")
    : /\p{Cs}/u.test(text)
      ? say("store.text-refusal.half-a-character-pair")
      : undefined;
  if (wrong === undefined) return undefined;
  return {
    code: "not-plain-text",
    at: label,
    given: wrong,
    allowed: say("store.text-refusal.plain-text-in-utf-8"),
    message: say("store.text-refusal.holds-it-is-not-plain-text", { label, wrong }),
  };
}

export function labelRefusal(label: string): Refusal | undefined {
  const plain = label.trim() !== "" && label.length <= LABEL_LIMIT && !/[\p{Cc}\p{Cs}]/u.test(label);
  if (plain) return undefined;
  return {
    code: "bad-label",
    at: "label",
    given: label.slice(0, 40),
    allowed: say("store.text-refusal.a-file-name-of-1-to", { labelLimit: LABEL_LIMIT }),
    message: say("store.text-refusal.the-name-of-the-file-must", { labelLimit: LABEL_LIMIT }),
  };
}
