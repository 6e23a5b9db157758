import { leastLever } from "../linkage/lever-arm.ts";
import type { Prepared } from "../placement/limits.ts";
import { prepare } from "../placement/limits.ts";
import { placementOf } from "../placement/reserve.ts";
import type { Need } from "../placement/situation.ts";
import type { Pins } from "../placement/slack-function.ts";
import type { Cell } from "./cell.ts";
import { climb } from "./climb.ts";
import type { SearchCase } from "./search-case.ts";
import { reserveOfPins, searchCase } from "./search-case.ts";

/** Halvings of a press: the end lies within 1/64 of the range pressed over. */
const halvings = 6;

function withNeed(prepared: Prepared, need: Partial<Need>): Prepared {
  const { situation } = prepared;
  return { ...prepare({ ...situation, need: { ...situation.need, ...need } }), sweeps: prepared.sweeps };
}

/** Presses a demand between what holds already and a bound, keeping the reserve at `keep`; the last that held. */
function press(start: Pins, tryShare: (share: number, from: Pins) => Pins | null): Pins {
  let held = start;
  let [low, high] = [0, 1];
  for (let i = 0; i < halvings; i++) {
    const share = 0.5 * (low + high);
    const pins = tryShare(share, held);
    if (pins === null) high = share;
    else [low, held] = [share, pins];
  }
  return held;
}

/**
 * The placement near `start` whose lever arm, with every pin off by `keep`, is longest: slowest toe, most
 * force. Found by climbing under a rising demand, so it is the best in sight, not proved best.
 */
export function strongestPlacement(search: SearchCase, cell: Cell, start: Pins, keep: number): Pins {
  const own = search.prepared.situation;
  const from = leastLever(placementOf(start, search.rise), own.leaf.travel).value;
  const to = 2 * from + 0.05;
  return press(start, (share, pins) => {
    const lever = Math.max(own.need.lever, from + share * (to - from) - 2 * keep);
    const harder = searchCase(withNeed(search.prepared, { lever }), search.rise);
    const found = climb(harder, cell, pins);
    const better = leastLever(placementOf(found.pins, search.rise), own.leaf.travel).value > from;
    return found.score.feasible && found.score.value >= keep && better ? found.pins : null;
  });
}

/** The placement near `start` whose post pin stands out least while the reserve stays at `keep`. */
export function mostTuckedIn(search: SearchCase, cell: Cell, start: Pins, keep: number): Pins {
  const from = start[1] as number;
  const to = cell.low[1] as number;
  return press(start, (share, pins) => {
    const high = cell.high.slice();
    high[1] = from + share * (to - from);
    const found = climb(search, { ...cell, high }, pins);
    return found.score.feasible &&
      found.score.value >= keep &&
      reserveOfPins(search, found.pins).reserve >= keep
      ? found.pins
      : null;
  });
}
