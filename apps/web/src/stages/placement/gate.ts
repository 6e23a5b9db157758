import {
  type Limit,
  limitsOf,
  type Placement,
  type Prepared,
  prepare,
  type Reserve,
  reserveOf,
  type SwingSeries,
  swingSeries,
} from "@pintle/core";
import { type Job, type JobLeaf, type JobRam, ramFor, toPlacement, toSi, toSituation } from "@pintle/job";

/** One leaf with its ram and pins, judged: all that the drawing, the bars and the charts show. */
export interface Gate {
  readonly prepared: Prepared;
  readonly placement: Placement;
  readonly limits: readonly Limit[];
  readonly reserve: Reserve;
  readonly series: SwingSeries;
}

/** Judges a leaf; null when it has no ram or no pins yet. Fast enough for every frame of a drag. */
export function judgedGate(job: Job, leaf: JobLeaf): Gate | null {
  const ram: JobRam | null = ramFor(job, leaf);
  const placement = toPlacement(leaf.placement);
  if (ram === null || placement === null) return null;
  const prepared = prepare(toSituation(leaf, ram));
  return {
    prepared,
    placement,
    limits: limitsOf(prepared, placement),
    reserve: reserveOf(prepared, placement),
    series: swingSeries(prepared, placement, toSi(1, "deg")),
  };
}

/** A full bar stands for this much slack; what has more is not what decides. */
const fullBar: Readonly<Record<Limit["unit"], number>> = { m: 0.1, rad: Math.PI / 6, ratio: 1 };

/** Slack as a share of a full bar, so that limits of different units can be put in order. */
export const tightness = (limit: Limit): number => (limit.slack ?? 0) / fullBar[limit.unit];

/** The limits that were judged, tightest first. */
export function tightestFirst(limits: readonly Limit[]): Limit[] {
  return limits.filter(({ slack }) => slack !== null).sort((a, b) => tightness(a) - tightness(b));
}
