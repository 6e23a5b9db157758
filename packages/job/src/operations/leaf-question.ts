import type { Placement, Prepared, Reach } from "@pintle/core";
import { prepare } from "@pintle/core";
import type { Job } from "../schema/job.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import type { JobRam } from "../schema/ram.ts";
import { toPlacement, toReach } from "../to-core/pins-to-core.ts";
import { ramFor, toSituation } from "../to-core/situation-to-core.ts";

/** One leaf of a job ready for the core, or in plain words what is missing for it. */
export type LeafQuestion<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly missing: string };

const missing = (what: string): { readonly ok: false; readonly missing: string } => ({
  ok: false,
  missing: what,
});

/** The leaf with its ram, prepared. */
export function leafWithRam(
  job: Job,
  leaf: JobLeaf,
): LeafQuestion<{ readonly prepared: Prepared; readonly ram: JobRam }> {
  const ram = ramFor(job, leaf);
  if (ram === null) return missing("no ram is chosen for this leaf");
  return { ok: true, value: { prepared: prepare(toSituation(leaf, ram)), ram } };
}

/** The leaf with its ram and the pins that the job gives it. */
export function leafWithPins(
  job: Job,
  leaf: JobLeaf,
): LeafQuestion<{ readonly prepared: Prepared; readonly ram: JobRam; readonly placement: Placement }> {
  const withRam = leafWithRam(job, leaf);
  const placement = toPlacement(leaf.placement);
  if (!withRam.ok)
    return placement === null ? missing(`${withRam.missing}, and it has no pins yet`) : withRam;
  if (placement === null) return missing("this leaf has no pins yet");
  return { ok: true, value: { ...withRam.value, placement } };
}

/** Where the pins of the leaf may go. */
export function leafReach(leaf: JobLeaf): LeafQuestion<Reach> {
  const reach = toReach(leaf);
  if (reach.ok) return { ok: true, value: reach.reach };
  const names = { "reach.postPin": "the post pin", "reach.leafPin": "the leaf pin" };
  return missing(
    `where ${reach.missing.map((key) => names[key]).join(" and ")} may go is not given (reach or brackets)`,
  );
}
