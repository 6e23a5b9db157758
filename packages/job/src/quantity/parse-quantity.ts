import Fraction from "fraction.js";
import { gaugeRange, sheetGaugeInches } from "./sheet-gauge.ts";
import { type TakenNumber, takeNumber, withPlainMarks } from "./typed-number.ts";
import { type QuantityKind, type Unit, units } from "./units.ts";

/** A quantity read from text: its value in SI and the unit that it was typed in (`ga` = sheet gauge). */
export type ParsedQuantity =
  | { readonly ok: true; readonly si: number; readonly unit: Unit | "ga" }
  | { readonly ok: false; readonly found: string; readonly expected: string };

interface Part {
  readonly number: TakenNumber;
  readonly unit: Unit | "ga" | null;
}

type Refused = { readonly ok: false; readonly expected: string };

/** Longer texts are no quantity; a limit keeps exact arithmetic on hostile input cheap. */
const longest = 60;

const samples: Record<QuantityKind, string> = {
  length: `a length such as 3200, 3.2 m, 10' 6 1/2" or 126.5 in`,
  angle: "an angle such as 92, 92° or 1.6 rad",
  mass: "a mass such as 85 kg or 190 lb",
  force: "a force such as 400 N or 85 lb",
  speed: "a speed such as 18 mm/s, 12 m/s or 25 mph",
  torque: "a torque such as 120 Nm or 90 lbf-ft",
};

const gaugeSpellings = new Set(["ga", "gauge", "gage"]);
const unitText = /^(?:'|"|°|[a-z]+(?:[ \-·*/]?[a-z]+)*)\.?/;

/**
 * Reads a quantity as people type it, in metric or US units.
 *
 * A number without a unit takes `assume`. Accepted numbers: `3200`, `3.2`, `1/2`, `1 1/2`, `6-1/2`, `6½`; a decimal
 * comma in metric units (`3,2 m`), but not before exactly three digits, where it could mean thousands.
 * Feet and inches go together (`10' 6 1/2"`, `10 ft 6-1/2 in`); `12 ga` is steel sheet by gauge. A leading minus
 * holds for the whole quantity.
 *
 * Returns SI: m, rad, kg, N, m/s, N m. Lengths are exact and then rounded to 1e-6 mm, so that multiples of
 * 1/64 in survive any number of conversions. Errors (returned): what was found and what was expected.
 * Throws RangeError when `assume` is no unit of `kind`.
 *
 * ### Example
 *   const inches = parseQuantity("length", "10' 6 1/2\"", "mm");
 *   expect(inches.ok && fromSi(inches.si, "mm")).toBe(3213.1);
 *   expect(parseQuantity("length", "3200", "mm")).toEqual({ ok: true, si: 3.2, unit: "mm" });
 *   expect(parseQuantity("length", "85 kg", "mm").ok).toBe(false);
 */
export function parseQuantity(kind: QuantityKind, text: string, assume: Unit): ParsedQuantity {
  if (units[assume].kind !== kind)
    throw new RangeError(`parseQuantity found the unit ${assume}; it expects a unit of ${kind}`);
  const found =
    text.trim() === ""
      ? "nothing"
      : JSON.stringify(text.length > longest ? `${text.slice(0, longest)}…` : text);
  const refuse = (expected: string): ParsedQuantity => ({ ok: false, found, expected });
  const plain = withPlainMarks(text);
  if (plain === "" || text.length > longest) return refuse(samples[kind]);
  const negative = plain.startsWith("-");
  const unsigned = plain.replace(/^[-+]\s*/, "");
  const parts = takeParts(kind, unsigned);
  if (!parts.ok) return refuse(parts.expected);
  const total = totalSi(kind, parts.parts, assume);
  if (!total.ok) return refuse(total.expected);
  const si = negative ? 0 - total.si : total.si;
  return { ok: true, si, unit: total.unit };
}

function takeParts(
  kind: QuantityKind,
  text: string,
): { readonly ok: true; readonly parts: Part[] } | Refused {
  const parts: Part[] = [];
  let rest = text;
  while (rest !== "" && parts.length < 2) {
    const taken = takeNumber(rest);
    if (!taken.ok)
      return { ok: false, expected: taken.expected === "a number first" ? samples[kind] : taken.expected };
    const [typed] = unitText.exec(taken.number.rest.toLowerCase()) ?? [];
    const unit = typed === undefined ? null : unitOf(kind, typed.replace(/\.$/, ""));
    if (typed !== undefined && unit === null) return { ok: false, expected: unitExpected(kind, typed) };
    parts.push({ number: taken.number, unit });
    // Feet and inches are often joined by a dash: 10'-6 1/2".
    rest = taken.number.rest
      .slice(typed?.length ?? 0)
      .replace(/^\s*-?\s*(?=[\d.])/, "")
      .trimStart();
    if (unit === null && rest !== "") return { ok: false, expected: samples[kind] };
  }
  return rest === "" && parts.length > 0 ? { ok: true, parts } : { ok: false, expected: samples[kind] };
}

function unitOf(kind: QuantityKind, spelling: string): Unit | "ga" | null {
  if (kind === "length" && gaugeSpellings.has(spelling)) return "ga";
  for (const [name, unit] of Object.entries(units)) {
    if (unit.kind === kind && unit.spellings.includes(spelling)) return name as Unit;
  }
  return null;
}

function unitExpected(kind: QuantityKind, spelling: string): string {
  const names = Object.entries(units).flatMap(([name, unit]) => (unit.kind === kind ? [name] : []));
  if (kind === "length") names.push("ga");
  return `a unit of ${kind} (${names.join(", ")}) instead of ${JSON.stringify(spelling)}`;
}

function totalSi(
  kind: QuantityKind,
  parts: readonly Part[],
  assume: Unit,
): { readonly ok: true; readonly si: number; readonly unit: Unit | "ga" } | Refused {
  const [first, second] = parts as [Part, Part | undefined];
  const unit = first.unit ?? assume;
  const comma = parts.some((part) => part.number.hasComma);
  if (comma && (unit === "ga" || units[unit].system === "us"))
    return { ok: false, expected: "a decimal point instead of a comma" };
  if (second) return feetAndInches(kind, first, second);
  if (unit === "ga") return gaugeSi(first.number);
  return { ok: true, si: rounded(kind, first.number.value, unit), unit };
}

function feetAndInches(kind: QuantityKind, feet: Part, inches: Part): ReturnType<typeof totalSi> {
  if (kind !== "length" || feet.unit !== "ft" || (inches.unit !== "in" && inches.unit !== null)) {
    return { ok: false, expected: `one number with one unit, or feet and inches: ${samples[kind]}` };
  }
  if (!feet.number.isWhole || inches.number.value.gte(12)) {
    return { ok: false, expected: "whole feet with less than 12 inches" };
  }
  return {
    ok: true,
    si: rounded("length", feet.number.value.mul(12).add(inches.number.value), "in"),
    unit: "ft",
  };
}

function gaugeSi(number: TakenNumber): ReturnType<typeof totalSi> {
  const inches = number.isWhole ? sheetGaugeInches(number.value.valueOf()) : null;
  if (inches === null) {
    return { ok: false, expected: `a whole sheet gauge from ${gaugeRange.from} to ${gaugeRange.to}` };
  }
  return { ok: true, si: rounded("length", new Fraction(inches), "in"), unit: "ga" };
}

function rounded(kind: QuantityKind, amount: Fraction, unit: Unit): number {
  const { numerator, denominator } = units[unit];
  if (kind === "angle") return (amount.valueOf() * numerator) / denominator;
  const exact = amount.mul(numerator).div(denominator);
  return kind === "length" ? exact.mul(1e9).round().valueOf() / 1e9 : exact.valueOf();
}
