import { toSi } from "../quantity/units.ts";
import type { JobReading } from "../schema/as-built.ts";
import type { JobLeaf } from "../schema/leaf.ts";

type WithoutPlace = Exclude<JobReading["kind"], "pinToPin">;

/** Where the leaf stood: closed, open, or at an angle from closed [rad]. */
export type LeafAtReading = "closed" | "open" | { readonly angle: number };

/** One reading in SI, in the shape that the core's estimate takes. `standardError` is left out where the job is silent. */
export type ReadingInSi = { readonly id: string; readonly value: number; readonly standardError?: number } & (
  | { readonly kind: WithoutPlace }
  | { readonly kind: "pinToPin"; readonly leafAt: LeafAtReading }
);

/**
 * The as-built readings of a leaf in SI (rule G18), each named by its path below the leaf.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const asBuilt = { readings: [{ kind: "pinToPin" as const, valueMm: 1059.2, leafAt: "closed" as const }] };
 *   expect(toReadings({ ...leaf, asBuilt })).toEqual([
 *     { id: "asBuilt.readings[0]", kind: "pinToPin", value: 1.0592, leafAt: "closed" },
 *   ]);
 */
export function toReadings(leaf: JobLeaf): ReadingInSi[] {
  return (leaf.asBuilt?.readings ?? []).map((reading, index) =>
    toReading(reading, `asBuilt.readings[${index}]`),
  );
}

function toReading(reading: JobReading, id: string): ReadingInSi {
  const error = reading.standardErrorMm;
  const amount = {
    id,
    value: toSi(reading.valueMm, "mm"),
    ...(error === undefined ? {} : { standardError: toSi(error, "mm") }),
  };
  if (reading.kind !== "pinToPin") return { ...amount, kind: reading.kind };
  const { leafAt } = reading;
  return {
    ...amount,
    kind: "pinToPin",
    leafAt: typeof leafAt === "number" ? { angle: toSi(leafAt, "deg") } : leafAt,
  };
}
