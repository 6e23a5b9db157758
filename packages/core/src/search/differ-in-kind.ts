import type { Placement } from "../linkage/pins.ts";
import type { Limit } from "../placement/limit.ts";
import type { Prepared } from "../placement/limits.ts";
import { limitsOf, prepare } from "../placement/limits.ts";
import type { Reach } from "../placement/reach.ts";
import type { Reserve } from "../placement/reserve.ts";
import { pinsOf, placementOf } from "../placement/reserve.ts";
import type { Situation } from "../placement/situation.ts";
import type { Pins } from "../placement/slack-function.ts";
import type { TradeOffs } from "../placement/trade-offs.ts";
import { tradeOffsOf } from "../placement/trade-offs.ts";
import { bestPlacement } from "./best-placement.ts";
import type { Cell } from "./cell.ts";
import { mostTuckedIn, strongestPlacement } from "./press.ts";
import type { SearchCase } from "./search-case.ts";
import { reserveOfPins, searchCase } from "./search-case.ts";
import type { SearchOptions, SearchResult } from "./search-result.ts";

/**
 * In what a placement is the best: it forgives the largest error; it has the longest lever arm; its post pin
 * stands out least; or it is the best with another pair of brackets.
 */
export type PlacementKind = "forgiving" | "strong" | "tuckedIn" | "otherBracket";

/** A placement with all that is needed to choose between it and others. */
export interface RankedPlacement {
  readonly kind: PlacementKind;
  readonly placement: Placement;
  readonly postBracket: string;
  readonly leafBracket: string;
  readonly reserve: Reserve;
  readonly limits: readonly Limit[];
  readonly tradeOffs: TradeOffs;
}

export type PlacementsResult =
  | { readonly status: "found"; readonly placements: readonly RankedPlacement[]; readonly ceiling: number }
  | Exclude<SearchResult, { readonly status: "found" }>;

/** Placements closer than this in every coordinate count as the same [m]. */
const sameWithin = 0.01;
/** Reserves this close count as equal, and the slower toe wins (rule G12) [m]. */
const tieWithin = 5e-5;
/** Alternatives must keep this share of the best reserve. */
const shareKept = 0.5;

/**
 * The best few placements that differ in kind (rules G12, G14), the most forgiving first.
 *
 * The first is within the search tolerance of the true optimum; among placements that tie with it the slower
 * toe is taken. The others keep at least half of its reserve and are the best in sight of their kind.
 *
 * ### Example
 *   const found = placementsInKind(workedExample.situation, workedExample.reach);
 *   expect(found.status).toBe("found");
 *   if (found.status === "found") expect(found.placements[0]?.kind).toBe("forgiving");
 */
export function placementsInKind(
  situation: Situation | Prepared,
  reach: Reach,
  options: SearchOptions & { readonly most?: number } = {},
): PlacementsResult {
  const prepared = "checks" in situation ? situation : prepare(situation);
  const result = bestPlacement(prepared, reach, options);
  if (result.status !== "found") return result;
  const most = options.most ?? 4;
  const search = searchCase(prepared, reach.rise);
  const { cell } = result;
  const best = strongestPlacement(search, cell, pinsOf(result.placement), result.reserve - tieWithin);
  const ranked: RankedPlacement[] = [];
  const add = (kind: PlacementKind, pins: Pins, from: Cell): void => {
    const known = ranked.some((one) => sameBrackets(one, from) && isNear(pinsOf(one.placement), pins));
    if (!known && ranked.length < most) ranked.push(ranking(search, kind, pins, from));
  };
  add("forgiving", best, cell);
  const keep = result.reserve * shareKept;
  if (most > 1) add("strong", strongestPlacement(search, cell, best, keep), cell);
  if (most > 2) add("tuckedIn", mostTuckedIn(search, cell, best, keep), cell);
  const others = ranked.length < most ? bestOfOtherBrackets(prepared, reach, cell, keep, options) : [];
  for (const other of others) add("otherBracket", pinsOf(other.placement), other.cell);
  return { status: "found", placements: ranked, ceiling: result.ceiling };
}

function ranking(search: SearchCase, kind: PlacementKind, pins: Pins, cell: Cell): RankedPlacement {
  const placement = placementOf(pins, search.rise);
  const limits = limitsOf(search.prepared, placement);
  return {
    kind,
    placement,
    postBracket: cell.postBracket,
    leafBracket: cell.leafBracket,
    reserve: reserveOfPins(search, pins),
    limits,
    tradeOffs: tradeOffsOf(search.prepared.situation, placement, limits),
  };
}

const sameBrackets = (one: RankedPlacement, cell: Cell) =>
  one.postBracket === cell.postBracket && one.leafBracket === cell.leafBracket;

const isNear = (a: Pins, b: Pins) => a.every((value, j) => Math.abs(value - (b[j] as number)) < sameWithin);

type Found = Extract<SearchResult, { readonly status: "found" }>;

/** The best placement with each other post bracket that keeps `keep`, the most forgiving first. */
function bestOfOtherBrackets(
  prepared: Prepared,
  reach: Reach,
  won: Cell,
  keep: number,
  options: SearchOptions,
): Found[] {
  const quick = { ...(options.signal ? { signal: options.signal } : {}), tolerance: 5e-4 };
  return reach.postPin
    .filter((site) => site.bracket !== won.postBracket)
    .map((site) => bestPlacement(prepared, { ...reach, postPin: [site] }, quick))
    .filter((found): found is Found => found.status === "found" && found.reserve >= keep)
    .sort((a, b) => b.reserve - a.reserve);
}
