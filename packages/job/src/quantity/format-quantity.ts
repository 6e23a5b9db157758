import Fraction from "fraction.js";
import { type Unit, units } from "./units.ts";

/** Decimals that suit a tape, a scale and a level; US lengths print as fractions instead. */
const usualDecimals: Record<Unit, number> = {
  mm: 1,
  cm: 2,
  m: 3,
  in: 0,
  ft: 0,
  deg: 1,
  rad: 4,
  kg: 1,
  g: 0,
  t: 3,
  lb: 1,
  N: 0,
  kN: 2,
  lbf: 0,
  "m/s": 2,
  "mm/s": 1,
  "km/h": 1,
  mph: 1,
  "in/s": 2,
  "ft/s": 2,
  Nm: 1,
  "lbf-ft": 1,
  "lbf-in": 0,
};

/**
 * An SI value as text in a unit: `75 mm`, `92°`, `10' 6 1/2"`.
 *
 * `in` and `ft` print whole inches and sixteenths, with feet from 12 in up; they parse back to the same value
 * for every multiple of 1/16 in. Other units print with `decimals` at most, without closing zeros; printing,
 * parsing and printing again gives the same text. Throws RangeError on NaN and infinity.
 *
 * ### Example
 *   expect(formatQuantity(3.2131, "in")).toBe("10' 6 1/2\"");
 *   expect(formatQuantity(0.075, "mm")).toBe("75 mm");
 *   expect(formatQuantity(Math.PI / 2, "deg")).toBe("90°");
 */
export function formatQuantity(si: number, unit: Unit, decimals: number = usualDecimals[unit]): string {
  if (!Number.isFinite(si)) throw new RangeError(`formatQuantity found ${si}; it expects a finite number`);
  if (unit === "in" || unit === "ft") return inSixteenths(si);
  const { numerator, denominator } = units[unit];
  const fixed = ((si * denominator) / numerator).toFixed(decimals);
  const short = fixed.includes(".") ? fixed.replace(/\.?0+$/, "") : fixed;
  const text = short === "-0" ? "0" : short;
  return unit === "deg" ? `${text}°` : `${text} ${unit}`;
}

function inSixteenths(si: number): string {
  const sixteenths = Math.round((Math.abs(si) * 16 * units.in.denominator) / units.in.numerator);
  const sign = si < 0 && sixteenths > 0 ? "-" : "";
  const feet = Math.floor(sixteenths / 192);
  const inches = Math.floor((sixteenths - feet * 192) / 16);
  const part = sixteenths % 16;
  const fraction = part === 0 ? "" : new Fraction(part, 16).toFraction();
  // With feet a zero is written out: 10' 0 1/2" is harder to misread than 10' 1/2".
  const whole = inches > 0 || feet > 0 || part === 0 ? String(inches) : "";
  const inchText = `${[whole, fraction].filter((text) => text !== "").join(" ")}"`;
  return feet > 0 ? `${sign}${feet}' ${inchText}` : `${sign}${inchText}`;
}
