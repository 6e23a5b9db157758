import type { LeastChange } from "@pintle/core";
import type { Display } from "../schema/job.ts";
import { shownAmount } from "./shown-amount.ts";

/**
 * A remedy in plain words (rule G16), in the job's display units.
 *
 * ### Example
 *   const placement = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9, off: 0.09 }, rise: 0 };
 *   expect(changeText({ kind: "stroke", by: 0.022, unit: "m", thing: null, placement }, "metric")).toBe("a ram with 22 mm more stroke");
 */
export function changeText(change: LeastChange, display: Display): string {
  const amount = shownAmount(roundedUp(change, display), change.unit, display);
  switch (change.kind) {
    case "stroke":
      return `a ram with ${amount} more stroke`;
    case "retractedLength":
      return `a ram ${amount} ${change.by < 0 ? "shorter" : "longer"} pin to pin when fully in, with the same stroke`;
    case "leafPinOff":
      return `a leaf bracket that stands off ${amount} further`;
    case "postPocket":
      return `a pocket ${amount} deep in ${change.thing ?? "the pier"}, with the post pin that much deeper; ask a mason or engineer whether it can bear it`;
    case "postPinOut":
      return `a post bracket that reaches ${amount} further out`;
    case "openAngle":
      return `opening ${amount} less`;
    case "clearance":
      return `${amount} less clearance to the leaf than asked for`;
  }
}

/** On the grid that is shown, rounded up: the nearest step might not be enough. */
function roundedUp(change: LeastChange, display: Display): number {
  const grid = change.unit === "rad" ? Math.PI / 1800 : display === "us" ? 0.0254 / 16 : 0.0001;
  return Math.ceil(Math.abs(change.by) / grid - 1e-6) * grid;
}
