export { discAt } from "./brakes-wanted.js";
export { frontAndWheelsJoints } from "./front-and-wheels-joints.js";
export { mayBeColdSet, type SettingLeave } from "./may-be-cold-set.js";
export * from "./toe-of.js";
