/** What is a source? One row per thing we cite; shown with every answer that uses it. */
export interface SourceRow {
  /** Short id used in answers, kebab-case. */
  readonly id: string;
  /** What a reader would look for: title, edition or year. */
  readonly title: string;
  readonly kind: "standard" | "book" | "paper" | "page" | "common practice" | "our derivation" | "demo";
  /** Table, clause, page or method, where known. */
  readonly where?: string;
  /** How the value came to us. "memory" is always shown to the builder as "from memory, not re-read". */
  readonly mark: "read" | "memory" | "common practice" | "derived" | "invented for the demo";
}
