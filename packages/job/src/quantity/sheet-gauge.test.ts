import { expect, test } from "vitest";
import { gaugeRange, sheetGaugeInches } from "./sheet-gauge.ts";

// Weights [lb/ft²] printed by roofonline.com/weight-of-sheet-steel, with its rule of 41.82 lb/ft² per inch.
const published = [
  [16, 2.5],
  [18, 2],
  [20, 1.5],
  [22, 1.25],
  [24, 1],
  [26, 0.75],
] as const;

test.each(published)("%d ga weighs the published %d lb/ft²", (gauge, weight) => {
  // Thickness is rounded to 0.0001 in, so the weight may be off by half of that.
  expect(Math.abs((sheetGaugeInches(gauge) ?? 0) * 41.82 - weight)).toBeLessThanOrEqual(0.00005 * 41.82);
});

test("thickness falls with every gauge and ends at the known range", () => {
  for (let gauge: number = gaugeRange.from; gauge < gaugeRange.to; gauge += 1) {
    expect(sheetGaugeInches(gauge + 1)).toBeLessThan(sheetGaugeInches(gauge) ?? 0);
  }
  expect(sheetGaugeInches(gaugeRange.from - 1)).toBe(null);
  expect(sheetGaugeInches(gaugeRange.to + 1)).toBe(null);
  expect(sheetGaugeInches(12.5)).toBe(null);
});
