import "./no-eval.ts";
import * as z from "zod";
import { freeText, positiveMm } from "./bounded-number.ts";
import { leafSchema } from "./leaf.ts";
import { originsSchema } from "./origin.ts";
import { ramSchema } from "./ram.ts";
import { siteSchema } from "./site.ts";

/** Name that every job file carries. */
export const jobFormat = "pintle-job";

/** Version of the job file that this code writes. */
export const jobVersion = 1;

const leavesError = "a list of 1 to 20 leaves";
const ramsError = "a list of at most 1000 rams";

const gatewaySchema = z.object(
  {
    betweenHingesMm: positiveMm("distance of the two hinge axes of a pair of leaves", 40_000).optional(),
    origin: originsSchema.optional(),
  },
  { error: "an object that describes the gateway" },
);

/**
 * The job file. Source of the types, of the validation of single values, and of the published JSON
 * Schema; what ties values together (ids, references) is checked in `checks/`.
 *
 * Only for judging: what a schema returns lacks the unknown keys, so the parsed text itself is the job.
 */
export const jobSchema = z
  .object(
    {
      format: z.literal(jobFormat, { error: `"${jobFormat}"` }),
      version: z.literal(jobVersion, { error: `${jobVersion}` }),
      title: freeText("title of the job").optional(),
      display: z
        .enum(["metric", "us"], { error: 'the units to show: "metric" or "us"' })
        .meta({ description: "Units that people type and read; metric unless given" })
        .optional(),
      site: siteSchema.optional(),
      gateway: gatewaySchema.optional(),
      leaves: z
        .array(leafSchema, { error: leavesError })
        .min(1, { error: leavesError })
        .max(20, { error: leavesError }),
      rams: z.array(ramSchema, { error: ramsError }).max(1000, { error: ramsError }).optional(),
      note: freeText("note on the job").optional(),
      origin: originsSchema.optional(),
    },
    { error: "an object" },
  )
  .meta({ title: "Pintle job", description: "One job of motorising a hinged driveway gate" });

export type Job = z.infer<typeof jobSchema>;

/** Units that people type and read. */
export type Display = NonNullable<Job["display"]>;
