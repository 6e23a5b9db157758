import { turnSign } from "../linkage/pins.ts";
import type { Prepared } from "../placement/limits.ts";
import { limitsOf } from "../placement/limits.ts";
import type { Reserve } from "../placement/reserve.ts";
import { brokenReserve, feasibleReserve, placementOf } from "../placement/reserve.ts";
import type { Pins, SlackFunction } from "../placement/slack-function.ts";
import { slackFunctions } from "../placement/slack-functions.ts";

/** One search problem with what its many evaluations share. */
export interface SearchCase {
  readonly prepared: Prepared;
  readonly rise: number;
  /** Turn φ of the open leaf [rad]. */
  readonly end: number;
  /** The limits asked with the thrust line passing the hinge on its one side and on its other. */
  readonly functions: { readonly left: readonly SlackFunction[]; readonly right: readonly SlackFunction[] };
}

export function searchCase(prepared: Prepared, rise: number): SearchCase {
  const travel = prepared.situation.leaf.travel;
  return {
    prepared,
    rise,
    end: turnSign(travel) * travel.openAngle,
    functions: { left: slackFunctions(prepared, rise, 1), right: slackFunctions(prepared, rise, -1) },
  };
}

/** The reserve of pin coordinates, exactly as `reserveOf` gives it. */
export function reserveOfPins(search: SearchCase, pins: Pins): Reserve {
  const placement = placementOf(pins, search.rise);
  return brokenReserve(limitsOf(search.prepared, placement)) ?? feasibleReserve(search.prepared, placement);
}
