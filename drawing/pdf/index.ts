export * from "./drawing-pdf.js";
export { fontFolder, printFonts } from "./fonts.js";
export { printable, printableDrawing, type Replaced } from "./printable.js";
export { SCALE_BAR } from "./scale-bar.js";
export { STANDING_TEXT } from "./standing-text.js";
export { typstPdf } from "./typst-pdf.js";
