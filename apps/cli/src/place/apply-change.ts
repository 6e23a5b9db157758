import { type ChangeDocument, type Job, type PlaceDocument, withPatch } from "@pintle/job";

export type ChangeKind = ChangeDocument["kind"];

const everyKind: Readonly<Record<ChangeKind, true>> = {
  stroke: true,
  retractedLength: true,
  leafPinOff: true,
  postPocket: true,
  postPinOut: true,
  openAngle: true,
  clearance: true,
};

/** Kinds of change that `--apply` takes. */
export const changeKinds = Object.keys(everyKind) as ChangeKind[];

/** A change that was made to the job before it was searched again. */
export type AppliedChange = ChangeDocument & { readonly leaf: string };

/** A job with changes made, what was found in it, and why a change could not be made. */
export interface ChangedJob {
  readonly job: Job;
  readonly document: PlaceDocument;
  readonly applied: readonly AppliedChange[];
  readonly notApplied: readonly string[];
}

/**
 * Makes one kind of change wherever nothing fits (rule G16): leaf by leaf, each time searching again, since a
 * change to a ram that two leaves share may be enough for both.
 */
export async function applyChange(
  job: Job,
  kind: ChangeKind,
  search: (job: Job) => Promise<PlaceDocument>,
): Promise<ChangedJob> {
  const applied: AppliedChange[] = [];
  let changed = job;
  for (;;) {
    const document = await search(changed);
    const stuck = document.leaves.filter(({ nothingFits }) => nothingFits !== null);
    const next = stuck.flatMap(({ id, nothingFits }) => {
      const change = nothingFits?.changes.find((one) => one.kind === kind);
      const isDone = applied.some(({ leaf }) => leaf === id);
      return change?.patch && !isDone ? [{ leaf: id, ...change }] : [];
    })[0];
    if (next === undefined || next.patch === null) {
      return { job: changed, document, applied, notApplied: stuck.map((leaf) => whyNot(leaf, kind)) };
    }
    changed = withPatch(changed, next.patch);
    applied.push(next);
  }
}

function whyNot({ id, nothingFits }: PlaceDocument["leaves"][number], kind: ChangeKind): string {
  const changes = nothingFits?.changes ?? [];
  if (changes.some((one) => one.kind === kind)) {
    return `leaf ${id}: ${kind} means choosing other brackets; put them into the job's brackets by hand`;
  }
  const others = changes.filter(({ patch }) => patch !== null).map((one) => one.kind);
  return `leaf ${id}: ${kind} alone does not make a placement fit${others.length > 0 ? `; these do: ${others.join(", ")}` : ""}`;
}
