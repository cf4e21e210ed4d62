/** What was a change, in one line that a person reads in the history? The values themselves stand below it. */
import { say } from "../texts/say.js";

export interface ToldChange {
  readonly change: number;
  readonly what: "edit" | "put" | "import" | "undo" | "redo" | "restore";
  readonly words: string | null;
  readonly of: number | null;
  readonly documents: readonly { readonly kind: string; readonly id: string }[];
}

const COUNTED = 3;

export function changeWords({ what, words, of, documents }: ToldChange): string {
  const names = documents.map((d) => `${d.kind} ${d.id}`);
  const which =
    names.length <= COUNTED ? names.join(", ") : say("workshop.change-words.documents", { namesCount: names.length });
  const from = words === null ? "" : say("workshop.change-words.from", { words });
  switch (what) {
    case "edit":
      return say("workshop.change-words.changed", { which });
    case "put":
      return say("workshop.change-words.put-in", { which, from });
    case "import":
      return say("workshop.change-words.taken-in", { which, from });
    case "undo":
      return say("workshop.change-words.taken-back-change", { of: of ?? "unknown", which });
    case "redo":
      return say("workshop.change-words.put-back-change", { of: of ?? "unknown", which });
    case "restore":
      return `Restored${words === null ? "" : say("workshop.change-words.to", { words })}: ${which}`;
  }
}
