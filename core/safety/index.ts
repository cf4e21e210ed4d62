export { SAFETY_RULES, type SafetyRule, STANDING_TEXT } from "../data/safety-rules.js";
export * from "./child-seat.js";
export * from "./fire-rules.js";
export * from "./fired-rule.js";
export * from "./rule-by-id.js";
export * from "./standing-refusals.js";
export * from "./work-on-tube.js";
