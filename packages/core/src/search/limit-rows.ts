import type { Pins, SlackFunction } from "../placement/slack.ts";
import { newSlope } from "../placement/slack.ts";
import { worstSlack } from "../placement/worst-error.ts";
import type { PinMoves } from "./gap-ceiling.ts";
import type { Rows } from "./linear-program.ts";

/** Turns at which clearances are looked at for a row; the rows hold whatever turns are chosen. */
const turnSamples = 9;

/** The turns of one travel, with their sines, so that a search works them out once. */
export interface Turns {
  readonly phi: Float64Array;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

export function turnsOf(end: number): Turns {
  const phi = Float64Array.from({ length: turnSamples }, (_, i) => (end * i) / (turnSamples - 1));
  return { phi, cos: phi.map(Math.cos), sin: phi.map(Math.sin) };
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

/**
 * Evaluates the slack at `wrong` where it is lowest between the neighbours of a sampled turn, and leaves the
 * slope of that. A row taken at the sample itself would stay up to a few millimetres too high, and boxes that
 * miss by less could never be ruled out.
 */
function slackAtLowestTurn(f: SlackFunction, turns: Turns, turn: number): number {
  const { phi } = turns;
  let at = phi[turn] as number;
  let slack = f.evaluate(wrong, Math.cos(at), Math.sin(at), slope);
  let rate = slope[4] as number;
  const end = phi[turnSamples - 1] as number;
  // Downhill is against the slope; `phi` itself runs backwards for a leaf that swings away.
  const next = turn + (rate > 0 === end > 0 ? -1 : 1);
  if (next < 0 || next >= turnSamples || slack === Number.POSITIVE_INFINITY) return slack;
  let far = phi[next] as number;
  f.evaluate(wrong, Math.cos(far), Math.sin(far), slope);
  let farRate = slope[4] as number;
  for (let step = 0; step < 4 && rate * farRate < 0; step++) {
    const middle = at + ((far - at) * rate) / (rate - farRate);
    slack = f.evaluate(wrong, Math.cos(middle), Math.sin(middle), slope);
    const middleRate = slope[4] as number;
    if (middleRate * rate > 0) {
      [at, rate] = [middle, middleRate];
      farRate *= 0.5;
    } else {
      [far, farRate] = [middle, middleRate];
      rate *= 0.5;
    }
    if (Math.abs(middleRate) < 1e-3) return slack;
  }
  return f.evaluate(wrong, Math.cos(at), Math.sin(at), slope);
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
  if (target > 0) worstSlack(f, centre, target, c, s, wrong, slope);
  else wrong.fill(0);
  for (let j = 0; j < 4; j++) wrong[j] = (centre[j] as number) + (wrong[j] as number);
  const slack = f.endsOnly ? f.evaluate(wrong, c, s, slope) : slackAtLowestTurn(f, turns, turn);
  if (slack === Number.POSITIVE_INFINITY) return true;
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
