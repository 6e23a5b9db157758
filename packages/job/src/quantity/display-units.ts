import type { Display } from "../schema/job.ts";
import type { Unit } from "./units.ts";

/** What a number on a screen or sheet stands for; decides its unit. */
export type Shown = "length" | "angle" | "mass" | "force" | "torque" | "rodSpeed" | "toeSpeed" | "wind";

const displayUnits: Record<Shown, Record<Display, Unit>> = {
  length: { metric: "mm", us: "in" },
  angle: { metric: "deg", us: "deg" },
  mass: { metric: "kg", us: "lb" },
  force: { metric: "N", us: "lbf" },
  torque: { metric: "Nm", us: "lbf-ft" },
  rodSpeed: { metric: "mm/s", us: "in/s" },
  toeSpeed: { metric: "m/s", us: "ft/s" },
  wind: { metric: "m/s", us: "mph" },
};

/**
 * Unit in which a job shows a quantity, and which a number typed without a unit takes.
 *
 * ### Example
 *   expect(displayUnit("length", "us")).toBe("in");
 *   expect(displayUnit("wind", "metric")).toBe("m/s");
 */
export function displayUnit(shown: Shown, display: Display): Unit {
  return displayUnits[shown][display];
}
