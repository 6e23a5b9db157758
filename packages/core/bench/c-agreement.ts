import type { Placement } from "../src/linkage/pins.ts";
import { pinsOf, reserveOf } from "../src/placement/reserve.ts";
import type { SearchResult } from "../src/search/best-placement.ts";
import { prepared } from "./example-job.ts";
import { swingSum } from "./swing-and-limits.ts";

const tolerance = 1e-6;

/**
 * Throws unless the C port gives the same reserves, swing and best placement as the TypeScript, to 1e-6: a
 * ratio of two programs that do different work would mean nothing.
 */
export function assertAgreement(
  answers: readonly number[],
  placements: readonly Placement[],
  search: SearchResult,
): void {
  const wanted: [string, number][] = placements.map((one, i) => [
    `reserve of placement ${i + 1}`,
    reserveOf(prepared, one).reserve,
  ]);
  const first = placements[0];
  if (first === undefined || search.status !== "found") {
    throw new Error(`search ended as ${search.status}: expected a placement to compare`);
  }
  wanted.push(["sum over the swing", swingSum(first)], ["boxes of the search", search.boxes]);
  wanted.push(["reserve of the search", search.reserve]);
  const pins = pinsOf(search.placement);
  pins.forEach((value, j) => {
    wanted.push([`pin coordinate ${j + 1} of the search`, value]);
  });
  if (answers.length !== wanted.length) {
    throw new Error(`the C port gave ${answers.length} numbers: expected ${wanted.length}`);
  }
  const apart = wanted.flatMap(([what, ours], i) => {
    const theirs = answers[i] as number;
    // A box more or less would be rounding; the answers must not feel it.
    const allowed = what.startsWith("boxes") ? 0.02 * ours + 1 : tolerance * Math.max(1, Math.abs(ours));
    return Math.abs(theirs - ours) <= allowed ? [] : [`${what}: ${ours} in TypeScript, ${theirs} in C`];
  });
  if (apart.length > 0) {
    throw new Error(`packages/core/bench/c does not follow packages/core/src any more:\n${apart.join("\n")}`);
  }
}
