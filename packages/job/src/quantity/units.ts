/** What kinds of quantity people type. `force` takes pounds as pounds-force, `mass` as pounds of mass. */
export type QuantityKind = "length" | "angle" | "mass" | "force" | "speed" | "torque";

/** Names of the units, as job keys and boxes use them. */
export type Unit =
  | "mm"
  | "cm"
  | "m"
  | "in"
  | "ft"
  | "deg"
  | "rad"
  | "kg"
  | "g"
  | "t"
  | "lb"
  | "N"
  | "kN"
  | "lbf"
  | "m/s"
  | "mm/s"
  | "km/h"
  | "mph"
  | "in/s"
  | "ft/s"
  | "Nm"
  | "lbf-ft"
  | "lbf-in";

/**
 * One unit: its value in SI is `numerator / denominator`, both exact integers except for degrees.
 * `spellings` are lower case, without a closing full stop.
 */
export interface UnitDefinition {
  readonly kind: QuantityKind;
  readonly numerator: number;
  readonly denominator: number;
  readonly system: "metric" | "us" | "both";
  readonly spellings: readonly string[];
}

/**
 * Every unit. Inch, foot, mile, pound and pound-force are exact by definition: 25.4 mm, 0.45359237 kg and standard
 * gravity 9.80665 m/s² (international yard and pound of 1959, from memory).
 */
export const units: Readonly<Record<Unit, UnitDefinition>> = {
  mm: {
    kind: "length",
    numerator: 1,
    denominator: 1000,
    system: "metric",
    spellings: ["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
  },
  cm: {
    kind: "length",
    numerator: 1,
    denominator: 100,
    system: "metric",
    spellings: ["cm", "centimetre", "centimetres", "centimeter", "centimeters"],
  },
  m: {
    kind: "length",
    numerator: 1,
    denominator: 1,
    system: "metric",
    spellings: ["m", "metre", "metres", "meter", "meters"],
  },
  in: {
    kind: "length",
    numerator: 127,
    denominator: 5000,
    system: "us",
    spellings: ["in", "inch", "inches", '"', "''"],
  },
  ft: {
    kind: "length",
    numerator: 381,
    denominator: 1250,
    system: "us",
    spellings: ["ft", "foot", "feet", "'"],
  },
  deg: {
    kind: "angle",
    numerator: Math.PI,
    denominator: 180,
    system: "both",
    spellings: ["deg", "degree", "degrees", "°"],
  },
  rad: {
    kind: "angle",
    numerator: 1,
    denominator: 1,
    system: "both",
    spellings: ["rad", "radian", "radians"],
  },
  kg: {
    kind: "mass",
    numerator: 1,
    denominator: 1,
    system: "metric",
    spellings: ["kg", "kilogram", "kilograms", "kilo", "kilos"],
  },
  g: { kind: "mass", numerator: 1, denominator: 1000, system: "metric", spellings: ["g", "gram", "grams"] },
  t: { kind: "mass", numerator: 1000, denominator: 1, system: "metric", spellings: ["t", "tonne", "tonnes"] },
  lb: {
    kind: "mass",
    numerator: 45_359_237,
    denominator: 100_000_000,
    system: "us",
    spellings: ["lb", "lbs", "pound", "pounds"],
  },
  N: { kind: "force", numerator: 1, denominator: 1, system: "metric", spellings: ["n", "newton", "newtons"] },
  kN: { kind: "force", numerator: 1000, denominator: 1, system: "metric", spellings: ["kn"] },
  lbf: {
    kind: "force",
    numerator: 44_482_216_152_605,
    denominator: 10_000_000_000_000,
    system: "us",
    spellings: ["lbf", "lb", "lbs", "pound", "pounds"],
  },
  "m/s": { kind: "speed", numerator: 1, denominator: 1, system: "metric", spellings: ["m/s"] },
  "mm/s": { kind: "speed", numerator: 1, denominator: 1000, system: "metric", spellings: ["mm/s"] },
  "km/h": {
    kind: "speed",
    numerator: 5,
    denominator: 18,
    system: "metric",
    spellings: ["km/h", "kmh", "kph"],
  },
  mph: { kind: "speed", numerator: 1397, denominator: 3125, system: "us", spellings: ["mph"] },
  "in/s": { kind: "speed", numerator: 127, denominator: 5000, system: "us", spellings: ["in/s", "ips"] },
  "ft/s": { kind: "speed", numerator: 381, denominator: 1250, system: "us", spellings: ["ft/s", "fps"] },
  Nm: {
    kind: "torque",
    numerator: 1,
    denominator: 1,
    system: "metric",
    spellings: ["nm", "n m", "n·m", "n*m"],
  },
  "lbf-ft": {
    kind: "torque",
    numerator: 3_389_544_870_828_501,
    denominator: 2_500_000_000_000_000,
    system: "us",
    spellings: ["lbf-ft", "lbf ft", "lb-ft", "lb ft", "ft-lb", "ft lb", "ft-lbf", "ft lbf"],
  },
  "lbf-in": {
    kind: "torque",
    numerator: 1_129_848_290_276_167,
    denominator: 10_000_000_000_000_000,
    system: "us",
    spellings: ["lbf-in", "lbf in", "lb-in", "lb in", "in-lb", "in lb", "in-lbf", "in lbf"],
  },
};

/**
 * A value in a unit as SI (m, rad, kg, N, m/s, N m). Millimetres are taken to 1e-6 mm.
 *
 * ### Example
 *   expect(toSi(3600, "mm")).toBe(3.6);
 *   expect(toSi(180, "deg")).toBe(Math.PI);
 */
export function toSi(value: number, unit: Unit): number {
  // 1059.2 / 1000 is one unit in the last place off 1.0592; through whole millionths it is not.
  if (unit === "mm") return Math.round(value * 1e6) / 1e9 + 0;
  const { numerator, denominator } = units[unit];
  return (value * numerator) / denominator;
}

/**
 * An SI value in a unit. Millimetres are rounded to 1e-6 mm, other units to 12 significant digits, so that
 * what was typed comes back without the dust of binary fractions.
 *
 * ### Example
 *   expect(fromSi(3.2131, "mm")).toBe(3213.1);
 *   expect(fromSi(3.2131, "in")).toBe(126.5);
 */
export function fromSi(si: number, unit: Unit): number {
  const { numerator, denominator } = units[unit];
  const value = (si * denominator) / numerator;
  // Adding 0 turns a negative zero, which would print as "-0", into zero.
  return (unit === "mm" ? Math.round(value * 1e6) / 1e6 : Number(value.toPrecision(12))) + 0;
}
