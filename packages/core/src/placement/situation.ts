import type { FixedThing, Leaf } from "../leaf/leaf.ts";
import type { Ram } from "../ram/ram.ts";

/** What a placement must keep (rule G10), SI. */
export interface Need {
  /** Ram body to leaf [m], default 0.050. */
  readonly clearance: number;
  /** Ram body to anything fixed [m], default 0.015. */
  readonly fixedClearance: number;
  /** Least lever arm over the travel [m]. */
  readonly lever: number;
  /** Least angle between thrust line and hinge–leaf-pin line [rad], default 5°. */
  readonly deadCentre: number;
  /** Leaf to anything fixed while it swings [m], default 0. */
  readonly sweep: number;
}

/** Everything that a placement is judged against: the leaf, the ram, what stands around, what is asked for. */
export interface Situation {
  readonly leaf: Leaf;
  readonly ram: Ram;
  readonly fixed: readonly FixedThing[];
  readonly need: Need;
}

/** Default needs. 50 mm, 15 mm and 5° are common practice, no source; a lever of 0 asks for nothing. */
export const defaultNeed: Need = {
  clearance: 0.05,
  fixedClearance: 0.015,
  lever: 0,
  deadCentre: (5 * Math.PI) / 180,
  sweep: 0,
};
