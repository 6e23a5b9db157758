import type { Limit } from "@pintle/core";
import { displayUnit } from "../quantity/display-units.ts";
import { formatQuantity } from "../quantity/format-quantity.ts";
import type { Display } from "../schema/job.ts";

/** An amount of a limit in the job's display units; ratios as plain numbers. */
export function shownAmount(si: number, unit: Limit["unit"], display: Display): string {
  if (unit === "m") return formatQuantity(si, displayUnit("length", display));
  if (unit === "rad") return formatQuantity(si, displayUnit("angle", display));
  return String(Number(si.toFixed(2)) + 0);
}

/** The smallest amount that is shown as more than nothing. */
function smallestShown(unit: Limit["unit"], display: Display): string {
  if (unit === "rad") return "0.1°";
  if (unit === "ratio") return "0.01";
  return display === "us" ? '1/16"' : "0.1 mm";
}

/** How far inside or outside a limit: `25 mm to spare`, `17.7 mm short`. A shortfall never reads as nothing. */
export function shownSlack(slack: number, unit: Limit["unit"], display: Display): string {
  const amount = shownAmount(Math.abs(slack), unit, display);
  if (slack >= 0) return `${amount} to spare`;
  const nothing = amount === shownAmount(0, unit, display);
  return nothing ? `less than ${smallestShown(unit, display)} short` : `${amount} short`;
}
