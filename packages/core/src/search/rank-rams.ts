import type { Leaf } from "../leaf/leaf.ts";
import type { Placement } from "../linkage/pins.ts";
import { limitsOf, prepare } from "../placement/limits.ts";
import type { Reach } from "../placement/reach.ts";
import type { Situation } from "../placement/situation.ts";
import type { TradeOffs } from "../placement/trade-offs.ts";
import { tradeOffsOf } from "../placement/trade-offs.ts";
import type { Ram } from "../ram/ram.ts";
import { bestPlacement } from "./best-placement.ts";
import type { SearchOptions } from "./search-result.ts";

/** Why a ram is not for this leaf, as data; numbers SI. */
export type Unsuited =
  | { readonly why: "leafTooLong"; readonly leaf: number; readonly allowed: number }
  | { readonly why: "leafTooHeavy"; readonly leaf: number; readonly allowed: number }
  | { readonly why: "ramLongerThanLeaf"; readonly leaf: number; readonly ram: number }
  | { readonly why: "nothingFits"; readonly binding: readonly string[] }
  | { readonly why: "searchStopped" };

/** One ram of a catalogue on one leaf: its best placement, or why it has none. */
export type RamRank =
  | {
      readonly ram: string;
      readonly suits: true;
      readonly placement: Placement;
      readonly reserve: number;
      readonly tradeOffs: TradeOffs;
    }
  | { readonly ram: string; readonly suits: false; readonly reasons: readonly Unsuited[] };

/**
 * Every ram of a catalogue on one leaf, the largest reserve first, then those that do not suit and why
 * (rule G15). `leafMass` [kg] null when not known: a maker's heaviest leaf is then not judged.
 *
 * Each ram is searched by itself, so a caller may spread the catalogue over workers and sort with
 * `byReserve`.
 *
 * ### Example
 *   const { situation, reach } = workedExample;
 *   const short = { ...situation.ram, id: "short", longestLeaf: 3 };
 *   const ranks = rankRams(situation, [short, situation.ram], reach, null);
 *   expect(ranks.map((rank) => rank.ram)).toEqual(["demo-400", "short"]);
 */
export function rankRams(
  situation: Situation,
  rams: readonly Ram[],
  reach: Reach,
  leafMass: number | null,
  options: SearchOptions = {},
): RamRank[] {
  const ranks = rams.map((ram, i) => {
    const rank = rankRam({ ...situation, ram }, reach, leafMass, { ...options, progress: () => {} });
    options.progress?.((i + 1) / rams.length);
    return rank;
  });
  return ranks.sort(byReserve);
}

/**
 * Order of a ranked catalogue: largest reserve first, unsuited last, names as tie-break.
 *
 * ### Example
 *   const unsuited = (ram: string) => ({ ram, suits: false as const, reasons: [] });
 *   expect([unsuited("b"), unsuited("a")].sort(byReserve).map((rank) => rank.ram)).toEqual(["a", "b"]);
 */
export function byReserve(a: RamRank, b: RamRank): number {
  if (a.suits !== b.suits) return a.suits ? -1 : 1;
  if (a.suits && b.suits && a.reserve !== b.reserve) return b.reserve - a.reserve;
  return a.ram < b.ram ? -1 : a.ram > b.ram ? 1 : 0;
}

/**
 * One ram on one leaf (rule G15).
 *
 * ### Example
 *   const rank = rankRam(workedExample.situation, workedExample.reach, 400);
 *   expect(rank.suits ? [] : rank.reasons.map((reason) => reason.why)).toEqual(["leafTooHeavy"]);
 */
export function rankRam(
  situation: Situation,
  reach: Reach,
  leafMass: number | null,
  options: SearchOptions = {},
): RamRank {
  const { ram } = situation;
  const reasons = makersLimits(situation.leaf, ram, leafMass);
  if (reasons.length > 0) return { ram: ram.id, suits: false, reasons };
  const prepared = prepare(situation);
  const found = bestPlacement(prepared, reach, options);
  if (found.status === "stopped") return { ram: ram.id, suits: false, reasons: [{ why: "searchStopped" }] };
  if (found.status === "nothing-fits") {
    const limits = found.nearest === null ? [] : limitsOf(prepared, found.nearest);
    const binding = limits.filter((limit) => limit.state === "fail").map((limit) => limit.id);
    return { ram: ram.id, suits: false, reasons: [{ why: "nothingFits", binding }] };
  }
  const limits = limitsOf(prepared, found.placement);
  return {
    ram: ram.id,
    suits: true,
    placement: found.placement,
    reserve: found.reserve,
    tradeOffs: tradeOffsOf(situation, found.placement, limits),
  };
}

function makersLimits(leaf: Leaf, ram: Ram, leafMass: number | null): Unsuited[] {
  const reasons: Unsuited[] = [];
  if (ram.retracted >= leaf.length)
    reasons.push({ why: "ramLongerThanLeaf", leaf: leaf.length, ram: ram.retracted });
  if (ram.longestLeaf !== null && leaf.length > ram.longestLeaf) {
    reasons.push({ why: "leafTooLong", leaf: leaf.length, allowed: ram.longestLeaf });
  }
  if (ram.heaviestLeaf !== null && leafMass !== null && leafMass > ram.heaviestLeaf) {
    reasons.push({ why: "leafTooHeavy", leaf: leafMass, allowed: ram.heaviestLeaf });
  }
  return reasons;
}
