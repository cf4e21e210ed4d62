/** What stands under everything that is said of a build? */
import { STANDING_TEXT } from "@coldset/core/safety";
import type { Page } from "../screen/page.js";

export function standingPage(page: Page): Page {
  return page.blank().text([["quiet", STANDING_TEXT]]);
}
