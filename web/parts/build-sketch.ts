/**
 * Which drawing of a build may the page use? Only the sketch: the folder's own door also leads to the book, which is
 * made with files and a typesetter that no browser has.
 */
export { sketchAfter, sketchBefore } from "../../drawing/build/sketch-of-build.js";
