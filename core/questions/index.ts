export { donorPath } from "./asked/mis-measured.js";
export * from "./board.js";
export type { CockpitOfBuild } from "./cockpit-of-build.js";
export type { DonorGeometry } from "./donor-geometry.js";
export type { BuyLine, LedgerOfBuild } from "./ledger-of-build.js";
export { portWords } from "./port-words.js";
export { readingWords, showFigure, showNumber } from "./question.js";
export * from "./reckon.js";
export * from "./reckoning.js";
