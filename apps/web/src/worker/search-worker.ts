import { prepare, type ReserveMap, reserveMap, type Span } from "@pintle/core";
import {
  type Job,
  type PlaceLeafDocument,
  placeJob,
  type RamRankDocument,
  ramFor,
  toReach,
  toSituation,
} from "@pintle/job";
import { expose } from "comlink";

/** What the worker answers. Each call speaks of one leaf of the job; steps of patches lead into the whole job. */
const searches = {
  /** The best few placements that differ in kind, or why nothing fits. */
  places(job: Job, leafIndex: number): PlaceLeafDocument {
    const found = placeJob(withOneLeaf(job, leafIndex), { best: 3 }).leaves[0];
    if (found === undefined) throw new RangeError(`places found no leaf ${leafIndex}`);
    return withPatchesAt(found, leafIndex);
  },

  /** Every ram of the job on this leaf, ranked; told ram by ram. */
  rams(
    job: Job,
    leafIndex: number,
    told: (done: number, count: number, name: string) => void,
  ): RamRankDocument[] {
    const one = withOneLeaf(job, leafIndex);
    const [leaf] = one.leaves;
    const rams = job.rams ?? [];
    const ranks: RamRankDocument[] = [];
    for (const [index, ram] of rams.entries()) {
      told(index, rams.length, ram.name ?? ram.id);
      // A leaf that names no ram is not searched itself: only the catalogue is.
      const { ram: _, ...unnamed } = leaf as Job["leaves"][number];
      const placed = placeJob({ ...one, leaves: [unnamed], rams: [ram] }, { everyRam: true });
      ranks.push(...(placed.leaves[0]?.rams ?? []));
    }
    return ranks.sort((a, b) => (b.reserveMm ?? -1e9) - (a.reserveMm ?? -1e9) || (a.ram < b.ram ? -1 : 1));
  },

  /** The best reserve over all leaf pins for each place of the post pin [m]; null where there is nothing to search. */
  map(
    job: Job,
    leafIndex: number,
    size: { readonly columns: number; readonly rows: number },
    told: (share: number) => void,
  ): ReserveMap | null {
    const leaf = job.leaves[leafIndex] as Job["leaves"][number];
    const [ram, reach] = [ramFor(job, leaf), toReach(leaf)];
    if (ram === null || !reach.ok) return null;
    const { postPin, leafPin, rise } = reach.reach;
    const hull = (spans: readonly Span[]): [number, number] => [
      Math.min(...spans.map((span) => span.from)),
      Math.max(...spans.map((span) => span.to)),
    ];
    const [along, out] = [hull(postPin.map((site) => site.along)), hull(postPin.map((site) => site.out))];
    // A pin that brackets hold to a line has no map.
    if (along[0] === along[1] || out[0] === out[1]) return null;
    const prepared = prepare(toSituation(leaf, ram));
    return reserveMap(prepared, leafPin, rise, { along, out, ...size }, { progress: (share) => told(share) });
  },
};

export type Searches = typeof searches;

function withOneLeaf(job: Job, leafIndex: number): Job {
  return { ...job, leaves: job.leaves.slice(leafIndex, leafIndex + 1) };
}

function withPatchesAt(found: PlaceLeafDocument, leafIndex: number): PlaceLeafDocument {
  if (found.nothingFits === null) return found;
  const changes = found.nothingFits.changes.map((change) => ({
    ...change,
    patch:
      change.patch?.map((step) => ({
        ...step,
        path: step.path.replace(/^\/leaves\/0/, `/leaves/${leafIndex}`),
      })) ?? null,
  }));
  return { ...found, nothingFits: { ...found.nothingFits, changes } };
}

expose(searches);
