import { type Prepared, type Reach, reserveMap, type Watch } from "@pintle/core";
import type { Job } from "../schema/job.ts";
import type { MapDocument } from "./documents.ts";
import { leafReach, leafWithRam } from "./leaf-question.ts";
import { inMm } from "./rounded.ts";

/** How many post-pin positions a map has, ends of the reach included; at least 2 each way. */
export interface MapSize {
  readonly columns: number;
  readonly rows: number;
}

/** Rows of a map, the first included and the last not. */
export interface MapRows {
  readonly fromRow: number;
  readonly toRow: number;
}

/**
 * Some rows of the map that `placeJob` makes of a leaf (rule G14), so that workers can share it; `joinedMap`
 * puts them together. Null when the leaf has no ram or does not say where its pins may go.
 *
 * Throws RangeError when the job has no such leaf, or on a map of fewer than 2 × 2 positions.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf] };
 *   expect(mapLeaf(job, 0, { columns: 5, rows: 5 }, { fromRow: 0, toRow: 5 })).toBe(null);
 */
export function mapLeaf(job: Job, leafIndex: number, size: MapSize, rows: MapRows): MapDocument | null {
  const leaf = job.leaves[leafIndex];
  if (leaf === undefined)
    throw new RangeError(`mapLeaf found leaf ${leafIndex}; it expects one of ${job.leaves.length}`);
  const reach = leafReach(leaf);
  const withRam = leafWithRam(job, leaf);
  return reach.ok && withRam.ok ? mapOf(withRam.value.prepared, reach.value, size, {}, rows) : null;
}

/**
 * Parts of a map, in order of their rows, as one.
 *
 * ### Example
 *   const row = (outMm: number, reserve: number) => ({ alongMm: [-200, -100], outMm: [outMm], reserveMm: [reserve, reserve], leafPin: [null, null] });
 *   const map = joinedMap([row(100, 3), row(150, 4)]);
 *   expect(map?.outMm).toEqual([100, 150]);
 *   expect(map?.reserveMm).toEqual([3, 3, 4, 4]);
 */
export function joinedMap(parts: readonly (MapDocument | null)[]): MapDocument | null {
  const known = parts.filter((part) => part !== null);
  const [first] = known;
  if (first === undefined) return null;
  return {
    alongMm: first.alongMm,
    outMm: known.flatMap(({ outMm }) => outMm),
    reserveMm: known.flatMap(({ reserveMm }) => reserveMm),
    leafPin: known.flatMap(({ leafPin }) => leafPin),
  };
}

/** The map over the smallest window that holds the whole reach of the post pin. */
export function mapOf(
  prepared: Prepared,
  reach: Reach,
  { columns, rows }: MapSize,
  watch: Watch,
  part?: MapRows,
): MapDocument {
  const hull = (spans: readonly { readonly from: number; readonly to: number }[]): [number, number] => [
    Math.min(...spans.map((span) => span.from)),
    Math.max(...spans.map((span) => span.to)),
  ];
  const along = hull(reach.postPin.map((site) => site.along));
  const out = hull(reach.postPin.map((site) => site.out));
  const grid = { along, out, columns, rows, ...(part ? { part } : {}) };
  const quiet = watch.signal ? { signal: watch.signal } : {};
  const map = reserveMap(prepared, reach.leafPin, reach.rise, grid, quiet);
  return {
    alongMm: map.along.map(inMm),
    outMm: map.out.map(inMm),
    reserveMm: Array.from(map.reserve, (value) => (Number.isNaN(value) ? null : inMm(value))),
    leafPin: map.leafPin.map((pin) => pin && { alongMm: inMm(pin.along), offMm: inMm(pin.off) }),
  };
}
