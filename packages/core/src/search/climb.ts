import type { Pins } from "../placement/slack-function.ts";
import { orientationOf } from "../placement/slack-function.ts";
import type { Cell } from "./cell.ts";
import { nearestPossible } from "./cell.ts";
import { limitRows } from "./limit-rows.ts";
import { greatestSlack, newRows } from "./linear-program.ts";
import type { SearchCase } from "./search-case.ts";
import { reserveOfPins } from "./search-case.ts";

const rows = newRows();
const half = new Float64Array(4);
const shift = new Float64Array(4);
const noMove = new Float64Array(4);

/** How good pin coordinates are: the reserve where it is positive, else the first-order distance to it. */
export interface Score {
  readonly feasible: boolean;
  readonly value: number;
}

export function scoreOf(search: SearchCase, pins: Pins): Score {
  const side = orientationOf(pins) === 1 ? search.functions.left : search.functions.right;
  noMove.fill(0);
  limitRows(
    { functions: side, end: search.end, centre: pins, half: noMove, target: 0, tangentsOnly: true },
    rows,
  );
  let worst = Number.POSITIVE_INFINITY;
  for (let i = 0; i < rows.count; i++) {
    worst = Math.min(worst, (rows.b[i] as number) / (rows.w[i] as number));
  }
  if (worst < 0) return { feasible: false, value: worst };
  const reserve = reserveOfPins(search, pins);
  return {
    feasible: reserve.feasible,
    value: reserve.feasible ? reserve.reserve : Math.min(reserve.reserve, -1e-9),
  };
}

/**
 * Climbs from `start` to a placement near which no better reserve is in sight: each step solves the linear
 * program of the limits' tangents in a trust box, and the box shrinks when the step does not pay.
 *
 * A local method: it feeds good placements to the global search and proves nothing itself.
 */
export function climb(
  search: SearchCase,
  cell: Cell,
  start: Pins,
): { readonly pins: Pins; readonly score: Score } {
  let pins = start.slice();
  for (let j = 0; j < 4; j++) pins[j] = nearestPossible(cell, j, pins[j] as number);
  let score = scoreOf(search, pins);
  let trust = 0.08;
  for (let step = 0; step < 40 && trust > 2e-5; step++) {
    const side = orientationOf(pins) === 1 ? search.functions.left : search.functions.right;
    for (let j = 0; j < 4; j++) {
      const low = Math.max(cell.low[j] as number, (pins[j] as number) - trust);
      const high = Math.min(cell.high[j] as number, (pins[j] as number) + trust);
      half[j] = 0.5 * (high - low);
      shift[j] = 0.5 * (high + low) - (pins[j] as number);
    }
    const target = Math.max(0, score.value);
    limitRows({ functions: side, end: search.end, centre: pins, half, target, tangentsOnly: true }, rows);
    for (let i = 0; i < rows.count; i++) {
      let b = rows.b[i] as number;
      for (let j = 0; j < 4; j++) b += (rows.a[i * 4 + j] as number) * (shift[j] as number);
      rows.b[i] = b;
    }
    const next = new Float64Array(4);
    greatestSlack(rows, half, next);
    for (let j = 0; j < 4; j++) {
      next[j] = nearestPossible(cell, j, (pins[j] as number) + (shift[j] as number) + (next[j] as number));
    }
    const nextScore = scoreOf(search, next);
    const better =
      nextScore.feasible === score.feasible ? nextScore.value > score.value + 1e-7 : nextScore.feasible;
    if (better) {
      pins = next;
      score = nextScore;
      trust = Math.min(0.2, trust * 1.6);
    } else trust *= 0.35;
  }
  return { pins, score };
}
