import { expect, test } from "vitest";
import { formatQuantity } from "./format-quantity.ts";
import { toSi, type Unit } from "./units.ts";

// Worked by hand: 25.4 mm to the inch, nearest 1/16 in.
const printed: [number, Unit, Unit, string][] = [
  [3213.1, "mm", "in", `10' 6 1/2"`],
  [304.8, "mm", "in", `1' 0"`],
  [317.5, "mm", "in", `1' 0 1/2"`],
  [304, "mm", "in", `11 15/16"`],
  [304.5, "mm", "in", `1' 0"`],
  [12.7, "mm", "in", `1/2"`],
  [0, "mm", "in", `0"`],
  [-0.5, "mm", "in", `0"`],
  [-25.4, "mm", "in", `-1"`],
  [75, "mm", "mm", "75 mm"],
  [32.27, "mm", "mm", "32.3 mm"],
  [-0.04, "mm", "mm", "0 mm"],
  [100, "mm", "mm", "100 mm"],
  [92, "deg", "deg", "92°"],
  [85, "lb", "lb", "85 lb"],
  [25, "mph", "mph", "25 mph"],
  [1500, "N", "N", "1500 N"],
];

test.each(printed)("%d %s in %s prints as %s", (value, from, unit, expected) => {
  expect(formatQuantity(toSi(value, from), unit)).toBe(expected);
});

test("NaN and infinity are refused by name", () => {
  expect(() => formatQuantity(Number.NaN, "mm")).toThrow(
    "formatQuantity found NaN; it expects a finite number",
  );
  expect(() => formatQuantity(Number.POSITIVE_INFINITY, "in")).toThrow("found Infinity");
});
