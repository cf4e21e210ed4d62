/** Which texts does sheets say? One row a text; {name} stands for what is filled in. */
export const sheetsTexts = {
  "sheets.read-sheet-input.cannot-be-read-as-yaml-or": "{file} cannot be read as YAML or JSON: {why}",
  "sheets.read-sheet-input.holds-a-sheet-s-input-is": "{file} holds {size}; a sheet's input is {allowed}.",
  "sheets.read-sheet-input.is-empty-give": "{file} is empty. Give {example}.",
  "sheets.read-sheet-input.is-nested-too-deeply": "{file} is nested too deeply.",
  "sheets.read-sheet-input.levels": "{mostLevels} levels",
  "sheets.read-sheet-input.mb-at-most": "{textLimit} MB at most",
  "sheets.read-sheet-input.more-levels": "more levels",
  "sheets.read-sheet-input.one-object-of-named-values-as":
    "one object of named values, as `coldset sheet ID --describe` shows",
  "sheets.read-sheet-input.unknown-reason": "unknown reason",
} as const;
