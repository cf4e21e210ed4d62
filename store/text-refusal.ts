/** Can this text be kept and given back unchanged? Not where it holds a NUL or half a character pair. */
import type { Refusal } from "@coldset/core/quantity";

const LABEL_LIMIT = 300;

export function textRefusal(text: string, label: string): Refusal | undefined {
  const wrong = text.includes("\0") ? "a NUL character" : /\p{Cs}/u.test(text) ? "half a character pair" : undefined;
  if (wrong === undefined) return undefined;
  return {
    code: "not-plain-text",
    at: label,
    given: wrong,
    allowed: "plain text in UTF-8",
    message: `${label} holds ${wrong}; it is not plain text. Save it as plain text in UTF-8 and put it in again.`,
  };
}

export function labelRefusal(label: string): Refusal | undefined {
  const plain = label.trim() !== "" && label.length <= LABEL_LIMIT && !/[\p{Cc}\p{Cs}]/u.test(label);
  if (plain) return undefined;
  return {
    code: "bad-label",
    at: "label",
    given: label.slice(0, 40),
    allowed: `a file name of 1 to ${LABEL_LIMIT} characters, without control characters`,
    message: `The name of the file must have 1 to ${LABEL_LIMIT} characters, none of them control characters.`,
  };
}
