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
  // Rounded up to the next sixteenth in US units: the nearest one might not be enough.
  const sixteenth = 0.0254 / 16;
  const inUs = change.unit === "m" && display === "us";
  const size = Math.abs(change.by);
  const shown = inUs ? Math.ceil(size / sixteenth - 1e-6) * sixteenth : size;
  const amount = shownAmount(shown, change.unit, display);
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
