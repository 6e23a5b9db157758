import * as z from "zod";
import { jobSchema } from "./job.ts";

/**
 * The job file as JSON Schema (draft 2020-12), made from the schema that the types come from.
 *
 * Every object allows further properties, because unknown keys are kept. JSON Schema cannot say all that
 * `readJob` checks: order inside ranges, simple outlines, unique ids and references are left out.
 *
 * ### Example
 *   expect(publishedSchema()["title"]).toBe("Pintle job");
 */
export function publishedSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(jobSchema, {
    io: "input",
    override: ({ jsonSchema }) => {
      if (jsonSchema.type === "object" && jsonSchema.additionalProperties === undefined) {
        jsonSchema.additionalProperties = true;
      }
    },
  });
  return schema as Record<string, unknown>;
}
