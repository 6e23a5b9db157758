import "./no-eval.ts";
import * as z from "zod";
import { boundedNumber } from "./bounded-number.ts";
import { originsSchema } from "./origin.ts";

/** Where the gate stands and which rule set applies. Coordinates in degrees, north and east positive. */
export const siteSchema = z
  .object(
    {
      rules: z
        .enum(["us", "eu", "general"], { error: 'the rule set: "us", "eu" or "general"' })
        .meta({ description: "Rule set that applies" })
        .optional(),
      latitudeDeg: boundedNumber("latitude, north positive", "deg", { from: -90, upTo: 90 }).optional(),
      longitudeDeg: boundedNumber("longitude, east positive", "deg", { from: -180, upTo: 180 }).optional(),
      elevationM: boundedNumber("height above sea level", "m", { from: -500, upTo: 6000 }).optional(),
      operatingWindMs: boundedNumber("wind in which the gate must still move", "m/s", {
        from: 0,
        upTo: 100,
      }).optional(),
      survivalWindMs: boundedNumber("wind that the gate must survive", "m/s", {
        from: 0,
        upTo: 150,
      }).optional(),
      origin: originsSchema.optional(),
    },
    { error: "an object that describes the site" },
  )
  .meta({ id: "site" });

export type JobSite = z.infer<typeof siteSchema>;
