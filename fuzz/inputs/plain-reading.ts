/**
 * What does this written figure say, read slowly and by other means than the reader itself? A second reading to hold the
 * first against: words and signs are taken one by one, figures are added up in plain floating point, and the units stand in
 * a table of their own. It takes more than the reader does; where the reader accepts, both must say the same.
 * Sources of the factors: BIPM, The International System of Units, 9th ed. (2019), tables 1, 7, 8; the international yard
 * and pound agreement of 1959 (25.4 mm, 0.45359237 kg exactly); standard gravity 9.80665 m/s2 (3rd CGPM, 1901). From memory.
 */

const LB = 0.45359237;
const G = 9.80665;
const POUND = LB * G;

/** One of the unit in mm, deg, kg, Nm, N, MPa, h, m/s, W, mm2. */
const TABLE: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  length: {
    "mm|millimetre|millimetres|millimeter|millimeters": 1,
    "cm|centimetre|centimetres|centimeter|centimeters": 10,
    "m|metre|metres|meter|meters": 1e3,
    "km|kilometre|kilometres|kilometer|kilometers": 1e6,
    "um|µm|μm|micron|microns": 1e-3,
    'in|in.|"|inch|inches': 25.4,
    "ft|ft.|'|foot|feet": 12 * 25.4,
    "yd|yard|yards": 36 * 25.4,
    "mi|mile|miles": 1760 * 36 * 25.4,
  },
  area: {
    "mm2|mm²|mm^2": 1,
    "cm2|cm²|cm^2": 100,
    "m2|m²|m^2": 1e6,
    "in2|in²|in^2|sq in": 25.4 * 25.4,
  },
  angle: {
    "deg|°|degree|degrees": 1,
    "arcmin|'": 1 / 60,
    'arcsec|"': 1 / 3600,
    "rad|radian|radians": 180 / Math.PI,
  },
  mass: {
    "kg|kilo|kilos|kilogram|kilograms": 1,
    "g|gram|grams|gramme|grammes": 1e-3,
    "lb|lb.|lbs|lbs.|pound|pounds": LB,
    "oz|oz.|ounce|ounces": LB / 16,
    "st|stone": 14 * LB,
  },
  torque: {
    "Nm|N m|N·m|N.m|N-m|newton metre|newton metres": 1,
    "Ncm|N cm|N·cm": 0.01,
    "Nmm|N mm|N·mm": 0.001,
    "kgf m|kgfm|kgf·m|kpm|kp m": G,
    "kgf cm|kgfcm|kgf·cm|kpcm|kp cm": G / 100,
  },
  force: { "N|newton|newtons": 1, kN: 1000, "lbf|pound-force": POUND, "kgf|kp": G },
  stress: {
    "MPa|N/mm2|N/mm²|N/mm^2": 1,
    GPa: 1000,
    kPa: 0.001,
    bar: 0.1,
    "psi|lbf/in2|lbf/in²": POUND / 25.4 ** 2,
  },
  time: {
    "h|hr|hrs|hour|hours": 1,
    "min|mins|minute|minutes": 1 / 60,
    "s|sec|secs|second|seconds": 1 / 3600,
    "day|days|d": 24,
    "week|weeks": 168,
  },
  speed: { "m/s|mps": 1, "km/h|kmh|kph": 1 / 3.6, "mph|mi/h": (1760 * 36 * 0.0254) / 3600 },
  power: { "W|watt|watts": 1, kW: 1000 },
  percent: { "%|percent|per cent|pct": 1 },
  money: { "EUR|€|euro|euros|GBP|£|USD|$|US$|CHF|SEK|NOK|DKK|PLN|CZK": 1 },
  count: { "T|tooth|teeth|pcs|pc|piece|pieces": 1 },
  ratio: {},
};

const UNITS: ReadonlyMap<string, readonly (readonly [string, number])[]> = new Map(
  Object.entries(TABLE).map(([dimension, rows]) => {
    const list = Object.entries(rows).flatMap(([names, one]) =>
      names.split("|").map((n): [string, number] => [n, one]),
    );
    if (dimension === "torque") {
      for (const force of ["lbf", "lb", "lbs"])
        for (const [arm, metres] of [
          ["ft", 0.3048],
          ["in", 0.0254],
        ] as const)
          for (const between of [" ", "-", "·", "."])
            list.push([`${force}${between}${arm}`, POUND * metres], [`${arm}${between}${force}`, POUND * metres]);
    }
    return [dimension, list.sort((a, b) => b[0].length - a[0].length)];
  }),
);

export const unitNames = (dimension: string): readonly string[] => (UNITS.get(dimension) ?? []).map(([name]) => name);

/** One of this unit in the base unit; undefined where it is not in the table. */
export function factorOf(dimension: string, name: string): number | undefined {
  const list = UNITS.get(dimension) ?? [];
  return (list.find(([n]) => n === name) ?? list.find(([n]) => n.toLowerCase() === name.toLowerCase()))?.[1];
}

const FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅐": "1/7",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅑": "1/9",
  "⅒": "1/10",
};

/** Every sign for itself: what stands for what on other keyboards. */
function oneAlphabet(text: string): string {
  let out = "";
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0;
    if (code >= 0xff01 && code <= 0xff5e) out += String.fromCodePoint(code - 0xfee0);
    else if (FRACTIONS[sign] !== undefined)
      out += `${/\d ?$/.test(out) && !out.endsWith(" ") ? " " : ""}${FRACTIONS[sign]}`;
    else if ("\u2044\u2215".includes(sign)) out += "/";
    else if ("\u2212\u2010\u2011\u2013\uFE63".includes(sign)) out += "-";
    else if ("\u2032\u2018\u2019\u02B9\u02BC\u00B4`".includes(sign)) out += "'";
    else if ("\u2033\u201C\u201D\u201E\u02BA".includes(sign)) out += '"';
    else if ("\u00BA\u02DA".includes(sign)) out += "°";
    else if ("⋅∙•".includes(sign)) out += "·";
    else if (/\s/u.test(sign)) out += out.endsWith(" ") ? "" : " ";
    else out += sign;
  }
  return out
    .trim()
    .replaceAll("''", '"')
    .replace(/ ?· ?/g, "·")
    .replace(/\+ ?\/ ?-|\+-/g, "±");
}

export interface PlainReading {
  readonly value: number;
  readonly plusMinus?: number;
}

/** The figure, or undefined where a sign is left over that says nothing. `bare`: factor of a figure without a unit. */
export function plainReading(written: string, dimension: string, bare: number): PlainReading | undefined {
  let text = oneAlphabet(written);
  if (dimension === "length") text = text.replace(/^[Øø⌀∅] ?/u, "");
  const sides = text.split("±").map((side) => side.trim());
  if (sides.length > 2) return undefined;
  const [main = "", half] = sides;
  const unitOf = (side: string | undefined) => (side === undefined ? undefined : sum(side, dimension, Number.NaN));
  // A figure without a unit takes the unit of the other side of ±, else the bare one.
  const own = (side: string, other: string | undefined) => {
    const alone = sum(side, dimension, Number.NaN);
    if (alone === undefined || !Number.isNaN(alone.value)) return alone?.value;
    const lent = unitOf(other)?.lastUnit;
    return sum(side, dimension, lent ?? bare)?.value;
  };
  const value = own(main, half);
  if (value === undefined) return undefined;
  if (half === undefined) return { value };
  const plusMinus = own(half, main);
  return plusMinus === undefined ? undefined : { value, plusMinus };
}

function sum(side: string, dimension: string, bare: number): { value: number; lastUnit?: number } | undefined {
  const signed = /^([-+]?) ?(.*)$/s.exec(side);
  let rest = signed?.[2] ?? "";
  let total = 0;
  let lastUnit: number | undefined;
  let found = 0;
  if (dimension === "money") {
    const before = unitHere(rest, dimension);
    if (before !== undefined) {
      rest = rest.slice(before.length).trimStart();
      lastUnit = 1;
    }
  }
  while (rest !== "") {
    const figure = figureHere(rest);
    if (figure === undefined) return undefined;
    rest = rest.slice(figure.length).trimStart();
    const unit = rest === "" ? undefined : unitHere(rest, dimension);
    if (unit !== undefined) {
      lastUnit = unit.one;
      rest = rest.slice(unit.length).trimStart();
      total += figure.value * unit.one;
    } else if (found > 0 && lastUnit !== undefined && Math.abs(lastUnit - 304.8) < 1e-6) total += figure.value * 25.4;
    else if (dimension === "money" && lastUnit !== undefined) total += figure.value;
    else total += figure.value * bare;
    found += 1;
  }
  if (found === 0) return undefined;
  return { value: signed?.[1] === "-" ? -total : total, ...(lastUnit === undefined ? {} : { lastUnit }) };
}

function unitHere(text: string, dimension: string): { length: number; one: number } | undefined {
  const list = UNITS.get(dimension) ?? [];
  for (const same of [
    (a: string, b: string) => a === b,
    (a: string, b: string) => a.toLowerCase() === b.toLowerCase(),
  ]) {
    const hit = list.find(([name]) => same(text.slice(0, name.length), name) && !/^\p{L}$/u.test(runOn(text, name)));
    if (hit !== undefined) return { length: hit[0].length, one: hit[1] };
  }
  return undefined;
}

/** The sign that stands directly behind a unit's last letter: a letter there makes it another word. */
const runOn = (text: string, name: string) => (/\p{L}$/u.test(name) ? text.charAt(name.length) : "");

function figureHere(text: string): { length: number; value: number } | undefined {
  const whole = /^(\d+(?: \d{3})*)[ -](\d+)\/(\d+)(?!\d)/.exec(text);
  if (whole !== null) return { length: whole[0].length, value: plain(whole[1]) + plain(whole[2]) / plain(whole[3]) };
  const fraction = /^(\d+)\/(\d+)(?!\d)/.exec(text);
  if (fraction !== null) return { length: fraction[0].length, value: plain(fraction[1]) / plain(fraction[2]) };
  const spaced = /^[1-9]\d{0,2}(?: \d{3})+(?![\d])(?:[.,]\d+)?/.exec(text);
  const run = spaced ?? /^[\d.,]*\d/.exec(text);
  if (run === null) return undefined;
  const signs = run[0].replace(/[^.,]/g, "");
  let digits = run[0].replaceAll(" ", "");
  if (signs.includes(".") && signs.includes(",")) {
    const last = digits.lastIndexOf(".") > digits.lastIndexOf(",") ? "." : ",";
    digits = digits.replaceAll(last === "." ? "," : ".", "").replace(",", ".");
  } else digits = digits.replace(",", ".");
  const power = spaced === null ? (/^[eE][-+]?\d{1,2}(?!\d)/.exec(text.slice(run[0].length))?.[0] ?? "") : "";
  const value = Number(digits + power);
  return Number.isNaN(value) ? undefined : { length: run[0].length + power.length, value };
}

const plain = (digits: string | undefined) => Number((digits ?? "").replaceAll(" ", ""));
