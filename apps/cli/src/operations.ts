import type {
  AsBuiltDocument,
  CheckDocument,
  Job,
  MapDocument,
  MapRows,
  MapSize,
  PlaceDocument,
  PlaceLeafDocument,
  PlaceOptions,
  RamRankDocument,
  SwingDocument,
} from "@pintle/job";

/** What the search of a leaf is asked for; plain data, so that it crosses to a worker. */
export type PlaceSettings = Pick<PlaceOptions, "best">;

/** What the commands ask of the job package; each returns what `--json` prints, or a part of it. */
export interface Operations {
  readonly place: (job: Job, options: PlaceOptions) => PlaceDocument;
  readonly placeLeaf: (job: Job, leaf: number, settings: PlaceSettings) => PlaceLeafDocument;
  readonly rankRam: (job: Job, leaf: number, ram: number) => RamRankDocument | null;
  readonly mapLeaf: (job: Job, leaf: number, size: MapSize, rows: MapRows) => MapDocument | null;
  readonly check: (job: Job) => CheckDocument;
  readonly swing: (job: Job, options: { readonly stepDeg: number }) => SwingDocument;
  readonly asBuilt: (job: Job) => AsBuiltDocument;
}
