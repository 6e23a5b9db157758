/** Units that get mixed up when a tape is read or a figure is typed. */
export type SlipUnit = "mm" | "cm" | "in";

/**
 * A common slip that would explain a wrong reading; `intended` is what the reading would have been [m].
 * `offBy` is found − intended [m]. `unit`: the figure was read in `read` and written down as `written`.
 */
export type Slip =
  | { readonly kind: "digitsSwapped"; readonly intended: number }
  | { readonly kind: "offBy"; readonly by: number; readonly intended: number }
  | { readonly kind: "unit"; readonly read: SlipUnit; readonly written: SlipUnit; readonly intended: number };

const metresPer: Readonly<Record<SlipUnit, number>> = { mm: 0.001, cm: 0.01, in: 0.0254 };
const units = ["mm", "cm", "in"] as const;

/** 10, 100 and 1000 mm, one inch and one foot: a miscounted or forgotten step of a tape [m]. */
const steps = [0.01, 0.1, 1, 0.0254, 0.3048];

/**
 * Common slips that turn what a reading should have been into what it was, likeliest first.
 *
 * `value` is the reading, `expected` what the other readings make of it, `standardError` that of their
 * difference, all [m]. A slip is named when undoing it lands within two standard errors of `expected` and
 * takes away at least two thirds of the difference; so the list is empty for a good reading. Which slips
 * are common is common practice, no source. Digits are those of the value in whole millimetres.
 */
export function slipsThatExplain(value: number, expected: number, standardError: number): Slip[] {
  const sign = Math.sign(value);
  const candidates: Slip[] = [
    ...swappedDigits(Math.round(Math.abs(value) * 1000)).map(
      (millimetres): Slip => ({ kind: "digitsSwapped", intended: (sign * millimetres) / 1000 }),
    ),
    ...units.flatMap((written) =>
      units
        .filter((read) => read !== written)
        .map(
          (read): Slip => ({
            kind: "unit",
            read,
            written,
            intended: (value * metresPer[read]) / metresPer[written],
          }),
        ),
    ),
    ...steps.flatMap((step) =>
      [step, -step].map((by): Slip => ({ kind: "offBy", by, intended: value - by })),
    ),
  ];
  const miss = (slip: Slip): number => Math.abs(slip.intended - expected);
  return candidates
    .filter((slip) => miss(slip) <= 2 * standardError && miss(slip) <= Math.abs(value - expected) / 3)
    .sort((a, b) => miss(a) - miss(b));
}

function swappedDigits(millimetres: number): number[] {
  const digits = String(millimetres);
  const swapped: number[] = [];
  for (let i = 1; i < digits.length; i++) {
    if (digits[i] !== digits[i - 1])
      swapped.push(Number(digits.slice(0, i - 1) + digits[i] + digits[i - 1] + digits.slice(i + 1)));
  }
  return swapped;
}
