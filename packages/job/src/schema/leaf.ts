import "./no-eval.ts";
import * as z from "zod";
import { asBuiltSchema } from "./as-built.ts";
import {
  boundedNumber,
  coordinateMm,
  distanceMm,
  farthestMm,
  freeText,
  positiveMm,
  rangeMm,
  shortText,
} from "./bounded-number.ts";
import { bracketsSchema } from "./brackets.ts";
import { fixedThingSchema } from "./fixed-thing.ts";
import { needSchema } from "./need.ts";
import { originsSchema } from "./origin.ts";
import { placementSchema, reachSchema } from "./pins.ts";

const boxSchema = z.object(
  {
    name: shortText("name of the rail, strap or plate").optional(),
    alongMm: rangeMm("the box along the leaf"),
    offMm: rangeMm("the box square off the leaf, from the hinge axis"),
    origin: originsSchema.optional(),
  },
  { error: "a box {alongMm: [from, to], offMm: [from, to]}" },
);

const postSchema = z.object(
  {
    gatewayFaceAlongMm: coordinateMm("hinge post's gateway-side face, along from the hinge axis"),
    ramFaceOutMm: coordinateMm("hinge post's ram-side face, out from the hinge axis"),
    origin: originsSchema.optional(),
  },
  { error: "the hinge post {gatewayFaceAlongMm, ramFaceOutMm}" },
);

const listOf = <T extends z.ZodType>(one: T, what: string, most: number) => {
  const error = `a list of at most ${most} ${what}`;
  return z.array(one, { error }).max(most, { error }).optional();
};

/** One leaf with its hinge post, ram, pins and surroundings; frame of rules G1 to G4. */
export const leafSchema = z
  .object(
    {
      id: shortText("id of the leaf"),
      hingeSide: z
        .enum(["left", "right"], { error: 'the hinge side: "left" or "right"' })
        .meta({ description: "Seen from the ram's side, looking at the closed leaf" }),
      swing: z
        .enum(["toward", "away"], { error: 'the swing: "toward" or "away"' })
        .meta({ description: "toward = opens to the ram's side, away = to the other side" }),
      openAngleDeg: boundedNumber("opening angle from closed", "deg", { above: 0, below: 180 }),
      lengthMm: positiveMm("hinge axis to the latch end of the leaf", farthestMm),
      heelMm: boundedNumber("hinge axis to the hinge end of the leaf", "mm", {
        from: -2000,
        upTo: farthestMm,
      }),
      thicknessMm: positiveMm("thickness of the leaf", 1000),
      faceMm: boundedNumber(
        "hinge axis to the ram-side face, negative when the axis stands proud of it",
        "mm",
        {
          from: -1000,
          upTo: 1000,
        },
      ),
      heightMm: positiveMm("height of the leaf", 10_000).optional(),
      groundGapMm: distanceMm("bottom edge to the ground, closed", 5000).optional(),
      massKg: boundedNumber("mass of the leaf", "kg", { above: 0, upTo: 10_000 }).optional(),
      ram: shortText("id of the ram in rams").optional(),
      placement: placementSchema.optional(),
      reach: reachSchema.optional(),
      brackets: bracketsSchema.optional(),
      need: needSchema.optional(),
      boxes: listOf(boxSchema, "boxes {alongMm, offMm}", 200),
      post: postSchema.optional(),
      fixed: listOf(fixedThingSchema, "fixed things {name, outlineMm}", 200),
      asBuilt: asBuiltSchema.optional(),
      note: freeText("note on the leaf").optional(),
      origin: originsSchema.optional(),
    },
    { error: "an object that describes a leaf" },
  )
  .meta({ id: "leaf" });

export type JobLeaf = z.infer<typeof leafSchema>;
