import type { Pins, SlackFunction } from "../placement/slack.ts";
import { newSlope } from "../placement/slack.ts";
import { worstSlack } from "../placement/worst-error.ts";
import type { PinMoves } from "./gap-ceiling.ts";
import type { Rows } from "./linear-program.ts";

/** Turns at which clearances are looked at for a row; the rows hold whatever turns are chosen. */
const turnSamples = 9;

/** The turns of one travel, with their sines, so that a search works them out once. */
export interface Turns {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

export function turnsOf(end: number): Turns {
  const phi = Float64Array.from({ length: turnSamples }, (_, i) => (end * i) / (turnSamples - 1));
  return { cos: phi.map(Math.cos), sin: phi.map(Math.sin) };
}

const slope = newSlope();
const wrong = new Float64Array(4);
const estimates = new Float64Array(turnSamples);

/**
 * Rows of the linear program that asks: may a placement within ±half of `centre` survive errors of `target`?
 *
 * Each row takes one limit at one turn and one error of size ≤ target, where the limit looks worst, and is
 * the tangent there lifted by `excess`, the most that the slack can exceed it. A placement in the box that
 * survives `target` satisfies every row with s ≥ 0; so s < 0 proves that there is none. The scale of s is
 * "further error that could be survived", to first order.
 *
 * Returns false as soon as one row alone rules the box out. With `tangentsOnly` the lift is left out and all
 * rows are made: no proof then, but the best linear guess of where to go.
 */
export function limitRows(
  functions: readonly SlackFunction[],
  turns: Turns,
  centre: Pins,
  half: Float64Array,
  target: number,
  rows: Rows,
  tangentsOnly = false,
): boolean {
  rows.count = 0;
  const post = Math.hypot(half[0] as number, half[1] as number);
  const leaf = Math.hypot(half[2] as number, half[3] as number);
  const moves: PinMoves = { post, leaf, both: post + leaf };
  const last = turnSamples - 1;
  for (const f of functions) {
    if (f.endsOnly) {
      if (!addRow(f, turns, 0, centre, half, target, moves, rows, tangentsOnly)) return false;
      if (!addRow(f, turns, last, centre, half, target, moves, rows, tangentsOnly)) return false;
      continue;
    }
    for (let i = 0; i < turnSamples; i++) {
      const slack = f.evaluate(centre, turns.cos[i] as number, turns.sin[i] as number, slope);
      estimates[i] = slack - target * steepness();
    }
    for (let i = 0; i < turnSamples; i++) {
      const here = estimates[i] as number;
      if (here === Number.POSITIVE_INFINITY) continue;
      if (i > 0 && (estimates[i - 1] as number) < here) continue;
      if (i < last && (estimates[i + 1] as number) <= here) continue;
      if (!addRow(f, turns, i, centre, half, target, moves, rows, tangentsOnly)) return false;
    }
  }
  return true;
}

/** Evaluates at the worst error once more, so that `excess` speaks of the contact found there. */
function settleOn(f: SlackFunction, centre: Pins, c: number, s: number): void {
  for (let j = 0; j < 4; j++) wrong[j] = (centre[j] as number) + (wrong[j] as number);
  f.evaluate(wrong, c, s, slope);
}

function steepness(): number {
  return (
    Math.abs(slope[0] as number) +
    Math.abs(slope[1] as number) +
    Math.abs(slope[2] as number) +
    Math.abs(slope[3] as number)
  );
}

function addRow(
  f: SlackFunction,
  turns: Turns,
  turn: number,
  centre: Pins,
  half: Float64Array,
  target: number,
  moves: PinMoves,
  rows: Rows,
  tangentsOnly: boolean,
): boolean {
  const c = turns.cos[turn] as number;
  const s = turns.sin[turn] as number;
  const slack =
    target > 0 ? worstSlack(f, centre, target, c, s, wrong, slope) : f.evaluate(centre, c, s, slope);
  if (slack === Number.POSITIVE_INFINITY) return true;
  if (target > 0) settleOn(f, centre, c, s);
  // A rod that comes out of its tube only somewhere in the box has no tangent; such a row promises nothing.
  const excess = tangentsOnly ? 0 : f.excess(moves, slope);
  if (excess === Number.POSITIVE_INFINITY) return true;
  let most = slack + excess;
  const at = rows.count;
  let steep = 0;
  for (let j = 0; j < 4; j++) {
    const g = slope[j] as number;
    rows.a[at * 4 + j] = g;
    most += Math.abs(g) * (half[j] as number);
    steep += Math.abs(g);
  }
  rows.b[at] = slack + excess;
  rows.w[at] = Math.max(steep, 0.1);
  rows.count = at + 1;
  return tangentsOnly || most >= 0;
}
