/** How is the history of a build told on a terminal: its changes, its named versions, what differs, what was just done? */
import { say } from "@coldset/core/texts";
import { changeWords, type Difference, differenceWords } from "@coldset/core/workshop";
import type { BuildHistory, NamedVersion, Restored, Turned, VersionDifference } from "@coldset/store";
import type { Page } from "../screen/page.js";

interface Named {
  readonly kind: string;
  readonly id: string;
  readonly difference: Difference;
}

export function historyPage(history: BuildHistory, versions: readonly NamedVersion[], page: Page): Page {
  page.heading(say("cli.history-page.history-of", { build: history.build })).blank();
  if (history.changes.length === 0) page.text(say("cli.history-page.nothing-older"));
  for (const change of history.changes) {
    const taken = change.state === "taken-back" ? ([["quiet", say("cli.history-page.taken-back-word")]] as const) : [];
    const door = change.who === null ? "" : `, ${change.who}`;
    page.text([["strong", `${change.change}`], changeWords(change), ...taken], 0, 4);
    page.text([["quiet", `${moment(change.at)}${door}`]], 4);
    // What came in new has nothing to be compared with; its names stand above.
    if (change.documents.some((d) => d.difference.kind !== "new")) documents(page, change.documents, 4);
  }
  page.blank();
  if (history.undo !== null) page.text(say("cli.history-page.taken-back-next-change-undo", { undo: history.undo }));
  if (history.redo !== null) page.text(say("cli.history-page.put-back-next-change-redo", { redo: history.redo }));
  if (history.older !== null) page.text(say("cli.history-page.older-ones-before", { older: history.older }));
  if (versions.length > 0) {
    page.heading(say("cli.history-page.named-versions")).blank();
    page.table(versions.map((v) => [["strong", v.name], moment(v.at)]));
  }
  return page;
}

export function turnedPage(turned: Extract<Turned, { readonly kind: "turned" }>, page: Page): Page {
  page.text([
    [
      "strong",
      say("cli.history-page.change", {
        what: turned.what === "undo" ? say("cli.history-page.taken-back") : say("cli.history-page.put-back"),
        of: turned.of,
      }),
    ],
  ]);
  return documents(page, turned.documents, 2);
}

export function restoredPage(
  restored: Extract<Restored, { readonly kind: "restored" }>,
  name: string,
  page: Page,
): Page {
  if (restored.change === null) return page.text(say("cli.history-page.nothing-to-restore-the-build-stands", { name }));
  page.text([
    ["strong", say("cli.history-page.restored-to", { name })],
    say("cli.history-page.it-is-change-and-can-be", { change: restored.change }),
  ]);
  return documents(page, restored.documents, 2);
}

export function differencePage(found: Extract<VersionDifference, { readonly kind: "difference" }>, page: Page): Page {
  page.heading(say("cli.history-page.from-to", { from: found.from, to: found.to })).blank();
  if (found.documents.length === 0) page.text(say("cli.history-page.no-difference"));
  return documents(page, found.documents, 0);
}

function documents(page: Page, list: readonly Named[], indent: number): Page {
  for (const d of list) {
    page.text([["quiet", `${d.kind} ${d.id}`]], indent);
    for (const line of differenceWords(d.difference)) page.text(line, indent + 2, indent + 4);
  }
  return page;
}

/** The clock of this machine, to the minute: that is how a person remembers it. */
function moment(at: string): string {
  // The Swedish way of writing a date is year, month, day.
  return new Date(at).toLocaleString("sv-SE", { dateStyle: "short", timeStyle: "short" });
}
