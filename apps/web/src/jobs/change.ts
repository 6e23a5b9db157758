import type { Job, PatchStep } from "@pintle/job";

/** Keys and positions that lead to a value of the job. */
export type ValuePath = readonly (string | number)[];

/** One value put in its place; `undefined` takes the key away. */
export interface Change {
  readonly path: ValuePath;
  readonly value: unknown;
}

/** The job with changes applied; the parts that do not change are shared. */
export function changed(job: Job, changes: readonly Change[]): Job {
  return changes.reduce<unknown>((part, { path, value }) => withValue(part, path, value), job) as Job;
}

function withValue(part: unknown, path: ValuePath, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(part)) {
    const list = [...part];
    list[key as number] = withValue(list[key as number], rest, value);
    return list;
  }
  const held = typeof part === "object" && part !== null ? (part as Record<string, unknown>) : {};
  const { [key]: old, ...others } = held;
  const next = withValue(old, rest, value);
  if (next === undefined) return others;
  return key in held ? { ...held, [key]: next } : { ...others, [key]: next };
}

/** Steps of a JSON Patch as changes. */
export function changesOf(steps: readonly PatchStep[]): Change[] {
  return steps.map(({ path, value }) => ({ path: pointerPath(path), value }));
}

function pointerPath(pointer: string): ValuePath {
  return pointer
    .split("/")
    .slice(1)
    .map((part) => part.replaceAll("~1", "/").replaceAll("~0", "~"))
    .map((part) => (/^\d+$/.test(part) ? Number(part) : part));
}
