/** Which source is meant by this id? One table of all rooms' rows, in the order of the rooms. */
import type { SourceRow } from "./source-row.js";
import { driveSources } from "./sources-drive.js";
import { fitSources } from "./sources-fit.js";
import { fitDriveSources } from "./sources-fit-drive.js";
import { geometrySources } from "./sources-geometry.js";
import { planSources } from "./sources-plan.js";
import { positionSources } from "./sources-position.js";
import { quantitySources } from "./sources-quantity.js";
import { questionSources } from "./sources-questions.js";
import { surveySources } from "./sources-survey.js";

export const ALL_SOURCES: readonly SourceRow[] = [
  ...quantitySources,
  ...geometrySources,
  ...surveySources,
  ...positionSources,
  ...driveSources,
  ...fitSources,
  ...fitDriveSources,
  ...planSources,
  ...questionSources,
];

const BY_ID: ReadonlyMap<string, SourceRow> = new Map(ALL_SOURCES.map((row) => [row.id, row]));

export function sourceById(id: string): SourceRow | undefined {
  return BY_ID.get(id);
}

/** The source as it is shown: "title, where (from memory, not re-read)". An id without a row is shown as it is. */
export function sourceWords(id: string): string {
  const row = sourceById(id);
  if (row === undefined) return id;
  const where = row.where === undefined ? "" : `, ${row.where}`;
  return `${row.title}${where}${row.mark === "memory" ? " (from memory, not re-read)" : ""}`;
}
