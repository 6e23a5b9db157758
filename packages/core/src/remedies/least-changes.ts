import type { Placement } from "../linkage/pins.ts";
import { limitsOf, prepare } from "../placement/limits.ts";
import { bestPlacement } from "../search/best-placement.ts";
import type { SearchOptions } from "../search/search-result.ts";
import type { Change, ChangeKind, Problem } from "./change.ts";
import { changesFor } from "./change.ts";

/** The least amount of one kind of change that makes a placement fit, found by solving again (rule G16). */
export interface LeastChange {
  readonly kind: ChangeKind;
  /** Signed amount [m or rad], rounded up to three figures: with it a placement fits, with 5 % less none does. */
  readonly by: number;
  readonly unit: "m" | "rad";
  readonly thing: string | null;
  /** The placement that then fits. */
  readonly placement: Placement;
}

/** Why nothing fits and what would help. */
export interface NothingFits {
  /** Limits broken by the placement that comes nearest, worst first. */
  readonly binding: readonly string[];
  readonly nearest: Placement | null;
  readonly changes: readonly LeastChange[];
  /** Kinds for which no answer is certain, because a search stopped short. */
  readonly undecided: readonly ChangeKind[];
}

/** Amounts tried to find where a change begins to help: each 1.35 times the last, so none is stepped over widely. */
const growth = 1.35;
const smallest = { m: 1e-3, rad: Math.PI / 360 };

/**
 * For a problem in which nothing fits: the limits that bind and the least single change of each kind that
 * would make a placement fit, each verified by solving again with it and with 5 % less.
 *
 * A kind is left out when no amount of it up to a sensible most helps. For a kind that can go both ways the
 * smaller amount is kept. Deterministic; `watch` and box limits as in `bestPlacement`.
 *
 * ### Example
 *   const { situation, reach } = workedExample;
 *   const weak = { ...situation, ram: { ...situation.ram, stroke: 0.2 } };
 *   const why = leastChanges({ situation: weak, reach });
 *   const stroke = why.changes.find((change) => change.kind === "stroke");
 *   const mended = { ...weak, ram: { ...weak.ram, stroke: 0.2 + (stroke?.by ?? 0) } };
 *   expect(bestPlacement(mended, reach).status).toBe("found");
 */
export function leastChanges(problem: Problem, options: SearchOptions = {}): NothingFits {
  const prepared = prepare(problem.situation);
  const start = bestPlacement(prepared, problem.reach, { enough: 0 });
  const nearest = start.status === "nothing-fits" ? start.nearest : null;
  const failing =
    nearest === null ? [] : limitsOf(prepared, nearest).filter((limit) => limit.state === "fail");
  const share = (slack: number | null, limit: number | null) => (slack ?? 0) / Math.max(limit ?? 0, 0.01);
  failing.sort((a, b) => share(a.slack, a.limit) - share(b.slack, b.limit));
  const changes: LeastChange[] = [];
  const undecided = new Set<ChangeKind>();
  const kinds = changesFor(problem);
  kinds.forEach((change, i) => {
    if (options.signal?.aborted) {
      undecided.add(change.kind);
      return;
    }
    const found = leastOf(change, problem, options);
    if (found === "undecided") undecided.add(change.kind);
    else if (found !== null) keepSmaller(changes, found);
    options.progress?.((i + 1) / kinds.length);
  });
  return { binding: failing.map((limit) => limit.id), nearest, changes, undecided: [...undecided] };
}

/** One entry for each kind and thing: the smaller amount. */
function keepSmaller(changes: LeastChange[], found: LeastChange): void {
  const at = changes.findIndex((other) => other.kind === found.kind);
  const known = changes[at];
  if (known === undefined) changes.push(found);
  else if (Math.abs(found.by) < Math.abs(known.by)) changes[at] = found;
}

function leastOf(change: Change, problem: Problem, options: SearchOptions): LeastChange | null | "undecided" {
  let undecided = false;
  const fits = (amount: number): Placement | null => {
    const changed = change.apply(problem, change.sign * amount);
    const found = bestPlacement(changed.situation, changed.reach, {
      enough: 0,
      ...(options.signal ? { signal: options.signal } : {}),
      ...(options.maxBoxes ? { maxBoxes: options.maxBoxes } : {}),
    });
    if (found.status === "stopped") undecided = true;
    return found.status === "found" ? found.placement : null;
  };
  let low = 0;
  let high = Number.NaN;
  let tried = 0;
  for (let amount = Math.min(smallest[change.unit], change.most); tried < change.most; amount *= growth) {
    tried = Math.min(amount, change.most);
    if (fits(tried) !== null) {
      high = tried;
      break;
    }
    if (undecided) return "undecided";
    low = tried;
  }
  if (Number.isNaN(high)) return null;
  while (high - low > 0.002 * high && high > 1e-6) {
    const middle = 0.5 * (low + high);
    if (fits(middle) === null) low = middle;
    else high = middle;
    if (undecided) return "undecided";
  }
  const by = Math.min(roundedUp(high, change.unit), change.most);
  const placement = fits(by);
  if (undecided) return "undecided";
  // Rounding up must not leave the range in which it helps, nor may 5 % less do: then the claim would be false.
  if (placement === null || fits(0.95 * by) !== null) return "undecided";
  return { kind: change.kind, by: change.sign * by, unit: change.unit, thing: change.thing, placement };
}

/** Rounded up to three significant figures of the unit that people read: metres or degrees. */
function roundedUp(amount: number, unit: Change["unit"]): number {
  const scale = unit === "rad" ? 180 / Math.PI : 1;
  const step = 10 ** (Math.floor(Math.log10(amount * scale)) - 2);
  return Number((Math.ceil((amount * scale) / step - 1e-9) * step).toPrecision(3)) / scale;
}
