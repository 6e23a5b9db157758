import type { Job } from "../schema/job.ts";
import type { PatchStep } from "./patch-step.ts";

type Keyed = Readonly<Record<string, unknown>>;

/**
 * A job with a JSON Patch of `changePatch` applied; the job given is not changed (rule G16).
 *
 * Steps are applied in order. Throws RangeError on a path that does not lead to a key of an object in the job:
 * the patch then belongs to another job.
 *
 * Source: RFC 6902 (operation "add"), RFC 6901 (paths).
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 95, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf] };
 *   const changed = withPatch(job, [{ op: "add", path: "/leaves/0/openAngleDeg", value: 90 }]);
 *   expect(changed.leaves[0]?.openAngleDeg).toBe(90);
 *   expect(job.leaves[0]?.openAngleDeg).toBe(95);
 */
export function withPatch(job: Job, patch: readonly PatchStep[]): Job {
  return patch.reduce((changed, { path, value }) => added(changed, keysOf(path), value, path) as Job, job);
}

/** `~1` stands for a slash in a key, `~0` for the tilde itself, undone in that order (RFC 6901, 4). */
function keysOf(path: string): string[] {
  return path
    .split("/")
    .slice(1)
    .map((key) => key.replaceAll("~1", "/").replaceAll("~0", "~"));
}

function added(part: unknown, [key, ...rest]: readonly string[], value: unknown, path: string): unknown {
  if (key === undefined) return value;
  if (Array.isArray(part) && rest.length > 0) {
    const index = Number(key);
    if (!Number.isInteger(index) || index >= part.length || index < 0) throw lost(path);
    return part.map((item, at) => (at === index ? added(item, rest, value, path) : item));
  }
  if (typeof part !== "object" || part === null || Array.isArray(part)) throw lost(path);
  if (rest.length > 0 && !Object.hasOwn(part, key)) throw lost(path);
  return { ...part, [key]: added((part as Keyed)[key], rest, value, path) };
}

function lost(path: string): RangeError {
  return new RangeError(`withPatch found the path ${path}; it expects one that leads to a key of this job`);
}
