import "./no-eval.ts";
import * as z from "zod";
import { boundedNumber, coordinateMm, rangeMm } from "./bounded-number.ts";
import { originsSchema } from "./origin.ts";

const riseMm = boundedNumber("height of the leaf pin above the post pin, 0 unless given", "mm", {
  from: -3000,
  upTo: 3000,
}).optional();

/** Where the ram's two pins are (rule G4): post pin in the fixed frame, leaf pin in the leaf's own axes. */
export const placementSchema = z
  .object(
    {
      postPin: z.object(
        {
          alongMm: coordinateMm("post pin along the closed leaf, negative = behind the hinge"),
          outMm: coordinateMm("post pin square off the closed leaf, toward the ram's side"),
          origin: originsSchema.optional(),
        },
        { error: "the post pin {alongMm, outMm}" },
      ),
      leafPin: z.object(
        {
          alongMm: coordinateMm("leaf pin along the leaf from the hinge axis"),
          offMm: coordinateMm(
            "leaf pin square off the leaf from the hinge axis, toward the ram's side when closed",
          ),
          origin: originsSchema.optional(),
        },
        { error: "the leaf pin {alongMm, offMm}" },
      ),
      riseMm,
      origin: originsSchema.optional(),
    },
    { error: "a placement {postPin, leafPin}" },
  )
  .meta({ id: "placement" });

/** Where the two pins may go when no bracket says otherwise (rule G12). */
export const reachSchema = z
  .object(
    {
      postPin: z
        .object(
          {
            alongMm: rangeMm("post pin along"),
            outMm: rangeMm("post pin out"),
            origin: originsSchema.optional(),
          },
          { error: "the reach of the post pin {alongMm: [from, to], outMm: [from, to]}" },
        )
        .optional(),
      leafPin: z
        .object(
          {
            alongMm: rangeMm("leaf pin along"),
            offMm: rangeMm("leaf pin off"),
            origin: originsSchema.optional(),
          },
          { error: "the reach of the leaf pin {alongMm: [from, to], offMm: [from, to]}" },
        )
        .optional(),
      riseMm,
      origin: originsSchema.optional(),
    },
    { error: "a reach with postPin and leafPin" },
  )
  .meta({ id: "reach" });

export type JobPlacement = z.infer<typeof placementSchema>;
export type JobReach = z.infer<typeof reachSchema>;
