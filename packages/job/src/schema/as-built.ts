import "./no-eval.ts";
import * as z from "zod";
import { coordinateMm, positiveMm } from "./bounded-number.ts";
import { originsSchema } from "./origin.ts";

const leafAtError = 'where the leaf stood: "closed", "open" or its angle from closed in degrees, 0 to 180';

/** Where the leaf stood while a reading was taken. */
const leafAtSchema = z
  .union([z.literal("closed"), z.literal("open"), z.number().gte(0).lte(180)], { error: leafAtError })
  .meta({ description: 'Where the leaf stood: "closed", "open" or degrees from closed' });

const about = {
  standardErrorMm: positiveMm("standard error of the reading, 2 unless given", 1000).optional(),
  origin: originsSchema.optional(),
};

const straight = positiveMm("the reading", 20_000);
const signed = coordinateMm("the reading");

const leafAnywhere = { ...about, leafAt: leafAtSchema.optional() };

/** Kinds of reading (rule G18) by what the tape runs between. */
const readingSchema = z.discriminatedUnion(
  "kind",
  [
    z.object({ kind: z.literal("hingeToPostPin"), valueMm: straight, ...leafAnywhere }),
    z.object({ kind: z.literal("hingeToLeafPin"), valueMm: straight, ...leafAnywhere }),
    z.object({ kind: z.literal("pinToPin"), valueMm: straight, leafAt: leafAtSchema, ...about }),
    z.object({ kind: z.literal("postPinFromClosedLine"), valueMm: signed, ...leafAnywhere }),
    z.object({ kind: z.literal("postPinFromRamFace"), valueMm: signed, ...leafAnywhere }),
    z.object({ kind: z.literal("postPinFromGatewayFace"), valueMm: signed, ...leafAnywhere }),
    z.object({ kind: z.literal("leafPinFromLeafFace"), valueMm: signed, ...leafAnywhere }),
    z.object({ kind: z.literal("leafPinFromHeel"), valueMm: signed, ...leafAnywhere }),
  ],
  {
    error:
      'a reading whose kind is "hingeToPostPin", "hingeToLeafPin", "pinToPin", "postPinFromClosedLine", ' +
      '"postPinFromRamFace", "postPinFromGatewayFace", "leafPinFromLeafFace" or "leafPinFromHeel"',
  },
);

const readingsError = "a list of at most 200 readings";

/** What was measured on the gate once the pins were in (rule G18). */
export const asBuiltSchema = z
  .object(
    {
      readings: z.array(readingSchema, { error: readingsError }).max(200, { error: readingsError }),
      estimateOpenAngle: z
        .boolean({ error: "true to find the opening angle from the readings too, else false" })
        .optional(),
    },
    { error: "an object with readings" },
  )
  .meta({ id: "asBuilt" });

export type JobReading = z.infer<typeof readingSchema>;
export type JobAsBuilt = z.infer<typeof asBuiltSchema>;
