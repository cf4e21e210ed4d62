/** The text that stands on every plan, drawing and hand-over sheet. */
import { say } from "@coldset/core/texts";

export const STANDING_TEXT = say("drawing.standing-text.guidance-only-welding-brazing-brake-work");
