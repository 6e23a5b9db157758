import type { Point } from "../linkage/pins.ts";

/** "not-checked" is never silence and never a pass: something needed to judge is missing. */
export type LimitState = "pass" | "fail" | "not-checked" | "not-applicable";

/**
 * One limit judged for one placement (rule G10).
 *
 * `slack` is how far the value is inside (≥ 0) or outside (< 0) the limit, in `unit`. A limit that is
 * not checked has null numbers.
 */
export interface Limit {
  /** `stroke.retracted`, `stroke.extended`, `clearance.leaf`, `clearance.<thing>`, `rod.contact`, `lever`, `deadCentre`, `force`, `sweep.<thing>`. */
  readonly id: string;
  readonly state: LimitState;
  readonly unit: "m" | "rad" | "ratio";
  readonly value: number | null;
  readonly limit: number | null;
  readonly slack: number | null;
  /** Leaf angle θ at which the value occurs [rad]. */
  readonly atAngle: number | null;
  /** Where on the plan it occurs, fixed frame [m], when a place can be shown. */
  readonly where: Point | null;
}
