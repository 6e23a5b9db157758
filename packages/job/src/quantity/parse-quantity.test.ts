import { describe, expect, test } from "vitest";
import { parseQuantity } from "./parse-quantity.ts";
import { fromSi, type QuantityKind, type Unit } from "./units.ts";

// Expected values are worked by hand from 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 lbf = 4.4482216152605 N,
// and shown to 12 significant digits.
const read: [QuantityKind, Unit, string, number][] = [
  ["length", "mm", "3.2 m", 3200],
  ["length", "mm", "3200", 3200],
  ["length", "mm", " 3200 mm ", 3200],
  ["length", "mm", "3,2 m", 3200],
  ["length", "mm", "0,125 m", 125],
  ["length", "mm", ".5 m", 500],
  ["length", "mm", "12.5cm", 125],
  ["length", "mm", `10' 6 1/2"`, 3213.1],
  ["length", "mm", `10'6.5"`, 3213.1],
  ["length", "mm", `10'-6 1/2"`, 3213.1],
  ["length", "mm", "10 ft 6-1/2 in", 3213.1],
  ["length", "mm", "10 ft. 6 1/2 in.", 3213.1],
  ["length", "mm", "10 FT 6 ½ IN", 3213.1],
  ["length", "mm", "10′ 6½″", 3213.1],
  ["length", "mm", "10’ 6½”", 3213.1],
  ["length", "mm", "10' 6½''", 3213.1],
  ["length", "mm", "10' 6", 3200.4],
  ["length", "mm", "126.5in", 3213.1],
  ["length", "mm", "1/2 in", 12.7],
  ["length", "mm", "6 1⁄2 inches", 165.1],
  ["length", "mm", "⅞″", 22.225],
  ["length", "mm", `-10' 6 1/2"`, -3213.1],
  ["length", "mm", "−60", -60],
  ["length", "mm", "+60", 60],
  ["length", "mm", "1 1/2 ft", 457.2],
  ["length", "mm", "0' 3/8\"", 9.525],
  ["mass", "kg", "85 lb", 38.55535145],
  ["mass", "kg", "85", 85],
  ["mass", "kg", "0.3 t", 300],
  ["force", "N", "85 lb", 378.098837297],
  ["force", "N", "1.5 kN", 1500],
  ["speed", "m/s", "25 mph", 11.176],
  ["speed", "m/s", "18 mm/s", 0.018],
  ["speed", "m/s", "36 km/h", 10],
  ["angle", "deg", "92", 92],
  ["angle", "deg", "92°", 92],
  ["angle", "deg", "92,5 deg", 92.5],
  ["torque", "Nm", "120 N m", 120],
  ["torque", "Nm", "100 ft-lb", 135.581794833],
];

describe("parseQuantity reads what people type", () => {
  test.each(read)("%s in %s: %s is %d", (kind, unit, text, expected) => {
    const parsed = parseQuantity(kind, text, unit);
    expect(parsed.ok && fromSi(parsed.si, unit)).toBe(expected);
  });

  test("a number without a unit takes the unit passed in", () => {
    const inches = parseQuantity("length", "1 1/2", "in");
    expect(inches).toEqual({ ok: true, si: 0.0381, unit: "in" });
    expect(parseQuantity("length", "1-1/2", "mm")).toEqual({ ok: true, si: 0.0015, unit: "mm" });
  });

  test("12 ga is 0.1046 in of steel sheet, whatever the spelling", () => {
    for (const text of ["12 ga", "12ga.", "12 gauge"]) {
      expect(parseQuantity("length", text, "mm")).toEqual({ ok: true, si: 0.00265684, unit: "ga" });
    }
  });
});

const refused: [QuantityKind, Unit, string, RegExp][] = [
  ["length", "mm", "", /^a length such as/],
  ["length", "mm", "-", /^a length such as/],
  ["length", "mm", "wide", /^a length such as/],
  ["length", "mm", "85 kg", /unit of length \(mm, cm, m, in, ft, ga\) instead of "kg"/],
  ["length", "mm", "3,200", /3200 or 3\.200/],
  ["length", "mm", "10,5 in", /decimal point/],
  ["length", "mm", "10' 14\"", /less than 12 inches/],
  ["length", "mm", "10.5' 6\"", /whole feet/],
  ["length", "mm", "3'200", /less than 12 inches/],
  ["length", "mm", "6 1/0", /fraction below one/],
  ["length", "mm", "1/0", /divided by nothing/],
  ["length", "mm", "6 3/2 in", /fraction below one/],
  ["length", "mm", "3 200 mm", /^a length such as/],
  ["length", "mm", "3 m 20 cm", /feet and inches/],
  ["length", "mm", "1e3", /unit of length/],
  ["length", "mm", "3.2.1 m", /^a length such as/],
  ["length", "mm", "--3", /^a length such as/],
  ["length", "mm", "10' 6\" 3", /^a length such as/],
  ["length", "mm", "99 ga", /sheet gauge from 3 to 30/],
  ["length", "mm", "12.5 ga", /whole sheet gauge/],
  ["length", "mm", "9".repeat(61), /^a length such as/],
  ["mass", "kg", "10' 6\"", /unit of mass/],
  ["angle", "deg", "92 mm", /unit of angle/],
];

describe("parseQuantity refuses with what was found and what was expected", () => {
  test.each(refused)("%s in %s: %j", (kind, unit, text, expected) => {
    const parsed = parseQuantity(kind, text, unit);
    if (parsed.ok) throw new Error(`read as ${parsed.si}`);
    expect(parsed.expected).toMatch(expected);
    expect(parsed.found).toBe(
      text === "" ? "nothing" : text.length > 60 ? `"${text.slice(0, 60)}…"` : JSON.stringify(text),
    );
  });

  test("a unit that does not fit the kind is the caller's mistake", () => {
    expect(() => parseQuantity("length", "3", "kg")).toThrow(
      /found the unit kg; it expects a unit of length/,
    );
  });
});
