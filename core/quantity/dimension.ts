/** What sorts of figure does a builder write, and in which unit do we keep each? */

/** Base unit of each sort of figure. Values inside are always in this unit. */
export const BASE_UNITS = {
  length: "mm",
  area: "mm2",
  angle: "deg",
  mass: "kg",
  torque: "Nm",
  force: "N",
  stress: "MPa",
  time: "h",
  speed: "m/s",
  power: "W",
  money: "",
  count: "",
  ratio: "",
  percent: "%",
  /** Value is the major diameter in mm; pitch and hand stand beside it. */
  thread: "mm",
} as const;

export type Dimension = keyof typeof BASE_UNITS;
export type NumberDimension = Exclude<Dimension, "thread">;

export const DIMENSIONS = Object.keys(BASE_UNITS) as readonly Dimension[];

/** With its article, for sentences: "a length". */
export const DIMENSION_NAMES: Readonly<Record<Dimension, string>> = {
  length: "a length",
  area: "an area",
  angle: "an angle",
  mass: "a mass",
  torque: "a torque",
  force: "a force",
  stress: "a stress or pressure",
  time: "a time",
  speed: "a speed",
  power: "a power",
  money: "a sum of money",
  count: "a whole number",
  ratio: "a plain number",
  percent: "a percentage",
  thread: "a thread",
};

/** Three ways to write each, shown with every refusal. Each of them is read by `readQuantity` (tested). */
export const WAYS_TO_WRITE: Readonly<Record<Dimension, readonly [string, string, string]>> = {
  length: ["442 mm", "44,2 cm", "1 1/8 in"],
  area: ["120 mm2", "1.2 cm2", "120"],
  angle: ["71.5°", "71,5 deg", "71°30'"],
  mass: ["2.1 kg", "450 g", "31 lb 4 oz"],
  torque: ["12 Nm", "9 lbf ft", "12"],
  force: ["250 N", "2.5 kN", "56 lbf"],
  stress: ["350 MPa", "4.5 bar", "65 psi"],
  time: ["1.5 h", "90 min", "1 h 30 min"],
  speed: ["5 m/s", "18 km/h", "11 mph"],
  power: ["150 W", "0.15 kW", "150"],
  money: ["12.50", "12,50 EUR", "€12"],
  count: ["32", "32 T", "1 052"],
  ratio: ["0.5", "0,5", "1/2"],
  percent: ["8 %", "8", "7.5 percent"],
  thread: ["M12x1.5", "M5", "1.37 in x 24 tpi"],
};
