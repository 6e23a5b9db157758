import "./no-eval.ts";
import * as z from "zod";
import { boundedNumber, distanceMm } from "./bounded-number.ts";
import { originsSchema } from "./origin.ts";

/** What the placement must keep (rule G10). A key left out takes the usual value, which counts as assumed. */
export const needSchema = z
  .object(
    {
      clearanceMm: distanceMm("ram body to leaf, 50 unless given", 2000).optional(),
      fixedClearanceMm: distanceMm("ram body to anything fixed, 15 unless given", 2000).optional(),
      leverMm: distanceMm("least lever arm over the travel, 0 unless given", 5000).optional(),
      deadCentreDeg: boundedNumber("least angle to dead centre, 5 unless given", "deg", {
        from: 0,
        below: 90,
      }).optional(),
      sweepMm: distanceMm("leaf to anything fixed while it swings, 0 unless given", 2000).optional(),
      forceFactor: boundedNumber("thrust available over thrust needed", "", { from: 1, upTo: 20 }).optional(),
      origin: originsSchema.optional(),
    },
    { error: "an object of needs" },
  )
  .meta({ id: "need" });

export type JobNeed = z.infer<typeof needSchema>;
