import { expect, test } from "vitest";
import published from "../../schema/pintle-job.schema.json" with { type: "json" };
import { publishedSchema } from "./published-schema.ts";

test("the published JSON Schema is the one that the source makes (scripts/publish-schema.ts writes it)", () => {
  expect(published).toEqual(publishedSchema());
});

test("every object of known keys allows further keys, and none is closed", () => {
  const objects = objectsIn(publishedSchema());
  expect(objects.length).toBeGreaterThan(20);
  expect(
    objects.filter((one) => one.additionalProperties === false || one.additionalProperties === undefined),
  ).toEqual([]);
});

test("what must be given is what the geometry cannot do without", () => {
  const defs = publishedSchema().$defs as Record<string, { required: string[] }>;
  expect(publishedSchema().required).toEqual(["format", "version", "leaves"]);
  expect(defs.leaf?.required).toEqual([
    "id",
    "hingeSide",
    "swing",
    "openAngleDeg",
    "lengthMm",
    "heelMm",
    "thicknessMm",
    "faceMm",
  ]);
  expect(defs.ram?.required).toEqual(["id", "retractedMm", "strokeMm", "tube", "rodHalfWidthMm"]);
});

function objectsIn(part: unknown): Record<string, unknown>[] {
  if (typeof part !== "object" || part === null) return [];
  const own = (part as { type?: unknown }).type === "object" ? [part as Record<string, unknown>] : [];
  return [...own, ...Object.values(part).flatMap(objectsIn)];
}
