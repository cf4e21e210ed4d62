export * from "./drive-and-brakes-joints.js";
