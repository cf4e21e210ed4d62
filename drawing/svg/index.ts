export { codeWord, escapedXml } from "./escape.js";
export type { SvgOptions } from "./page.js";
export { toSvg } from "./to-svg.js";
