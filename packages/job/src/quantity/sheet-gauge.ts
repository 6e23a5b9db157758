/**
 * Thickness of uncoated steel sheet by Manufacturers' Standard Gauge [in], to four decimals.
 *
 * The gauge is a weight series; thickness = weight ÷ 41.82 lb/ft² per inch (reference/mechanics.md 1.7,
 * roofonline.com/weight-of-sheet-steel, which also has the weights of 16, 18, 20, 22, 24 and 26). The weights
 * of the other gauges are the standard series from memory. Weights in lb/ft².
 */
const poundsPerSquareFoot: Readonly<Record<number, number>> = {
  3: 10,
  4: 9.375,
  5: 8.75,
  6: 8.125,
  7: 7.5,
  8: 6.875,
  9: 6.25,
  10: 5.625,
  11: 5,
  12: 4.375,
  13: 3.75,
  14: 3.125,
  15: 2.8125,
  16: 2.5,
  17: 2.25,
  18: 2,
  19: 1.75,
  20: 1.5,
  21: 1.375,
  22: 1.25,
  23: 1.125,
  24: 1,
  25: 0.875,
  26: 0.75,
  27: 0.6875,
  28: 0.625,
  29: 0.5625,
  30: 0.5,
};

const poundsPerSquareFootInch = 41.82;

/** Smallest and largest gauge number that is known. */
export const gaugeRange = { from: 3, to: 30 } as const;

/**
 * Thickness of steel sheet for a gauge number [in], rounded to 0.0001 in as tables print it; null for a
 * number outside 3 to 30. Not for wire, tube, stainless or galvanised sheet, which have other series.
 *
 * ### Example
 *   expect(sheetGaugeInches(12)).toBe(0.1046);
 *   expect(sheetGaugeInches(2)).toBe(null);
 */
export function sheetGaugeInches(gauge: number): number | null {
  const weight = poundsPerSquareFoot[gauge];
  return weight === undefined ? null : Math.round((weight / poundsPerSquareFootInch) * 1e4) / 1e4;
}
