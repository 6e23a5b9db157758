import type { Placement } from "../src/linkage/pins.ts";
import { pinsOf, reserveOf } from "../src/placement/reserve.ts";
import type { SearchResult } from "../src/search/search-result.ts";
import type { KernelTask } from "./c-kernel.ts";
import { prepared } from "./example-job.ts";
import { swingSum } from "./swing-and-limits.ts";

const tolerance = 1e-6;

/**
 * Where the C port (c/) gives other answers than the TypeScript, in words, by task: reserves, swing and best
 * placement to 1e-6 (SI). A task that differs must not be timed: a ratio of two programs that do different
 * work would mean nothing. `answers` stand in the order of c/main.c.
 */
export function disagreements(
  answers: readonly number[],
  placements: readonly Placement[],
  search: SearchResult & { status: "found" },
): Record<KernelTask, string[]> {
  const first = placements[0];
  if (first === undefined) throw new RangeError("placements: found none, expected at least one to compare");
  const wanted: [KernelTask, string, number][] = [
    ...placements.map((one, i): [KernelTask, string, number] => [
      "reserve",
      `reserve of placement ${i + 1}`,
      reserveOf(prepared, one).reserve,
    ]),
    ["swing", "sum over the swing", swingSum(first)],
    ["search", "boxes looked at", search.boxes],
    ["search", "best reserve", search.reserve],
    ...[...pinsOf(search.placement)].map((value, j): [KernelTask, string, number] => [
      "search",
      `pin coordinate ${j + 1} of the best placement`,
      value,
    ]),
  ];
  if (answers.length !== wanted.length) {
    throw new Error(`the C port gave ${answers.length} numbers: expected ${wanted.length}`);
  }
  const apart: Record<KernelTask, string[]> = { swing: [], reserve: [], search: [] };
  for (const [i, [task, what, ours]] of wanted.entries()) {
    const theirs = answers[i] as number;
    // Rounding may cost a box or two in a hundred; the answers must not feel it.
    const allowed = what.startsWith("boxes") ? 0.02 * ours + 1 : tolerance * Math.max(1, Math.abs(ours));
    if (Math.abs(theirs - ours) > allowed) apart[task].push(`${what}: ${ours} in TypeScript, ${theirs} in C`);
  }
  return apart;
}
