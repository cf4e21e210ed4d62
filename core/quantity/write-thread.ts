/** How is a thread written on a sheet? "M12 × 1.5", "M5", "1.37 in × 24 tpi", with LH behind a left-hand one. */
import { say } from "../texts/say.js";
import { toBaseUnit } from "./convert-quantity.js";
import type { ThreadSize } from "./reading.js";

export function writeThread(thread: ThreadSize): string {
  const hand = thread.hand === undefined ? "" : thread.hand === "left" ? " LH" : " RH";
  if (thread.tpi !== undefined) {
    const inches = Number((thread.majorMm / 25.4).toFixed(6));
    // Some threads with an inch pitch are named by a diameter in mm, as the 36 mm bottom bracket.
    const inInches = inches <= 4 && toBaseUnit(inches, "length", "in") === thread.majorMm;
    const size = inInches ? `${inches} in` : `${thread.majorMm} mm`;
    return say("quantity.write-thread.tpi", { size, tpi: thread.tpi, hand });
  }
  return `M${thread.majorMm}${thread.pitchMm === undefined ? "" : ` × ${thread.pitchMm}`}${hand}`;
}
