/** Accuracy class that is printed on a tape or rule. */
export type TapeClass = "I" | "II" | "III";

/** Coefficients [m, m per started metre, m]: a + b L, and c more when the interval starts at the end surface (hook). */
const classCoefficients: Readonly<
  Record<TapeClass, { readonly a: number; readonly b: number; readonly c: number }>
> = {
  I: { a: 0.0001, b: 0.0001, c: 0.0001 },
  II: { a: 0.0003, b: 0.0002, c: 0.0002 },
  III: { a: 0.0006, b: 0.0004, c: 0.0003 },
};

/**
 * Maximum permissible error of a tape over a length [m], as ± this value.
 *
 * `length` is the interval read [m], > 0; it counts as the next whole metre up. `fromHook` is true when
 * the interval starts at the tape's end surface rather than at a mark. Only the tape: reading it, and
 * finding the centre of a pin, come on top. Throws RangeError for a length that is not finite and > 0.
 * Source: UK SI 2016/1153 schedule 1I (legislation.gov.uk), at 20 °C and, from 5 m on, 50 N of pull.
 *
 * ### Example
 *   expect(tapeMaximumError("II", 1.803, { fromHook: true })).toBeCloseTo(0.0009, 12);
 *   expect(tapeMaximumError("II", 1.803, { fromHook: false })).toBeCloseTo(0.0007, 12);
 */
export function tapeMaximumError(
  tapeClass: TapeClass,
  length: number,
  start: { readonly fromHook: boolean },
): number {
  if (!(Number.isFinite(length) && length > 0))
    throw new RangeError(`tape length ${length} m found, finite and > 0 expected`);
  const { a, b, c } = classCoefficients[tapeClass];
  // A micrometre of float noise above a whole metre must not cost a metre's allowance.
  return a + b * Math.ceil(length - 1e-6) + (start.fromHook ? c : 0);
}

/**
 * Standard uncertainty of a tape over a length [m]: its maximum permissible error ÷ √3.
 *
 * Treats the maximum error as a rectangular distribution (Guide to the expression of uncertainty in
 * measurement; from memory). Frame, units and errors as `tapeMaximumError`.
 *
 * ### Example
 *   expect(tapeStandardUncertainty("II", 1.803, { fromHook: true })).toBeCloseTo(0.00052, 5);
 */
export function tapeStandardUncertainty(
  tapeClass: TapeClass,
  length: number,
  start: { readonly fromHook: boolean },
): number {
  return tapeMaximumError(tapeClass, length, start) / Math.sqrt(3);
}
