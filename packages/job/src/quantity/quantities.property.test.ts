import fc from "fast-check";
import { expect, test } from "vitest";
import { formatQuantity } from "./format-quantity.ts";
import { parseQuantity } from "./parse-quantity.ts";
import { fromSi, type QuantityKind, toSi, type Unit, units } from "./units.ts";

const seed = { seed: 20260314, numRuns: 2000 };
const allUnits = Object.keys(units) as Unit[];
const kinds: QuantityKind[] = ["length", "angle", "mass", "force", "speed", "torque"];

/** Millimetres of a number of sixteenths as decimal arithmetic has them: 1.5875 mm each. */
const sixteenthsInMm = (count: number) => Math.round(count * 15_875) / 10_000;

test("every multiple of 1/16 in prints and parses back to the same millimetres", () => {
  fc.assert(
    fc.property(fc.integer({ min: -12_800, max: 12_800 }), (count) => {
      const mm = sixteenthsInMm(count);
      const parsed = parseQuantity("length", formatQuantity(toSi(mm, "mm"), "in"), "mm");
      expect(parsed.ok && fromSi(parsed.si, "mm")).toBe(mm + 0);
    }),
    seed,
  );
});

test("US lengths print to the nearest 1/16 in", () => {
  fc.assert(
    fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (si) => {
      const parsed = parseQuantity("length", formatQuantity(si, "in"), "mm");
      if (!parsed.ok) throw new Error(parsed.expected);
      expect(Math.abs(parsed.si - si)).toBeLessThanOrEqual(toSi(1 / 32, "in") + 1e-9);
    }),
    seed,
  );
});

test("printing, parsing and printing again gives the same text in every unit", () => {
  fc.assert(
    fc.property(fc.constantFrom(...allUnits), fc.double({ min: -1e6, max: 1e6, noNaN: true }), (unit, si) => {
      const text = formatQuantity(si, unit);
      const parsed = parseQuantity(units[unit].kind, text, unit);
      if (!parsed.ok) throw new Error(`${text}: ${parsed.expected}`);
      expect(formatQuantity(parsed.si, unit)).toBe(text);
    }),
    seed,
  );
});

test("a millimetre value of the file survives the way to SI and back", () => {
  fc.assert(
    fc.property(fc.integer({ min: -2e10, max: 2e10 }), (millionths) => {
      const mm = millionths / 1e6;
      // Read by the language itself: the double nearest to the decimal number of metres.
      expect(toSi(mm, "mm")).toBe(Number(`${millionths}e-9`) + 0);
      expect(fromSi(toSi(mm, "mm"), "mm")).toBe(mm + 0);
    }),
    seed,
  );
});

test("any text is answered, never thrown at", () => {
  const typed = fc.stringMatching(/^[-+0-9.,'"½¾″′/ a-z°]{0,20}$/);
  fc.assert(
    fc.property(fc.constantFrom(...kinds), fc.oneof(typed, fc.string({ unit: "binary" })), (kind, text) => {
      const unit = allUnits.find((name) => units[name].kind === kind) as Unit;
      const parsed = parseQuantity(kind, text, unit);
      expect(
        parsed.ok ? Number.isFinite(parsed.si) : parsed.expected.length > 0 && parsed.found.length > 0,
      ).toBe(true);
    }),
    seed,
  );
});
