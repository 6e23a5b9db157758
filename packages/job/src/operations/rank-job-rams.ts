import { rankRam, type Watch } from "@pintle/core";
import { unsuitedText } from "../findings/unsuited-wording.ts";
import type { Job } from "../schema/job.ts";
import { toSituation } from "../to-core/situation-to-core.ts";
import type { PlaceLeafDocument, RamRankDocument } from "./documents.ts";
import { leafReach } from "./leaf-question.ts";
import { inMm, pinsDocument, tradeOffsDocument } from "./rounded.ts";

/**
 * One ram of a job on one of its leaves (rule G15): its best placement, or why it does not suit. Null when the
 * leaf does not say where its pins may go.
 *
 * Each ram is searched by itself, so that a catalogue can be spread over workers and put together again with
 * `withRanks`. Throws RangeError when the job has no such leaf or ram.
 *
 * ### Example
 *   const reach = { postPin: { alongMm: [-260, -60] as [number, number], outMm: [80, 320] as [number, number] }, leafPin: { alongMm: [850, 1150] as [number, number], offMm: [85, 145] as [number, number] } };
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 700, heelMm: 30, thicknessMm: 50, faceMm: 25, reach };
 *   const ram = { id: "r", retractedMm: 760, strokeMm: 400, tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }], rodHalfWidthMm: 12 };
 *   const rank = rankRamOnLeaf({ format: "pintle-job", version: 1, leaves: [leaf], rams: [ram] }, 0, 0);
 *   expect(rank?.reasons).toEqual(["fully in it is 760 mm long, the leaf only 700 mm"]);
 */
export function rankRamOnLeaf(
  job: Job,
  leafIndex: number,
  ramIndex: number,
  options: Watch = {},
): RamRankDocument | null {
  const leaf = job.leaves[leafIndex];
  const ram = job.rams?.[ramIndex];
  if (leaf === undefined || ram === undefined) {
    throw new RangeError(
      `rankRamOnLeaf found leaf ${leafIndex} and ram ${ramIndex}; it expects one of ${job.leaves.length} leaves and one of ${job.rams?.length ?? 0} rams`,
    );
  }
  const reach = leafReach(leaf);
  if (!reach.ok) return null;
  const rank = rankRam(toSituation(leaf, ram), reach.value, leaf.massKg ?? null, options);
  if (rank.suits) {
    return {
      ram: rank.ram,
      reserveMm: inMm(rank.reserve),
      placement: pinsDocument(rank.placement),
      tradeOffs: tradeOffsDocument(rank.tradeOffs),
      reasons: [],
    };
  }
  const reasons = rank.reasons.map((reason) => unsuitedText(reason, job.display ?? "metric"));
  return { ram: rank.ram, reserveMm: null, placement: null, tradeOffs: null, reasons };
}

/**
 * A leaf's document with the rams of the job ranked: largest reserve first, those that do not suit last, names
 * as tie-break. Unchanged when nothing could be ranked (`ranks` holds null).
 *
 * ### Example
 *   const leaf = { id: "east", placements: [], nothingFits: null };
 *   const rank = (ram: string, reserveMm: number | null) => ({ ram, reserveMm, placement: null, tradeOffs: null, reasons: [] });
 *   const ranked = withRanks(leaf, [rank("a", null), rank("b", 12), rank("c", 20)]);
 *   expect(ranked.rams?.map(({ ram }) => ram)).toEqual(["c", "b", "a"]);
 */
export function withRanks(
  leaf: PlaceLeafDocument,
  ranks: readonly (RamRankDocument | null)[],
): PlaceLeafDocument {
  const known = ranks.filter((rank) => rank !== null);
  if (known.length < ranks.length) return leaf;
  const { map, ...rest } = leaf;
  return { ...rest, rams: known.sort(largestFirst), ...(map === undefined ? {} : { map }) };
}

function largestFirst(a: RamRankDocument, b: RamRankDocument): number {
  const [ofA, ofB] = [a.reserveMm ?? Number.NEGATIVE_INFINITY, b.reserveMm ?? Number.NEGATIVE_INFINITY];
  if (ofA !== ofB) return ofB > ofA ? 1 : -1;
  return a.ram < b.ram ? -1 : a.ram > b.ram ? 1 : 0;
}
