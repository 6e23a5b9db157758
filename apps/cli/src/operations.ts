import type { Job } from "@pintle/job";
import type { AsBuiltDocument, CheckDocument, PlaceDocument, SwingDocument } from "./documents.ts";

/** What the commands ask of the job package; each returns the document that `--json` prints. */
export interface Operations {
  readonly place: (job: Job, options: { readonly best: number }) => PlaceDocument;
  readonly check: (job: Job) => CheckDocument;
  readonly swing: (job: Job, options: { readonly stepDeg: number }) => SwingDocument;
  readonly asBuilt: (job: Job) => AsBuiltDocument;
}
