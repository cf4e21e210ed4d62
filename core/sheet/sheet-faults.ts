/**
 * Is this sheet well made? For the tests of every sheet: lists what its author must mend; an empty list is good.
 * Checks the question mark, doubled keys, limits the wrong way round, and that the start values pass the check.
 */
import { say } from "../texts/say.js";
import { checkInput } from "./check-input.js";
import type { Field, SheetFace } from "./sheet.js";
import { startInput } from "./start-input.js";

export function sheetFaults(sheet: SheetFace): readonly string[] {
  const faults: string[] = [];
  if (!/^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/.test(sheet.id))
    faults.push(say("sheet.sheet-faults.id-is-not-kebab-case", { sheet: sheet.id }));
  if (!sheet.question.endsWith("?")) faults.push(say("sheet.sheet-faults.the-question-does-not-end-in"));
  if (sheet.gives.length === 0) faults.push(say("sheet.sheet-faults.gives-names-no-key"));
  fieldFaults(sheet.fields, "", faults);
  const checked = checkInput(sheet.fields, startInput(sheet));
  if (checked.kind === "refused")
    faults.push(...checked.refusals.map((r) => say("sheet.sheet-faults.start", { reason: r.message })));
  return faults;
}

function fieldFaults(fields: readonly Field[], at: string, faults: string[]): void {
  const seen = new Set<string>();
  for (const field of fields) {
    const path = at + field.key;
    if (seen.has(field.key)) faults.push(say("sheet.sheet-faults.stands-twice", { path }));
    seen.add(field.key);
    if (field.label.trim() === "") faults.push(say("sheet.sheet-faults.has-no-label", { path }));
    const limits = field.kind === "table" ? field.columns : "min" in field ? [field] : [];
    for (const { min, max } of limits) {
      if (!(Number.isFinite(min) && Number.isFinite(max) && min <= max))
        faults.push(say("sheet.sheet-faults.has-no-right-limits", { path }));
    }
    if ("minItems" in field && !(field.minItems >= 0 && field.minItems <= field.maxItems)) {
      faults.push(say("sheet.sheet-faults.has-no-right-number-of-entries", { path }));
    }
    if (field.kind === "group") fieldFaults(field.fields, `${path}.`, faults);
    if (field.kind === "list") fieldFaults(field.of, `${path}[].`, faults);
    if (field.kind === "map") fieldFaults([field.of], `${path}.`, faults);
  }
}
