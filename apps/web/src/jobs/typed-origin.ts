import type { Origin } from "@pintle/job";
import type { Change, ValuePath } from "./change.ts";

/**
 * Changes with the origin of what they change. A number typed or dragged anew is no longer the one that somebody
 * measured: until it is said how it was found, it counts as assumed. Where the pins go is a plan and has no origin
 * of this kind.
 */
export function withTypedOrigin(changes: readonly Change[], typed?: string): Change[] {
  const origins = new Map<string, Change>();
  for (const { path } of changes) {
    if (path.includes("placement") || path.includes("asBuilt")) continue;
    const at = originPath(path);
    const value: Origin = { how: "assumed", ...(typed === undefined ? {} : { typed }) };
    origins.set(at.join("/"), { path: at, value });
  }
  return [...changes, ...origins.values()];
}

/** Where the origin of a value stands: beside it, under its key; a list speaks for all within. */
export function originPath(path: ValuePath): ValuePath {
  let end = path.length;
  while (end > 0 && typeof path[end - 1] === "number") end--;
  return [...path.slice(0, end - 1), "origin", path[end - 1] as string];
}
