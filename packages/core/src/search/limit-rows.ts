import type { PinMoves } from "../clearance/gap-ceiling.ts";
import type { Pins, SlackFunction } from "../placement/slack-function.ts";
import { newSlope } from "../placement/slack-function.ts";
import { worstSlack } from "../placement/worst-error.ts";
import type { Rows } from "./linear-program.ts";
import { maxRows } from "./linear-program.ts";
import { findLowTurns, lowestTurn, newLowTurns } from "./low-turns.ts";

/** A limit with this much to spare decides nothing [m]; no pin moves so far inside a box worth looking at. */
const farAway = 0.3;

/** Corners this much farther than the nearest still get a row [m]. */
const nearBy = 0.003;

/** A slope below this share of the steepest counts as nearly level. */
const level = 0.2;

const slope = newSlope();
const wrong = new Float64Array(4);
const worst = new Float64Array(4);
const worstSlope = newSlope();
const low = newLowTurns();

/** What is asked of a box of placements; see `limitRows`. */
export interface BoxQuestion {
  readonly functions: readonly SlackFunction[];
  /** Turn φ of the open leaf [rad]; closed is 0. */
  readonly end: number;
  readonly centre: Pins;
  readonly half: Float64Array;
  /** The error to be survived [m]. */
  readonly target: number;
  /** Leave out the lift: no proof then, but the best linear guess of where to go. */
  readonly tangentsOnly: boolean;
}

/**
 * Rows of the linear program that asks: may a placement within ±half of `centre` survive errors of `target`?
 *
 * Each row takes one limit at one turn and one error of size ≤ target, where the limit looks worst, and is
 * the tangent there lifted by `excess`, the most that the slack can exceed it. A placement in the box that
 * survives `target` satisfies every row with s ≥ 0; so s < 0 proves that there is none. The scale of s is
 * "further error that could be survived", to first order.
 *
 * Returns false as soon as one lifted row alone rules the box out.
 */
export function limitRows(question: BoxQuestion, rows: Rows): boolean {
  rows.count = 0;
  rows.ceiling = Number.POSITIVE_INFINITY;
  const { half, functions, centre, end, target } = question;
  const post = Math.hypot(half[0] as number, half[1] as number);
  const leaf = Math.hypot(half[2] as number, half[3] as number);
  const moves: PinMoves = { post, leaf, both: post + leaf };
  for (const f of functions) {
    if (f.endsOnly) {
      if (!addRow(f, question, moves, 0, rows)) return false;
      if (!addRow(f, question, moves, end, rows)) return false;
      continue;
    }
    findLowTurns(f, centre, end, target, farAway, low);
    for (let i = 0; i < low.count; i++) {
      if (!addCornerRows(f, question, moves, low.at[i] as number, rows)) return false;
    }
  }
  return true;
}

/**
 * A row for each corner that is, or within the box could become, the nearest: with the nearest one alone the
 * program would walk over the ridge to the next. Overlapping bodies have no such corner; there the whole goes in.
 */
function addCornerRows(
  f: SlackFunction,
  question: BoxQuestion,
  moves: PinMoves,
  at: number,
  rows: Rows,
): boolean {
  const [c, s] = [Math.cos(at), Math.sin(at)];
  const least = f.evaluate(question.centre, c, s, slope);
  const near = least + moves.both + question.target + nearBy;
  let found = false;
  for (const corner of f.corners) {
    const slack = corner.evaluate(question.centre, c, s, slope);
    if (slack > near) continue;
    found ||= slack <= least + 1e-9;
    if (!addRow(corner, question, moves, at, rows)) return false;
  }
  return found || addRow(f, question, moves, at, rows);
}

/**
 * The row of a limit at its worst error, and where the slack is nearly level in a coordinate a further row for
 * the other end of that coordinate: two errors at opposite ends may be about as bad, and a program that sees
 * only one of them walks toward the other.
 */
function addRow(
  f: SlackFunction,
  question: BoxQuestion,
  moves: PinMoves,
  start: number,
  rows: Rows,
): boolean {
  const { centre, target, end } = question;
  worst.fill(0);
  wrong.set(centre);
  let at = start;
  let least = 0;
  // Error and turn each move the other's worst a little; three rounds settle them to micrometres.
  for (let round = 0; round < 3; round++) {
    if (target > 0) least = worstSlack(f, centre, target, Math.cos(at), Math.sin(at), worst, worstSlope);
    setWrong(centre, -1);
    if (f.endsOnly) break;
    const lowest = lowestTurn(f, wrong, at, end);
    const settled = target === 0 || Math.abs(lowest - at) < 1e-3;
    at = lowest;
    if (settled) break;
  }
  if (!addRowAt(f, question, moves, at, rows)) return false;
  if (target === 0) return true;
  let steepest = 0;
  for (let j = 0; j < 4; j++) steepest = Math.max(steepest, Math.abs(worstSlope[j] as number));
  for (let j = 0; j < 4; j++) {
    if (Math.abs(worstSlope[j] as number) > level * steepest) continue;
    setWrong(centre, j);
    const other = f.evaluate(wrong, Math.cos(at), Math.sin(at), slope);
    if (other > least + nearBy) continue;
    if (!addRowAt(f, question, moves, f.endsOnly ? at : lowestTurn(f, wrong, at, end), rows)) return false;
  }
  return true;
}

/** Puts the pins at their worst error, with the error of coordinate `turned` the other way round. */
function setWrong(centre: Pins, turned: number): void {
  for (let j = 0; j < 4; j++) {
    const error = worst[j] as number;
    wrong[j] = (centre[j] as number) + (j === turned ? -error : error);
  }
}

/** The row of a limit with the pins at `wrong` and the leaf at the turn `at`. */
function addRowAt(
  f: SlackFunction,
  { half, tangentsOnly }: BoxQuestion,
  moves: PinMoves,
  at: number,
  rows: Rows,
): boolean {
  const slack = f.evaluate(wrong, Math.cos(at), Math.sin(at), slope);
  // Fewer rows only make a weaker claim, so far-off and surplus ones may be left out.
  if (slack > farAway || rows.count === maxRows) return true;
  // A rod that comes out of its tube only somewhere in the box has no tangent; such a row promises nothing.
  const excess = tangentsOnly ? 0 : f.excess(moves, slope);
  if (excess === Number.POSITIVE_INFINITY) return true;
  let spread = 0;
  let steep = 0;
  const row = rows.count;
  for (let j = 0; j < 4; j++) {
    const g = slope[j] as number;
    rows.a[row * 4 + j] = g;
    spread += Math.abs(g) * (half[j] as number);
    steep += Math.abs(g);
  }
  const weight = Math.max(steep, 0.1);
  // A row that stays above what another allows at the very best never decides.
  const middle = slack + excess;
  if ((middle - spread) / weight >= rows.ceiling) return true;
  rows.ceiling = Math.min(rows.ceiling, (middle + spread) / weight);
  rows.b[row] = middle;
  rows.w[row] = weight;
  rows.count++;
  return tangentsOnly || middle + spread >= 0;
}
