import { formatQuantity } from "../quantity/format-quantity.ts";
import { toSi } from "../quantity/units.ts";
import type { Display } from "../schema/job.ts";
import { limitName } from "./limit-names.ts";

/** What the words need of a reserve (rule G11) as the core gives it. */
export interface ReserveToWord {
  /** Metres; with `asShareOfLimit`, thousandths of the broken limit. */
  readonly reserve: number;
  readonly asShareOfLimit: boolean;
  readonly firstToBreak: { readonly limit: string } | null;
}

/**
 * The reserve in plain words. A reserve is rounded down and a shortfall up, so that words never promise more
 * than the number does.
 *
 * ### Example
 *   const reserve = { reserve: 0.02504, asShareOfLimit: false, firstToBreak: { limit: "lever" } };
 *   expect(reserveText(reserve, "metric")).toBe("every pin may be 25 mm off and this still works; first to go: lever arm");
 *   expect(reserveText({ ...reserve, reserve: -0.0177 }, "metric")).toBe(
 *     "this does not work as it is: 17.7 mm short; broken most: lever arm",
 *   );
 */
export function reserveText(reserve: ReserveToWord, display: Display): string {
  const name = reserve.firstToBreak === null ? null : limitName(reserve.firstToBreak.limit);
  if (reserve.reserve < 0) {
    const short = reserve.asShareOfLimit
      ? percent(reserve.reserve * 1000)
      : roundedOut(reserve.reserve, display);
    return `this does not work as it is: ${short} short${name === null ? "" : `; broken most: ${name}`}`;
  }
  const amount = roundedOut(reserve.reserve, display);
  return `every pin may be ${amount} off and this still works${name === null ? "" : `; first to go: ${name}`}`;
}

/** Errors of the four pin coordinates as multiples of the reserve, from −1 to 1. */
export interface PinErrors {
  readonly postAlong: number;
  readonly postOut: number;
  readonly leafAlong: number;
  readonly leafOff: number;
}

/**
 * Which way the pins must be off to break what goes first, in plain words. A coordinate that is off by less
 * than half of the worst does not decide and is left out.
 *
 * ### Example
 *   const errors = { postAlong: 1, postOut: -1, leafAlong: -1, leafOff: 0 };
 *   expect(pinErrorText(errors)).toBe("post pin nearer the gateway and nearer the leaf, leaf pin nearer the heel");
 */
export function pinErrorText(errors: PinErrors): string {
  const way = (error: number, more: string, less: string) =>
    Math.abs(error) < 0.5 ? [] : [error > 0 ? more : less];
  const post = [
    ...way(errors.postAlong, "nearer the gateway", "further behind the hinge"),
    ...way(errors.postOut, "further out", "nearer the leaf"),
  ];
  const leaf = [
    ...way(errors.leafAlong, "nearer the toe", "nearer the heel"),
    ...way(errors.leafOff, "further off the leaf", "nearer the leaf"),
  ];
  const parts = [
    post.length > 0 ? `post pin ${post.join(" and ")}` : "",
    leaf.length > 0 ? `leaf pin ${leaf.join(" and ")}` : "",
  ];
  return parts.filter((part) => part !== "").join(", ");
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
