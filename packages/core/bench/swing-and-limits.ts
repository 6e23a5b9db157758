import type { Placement } from "../src/linkage/pins.ts";
import { limitsOf } from "../src/placement/limits.ts";
import { swingSeries } from "../src/swing/swing-series.ts";
import { prepared } from "./example-job.ts";

/**
 * The swing of one leaf as the spec counts it: 91 angles and every limit, the leaf and one pier included.
 * @returns the sum of all numbers found, so that nothing is left out and the C port can be compared
 */
export function swingSum(placement: Placement): number {
  const step = prepared.situation.leaf.travel.openAngle / 90;
  const series = swingSeries(prepared, placement, step);
  let sum = 0;
  for (const { value } of limitsOf(prepared, placement)) sum += value ?? 0;
  for (let i = 0; i < series.theta.length; i++) {
    sum +=
      (series.pinToPin[i] as number) +
      (series.lever[i] as number) +
      (series.leafGap[i] as number) +
      (series.fixedGap[i] as number) +
      (series.toeSpeed[i] as number);
  }
  return sum;
}
