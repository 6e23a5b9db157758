import fc from "fast-check";
import { expect, test } from "vitest";
import { niceTicks } from "./chart.ts";

test("[I3] ticks are round, even, few, and hold the range", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1000, max: 1000, noNaN: true }),
      fc.double({ min: 1e-3, max: 5000, noNaN: true }),
      (low, width) => {
        const ticks = niceTicks(low, low + width, 4);
        expect(ticks[0]).toBeLessThanOrEqual(low + 1e-6 * width);
        expect(ticks.at(-1)).toBeGreaterThanOrEqual(low + width - 1e-6 * width);
        expect(ticks.length).toBeLessThanOrEqual(7);
        const step = (ticks[1] ?? 0) - (ticks[0] ?? 0);
        const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
        expect([1, 2, 2.5, 5, 10].some((nice) => Math.abs(nice - lead) < 1e-6)).toBe(true);
      },
    ),
    { seed: 2, numRuns: 300 },
  );
});
