import "./no-eval.ts";
import * as z from "zod";
import { boundedNumber, distanceMm, farthestMm, freeText, positiveMm, shortText } from "./bounded-number.ts";
import { originsSchema } from "./origin.ts";

const tubeError = "a list of 1 to 50 stretches of the ram's tube, each {fromMm, toMm, halfWidthMm}";
const stretchEnd = (what: string) => boundedNumber(what, "mm", { from: -5000, upTo: 10_000 });

const tubeStretchSchema = z
  .object(
    {
      fromMm: stretchEnd("start of the stretch from the post pin, negative = tail behind it"),
      toMm: stretchEnd("end of the stretch from the post pin"),
      halfWidthMm: positiveMm("half the width of the stretch", 500),
      origin: originsSchema.optional(),
    },
    { error: "a stretch of the ram's tube {fromMm, toMm, halfWidthMm}" },
  )
  .refine((stretch) => stretch.fromMm < stretch.toMm, {
    error: "a stretch whose fromMm is smaller than its toMm",
  });

/** A ram by its maker's numbers (rule G7): pin to pin lengths, outline, thrust and speed. */
export const ramSchema = z
  .object(
    {
      id: shortText("id of the ram"),
      name: shortText("name of the ram").optional(),
      retractedMm: positiveMm("pin to pin fully in", 10_000),
      strokeMm: positiveMm("how far the ram extends", 5000),
      retractedMarginMm: distanceMm(
        "stroke kept unused at the retracted end, 0 unless given",
        5000,
      ).optional(),
      extendedMarginMm: distanceMm("stroke kept unused at the extended end, 0 unless given", 5000).optional(),
      tube: z
        .array(tubeStretchSchema, { error: tubeError })
        .min(1, { error: tubeError })
        .max(50, { error: tubeError })
        .meta({ description: "Outline of the tube: rectangles along the pin-to-pin line" }),
      rodHalfWidthMm: positiveMm("half the width of the rod", 500),
      thrustN: boundedNumber("thrust", "N", { above: 0, upTo: 100_000 }).optional(),
      speedMmS: boundedNumber("speed of the rod", "mm/s", { above: 0, upTo: 1000 }).optional(),
      supplyV: boundedNumber("supply voltage", "V", { above: 0, upTo: 1000 }).optional(),
      longestLeafMm: positiveMm("longest leaf that the maker allows", farthestMm).optional(),
      heaviestLeafKg: boundedNumber("heaviest leaf that the maker allows", "kg", {
        above: 0,
        upTo: 10_000,
      }).optional(),
      note: freeText("note on the ram").optional(),
      origin: originsSchema.optional(),
    },
    { error: "an object that describes a ram" },
  )
  .meta({ id: "ram" });

export type JobRam = z.infer<typeof ramSchema>;
