import {
  leastChanges,
  limitsOf,
  type NothingFits,
  type Prepared,
  placementsInKind,
  type RankedPlacement,
  settingOut,
  type Watch,
} from "@pintle/core";
import { changeText } from "../findings/change-wording.ts";
import { pinErrorText, reserveText } from "../findings/reserve-wording.ts";
import { dimensionText } from "../findings/setting-out-wording.ts";
import { kindText, tradeOffPhrases } from "../findings/trade-off-wording.ts";
import type { Display, Job } from "../schema/job.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import { toPostFaces } from "../to-core/leaf-to-core.ts";
import { changePatch } from "./change-patch.ts";
import type {
  NothingFitsDocument,
  PlaceDocument,
  PlaceLeafDocument,
  PlacementDocument,
} from "./documents.ts";
import { leafReach, leafWithRam } from "./leaf-question.ts";
import { type MapSize, mapOf } from "./map-leaf.ts";
import { rankRamOnLeaf, withRanks } from "./rank-job-rams.ts";
import { inDeg, inMm, limitDocument, pinsDocument, tradeOffsDocument } from "./rounded.ts";

export interface PlaceOptions extends Watch {
  /** How many placements that differ in kind, at most; default 4. */
  readonly best?: number;
  /** Rank every ram of the job too (rule G15). */
  readonly everyRam?: boolean;
  /** Resolution of the map of post-pin positions (rule G14); left out without it. */
  readonly map?: MapSize;
}

/**
 * Where the pins of every leaf go (rules G12 to G17), as the document of rule I15.
 *
 * Expects a job that `readJob` accepted. A leaf that cannot be searched says why in `notSearched`; when
 * nothing fits, `nothingFits` gives the binding limits and the least single changes. Progress and abort as in
 * the core.
 *
 * ### Example
 *   const reach = { postPin: { alongMm: [-260, -60] as [number, number], outMm: [80, 320] as [number, number] }, leafPin: { alongMm: [850, 1150] as [number, number], offMm: [85, 145] as [number, number] } };
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25, ram: "r", reach, need: { leverMm: 120 } };
 *   const ram = { id: "r", retractedMm: 760, strokeMm: 400, tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }], rodHalfWidthMm: 12 };
 *   const found = placeJob({ format: "pintle-job", version: 1, leaves: [leaf], rams: [ram] });
 *   expect(found.leaves[0]?.placements[0]?.reserveMm).toBeGreaterThan(24.5);
 */
export function placeJob(job: Job, options: PlaceOptions = {}): PlaceDocument {
  const count = job.leaves.length;
  const leaves = job.leaves.map((_, index) =>
    placeLeaf(job, index, {
      ...options,
      progress: (share) => options.progress?.((index + share) / count),
    }),
  );
  return { leaves };
}

/**
 * One leaf of a job, as `placeJob` does it; so that several may be done at once. Throws RangeError when the job
 * has no leaf with that index.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const found = placeLeaf({ format: "pintle-job", version: 1, leaves: [leaf] }, 0);
 *   expect(found.notSearched).toBe("where the post pin and the leaf pin may go is not given (reach or brackets)");
 */
export function placeLeaf(job: Job, index: number, options: PlaceOptions = {}): PlaceLeafDocument {
  const leaf = job.leaves[index];
  if (leaf === undefined)
    throw new RangeError(`placeLeaf found leaf ${index}; it expects one of ${job.leaves.length}`);
  const found = placedLeaf(job, leaf, index, options);
  if (!options.everyRam) return found;
  const watch = options.signal ? { signal: options.signal } : {};
  return withRanks(
    found,
    (job.rams ?? []).map((_, ram) => rankRamOnLeaf(job, index, ram, watch)),
  );
}

function placedLeaf(job: Job, leaf: JobLeaf, index: number, options: PlaceOptions): PlaceLeafDocument {
  const display = job.display ?? "metric";
  const empty = { id: leaf.id, placements: [], nothingFits: null };
  const reach = leafReach(leaf);
  if (!reach.ok) return { ...empty, notSearched: reach.missing };
  const withRam = leafWithRam(job, leaf);
  if (!withRam.ok) return { ...empty, notSearched: withRam.missing };
  const { prepared, ram } = withRam.value;
  const map = options.map ? { map: mapOf(prepared, reach.value, options.map, options) } : {};
  const found = placementsInKind(prepared, reach.value, { ...options, most: options.best ?? 4 });
  if (found.status === "found") {
    const placements = found.placements.map((one) => placementDocument(leaf, ram.id, prepared, one, display));
    return { ...empty, placements, ...map };
  }
  if (found.status === "stopped") {
    const why =
      found.why === "aborted" ? "the search was stopped" : "the search ran out of its limit of boxes";
    return { ...empty, notSearched: `${why} before it was certain`, ...map };
  }
  const { progress: _, ...quiet } = options;
  const why = leastChanges({ situation: prepared.situation, reach: reach.value }, quiet);
  return { ...empty, nothingFits: nothingFitsDocument(job, index, ram.id, prepared, why), ...map };
}

function placementDocument(
  leaf: JobLeaf,
  ram: string,
  prepared: Prepared,
  one: RankedPlacement,
  display: Display,
): PlacementDocument {
  const sheet = settingOut(prepared.situation, one.placement, toPostFaces(leaf));
  const direction = one.reserve.firstToBreak?.direction ?? null;
  return {
    kind: one.kind,
    kindText: kindText(one.kind),
    ram,
    postBracket: one.postBracket,
    leafBracket: one.leafBracket,
    ...pinsDocument(one.placement),
    reserveMm: inMm(one.reserve.reserve),
    reserveText: reserveText(one.reserve, display),
    firstToBreak: one.reserve.firstToBreak?.limit ?? null,
    firstToBreakText: direction === null ? null : pinErrorText(direction),
    limits: one.limits.map(limitDocument),
    tradeOffs: tradeOffsDocument(one.tradeOffs),
    tradeOffsText: tradeOffPhrases(one.tradeOffs, display),
    settingOut: {
      leafIs: sheet.leafIs,
      dimensions: sheet.dimensions.map((dimension) => ({
        id: dimension.id,
        valueMm: inMm(dimension.value),
        checks: dimension.checks,
        text: dimensionText(dimension, display),
      })),
    },
  };
}

function nothingFitsDocument(
  job: Job,
  leafIndex: number,
  ram: string,
  prepared: Prepared,
  why: NothingFits,
): NothingFitsDocument {
  return {
    binding: why.binding,
    changes: why.changes.map((change) => ({
      kind: change.kind,
      by: change.unit === "m" ? inMm(change.by) : inDeg(change.by),
      unit: change.unit === "m" ? "mm" : "deg",
      text: changeText(change, job.display ?? "metric"),
      patch: changePatch(job, leafIndex, ram, change),
    })),
    undecided: why.undecided,
    nearest:
      why.nearest === null
        ? null
        : { ...pinsDocument(why.nearest), limits: limitsOf(prepared, why.nearest).map(limitDocument) },
  };
}
