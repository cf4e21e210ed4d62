/** The text that stands on every plan, drawing and hand-over sheet. */
export const STANDING_TEXT =
  "Guidance only. Welding, brazing, brake work, electrical work and the sale of modified bicycles may be governed by local law, workplace rules and standards, and need trained or licensed people. A modified frame or fork has not been type-tested. Where local rules, the component's own instructions or a qualified person say otherwise, follow them.";
