import "./no-eval.ts";
import * as z from "zod";
import { coordinateMm, shortText } from "./bounded-number.ts";
import { originsSchema } from "./origin.ts";
import { outlineFault } from "./simple-outline.ts";

const outlineError = "an outline: a list of 3 to 500 corners [along, out] in mm";

const cornerSchema = z.tuple([coordinateMm("along"), coordinateMm("out")], {
  error: "a corner [along, out] of two numbers in mm",
});

/** Something beside the gate that stands still, as a simple outline in the fixed frame (rules G1, G7). */
export const fixedThingSchema = z
  .object(
    {
      name: shortText("name of the fixed thing"),
      outlineMm: z
        .array(cornerSchema, { error: outlineError })
        .min(3, { error: outlineError })
        .max(500, { error: outlineError })
        .superRefine((outline, context) => {
          const fault = outline.length >= 3 && outline.length <= 500 ? outlineFault(outline) : null;
          if (fault)
            context.addIssue({ code: "custom", message: fault.expected, params: { found: fault.found } });
        })
        .meta({ description: "Corners [along, out] in order round the thing, fixed frame [mm]" }),
      origin: originsSchema.optional(),
    },
    { error: "an object with name and outlineMm" },
  )
  .meta({ id: "fixedThing" });

export type JobFixedThing = z.infer<typeof fixedThingSchema>;
