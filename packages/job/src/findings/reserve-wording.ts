import { formatQuantity } from "../quantity/format-quantity.ts";
import { toSi } from "../quantity/units.ts";
import type { Display } from "../schema/job.ts";
import { limitName } from "./limit-names.ts";
import { shownAmount } from "./shown-amount.ts";

/** A reserve (rule G11): metres, or a ratio where no limit in metres is broken. */
export interface ReserveToWord {
  readonly reserve: number;
  readonly unit: "m" | "ratio";
  /** Id of the limit that is hit first, or broken most; null when none is. */
  readonly firstToBreak: string | null;
}

/**
 * The reserve in plain words. A reserve is rounded down and a shortfall up, so that words never promise more
 * than the number does.
 *
 * ### Example
 *   const reserve = { reserve: 0.02504, unit: "m" as const, firstToBreak: "stroke.retracted" };
 *   expect(reserveText(reserve, "metric")).toBe("every pin may be 25 mm off and this still works; first to go: shortest pin-to-pin length");
 *   expect(reserveText({ ...reserve, reserve: -0.0177, firstToBreak: "clearance.leaf" }, "metric")).toBe(
 *     "this does not work as it is: 17.7 mm short; broken most: clearance to the leaf",
 *   );
 */
export function reserveText(reserve: ReserveToWord, display: Display): string {
  const name = reserve.firstToBreak === null ? null : limitName(reserve.firstToBreak);
  if (reserve.reserve < 0) {
    const short =
      reserve.unit === "m"
        ? `${roundedOut(reserve.reserve, display)} short`
        : `${percent(reserve.reserve)} short`;
    return `this does not work as it is: ${short}${name === null ? "" : `; broken most: ${name}`}`;
  }
  const amount =
    reserve.unit === "m"
      ? roundedOut(reserve.reserve, display)
      : shownAmount(reserve.reserve, "ratio", display);
  return `every pin may be ${amount} off and this still works${name === null ? "" : `; first to go: ${name}`}`;
}

/** Metres toward minus infinity on the display's grid (0.1 mm or 1/16 in), without sign. */
function roundedOut(metres: number, display: Display): string {
  const grid = display === "us" ? toSi(1 / 16, "in") : 0.0001;
  // The tenth of a nanometre keeps a whole number of steps from falling to the step below.
  const steps = Math.floor(metres / grid + 1e-6);
  return formatQuantity(Math.abs(steps * grid), display === "us" ? "in" : "mm");
}

function percent(ratio: number): string {
  return `${Math.ceil(Math.abs(ratio) * 1000 - 1e-6) / 10} %`;
}
