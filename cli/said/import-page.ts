/** How is said what would come in, and what came in? For each document: new, the same, or how it differs. */
import { say } from "@coldset/core/texts";
import { differenceWords } from "@coldset/core/workshop";
import type { ImportPlan, PlannedDocument } from "@coldset/store";
import type { Page } from "../screen/page.js";

/** Lines shown for one document; --json has all that are named. */
const MOST_LINES = 12;

const HISTORIES = {
  "theirs-goes-on": say("cli.import-page.it-goes-on-from-what-is"),
  "mine-goes-on": say("cli.import-page.it-is-an-older-state-of"),
  apart: say("cli.import-page.both-were-changed-since-they-were"),
  "only-text": say("cli.import-page.it-comes-without-a-history"),
} as const;

const CHOICES = {
  "keep-mine": say("cli.import-page.yours-is-kept"),
  "take-theirs": say("cli.import-page.it-is-taken-in-yours-stays"),
  "as-new": say("cli.import-page.it-comes-in-as"),
} as const;

const counted = (n: number, one: string) => `${n} ${one}${n === 1 ? "" : "s"}`;

export function importPage(plan: ImportPlan, page: Page, taken: boolean): Page {
  page.text([
    [
      "strong",
      taken
        ? say("cli.import-page.was-taken-in", { label: plan.label })
        : say("cli.import-page.what-would-bring-nothing-was-changed", { label: plan.label }),
    ],
  ]);
  for (const change of ["new", "same"] as const) {
    const names = plan.documents.filter((d) => d.change === change).map((d) => `${d.kind} ${d.id}`);
    if (names.length > 0)
      page
        .blank()
        .text(
          `${change === "new" ? say("cli.import-page.new-here") : say("cli.import-page.the-same-here")}: ${names.join(", ")}.`,
          2,
          4,
        );
  }
  for (const d of plan.documents) if (d.change === "differs") differing(d, page);
  const { photos, versions } = plan;
  if (photos.fresh + photos.there > 0)
    page
      .blank()
      .text(say("cli.import-page.photos-new-here-already", { fresh: photos.fresh, there: photos.there }), 2, 4);
  if (versions.fresh + versions.there > 0)
    page.text(
      say("cli.import-page.named-versions-new-here-already", { fresh: versions.fresh, there: versions.there }),
      2,
      4,
    );
  if (versions.left.length > 0)
    page.text(
      say("cli.import-page.left-out-since-a-text-that", { left: versions.left.map((v) => `"${v}"`).join(", ") }),
      2,
      4,
    );
  page.blank();
  if (taken) return page.text(say("cli.import-page.all-of-it-is-kept-coldset"));
  if (plan.undecided.length > 0) {
    const differ = counted(plan.undecided.length, say("cli.import-page.document"));
    return page.text([
      ["open", say("cli.import-page.for-you-have-to-choose", { differ })],
      say("cli.import-page.keep-mine-take-theirs-or-as"),
    ]);
  }
  return page.text(say("cli.import-page.with-yes-it-is-taken-in"));
}

function differing(d: PlannedDocument, page: Page): void {
  page.blank().text([["strong", `${d.kind} ${d.id}`], say("cli.import-page.differs-here-there")], 2, 4);
  const lines = differenceWords(d.difference);
  for (const line of lines.slice(0, MOST_LINES)) page.text(line, 4, 6);
  if (lines.length > MOST_LINES)
    page.text(say("cli.import-page.and-more-lines", { linesCount: lines.length - MOST_LINES }), 4, 6);
  page.text(HISTORIES[d.histories], 4, 6);
  if (d.choice !== null)
    page.text(
      say("cli.import-page.chosen", { choices: CHOICES[d.choice], choice: d.choice === "as-new" ? ` ${d.newId}` : "" }),
      4,
      6,
    );
}
