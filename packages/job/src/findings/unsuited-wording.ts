import type { Unsuited } from "@pintle/core";
import { displayUnit } from "../quantity/display-units.ts";
import { formatQuantity } from "../quantity/format-quantity.ts";
import type { Display } from "../schema/job.ts";
import { limitName } from "./limit-names.ts";
import { shownAmount } from "./shown-amount.ts";

/**
 * Why a ram does not suit a leaf, in plain words (rule G15).
 *
 * ### Example
 *   expect(unsuitedText({ why: "nothingFits", binding: ["lever"] }, "metric")).toBe("nothing within reach fits; in the way: lever arm");
 */
export function unsuitedText(reason: Unsuited, display: Display): string {
  const length = (metres: number) => shownAmount(metres, "m", display);
  const mass = (kilograms: number) => formatQuantity(kilograms, displayUnit("mass", display));
  switch (reason.why) {
    case "leafTooLong":
      return `the leaf is ${length(reason.leaf)} long, its maker allows ${length(reason.allowed)}`;
    case "leafTooHeavy":
      return `the leaf weighs ${mass(reason.leaf)}, its maker allows ${mass(reason.allowed)}`;
    case "ramLongerThanLeaf":
      return `fully in it is ${length(reason.ram)} long, the leaf only ${length(reason.leaf)}`;
    case "nothingFits":
      return `nothing within reach fits${reason.binding.length === 0 ? "" : `; in the way: ${reason.binding.map(limitName).join(", ")}`}`;
    case "searchStopped":
      return "the search stopped before it was certain";
  }
}
