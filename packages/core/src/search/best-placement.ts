import type { Placement } from "../linkage/pins.ts";
import type { Prepared } from "../placement/limits.ts";
import { prepare } from "../placement/limits.ts";
import type { Reach } from "../placement/reach.ts";
import { placementOf } from "../placement/reserve.ts";
import type { Situation } from "../placement/situation.ts";
import { branchAndBound } from "./branch-and-bound.ts";
import type { Cell } from "./cell.ts";
import { cellsOf, middleOf } from "./cell.ts";
import { Incumbent } from "./incumbent.ts";
import { searchCase } from "./search-case.ts";
import type { SearchOptions, SearchResult } from "./search-result.ts";

/**
 * The placement with the largest reserve in reach (rule G12), to within `tolerance` of the true optimum.
 *
 * A branch and bound over boxes of placements: a box is dropped when the linear program of `limitRows` proves
 * that nothing in it survives errors of (best so far + tolerance). Climbs from a few starts give a good best
 * early; they do not touch the proof. Deterministic: no clock, no randomness.
 *
 * Frame: rule G1; metres. Misuse (a span that runs backwards) throws.
 *
 * ### Example
 *   const found = bestPlacement(workedExample.situation, workedExample.reach);
 *   expect(found.status).toBe("found");
 *   if (found.status === "found") expect(Math.abs(found.reserve - 0.025)).toBeLessThan(0.0005);
 */
export function bestPlacement(
  situation: Situation | Prepared,
  reach: Reach,
  options: SearchOptions = {},
): SearchResult {
  const prepared = "checks" in situation ? situation : prepare(situation);
  const search = searchCase(prepared, reach.rise);
  const cells = cellsOf(reach);
  // The leaf's own sweep depends on no pin: when it fouls, no placement can help.
  if (prepared.sweeps.some((sweep) => sweep.gap < prepared.situation.need.sweep)) {
    return { status: "nothing-fits", nearest: nearestMiss(new Incumbent(search), cells), boxes: 0 };
  }
  return branchAndBound(search, cells, options);
}

function nearestMiss(incumbent: Incumbent, cells: readonly Cell[]): Placement | null {
  for (const cell of cells.slice(0, 40)) incumbent.climbFrom(cell, middleOf(cell));
  const pins = incumbent.nearest;
  return pins === null ? null : placementOf(pins, incumbent.search.rise);
}
